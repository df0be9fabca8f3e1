import { add, div, fn, mul, num, sub } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'plate.strength';

const alone = (symbol: string, meaning: string) =>
  ({ form: 'value', kind: 'force', symbol, meaning, range: ABOVE_ZERO }) as const;

const inputs = {
  lengthwise: alone('P_l', 'load along the strip that the plate bears alone'),
  crosswise: alone('P_q', 'load across the strip, in its plane, that it bears alone'),
  square: alone('F_s', 'push square to the plate that it bears alone'),
  angle: {
    form: 'value',
    kind: 'angle',
    symbol: 'θ',
    meaning: 'angle of the load to the strip',
    range: { min: 0, max: Math.PI / 2 },
  },
  push: { form: 'value', kind: 'force', symbol: 'F_a', meaning: 'push square to the plate', range: { min: 0 } },
} as const satisfies Params;

/**
 * Load in its plane that a plate bears in a direction, while a push square to it bends it.
 *
 * Errors: a strength not above zero, an angle outside 0 to 90°, a push below zero.
 */
export const plateStrength = defineMethod({
  id,
  gives: 'Load in its plane that a plate around a bearing bears in a direction, while a push bends it',
  inputs,
  outputs: {
    force: { form: 'value', kind: 'force', symbol: 'P', meaning: 'load in its plane that it bears beside the push' },
    inPlane: { form: 'value', kind: 'force', symbol: 'P_θ', meaning: 'load in its plane that it bears without a push' },
  },
  results: ['force', 'inPlane'],
  steps: [
    {
      key: 'inPlane',
      is: div(1, add(div(fn('cos', 'angle'), 'lengthwise'), div(fn('sin', 'angle'), 'crosswise'))),
      says: 'Both parts of the load take their part of the plate.',
    },
    {
      key: 'force',
      is: mul('inPlane', fn('max', sub(num(1), div('push', 'square')), num(0))),
      says: 'So does the push; all parts together make one at most.',
    },
  ],
  sources: [{ title: 'Straight line between loads that each spoil a part alone', how: 'common practice' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { lengthwise, crosswise, square, angle, push } = input;
    const inPlane = 1 / (Math.cos(angle) / lengthwise + Math.sin(angle) / crosswise);
    return { force: inPlane * Math.max(1 - push / square, 0), inPlane };
  },
});
