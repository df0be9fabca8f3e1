import type { ProofCase } from './case.ts';
import { constructed, khurmi, shigley } from './sources.ts';

export const RATIO_CASES: readonly ProofCase[] = [
  {
    method: 'ratio.trainPower',
    id: 'ratio-train-khurmi-13-1',
    given: { torque: '1 N.m', angularSpeed: '975 rpm', ratios: [2.5, 3, 2.5], efficiencies: [1, 1, 1] },
    expect: { angularSpeedOut: { value: '52 rpm', within: { rel: 0.001 } } },
    source: khurmi('Example 13.1', 'ch13'),
    kind: 'published-example',
    note: 'Pairs of 20/50, 25/75 and 26/65 teeth.',
  },
  {
    method: 'ratio.overall',
    id: 'ratio-overall-shigley-13-4',
    given: { ratios: [6, 5] },
    expect: { overall: { value: 30, within: { abs: 0 } } },
    source: shigley('memory', '9th', 'Example 13-4, exact 30 to 1'),
    kind: 'published-example',
  },
  {
    method: 'ratio.stage',
    id: 'ratio-stage-shigley-13-4',
    given: { teethDriver: 16, teethDriven: 96 },
    expect: { ratio: { value: 6, within: { abs: 0 } } },
    source: shigley('memory', '9th', 'Example 13-4, exact 30 to 1'),
    kind: 'published-example',
  },
  {
    method: 'ratio.stage',
    id: 'ratio-stage-khurmi-11-23',
    given: { teethDriver: 20, teethDriven: 40 },
    expect: { ratio: { value: 2, within: { abs: 0 } } },
    source: khurmi('Example 11.23, p. 376: 240 rpm to 120 rpm', 'ch11'),
    kind: 'published-example',
  },
  {
    method: 'ratio.trainPower',
    id: 'ratio-train-four-stages',
    given: {
      torque: '80.9 N.m',
      angularSpeed: '3000 rpm',
      ratios: [1.8, 2.6, 2.4, 1.5],
      efficiencies: ['98 %', '98 %', '97 %', '96 %'],
    },
    expect: {
      torques: { value: ['80.9 N.m', '142.71 N.m', '363.62 N.m', '846.5 N.m', '1219.0 N.m'], within: { rel: 0.0005 } },
    },
    source: constructed('Own computation: torque times ratio times efficiency, stage by stage'),
    kind: 'constructed',
  },
];
