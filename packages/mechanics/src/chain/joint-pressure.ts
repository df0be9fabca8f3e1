import { div, mul } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'chain.jointPressure';

const inputs = {
  pull: { form: 'value', kind: 'force', symbol: 'F', meaning: 'pull of the tight span', range: { min: 0 } },
  bearingArea: {
    form: 'value',
    kind: 'area',
    symbol: 'A',
    meaning: 'bearing area of a joint of one strand: pin diameter times bush length',
    range: ABOVE_ZERO,
  },
  strands: { form: 'integer', symbol: 'n_s', meaning: 'number of strands', range: { min: 1 }, default: 1 },
} as const satisfies Params;

/**
 * Pressure between pin and bush, which is what wears a chain longer.
 *
 * Errors: a pull below zero, an area not above zero, strands that are no whole number of at least 1.
 */
export const chainJointPressure = defineMethod({
  id,
  gives: 'Pressure between pins and bushes of a chain',
  inputs,
  outputs: { pressure: { form: 'value', kind: 'pressure', symbol: 'p_r', meaning: 'pressure in the joint' } },
  results: ['pressure'],
  steps: [{ key: 'pressure', is: div('pull', mul('bearingArea', 'strands')), says: 'Pull over bearing area.' }],
  sources: [{ title: 'ISO 10823:2004', at: 'bearing area of a joint', how: 'memory' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    return { pressure: input.pull / (input.bearingArea * input.strands) };
  },
});
