import { mul } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';

const id = 'joint.boltSlip';

const inputs = {
  preload: { form: 'value', kind: 'force', symbol: 'F', meaning: 'least preload of a bolt', range: { min: 0 } },
  bolts: { form: 'integer', symbol: 'n', meaning: 'bolts', range: { min: 1, max: 100 } },
  planes: { form: 'integer', symbol: 'i', meaning: 'faces that rub', range: { min: 1, max: 2 }, default: 1 },
  friction: {
    form: 'value',
    kind: 'number',
    symbol: 'μ',
    meaning: 'friction: 0.15 oiled or painted, 0.35 blasted',
    range: { min: 0.03, max: 0.6 },
    default: 0.15,
  },
} as const satisfies Params;

/**
 * Push at which a clamped joint slips.
 *
 * Errors: a preload below zero, friction outside 0.03 to 0.6.
 */
export const boltSlip = defineMethod({
  id,
  gives: 'Push at which a joint clamped by bolts slips',
  inputs,
  outputs: { push: { form: 'value', kind: 'force', symbol: 'F_s', meaning: 'push at which it slips' } },
  results: ['push'],
  steps: [{ key: 'push', is: mul('friction', 'preload', 'bolts', 'planes'), says: 'Friction on every face.' }],
  sources: [{ title: 'Coulomb friction; values of texts of machine design', how: 'memory' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    return { push: input.friction * input.preload * input.bolts * input.planes };
  },
});
