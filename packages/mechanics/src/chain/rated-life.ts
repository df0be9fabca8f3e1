import { div, mul, pow } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'chain.ratedLife';

const inputs = {
  rating: { form: 'value', kind: 'power', symbol: 'P_r', meaning: 'rated power', range: ABOVE_ZERO },
  ratedTime: {
    form: 'value',
    kind: 'time',
    symbol: 't_r',
    meaning: 'time that the rating stands for',
    range: ABOVE_ZERO,
    default: 15000 * 3600,
  },
  time: { form: 'value', kind: 'time', symbol: 't', meaning: 'time that is wanted', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Power that rollers and bushes of a chain carry over another time than that of the rating, same speed, teeth and length.
 *
 * Errors: any input not above zero.
 */
export const chainRatedLife = defineMethod({
  id,
  gives: 'Power that rollers and bushes of a chain carry over another time than the rating’s',
  inputs,
  outputs: { power: { form: 'value', kind: 'power', symbol: 'P', meaning: 'power over that time' } },
  results: ['power'],
  steps: [
    {
      key: 'power',
      is: mul('rating', pow(div('ratedTime', 'time'), div(1, 2.5))),
      says: 'Power to the 2.5 times the time stays the same.',
    },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      at: 'chapter 17, above the crossover; solution of Problem 17-26',
      how: 'read',
    },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    return { power: input.rating * (input.ratedTime / input.time) ** (1 / 2.5) };
  },
});
