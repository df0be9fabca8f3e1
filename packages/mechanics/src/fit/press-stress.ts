import { add, branch, choose, div, fn, mul, num, pow, sub, when } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { GIVES, JOINED, LAME, PRESSURE_STEPS, pressed, refuseSizes } from './cylinders.ts';

const id = 'fit.pressStress';

const inputs = {
  ...JOINED,
  hubYield: { form: 'value', kind: 'pressure', symbol: 'R_o', meaning: 'yield strength of the hub', range: ABOVE_ZERO },
  shaftYield: {
    form: 'value',
    kind: 'pressure',
    symbol: 'R_i',
    meaning: 'yield strength of the shaft',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

const stress = (symbol: string, meaning: string) => ({ form: 'value', kind: 'pressure', symbol, meaning }) as const;

/**
 * Stresses in hub and shaft of a press fit, von Mises, where each is worst. Give it the greatest interference.
 *
 * Errors: a size, modulus or strength not above zero; a hub or a shaft without a wall.
 */
export const pressStress = defineMethod({
  id,
  gives: 'Stresses in hub and shaft of a press fit, and how far both are from yielding',
  inputs,
  outputs: {
    pressure: stress('p', 'pressure between hub and shaft'),
    hubAround: stress('σ_t', 'stress around the bore of the hub'),
    hubStress: stress('σ_o', 'stress in the hub at its bore, von Mises'),
    shaftAround: stress('σ_s', 'stress around the surface of the shaft'),
    shaftStress: stress('σ_i', 'stress in the shaft where it is worst, von Mises'),
    hubReserve: { form: 'value', kind: 'number', symbol: 'n_o', meaning: 'yield strength over stress, hub' },
    shaftReserve: { form: 'value', kind: 'number', symbol: 'n_i', meaning: 'yield strength over stress, shaft' },
    ...GIVES,
  },
  results: ['pressure', 'hubAround', 'hubStress', 'shaftAround', 'shaftStress', 'hubReserve', 'shaftReserve'],
  steps: [
    ...PRESSURE_STEPS,
    {
      key: 'hubAround',
      is: mul('pressure', sub('hubGives', 'hubPoisson')),
      says: 'The bore of the hub is pulled around.',
    },
    {
      key: 'hubStress',
      is: fn('sqrt', add(pow('hubAround', 2), mul('hubAround', 'pressure'), pow('pressure', 2))),
      says: 'Pulled around and pressed from within.',
    },
    {
      key: 'shaftAround',
      is: sub(num(0), mul('pressure', add('shaftGives', 'shaftPoisson'))),
      says: 'The shaft is pressed together.',
    },
    {
      key: 'shaftStress',
      is: choose(
        [branch(when('bore', '=', num(0)), mul(num(1), 'pressure'))],
        div(mul(2, 'pressure', pow('diameter', 2)), sub(pow('diameter', 2), pow('bore', 2))),
      ),
      says: 'A hollow shaft is worst at its bore, a solid one is pressed alike all through.',
    },
    { key: 'hubReserve', is: div('hubYield', 'hubStress'), says: 'Until the hub gives for good.' },
    { key: 'shaftReserve', is: div('shaftYield', 'shaftStress'), says: 'Until the shaft gives for good.' },
  ],
  sources: LAME,
  holds: ['Nothing else loads the joint; the pressure peaks at the edges of the hub come on top.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    refuseSizes(id, input);
    const joint = pressed(input);
    const { pressure } = joint;
    const hubAround = pressure * (joint.hubGives - input.hubPoisson);
    const hubStress = Math.sqrt(hubAround ** 2 + hubAround * pressure + pressure ** 2);
    const shaftAround = 0 - pressure * (joint.shaftGives + input.shaftPoisson);
    const { diameter: d, bore } = input;
    const shaftStress = bore === 0 ? pressure : (2 * pressure * d ** 2) / (d ** 2 - bore ** 2);
    return {
      ...joint,
      hubAround,
      hubStress,
      shaftAround,
      shaftStress,
      hubReserve: input.hubYield / hubStress,
      shaftReserve: input.shaftYield / shaftStress,
    };
  },
});
