import type { ProofCase } from './case.ts';
import { khurmi, mott } from './sources.ts';

/** Worked examples of joints, belts and bevel pairs beyond those that each family began with. */
export const LAYOUT_READ: readonly ProofCase[] = [
  {
    method: 'coupling.universalRipple',
    id: 'coupling-ripple-khurmi-9-2',
    given: { angle: '20 deg', angularSpeed: '1500 rpm', inertia: '0.12 kg.m2' },
    expect: { ripple: { value: '370 N.m', within: { rel: 0.005 } } },
    source: khurmi('Example 9.2, p. 251', 'ch9'),
    kind: 'published-example',
    note: 'Shafts at 160 degrees, 12 kg on a radius of 100 mm; 3080 rad/s² printed. The book takes 157 rad/s and an approximate place of the greatest acceleration.',
  },
  {
    method: 'coupling.universalPair',
    id: 'coupling-pair-khurmi-9-7',
    given: { angleFirst: '20 deg', angleSecond: '20 deg', phaseError: '90 deg' },
    expect: {
      highest: { value: 1.13248, within: { abs: 0.00001 } },
      lowest: { value: 0.883, within: { abs: 0.0001 } },
      unevennessMiddle: { value: 0.1245, within: { abs: 0.0002 } },
    },
    source: khurmi('Example 9.7, p. 254', 'ch9'),
    kind: 'published-example',
    note: 'The worst setting: the middle shaft’s forks a quarter turn out. Printed 566.24 and 441.5 rpm for 500 rpm, 532.1 and 469.85 between.',
  },
  {
    method: 'belt.centreDistance',
    id: 'belt-centres-at10',
    given: { pitch: '10 mm', teethDriver: 25, teethDriven: 25, beltTeeth: 150 },
    expect: { centreDistance: { value: '625 mm', within: { abs: '0.01 mm' } } },
    source: {
      title: 'A belt maker’s catalogue, T and AT profiles',
      at: 'calculation example, AT10',
      how: 'read',
      address: 'ArtemFilin1990/Mar, commit 7b871a5',
    },
    kind: 'published-example',
  },
  {
    method: 'ratio.trainPower',
    id: 'ratio-belts-khurmi-11-1',
    given: { torque: '1 N.m', angularSpeed: '150 rpm', ratios: [0.6, 0.16666666666666666], efficiencies: [1, 1] },
    expect: { angularSpeedOut: { value: '1500 rpm', within: { rel: 1e-9 } } },
    source: khurmi('Example 11.1, p. 333', 'ch11'),
    kind: 'published-example',
    note: 'Two belts in a row without slip: pulleys of 750 and 450 mm, then of 900 and 150 mm.',
  },
  {
    method: 'bevel.pitchAngles',
    id: 'bevel-angles-mott-8-6',
    given: { teethDriver: 16, teethDriven: 48, shaftAngle: '90 deg' },
    expect: {
      pitchAngleDriver: { value: '18.43 deg', within: { abs: '0.005 deg' } },
      pitchAngleDriven: { value: '71.57 deg', within: { abs: '0.005 deg' } },
    },
    source: mott('Example Problem 8-6, p. 337'),
    kind: 'published-example',
  },
];
