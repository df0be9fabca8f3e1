import { product } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'ratio.overall';

const inputs = {
  ratios: {
    form: 'list',
    kind: 'ratio',
    symbol: 'i',
    meaning: 'ratio of each stage, input speed over output speed',
    range: ABOVE_ZERO,
    atLeast: 1,
  },
} as const satisfies Params;

/**
 * Overall ratio of stages in a row.
 *
 * Errors: no stage, or a ratio not above zero.
 */
export const ratioOverall = defineMethod({
  id,
  gives: 'Overall ratio of stages in a row',
  inputs,
  outputs: {
    overall: { form: 'value', kind: 'ratio', symbol: 'i_t', meaning: 'first speed over last speed' },
  },
  results: ['overall'],
  steps: [{ key: 'overall', is: product('ratios'), says: 'Each stage divides the speed again.' }],
  sources: [{ title: 'Theory of Machines (Khurmi, Gupta)', at: 'example 13.1, compound train', how: 'read' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    let overall = 1;
    for (const ratio of input.ratios) overall *= ratio;
    return { overall };
  },
});
