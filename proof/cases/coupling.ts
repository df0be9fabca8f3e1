import type { ProofCase } from './case.ts';
import { khurmi } from './sources.ts';

export const COUPLING_CASES: readonly ProofCase[] = [
  {
    method: 'coupling.universalRatio',
    id: 'coupling-speeds-1200',
    given: { angle: '16.423 deg' },
    expect: {
      highest: { value: 1.0425, within: { abs: 0.0005 } },
      lowest: { value: 0.9591667, within: { abs: 0.0005 } },
    },
    source: {
      title: 'Theory-of-machines problem on a Hooke joint, stored solution',
      at: '1200 rpm, fluctuation 100 rpm',
      how: 'read',
      address: 'askfilo.com/user-question-answers-smart-solutions',
    },
    kind: 'published-example',
    note: 'Printed 1251 and 1151 rpm. The angle is printed as 16.2 degrees, which its own speeds contradict; 16.42 is right.',
  },
  {
    method: 'coupling.universalRatio',
    id: 'coupling-ratio-30-degrees',
    given: { angle: '30 deg' },
    expect: {
      highest: { value: 1.1547, within: { abs: 0.0001 } },
      lowest: { value: 0.86603, within: { abs: 0.0001 } },
    },
    source: { title: 'Question and answer on a Cardan joint at 30 degrees', at: 'stored answer', how: 'read' },
    kind: 'published-example',
  },
  {
    method: 'coupling.universalRatio',
    id: 'coupling-equal-speed-khurmi-9-3',
    given: { angle: '18 deg' },
    expect: { equalTurn: { value: '44.3 deg', within: { abs: '0.05 deg' } } },
    source: {
      title: 'Theory of Machines (R. S. Khurmi, J. K. Gupta)',
      at: 'Example 9.3: greatest at 0 degrees, equal at 44.3 degrees',
      how: 'memory',
    },
    kind: 'published-example',
    note: 'Counted from the turn with the greatest speed, cos θ = √((1 − cos α)/sin² α). A stored copy takes the cosine of that root, not its arc, and prints 43.2.',
  },
  {
    method: 'coupling.universalRatio',
    id: 'coupling-unevenness-khurmi-9-4',
    given: { angle: '19.64 deg' },
    expect: { unevenness: { value: '12 %', within: { abs: '0.01 %' } } },
    source: khurmi('Example 9.4, p. 252', 'ch9'),
    kind: 'published-example',
    note: 'The book goes from 12 % to 19.64 degrees; its rounding is worth 0.01 %.',
  },
  {
    method: 'coupling.universalRatio',
    id: 'coupling-unevenness-khurmi-9-6',
    given: { angle: '18.0 deg' },
    expect: { unevenness: { value: '10 %', within: { abs: '0.06 %' } } },
    source: khurmi('Example 9.6, p. 253', 'ch9'),
    kind: 'published-example',
    note: 'The book goes from 24 rpm in 240 rpm to 18.0 degrees; its rounding is worth 0.06 %.',
  },
  {
    method: 'coupling.universalRatio',
    id: 'coupling-speeds-khurmi-9-7',
    given: { angle: '20 deg' },
    expect: {
      highest: { value: 1.0642, within: { abs: 0.0001 } },
      lowest: { value: 0.9397, within: { abs: 0.00001 } },
    },
    source: khurmi('Example 9.7, p. 254', 'ch9'),
    kind: 'published-example',
    note: 'Printed 532.1 and 469.85 rpm for 500 rpm.',
  },
];
