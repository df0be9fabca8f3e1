import { div, fn, mul, num, sub } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'plate.leftAcross';

const inputs = {
  across: {
    form: 'value',
    kind: 'force',
    symbol: 'P',
    meaning: 'load in its plane that it bears alone',
    range: ABOVE_ZERO,
  },
  along: {
    form: 'value',
    kind: 'force',
    symbol: 'F',
    meaning: 'push square to it that it bears alone',
    range: ABOVE_ZERO,
  },
  push: { form: 'value', kind: 'force', symbol: 'F_a', meaning: 'push square to it', range: { min: 0 } },
} as const satisfies Params;

/**
 * Load in its plane that a plate still bears while a push square to it bends it.
 *
 * Errors: a strength not above zero, a push below zero.
 */
export const plateLeftAcross = defineMethod({
  id,
  gives: 'Load in its plane that a plate still bears while a push bends it',
  inputs,
  outputs: { left: { form: 'value', kind: 'force', symbol: 'P_r', meaning: 'load in its plane that it still bears' } },
  results: ['left'],
  steps: [
    {
      key: 'left',
      is: mul('across', fn('max', sub(num(1), div('push', 'along')), num(0))),
      says: 'Each takes its part of the plate, and the parts add up to one at most.',
    },
  ],
  sources: [{ title: 'Straight line between two loads that each spoil a part alone', how: 'common practice' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    return { left: input.across * Math.max(1 - input.push / input.along, 0) };
  },
});
