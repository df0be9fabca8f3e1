import { add, div, fn, mul, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'plate.web';

const length = (symbol: string, meaning: string) =>
  ({ form: 'value', kind: 'length', symbol, meaning, range: ABOVE_ZERO }) as const;

const inputs = {
  width: length('b', 'width of the plate across the hole'),
  hole: length('D', 'hole'),
  thickness: length('t', 'thickness of one sheet'),
  times: {
    form: 'value',
    kind: 'number',
    symbol: 'k',
    meaning: 'thicknesses that must stand beside a hole: plasma 1.5, laser 1',
    range: { min: 0, max: 10 },
  },
  floor: {
    form: 'value',
    kind: 'length',
    symbol: 'w_0',
    meaning: 'least that may stand beside a hole, however thin the sheet',
    range: { min: 0 },
    default: 0,
  },
} as const satisfies Params;

/**
 * Web that stands beside a hole in the middle of a plate, and the least by the rule of a cutting process.
 *
 * Errors: sizes not above zero, a hole as wide as the plate.
 */
export const plateWeb = defineMethod({
  id,
  gives: 'Web beside a hole in a plate, the least that a cutting process leaves sound, and the width for it',
  inputs,
  outputs: {
    web: { form: 'value', kind: 'length', symbol: 'w', meaning: 'web on each side of the hole' },
    least: { form: 'value', kind: 'length', symbol: 'w_min', meaning: 'least web by the rule' },
    leastWidth: { form: 'value', kind: 'length', symbol: 'b_min', meaning: 'least width of the plate for this hole' },
    largestHole: { form: 'value', kind: 'length', symbol: 'D_max', meaning: 'largest hole for this plate' },
  },
  results: ['web', 'least', 'leastWidth', 'largestHole'],
  steps: [
    { key: 'web', is: div(sub('width', 'hole'), 2), says: 'The hole stands in the middle.' },
    { key: 'least', is: fn('max', mul('times', 'thickness'), 'floor'), says: 'A thinner web burns through or warps.' },
    { key: 'leastWidth', is: add('hole', mul(2, 'least')), says: 'With that web on both sides.' },
    { key: 'largestHole', is: sub('width', mul(2, 'least')), says: 'With that web on both sides.' },
  ],
  sources: [{ title: 'Design rules of cutting shops: plasma 1.5 thicknesses, laser 1', how: 'read' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { width, hole, thickness, times, floor } = input;
    if (!(width > hole))
      throw new MethodError(id, 'hole', 'The hole is as wide as the plate; some width must be left.');
    const least = Math.max(times * thickness, floor);
    return { web: (width - hole) / 2, least, leastWidth: hole + 2 * least, largestHole: width - 2 * least };
  },
});
