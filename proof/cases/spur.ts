import type { ProofCase } from './case.ts';
import { khurmi, shigley } from './sources.ts';

/** A single gear is printed; a mate of the same teeth stands in for the one that the source leaves out. */
const MATE = 'The source prints one gear only; the mate is given the same teeth and does not enter.';

export const SPUR_CASES: readonly ProofCase[] = [
  {
    method: 'spur.geometry',
    id: 'spur-diameter-shigley-14-1',
    given: { teethDriver: 22, teethDriven: 22, module: '4.233333333333333 mm' },
    expect: { pitchDiameterDriver: { value: '3.667 in', within: { rel: 0.002 } } },
    source: shigley('read', '8th', 'Problem 14-1, solution', 'zanotowane.pl/1128/9291'),
    kind: 'published-example',
    note: `Diametral pitch 6. ${MATE}`,
  },
  {
    method: 'spur.forces',
    id: 'spur-forces-shigley-14-1',
    given: { torque: '787.82 lbf.in', pitchDiameter: '3.667 in' },
    expect: { tangential: { value: '429.7 lbf', within: { rel: 0.002 } } },
    source: shigley('read', '8th', 'Problem 14-1, solution', 'zanotowane.pl/1128/9291'),
    kind: 'published-example',
    note: '15 hp at 1200 rpm.',
  },
  {
    method: 'spur.forces',
    id: 'spur-forces-shigley-14-3',
    given: { torque: '2.652582 N.m', pitchDiameter: '22.5 mm' },
    expect: { tangential: { value: '235.8 N', within: { rel: 0.002 } } },
    source: shigley('read', '8th', 'Problem 14-3, solution', 'zanotowane.pl/1128/9291'),
    kind: 'published-example',
    note: '0.5 kW at 1800 rpm, 18 teeth of module 1.25 mm.',
  },
  {
    method: 'spur.forces',
    id: 'spur-forces-shigley-14-6',
    given: { torque: '5.96831 N.m', pitchDiameter: '25.5 mm' },
    expect: { tangential: { value: '468 N', within: { rel: 0.005 } } },
    source: shigley('read', '8th', 'Problem 14-6, solution', 'zanotowane.pl/1128/9291'),
    kind: 'published-example',
    note: '250 W at 400 rpm, 17 teeth of module 1.5 mm.',
  },
  {
    method: 'spur.forces',
    id: 'spur-forces-shigley-14-4',
    given: { torque: '140.06 lbf.in', pitchDiameter: '1.7 in' },
    expect: { tangential: { value: '164.8 lbf', within: { rel: 0.006 } } },
    source: shigley('memory', '9th', 'Example 14-4'),
    kind: 'published-example',
    note: '4 hp at 1800 rpm, 17 teeth of diametral pitch 10.',
  },
  {
    method: 'spur.forces',
    id: 'spur-forces-shigley-13-31',
    given: { torque: '1120 lbf.in', pitchDiameter: '3.6 in', pressureAngle: '20 deg' },
    expect: {
      tangential: { value: '622 lbf', within: { rel: 0.003 } },
      radial: { value: '226 lbf', within: { rel: 0.003 } },
      whole: { value: '662 lbf', within: { rel: 0.003 } },
    },
    source: shigley('read', '8th', 'Problem 13-31, solution', 'coursehero.com/file/6628788'),
    kind: 'published-example',
  },
  {
    method: 'spur.forces',
    id: 'spur-forces-khurmi-12-1',
    given: { torque: '1762.947 N.m', pitchDiameter: '250 mm', pressureAngle: '20 deg' },
    expect: { whole: { value: '15.01 kN', within: { abs: '0.005 kN' } } },
    source: khurmi('Example 12.1, p. 393', 'ch12'),
    kind: 'published-example',
    note: '120 kW at 650 rpm.',
  },
  {
    method: 'spur.geometry',
    id: 'spur-centres-khurmi-13-3',
    given: { teethDriver: 36, teethDriven: 124, module: '2.5 mm' },
    expect: { centreDistance: { value: '200 mm', within: { abs: '0.000001 mm' } } },
    source: khurmi('Example 13.3, second pair of a reverted train', 'ch13'),
    kind: 'published-example',
  },
];
