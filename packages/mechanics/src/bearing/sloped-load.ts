import { add, branch, choose, div, fn, mul, when } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'bearing.slopedLoad';

const inputs = {
  radial: { form: 'value', kind: 'force', symbol: 'F_r', meaning: 'radial load', range: ABOVE_ZERO },
  axial: { form: 'value', kind: 'force', symbol: 'F_a', meaning: 'axial load', range: { min: 0 } },
  e: {
    form: 'value',
    kind: 'number',
    symbol: 'e',
    meaning: 'limit of the axial load over the radial load',
    range: ABOVE_ZERO,
  },
  x: { form: 'value', kind: 'number', symbol: 'X', meaning: 'radial factor beyond e', range: { min: 0, max: 1 } },
  y: { form: 'value', kind: 'number', symbol: 'Y', meaning: 'axial factor beyond e', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Equivalent dynamic load of a single-row angular contact or tapered bearing, whose contact slopes whatever the load.
 *
 * Errors: radial load or factors not above zero, axial load below zero.
 */
export const slopedLoad = defineMethod({
  id,
  gives: 'Equivalent dynamic load of an angular contact or tapered bearing under radial and axial load',
  inputs,
  outputs: {
    load: { form: 'value', kind: 'force', symbol: 'P', meaning: 'equivalent dynamic load' },
    part: { form: 'value', kind: 'number', symbol: 'q', meaning: 'axial load over radial load' },
  },
  results: ['load', 'part'],
  steps: [
    { key: 'part', is: div('axial', 'radial'), says: 'Up to e the axial load only evens out the rolling elements.' },
    {
      key: 'load',
      is: choose(
        [branch(when('part', '<=', 'e'), 'radial')],
        fn('max', 'radial', add(mul('x', 'radial'), mul('y', 'axial'))),
      ),
      says: 'Never below the radial load.',
    },
  ],
  sources: [
    { title: 'Ball and Roller Bearings, a maker’s catalogue', at: 'section 4.5, example 4', how: 'read' },
    { title: 'ISO 281:2007', at: 'tables of X and Y', how: 'memory' },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { radial, axial, e, x, y } = input;
    const part = axial / radial;
    return { load: part <= e ? radial : Math.max(radial, x * radial + y * axial), part };
  },
});
