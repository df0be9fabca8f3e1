import { add, div, fn, mul, pow, sub, sym } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';

const id = 'runout.fourPoint';

const inputs = {
  readings: {
    form: 'list',
    kind: 'length',
    symbol: 'R',
    meaning: 'readings at 0, 90, 180 and 270 degrees, plus when the surface stands further out',
    atLeast: 4,
  },
} as const satisfies Params;

/**
 * Offset of a section from four readings a quarter turn apart.
 *
 * Errors: not four readings.
 */
export const fourPoint = defineMethod({
  id,
  gives: 'Offset of a section and its high spot from four dial readings',
  inputs,
  outputs: {
    offset: { form: 'value', kind: 'length', symbol: 'e', meaning: 'offset, half the TIR of a round section' },
    high: { form: 'value', kind: 'angle', symbol: 'φ', meaning: 'angle of the high spot' },
    tir: { form: 'value', kind: 'length', symbol: 'T', meaning: 'TIR that this offset alone makes' },
    oval: { form: 'value', kind: 'length', symbol: 'o', meaning: 'opposite readings against each other; 0 when round' },
    x: { form: 'value', kind: 'length', symbol: 'a_1', meaning: 'offset towards 0 degrees' },
    y: { form: 'value', kind: 'length', symbol: 'b_1', meaning: 'offset towards 90 degrees' },
  },
  results: ['offset', 'high', 'tir', 'oval'],
  steps: [
    {
      key: 'x',
      is: div(sub(sym('readings', 0), sym('readings', 2)), 2),
      says: 'Half the difference of opposite readings.',
    },
    { key: 'y', is: div(sub(sym('readings', 1), sym('readings', 3)), 2), says: 'Likewise a quarter turn on.' },
    { key: 'offset', is: fn('sqrt', add(pow('x', 2), pow('y', 2))), says: 'Both together.' },
    { key: 'high', is: fn('atan2', 'y', 'x'), says: 'Where the section stands furthest out.' },
    { key: 'tir', is: mul(2, 'offset'), says: 'The dial swings by twice the offset.' },
    {
      key: 'oval',
      is: sub(add(sym('readings', 0), sym('readings', 2)), add(sym('readings', 1), sym('readings', 3))),
      says: 'Both sums are the same for a round section.',
    },
  ],
  sources: [{ title: 'BS 3730 / ISO 4291, least-squares mean line at four marks', how: 'memory' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    if (input.readings.length !== 4)
      throw new MethodError(id, 'readings', `${input.readings.length} readings read; four are accepted.`);
    const [a, b, c, d] = input.readings as readonly [number, number, number, number];
    const [x, y] = [(a - c) / 2, (b - d) / 2];
    const offset = Math.hypot(x, y);
    return { offset, high: Math.atan2(y, x), tir: 2 * offset, oval: a + c - (b + d), x, y };
  },
});
