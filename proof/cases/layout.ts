import type { ProofCase } from './case.ts';

const DERIVED = (title: string): ProofCase['source'] => ({ title, how: 'derived' });

const ARM_A = { pivot: [0, 0, 0], sprocket: [0.0693187652, 0, 0.0097421171], armLength: '560 mm' } as const;
const DRIVE_A = { pitch: '15.875 mm', teethDriver: 15, teethDriven: 45, linksFitted: 110 } as const;
const IN_LINE = DERIVED(
  'Plane geometry: the centres are farthest apart with sprocket, pivot and axle in line; worked by hand',
);

const spiral = (id: string, hand: string, turning: string, axial: number, radial: number): ProofCase => ({
  method: 'bevel.spiralForces',
  id,
  // 1000 N at a mean diameter of 100 mm.
  given: {
    torqueDriver: '50 N.m',
    meanDiameterDriver: '100 mm',
    pitchAngleDriver: 0.3217505544,
    pitchAngleDriven: 1.2490457724,
    pressureAngle: '20 deg',
    spiralAngle: '35 deg',
    hand,
    turning,
    flow: 'drive',
  },
  expect: {
    axialDriver: { value: axial, within: { rel: 0.001 } },
    radialDriver: { value: radial, within: { rel: 0.001 } },
  },
  source: {
    title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
    at: 'sections 13-15 and 15-1, equations of spiral bevel forces; numbers worked out here with vectors',
    how: 'memory',
  },
  kind: 'constructed',
});

/** Idlers, alignment, wear, the swinging arm, spiral bevels, clearance: mostly hand-worked, since books print few examples. */
export const LAYOUT_CASES: readonly ProofCase[] = [
  ...(
    [
      ['chain-wear-limit-84', 84, 'adjustable', 0.0238095],
      ['chain-wear-limit-40', 40, 'adjustable', 0.03],
      ['chain-wear-limit-40-fixed', 40, 'fixed', 0.015],
    ] as const
  ).map(
    ([id, teethDriven, centres, limit]): ProofCase => ({
      method: 'chain.wearTakeUp',
      id,
      given: { pitch: '12.7 mm', teethDriver: 21, teethDriven, linksFitted: 140, centres, travel: '20 mm' },
      expect: { elongationLimit: { value: limit, within: { abs: 0.0001 } } },
      source: {
        title: 'A chain maker’s answer page on measuring wear',
        at: '3 %, or 200 over the teeth of the larger sprocket in per cent; 1.5 % on fixed centres',
        how: 'read',
        address:
          'diamondchain.com/faq/how-can-the-wear-in-a-roller-chain-be-accurately-measured-and-when-is-the-chain-considered-worn-out',
      },
      kind: 'table-spot',
    }),
  ),
  {
    method: 'chain.rigidLinks',
    id: 'chain-rigid-links-13-39',
    given: { pitch: 1, teethDriver: 13, teethDriven: 39, links: 76, phase: 0 },
    expect: {
      centreDistance: { value: 24.6519, within: { abs: 0.0002 } },
      centreRigid: { value: 24.6519, within: { abs: 0.003 } },
    },
    source: DERIVED('Taut chain of rigid links over two polygons; 24.6502 to 24.6530 pitches over all positions'),
    kind: 'constructed',
  },
  {
    method: 'chain.idlerLength',
    id: 'chain-idler-between-equals',
    given: {
      ...{ pitch: '12.7 mm', teethDriver: 20, teethDriven: 20, centreDistance: '500 mm' },
      ...{ teethIdler: 12, idlerAlong: '250 mm', idlerAcross: '50 mm', idlerSide: 'outside' },
    },
    // Half of the way is a right triangle: hypotenuse √(250² + 50²), one leg the two radii 40.592 + 24.534 mm.
    expect: { spanDriver: { value: '246.496 mm', within: { abs: '0.01 mm' } } },
    source: DERIVED('Right triangle between two circles crossed by their inner tangent, worked by hand'),
    kind: 'constructed',
  },
  {
    method: 'suspension.centreDistance',
    id: 'suspension-arm-centres',
    given: { ...ARM_A, armAngle: '-18 deg' },
    expect: {
      centreDistance: { value: '629.054 mm', within: { abs: '0.01 mm' } },
      centreMost: { value: '630 mm', within: { abs: '0.01 mm' } },
      inLineAngle: { value: '-8 deg', within: { abs: '0.01 deg' } },
    },
    source: IN_LINE,
    kind: 'constructed',
  },
  {
    method: 'suspension.chainTravel',
    id: 'suspension-arm-links',
    given: { ...ARM_A, ...DRIVE_A, armAngles: ['-18 deg', '-8 deg', '0 deg', '12 deg'] },
    expect: {
      linksNeeded: { value: [109.8269, 109.9452, 109.8695, 109.4745], within: { abs: 0.001 } },
      linksTightest: { value: 109.945, within: { abs: 0.001 } },
    },
    source: IN_LINE,
    kind: 'constructed',
  },
  {
    method: 'suspension.slackToSet',
    id: 'suspension-slack-at-the-tightest',
    given: {
      ...{ ...ARM_A, ...DRIVE_A, reboundAngle: '-18 deg', bumpAngle: '12 deg' },
      ...{ measureAngle: '-8 deg', movementTightest: '20 mm' },
    },
    expect: { movementToMeasure: { value: '20 mm', within: { abs: '0.001 mm' } } },
    source: DERIVED('Measured where the chain is tightest, nothing is added'),
    kind: 'constructed',
  },
  {
    method: 'suspension.chainOnArm',
    id: 'suspension-level-arm-equal-sprockets',
    given: {
      ...{
        pivot: [0, 0, 0],
        sprocket: [0.07, 0, 0],
        armLength: '560 mm',
        pitch: '15.875 mm',
        teethDriver: 15,
        teethDriven: 15,
      },
      ...{ armAngle: 0, pull: '3000 N', tightSpan: 'upper', tyreRadius: '300 mm' },
      ...{ armHalfHeight: '20 mm', chainHalfHeight: '8 mm', slackDeflection: '10 mm' },
    },
    // The span runs one pitch radius, 38.177 mm, above the pivot.
    expect: {
      heightTight: { value: '38.177 mm', within: { abs: '0.001 mm' } },
      torqueChain: { value: '114.532 N.m', within: { abs: '0.005 N.m' } },
    },
    source: DERIVED('Force times lever, worked by hand'),
    kind: 'constructed',
  },
  spiral('bevel-spiral-left-clockwise', 'left', 'clockwise', 804.8, 200.1),
  spiral('bevel-spiral-right-clockwise', 'right', 'clockwise', -523.8, 642.9),
  {
    method: 'clearance.capsules',
    id: 'clearance-parallel-tubes',
    given: {
      ...{ fromA: [0, 0, 0], toA: [1, 0, 0], radiusA: '10 mm' },
      ...{ fromB: [0.2, 0.1, 0], toB: [2, 0.1, 0], radiusB: '20 mm' },
    },
    expect: { clearance: { value: '70 mm', within: { abs: '0.001 mm' } } },
    source: DERIVED('Two parallel tubes 100 mm apart, worked by hand'),
    kind: 'constructed',
  },
];
