import { add, div, fn, mul } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'bearing.staticSafety';

const inputs = {
  radial: { form: 'value', kind: 'force', symbol: 'F_r', meaning: 'radial load', range: { min: 0 } },
  axial: { form: 'value', kind: 'force', symbol: 'F_a', meaning: 'axial load', range: { min: 0 } },
  staticRating: { form: 'value', kind: 'force', symbol: 'C_0', meaning: 'static load rating', range: ABOVE_ZERO },
  x0: {
    form: 'value',
    kind: 'number',
    symbol: 'X_0',
    meaning: 'radial factor: 0.6 for deep groove, 0.5 for angular contact and tapered',
    range: { min: 0, max: 1 },
    default: 0.6,
  },
  y0: {
    form: 'value',
    kind: 'number',
    symbol: 'Y_0',
    meaning: 'axial factor: 0.5 for deep groove, else of the table',
    range: { min: 0, max: 5 },
    default: 0.5,
  },
} as const satisfies Params;

/**
 * Static safety of a bearing: its static rating over the static load, which never falls below the radial load.
 *
 * Errors: no load at all, a rating not above zero.
 */
export const staticSafety = defineMethod({
  id,
  gives: 'Static load of a rolling bearing, and its static rating over it',
  inputs,
  outputs: {
    reserve: { form: 'value', kind: 'number', symbol: 's_0', meaning: 'static rating over static load' },
    load: { form: 'value', kind: 'force', symbol: 'P_0', meaning: 'equivalent static load' },
  },
  results: ['reserve', 'load'],
  steps: [
    {
      key: 'load',
      is: fn('max', 'radial', add(mul('x0', 'radial'), mul('y0', 'axial'))),
      says: 'Never below the radial load.',
    },
    { key: 'reserve', is: div('staticRating', 'load'), says: 'Capacity over demand.' },
  ],
  sources: [{ title: 'ISO 76', at: 'by way of a maker’s catalogue of 2018, p. 254', how: 'read' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const load = Math.max(input.radial, input.x0 * input.radial + input.y0 * input.axial);
    if (!(load > 0))
      throw new MethodError(id, 'radial', 'Both loads are 0; a bearing without load has no static safety.');
    return { reserve: input.staticRating / load, load };
  },
});
