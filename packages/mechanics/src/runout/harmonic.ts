import { add, div, fn, pow } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { leastSquares } from '../numerics/least-squares.ts';
import { refuseOutside } from '../numerics/refuse.ts';

const id = 'runout.harmonic';

const inputs = {
  angles: { form: 'list', kind: 'angle', symbol: 'α_i', meaning: 'marks on the part under the indicator', atLeast: 3 },
  readings: { form: 'list', kind: 'length', symbol: 'r_i', meaning: 'reading at each mark', atLeast: 3 },
  orders: {
    form: 'integer',
    symbol: 'H',
    meaning: 'highest order that is fitted',
    range: { min: 1, max: 30 },
    default: 1,
  },
  order: { form: 'integer', symbol: 'n', meaning: 'order that is given', range: { min: 1, max: 30 }, default: 1 },
} as const satisfies Params;

/**
 * One order of a section's form, fitted by least squares to readings at any angles.
 *
 * Errors: lists of different lengths, too few readings for the orders, marks that do not go round the part.
 */
export const harmonic = defineMethod({
  id,
  gives: 'Size and angle of one order of a section’s form: offset, ovality or lobes',
  inputs,
  outputs: {
    amplitude: {
      form: 'value',
      kind: 'length',
      symbol: 'c_n',
      meaning: 'amplitude of the order; of order 1 the offset',
    },
    high: {
      form: 'value',
      kind: 'angle',
      symbol: 'φ_n',
      meaning: 'angle where it stands furthest out, once in 360°/n',
    },
    cosine: { form: 'value', kind: 'length', symbol: 'a_n', meaning: 'cosine part' },
    sine: { form: 'value', kind: 'length', symbol: 'b_n', meaning: 'sine part' },
    mean: { form: 'value', kind: 'length', symbol: 'a_0', meaning: 'mean of the fitted curve' },
  },
  results: ['amplitude', 'high', 'mean'],
  steps: [
    {
      key: 'amplitude',
      is: fn('sqrt', add(pow('cosine', 2), pow('sine', 2))),
      says: 'Mean, cosine and sine parts of all orders leave the least sum of squares; this order’s two make its size.',
    },
    {
      key: 'high',
      is: div(fn('atan2', 'sine', 'cosine'), 'order'),
      says: 'Their direction, a whole turn being one lobe.',
    },
  ],
  sources: [{ title: 'BS 3730 / ISO 4291, least-squares mean line and its harmonics', how: 'memory' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { angles, readings, orders, order } = input;
    if (angles.length !== readings.length)
      throw new MethodError(
        id,
        'readings',
        `${readings.length} readings read for ${angles.length} marks; one for each is accepted.`,
      );
    if (order > orders)
      throw new MethodError(id, 'order', `order ${order} read; 1 to the highest fitted, ${orders}, is accepted.`);
    const fit = leastSquares(
      angles.map((angle) => [
        1,
        ...Array.from({ length: orders }, (_, k) => [Math.cos((k + 1) * angle), Math.sin((k + 1) * angle)]).flat(),
      ]),
      readings,
    );
    if (!fit)
      throw new MethodError(
        id,
        'angles',
        `${angles.length} marks cannot tell ${orders} orders apart; at least ${2 * orders + 1}, well spread round the part, are accepted.`,
      );
    const [cosine, sine] = [fit.values[2 * order - 1] as number, fit.values[2 * order] as number];
    return {
      amplitude: Math.hypot(cosine, sine),
      high: Math.atan2(sine, cosine) / order,
      cosine,
      sine,
      mean: fit.values[0] as number,
    };
  },
});
