import { div, fn, mul, num, pow, sub } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';

const id = 'coupling.universalRatio';

const inputs = {
  angle: {
    form: 'value',
    kind: 'angle',
    symbol: 'β',
    meaning: 'angle between the two shafts of the joint',
    range: { min: 0, max: (80 * Math.PI) / 180 },
  },
  turn: {
    form: 'value',
    kind: 'angle',
    symbol: 'θ',
    meaning: 'turn of the driving shaft since its fork lay in the plane of both shafts',
    default: 0,
  },
} as const satisfies Params;

/**
 * How unevenly a universal joint turns its driven shaft.
 *
 * Errors: angle outside 0..80 degrees, turn not finite.
 */
export const universalRatio = defineMethod({
  id,
  gives: 'Speed of the driven shaft of a universal joint over that of the driving shaft, and its unevenness',
  inputs,
  outputs: {
    highest: { form: 'value', kind: 'ratio', symbol: 'r_h', meaning: 'highest speed out over speed in' },
    lowest: { form: 'value', kind: 'ratio', symbol: 'r_l', meaning: 'lowest speed out over speed in' },
    unevenness: { form: 'value', kind: 'fraction', symbol: 'U', meaning: 'highest less lowest, over the speed in' },
    ratioAtTurn: { form: 'value', kind: 'ratio', symbol: 'r', meaning: 'speed out over speed in at this turn' },
    equalTurn: { form: 'value', kind: 'angle', symbol: 'θ_e', meaning: 'turn at which both shafts run equally fast' },
  },
  results: ['highest', 'lowest', 'unevenness', 'ratioAtTurn', 'equalTurn'],
  steps: [
    { key: 'highest', is: div(1, fn('cos', 'angle')), says: 'With the driving fork in the plane of both shafts.' },
    { key: 'lowest', is: fn('cos', 'angle'), says: 'A quarter turn later.' },
    { key: 'unevenness', is: sub('highest', 'lowest'), says: 'Twice in every turn.' },
    {
      key: 'ratioAtTurn',
      is: div(fn('cos', 'angle'), sub(1, mul(pow(fn('sin', 'angle'), num(2)), pow(fn('cos', 'turn'), num(2))))),
      says: 'In between.',
    },
    { key: 'equalTurn', is: fn('atan', fn('sqrt', fn('cos', 'angle'))), says: 'Where the ratio is one.' },
  ],
  sources: [
    {
      title: 'Theory of machines, Hooke’s joint: speed ratio and its extremes',
      at: 'solved examination problems',
      how: 'read',
    },
  ],
  holds: [
    'One joint, rigid shafts. The turn counts from the driving fork lying in the plane of both shafts; books use either zero.',
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const lowest = Math.cos(input.angle);
    const highest = 1 / lowest;
    return {
      highest,
      lowest,
      unevenness: highest - lowest,
      ratioAtTurn: lowest / (1 - Math.sin(input.angle) ** 2 * Math.cos(input.turn) ** 2),
      equalTurn: Math.atan(Math.sqrt(lowest)),
    };
  },
});
