import { div, fn, mul } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'torsion.isolation';

const inputs = {
  forced: { form: 'value', kind: 'frequency', symbol: 'f', meaning: 'how often it is shaken', range: ABOVE_ZERO },
  natural: { form: 'value', kind: 'frequency', symbol: 'f_1', meaning: 'natural frequency', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Reserve of a drive against being shaken near its natural frequency: above √2 times that, shaking is passed on weaker than it comes.
 *
 * Errors: a frequency not above zero.
 */
export const isolation = defineMethod({
  id,
  gives: 'Reserve against being shaken near a natural frequency',
  inputs,
  outputs: {
    reserve: { form: 'value', kind: 'number', symbol: 'S', meaning: 'reserve' },
    least: { form: 'value', kind: 'frequency', symbol: 'f_{min}', meaning: 'least frequency that is not amplified' },
  },
  results: ['reserve'],
  steps: [
    { key: 'least', is: mul(fn('sqrt', 2), 'natural'), says: 'Below it the swing grows, above it the masses lag.' },
    { key: 'reserve', is: div('forced', 'least'), says: 'How often it is shaken, over that.' },
  ],
  sources: [
    {
      title: 'S. S. Rao, Mechanical Vibrations',
      edition: '5th',
      at: 'transmissibility: below one above √2',
      how: 'memory',
    },
  ],
  holds: ['Any damping.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const least = Math.SQRT2 * input.natural;
    return { reserve: input.forced / least, least };
  },
});
