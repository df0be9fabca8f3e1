import { add, div, mul, sum } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';

const id = 'joint.boltTension';

const inputs = {
  heights: {
    form: 'list',
    kind: 'length',
    symbol: 'y_k',
    meaning: 'heights of the bolts over the edge about which the joint tilts',
    range: { min: 0 },
    atLeast: 1,
  },
  pull: {
    form: 'value',
    kind: 'force',
    symbol: 'P',
    meaning: 'pull through the centre of the bolts',
    range: { min: 0 },
  },
  moment: { form: 'value', kind: 'torque', symbol: 'M', meaning: 'moment that tilts it', range: { min: 0 } },
} as const satisfies Params;

/**
 * Pull on the hardest loaded bolt of a flange or bracket that a moment tilts about its edge.
 *
 * Errors: a height below zero; a moment on bolts that all sit at the edge.
 */
export const boltTension = defineMethod({
  id,
  gives: 'Pull on the bolts of a flange under a tilting moment',
  inputs,
  outputs: {
    greatest: { form: 'value', kind: 'force', symbol: 'F', meaning: 'greatest pull on one bolt' },
    bolts: { form: 'integer', symbol: 'n', meaning: 'bolts' },
    farthest: { form: 'value', kind: 'length', symbol: 'y', meaning: 'height of the farthest bolt' },
    squares: { form: 'list', kind: 'area', symbol: 'y_k²', meaning: 'heights squared' },
    even: { form: 'value', kind: 'force', symbol: 'F_P', meaning: 'share of the pull' },
    tilt: { form: 'value', kind: 'force', symbol: 'F_M', meaning: 'pull from tilting' },
  },
  results: ['greatest'],
  steps: [
    { key: 'even', is: div('pull', 'bolts'), says: 'Shared evenly.' },
    {
      key: 'tilt',
      is: div(mul('moment', 'farthest'), sum('squares')),
      says: 'A stiff flange tilts about its edge; each bolt pulls by its height.',
    },
    { key: 'greatest', is: add('even', 'tilt'), says: 'Both.' },
  ],
  sources: [
    {
      title: 'Texts of machine design on brackets: V. B. Bhandari, R. S. Khurmi',
      at: 'bolts under eccentric load perpendicular to their axes',
      how: 'memory',
    },
  ],
  holds: ['The flange is stiff, and tilts about its edge; preload comes on top of it.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { heights, pull, moment } = input;
    const squares = heights.map((height) => height ** 2);
    const all = squares.reduce((total, one) => total + one, 0);
    if (all === 0 && moment > 0)
      throw new MethodError(id, 'heights', 'All bolts sit at the edge and cannot take a moment.');
    const farthest = Math.max(...heights);
    const even = pull / heights.length;
    const tilt = all === 0 ? 0 : (moment * farthest) / all;
    return { greatest: even + tilt, bolts: heights.length, farthest, squares, even, tilt };
  },
});
