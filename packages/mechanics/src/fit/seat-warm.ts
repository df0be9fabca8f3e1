import { add, div, mul, sub } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'fit.seatWarm';

const growth = (symbol: string, meaning: string) =>
  ({ form: 'value', kind: 'number', symbol, meaning, range: { min: 0, max: 1e-4 } }) as const;

const inputs = {
  play: { form: 'value', kind: 'length', symbol: 's', meaning: 'play in the shop; below zero it is tight' },
  diameter: { form: 'value', kind: 'length', symbol: 'd', meaning: 'diameter of the seat', range: ABOVE_ZERO },
  outerGrowth: growth('α_o', 'growth per degree of what lies outside'),
  innerGrowth: growth('α_i', 'growth per degree of what lies inside'),
  shop: {
    form: 'value',
    kind: 'temperature',
    symbol: 'T_0',
    meaning: 'temperature that it was measured at',
    range: ABOVE_ZERO,
    default: 293.15,
  },
  at: { form: 'value', kind: 'temperature', symbol: 'T', meaning: 'temperature of both at work', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Play of a seat when both parts are warm or cold. Below zero it is tight.
 *
 * Errors: a diameter or temperature not above zero, growth out of range.
 */
export const seatWarm = defineMethod({
  id,
  gives: 'Play of a seat of two metals when it is warm or cold',
  inputs,
  outputs: {
    warm: { form: 'value', kind: 'length', symbol: 's_T', meaning: 'play at that temperature' },
    change: { form: 'value', kind: 'length', symbol: 'Δs', meaning: 'what the temperature adds' },
    degree: { form: 'value', kind: 'temperatureDifference', symbol: 'u_T', meaning: 'one degree' },
  },
  results: ['warm', 'change'],
  steps: [
    {
      key: 'change',
      is: mul(sub('outerGrowth', 'innerGrowth'), 'diameter', div(sub('at', 'shop'), 'degree')),
      says: 'What lies outside grows away from what lies inside.',
    },
    { key: 'warm', is: add('play', 'change'), says: 'On top of the play in the shop.' },
  ],
  sources: [{ title: 'Linear thermal expansion', how: 'common practice' }],
  holds: ['Both parts are equally warm.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const degree = 1;
    const change = (input.outerGrowth - input.innerGrowth) * input.diameter * ((input.at - input.shop) / degree);
    return { warm: input.play + change, change, degree };
  },
});
