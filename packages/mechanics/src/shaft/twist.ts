import { div, mul, sum } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'shaft.twist';

const inputs = {
  torque: { form: 'value', kind: 'torque', symbol: 'T', meaning: 'torque through all of it' },
  lengths: {
    form: 'list',
    kind: 'length',
    symbol: 'l_k',
    meaning: 'length of each piece',
    range: { min: 0 },
    atLeast: 1,
  },
  diameters: {
    form: 'list',
    kind: 'length',
    symbol: 'd_k',
    meaning: 'diameter of each piece',
    range: ABOVE_ZERO,
    atLeast: 1,
  },
  shear: { form: 'value', kind: 'pressure', symbol: 'G', meaning: 'shear modulus', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Twist of a stepped solid shaft.
 *
 * Errors: lists of different length, sizes or modulus not above zero.
 */
export const shaftTwist = defineMethod({
  id,
  gives: 'Twist of a stepped shaft',
  inputs,
  outputs: {
    twist: { form: 'value', kind: 'angle', symbol: 'θ', meaning: 'angle between its ends' },
    give: {
      form: 'list',
      kind: 'number',
      symbol: 'c_k',
      meaning: 'length over polar moment of each piece, times a cubic metre',
    },
    cubic: { form: 'value', kind: 'volume', symbol: 'u_v', meaning: 'one cubic metre' },
  },
  results: ['twist'],
  steps: [
    {
      key: 'twist',
      is: div(mul('torque', sum('give')), mul('shear', 'cubic')),
      says: 'Each piece gives by its length over its polar moment.',
    },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '9th',
      at: 'equation 7-20',
      how: 'read',
    },
  ],
  holds: ['Real twist is larger at keyways and fits.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { lengths, diameters } = input;
    if (lengths.length !== diameters.length)
      throw new MethodError(
        id,
        'diameters',
        `${diameters.length} diameters read for ${lengths.length} lengths; as many are accepted.`,
      );
    const give = lengths.map((length, k) => (32 * length) / (Math.PI * (diameters[k] as number) ** 4));
    return { twist: (input.torque * give.reduce((all, one) => all + one, 0)) / input.shear, give, cubic: 1 };
  },
});
