import { div, mul } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'chain.staticReserve';

const inputs = {
  pull: { form: 'value', kind: 'force', symbol: 'F', meaning: 'greatest pull', range: ABOVE_ZERO },
  minTensile: {
    form: 'value',
    kind: 'force',
    symbol: 'F_u',
    meaning: 'minimum tensile strength of one strand',
    range: ABOVE_ZERO,
  },
  strands: { form: 'integer', symbol: 'n_s', meaning: 'number of strands', range: { min: 1 } },
} as const satisfies Params;

/**
 * Reserve against the pull that a chain must not see even once: half its minimum tensile strength.
 *
 * Errors: pull or strength not above zero, strands that are no whole number of at least 1.
 */
export const chainStaticReserve = defineMethod({
  id,
  gives: 'Half the least tensile strength of a chain over its greatest pull',
  inputs,
  outputs: {
    reserve: { form: 'value', kind: 'number', symbol: 'n', meaning: 'reserve' },
    limit: { form: 'value', kind: 'force', symbol: 'F_l', meaning: 'pull never to be passed even once' },
  },
  results: ['reserve', 'limit'],
  steps: [
    {
      key: 'limit',
      is: div(mul('minTensile', 'strands'), 2),
      says: 'Half the least tensile strength; strength grows with the strands.',
    },
    { key: 'reserve', is: div('limit', 'pull'), says: 'Capacity over demand.' },
  ],
  sources: [
    {
      title: 'A chain maker’s technical engineering guide',
      at: 'service pull up to a sixth of the tensile strength; never above half of it, even once',
      how: 'read',
    },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const limit = (input.minTensile * input.strands) / 2;
    return { reserve: limit / input.pull, limit };
  },
});
