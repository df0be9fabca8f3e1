import { add, div, fn, mul, pow, sub } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';

const id = 'coupling.universalPair';

const ANGLE_RANGE = { min: 0, max: (80 * Math.PI) / 180 } as const;

const inputs = {
  angleFirst: { form: 'value', kind: 'angle', symbol: 'β_1', meaning: 'angle of the first joint', range: ANGLE_RANGE },
  angleSecond: {
    form: 'value',
    kind: 'angle',
    symbol: 'β_2',
    meaning: 'angle of the second joint',
    range: ANGLE_RANGE,
  },
  phaseError: {
    form: 'value',
    kind: 'angle',
    symbol: 'ε',
    meaning:
      'turn of the middle shaft between its one fork lying in the plane of the first joint and its other fork lying in that of the second: ' +
      '0 is right, 90 degrees the worst; forks out of line and joint planes out of line both count',
    range: { min: -Math.PI / 2, max: Math.PI / 2 },
    default: 0,
  },
} as const satisfies Params;

/**
 * What two universal joints with a middle shaft leave of each other's unevenness, exactly, as the angle of the one joint that would do the same.
 *
 * Each joint maps the direction of a turn linearly; both together are again such a map, and its greatest and least stretch give the speeds.
 *
 * Errors: joint angle outside 0..80 degrees, phase error outside −90..90 degrees.
 */
export const universalPair = defineMethod({
  id,
  gives: 'Unevenness left by two universal joints, with the residual angle, and that of the middle shaft',
  inputs,
  outputs: {
    residualAngle: {
      form: 'value',
      kind: 'angle',
      symbol: 'β_r',
      meaning: 'angle of one joint that would turn the output as unevenly',
    },
    residualBySquares: {
      form: 'value',
      kind: 'angle',
      symbol: 'β_s',
      meaning: 'the same by the rule of squares for small angles',
    },
    unevenness: {
      form: 'value',
      kind: 'fraction',
      symbol: 'U',
      meaning: 'highest less lowest speed of the output, over the speed in',
    },
    highest: { form: 'value', kind: 'ratio', symbol: 'r_h', meaning: 'highest speed out over speed in' },
    lowest: { form: 'value', kind: 'ratio', symbol: 'r_l', meaning: 'lowest speed out over speed in' },
    unevennessMiddle: {
      form: 'value',
      kind: 'fraction',
      symbol: 'U_m',
      meaning: 'highest less lowest speed of the middle shaft, over the speed in',
    },
    stretch: {
      form: 'value',
      kind: 'number',
      symbol: 'g',
      meaning: 'how far both joints together are from turning evenly',
    },
  },
  results: ['residualAngle', 'residualBySquares', 'unevenness', 'highest', 'lowest', 'unevennessMiddle'],
  steps: [
    {
      key: 'stretch',
      is: div(
        add(
          pow(mul(fn('cos', 'phaseError'), sub(fn('cos', 'angleFirst'), fn('cos', 'angleSecond'))), 2),
          pow(mul(fn('sin', 'phaseError'), sub(1, mul(fn('cos', 'angleFirst'), fn('cos', 'angleSecond')))), 2),
        ),
        mul(fn('cos', 'angleFirst'), fn('cos', 'angleSecond')),
      ),
      says: 'Highest and lowest speed added, less 2: equal angles in right phase leave nothing.',
    },
    {
      key: 'unevenness',
      is: fn('sqrt', mul('stretch', add('stretch', 4))),
      says: 'Highest less lowest; their product is 1.',
    },
    { key: 'highest', is: add(1, div(add('stretch', 'unevenness'), 2)), says: 'Half of sum and difference.' },
    { key: 'lowest', is: div(1, 'highest'), says: 'A quarter turn later.' },
    {
      key: 'residualAngle',
      is: mul(2, fn('atan', fn('sqrt', div(sub('highest', 1), add('highest', 1))))),
      says: 'One joint at this angle has the same highest speed, 1/cos β.',
    },
    {
      key: 'residualBySquares',
      is: pow(
        add(
          pow(sub(pow('angleFirst', 2), pow('angleSecond', 2)), 2),
          pow(mul(2, 'angleFirst', 'angleSecond', fn('sin', 'phaseError')), 2),
        ),
        div(1, 4),
      ),
      says: 'Squares of the angles, set against each other at twice the phase error; for comparison.',
    },
    {
      key: 'unevennessMiddle',
      is: sub(div(1, fn('cos', 'angleFirst')), fn('cos', 'angleFirst')),
      says: 'The middle shaft has the first joint’s whole unevenness in any case.',
    },
  ],
  sources: [
    { title: 'Product of the linear maps of two universal joints', how: 'derived' },
    { title: 'Theory of machines, double Hooke’s joint: equal angles, inner forks in one plane', how: 'read' },
    { title: 'Residual angle of at most about 3 degrees, vehicle driveline practice', how: 'memory' },
  ],
  holds: ['Rigid shafts. The couples on the bearings remain even where the speed is even.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { angleFirst, angleSecond, phaseError } = input;
    const [one, two] = [Math.cos(angleFirst), Math.cos(angleSecond)];
    const right = (Math.cos(phaseError) * (one - two)) ** 2;
    const wrong = (Math.sin(phaseError) * (1 - one * two)) ** 2;
    const stretch = (right + wrong) / (one * two);
    const unevenness = Math.sqrt(stretch * (stretch + 4));
    const highest = 1 + (stretch + unevenness) / 2;
    const apart = (angleFirst ** 2 - angleSecond ** 2) ** 2;
    return {
      residualAngle: 2 * Math.atan(Math.sqrt((highest - 1) / (highest + 1))),
      residualBySquares: (apart + (2 * angleFirst * angleSecond * Math.sin(phaseError)) ** 2) ** 0.25,
      unevenness,
      highest,
      lowest: 1 / highest,
      unevennessMiddle: 1 / one - one,
      stretch,
    };
  },
});
