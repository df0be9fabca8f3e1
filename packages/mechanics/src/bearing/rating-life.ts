import { div, mul, num, PI, pow } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'bearing.ratingLife';

const inputs = {
  rating: { form: 'value', kind: 'force', symbol: 'C', meaning: 'dynamic load rating', range: ABOVE_ZERO },
  load: { form: 'value', kind: 'force', symbol: 'P', meaning: 'equivalent dynamic load', range: ABOVE_ZERO },
  speed: { form: 'value', kind: 'angularSpeed', symbol: 'ω', meaning: 'speed of rotation', range: ABOVE_ZERO },
  exponent: {
    form: 'value',
    kind: 'number',
    symbol: 'p',
    meaning: 'exponent: 3 for balls, 10/3 for rollers',
    range: { min: 3, max: 3.5 },
    default: 3,
  },
  reliabilityFactor: {
    form: 'value',
    kind: 'number',
    symbol: 'a_1',
    meaning: 'factor of the reliability wanted, 1 for 90 %',
    range: { min: 0.01, max: 1 },
    default: 1,
  },
  conditionFactor: {
    form: 'value',
    kind: 'number',
    symbol: 'a_I',
    meaning: 'factor of lubrication and dirt',
    range: { min: 0.1, max: 50 },
    default: 1,
  },
} as const satisfies Params;

/**
 * Life that nine bearings of ten reach, or as many as the reliability factor says.
 *
 * Errors: rating, load or speed not above zero. Over half the rating the formula is no longer valid; callers must say so.
 */
export const ratingLife = defineMethod({
  id,
  gives: 'Rating life of a rolling bearing in turns and hours',
  inputs,
  outputs: {
    turns: { form: 'value', kind: 'number', symbol: 'L', meaning: 'life in turns' },
    time: { form: 'value', kind: 'time', symbol: 't', meaning: 'life at this speed' },
    basic: { form: 'value', kind: 'number', symbol: 'L_10', meaning: 'basic rating life in turns' },
  },
  results: ['turns', 'time', 'basic'],
  steps: [
    {
      key: 'basic',
      is: mul(num(1e6), pow(div('rating', 'load'), 'exponent')),
      says: 'A million turns at the rating itself.',
    },
    {
      key: 'turns',
      is: mul('reliabilityFactor', 'conditionFactor', 'basic'),
      says: 'With reliability and conditions.',
    },
    { key: 'time', is: div(mul('turns', 2, PI), 'speed'), says: 'Turns over the speed.' },
  ],
  sources: [
    { title: 'ISO 281:2007', at: 'clauses 5 to 9, by way of two makers’ catalogues', how: 'read' },
    { title: 'Ball and Roller Bearings, a maker’s catalogue', at: 'section 3.1 to 3.5', how: 'read' },
  ],
  holds: ['Load at most half the dynamic rating and at most the static rating.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const basic = 1e6 * (input.rating / input.load) ** input.exponent;
    const turns = input.reliabilityFactor * input.conditionFactor * basic;
    return { turns, time: (turns * 2 * Math.PI) / input.speed, basic };
  },
});
