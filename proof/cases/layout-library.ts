import type { ProofCase } from './case.ts';

/** What a general-purpose library gives for the same shape, number for number. */
const scipy = (at: string): ProofCase['source'] => ({ title: 'SciPy', edition: '1.17.1', at, how: 'read' });
const numpy = (at: string): ProofCase['source'] => ({ title: 'NumPy', edition: '2.4.6', at, how: 'read' });

const HULL = 'scipy.spatial.ConvexHull about the pitch circles, 200 000 points on each';
const ARM = { pivot: [0, 0, 0], sprocket: [0.0693187652, 0, 0.0097421171], armLength: '560 mm' } as const;
const NEAREST = 'scipy.optimize.lsq_linear with both parts held between 0 and 1';

const armCentre = (angle: number, centre: number): ProofCase => ({
  method: 'suspension.centreDistance',
  id: `suspension-centres-turned-${angle < 0 ? 'down' : 'up'}-${Math.abs(angle)}`,
  given: { ...ARM, armAngle: `${angle} deg` },
  expect: { centreDistance: { value: `${centre} mm`, within: { abs: '0.00001 mm' } } },
  source: scipy('scipy.spatial.transform.Rotation turns the axle about the pivot; distance by numpy.linalg.norm'),
  kind: 'reference-library',
});

const armGap = (angle: number, upper: number, lower: number): ProofCase => ({
  method: 'suspension.chainOnArm',
  id: `suspension-gap-${angle < 0 ? 'down' : 'up'}-${Math.abs(angle)}`,
  given: {
    ...{ ...ARM, pitch: '15.875 mm', teethDriver: 15, teethDriven: 45, armAngle: `${angle} deg` },
    ...{ pull: '0 N', tightSpan: 'upper', tyreRadius: '300 mm', armHalfHeight: '0 mm', chainHalfHeight: '0 mm' },
  },
  expect: {
    clearanceTight: { value: `${upper} mm`, within: { abs: '0.001 mm' } },
    clearanceSlack: { value: `${lower} mm`, within: { abs: '0.001 mm' } },
  },
  source: scipy(`${HULL}; ${NEAREST}`),
  kind: 'reference-library',
  note: 'The two long sides of the hull are the spans; least distance from the line of the arm, with heights left out.',
});

/** Layout held to general-purpose libraries: hulls for belts and chains, turned points for the arm, nearest points for gaps and axes. */
export const LAYOUT_LIBRARY: readonly ProofCase[] = [
  {
    method: 'belt.length',
    id: 'belt-length-hull-28-80',
    given: { pitch: '8 mm', teethDriver: 28, teethDriven: 80, centreDistance: '500 mm' },
    expect: {
      length: { value: '1440.77999767 mm', within: { abs: '0.0001 mm' } },
      span: { value: '495.597839 mm', within: { abs: '0.01 mm' } },
    },
    source: scipy(HULL),
    kind: 'reference-library',
  },
  {
    method: 'chain.idlerLength',
    id: 'chain-idler-inside-hull',
    given: {
      ...{ pitch: '12.7 mm', teethDriver: 17, teethDriven: 40, centreDistance: '400 mm' },
      ...{ teethIdler: 13, idlerAlong: '180 mm', idlerAcross: '120 mm', idlerSide: 'inside' },
    },
    expect: {
      spanDriver: { value: '216.18427 mm', within: { abs: '0.01 mm' } },
      spanDriven: { value: '244.62280 mm', within: { abs: '0.01 mm' } },
      spanOther: { value: '397.30220 mm', within: { abs: '0.01 mm' } },
    },
    source: scipy(HULL),
    kind: 'reference-library',
    note: 'An idler inside pushes the chain outward, so that the chain is the hull of all three.',
  },
  armCentre(-18, 629.053994),
  armCentre(12, 626.236298),
  {
    method: 'suspension.chainTravel',
    id: 'suspension-travel-turned',
    given: {
      ...{ ...ARM, pitch: '15.875 mm', teethDriver: 15, teethDriven: 45, linksFitted: 110 },
      armAngles: ['-18 deg', '-8 deg', '0 deg', '12 deg'],
    },
    expect: {
      centres: {
        value: ['629.053994 mm', '630 mm', '629.394166 mm', '626.236298 mm'],
        within: { abs: '0.00001 mm' },
      },
    },
    source: scipy('scipy.spatial.transform.Rotation turns the axle about the pivot; distance by numpy.linalg.norm'),
    kind: 'reference-library',
  },
  armGap(-18, 35.74746, 57.2326),
  armGap(12, 67.47656, 24.9715),
  {
    method: 'clearance.capsules',
    id: 'clearance-skew-tubes',
    given: {
      ...{ fromA: [0, 0, 0], toA: [0.5, 0.1, 0.05], radiusA: '12 mm' },
      ...{ fromB: [0.2, -0.3, 0.2], toB: [0.35, 0.4, 0.12], radiusB: '10 mm' },
    },
    expect: { clearance: { value: '107.444731 mm', within: { abs: '0.00001 mm' } } },
    source: scipy(NEAREST),
    kind: 'reference-library',
  },
  {
    method: 'bevel.apex',
    id: 'bevel-apex-skew',
    given: {
      originDriver: ['0 mm', '0 mm', '0 mm'],
      originDriven: ['120 mm', '-40 mm', '7 mm'],
      directionDriver: [1, 0.2, 0],
      directionDriven: [0.3, 1, 0.1],
    },
    expect: {
      stationDriver: { value: '142.4189231 mm', within: { abs: '0.000001 mm' } },
      stationDriven: { value: '69.72349828 mm', within: { abs: '0.000001 mm' } },
      axisDistance: { value: '13.72795772 mm', within: { abs: '0.000001 mm' } },
      apex: { value: ['139.798434 mm', '27.20469799 mm', '6.82393736 mm'], within: { abs: '0.000001 mm' } },
    },
    source: numpy('numpy.linalg.lstsq for the nearest points of two lines'),
    kind: 'reference-library',
  },
  {
    method: 'coupling.resonance',
    id: 'coupling-resonance-eigenvalue',
    given: {
      ...{ stiffness: 1050, inertiaDriver: '0.03 kg.m2', inertiaLoad: '0.012 kg.m2', order: 0.5 },
      ...{ angularSpeed: '9453.3 rpm', damping: 1 },
    },
    expect: { naturalFrequency: { value: '55.70423008 Hz', within: { rel: 1e-8 } } },
    source: scipy('scipy.linalg.eigh of the stiffness and inertia of two masses on a spring'),
    kind: 'reference-library',
  },
];
