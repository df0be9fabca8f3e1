import { add, div, mul, num, pow } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'bearing.minimumLoad';

const inputs = {
  factor: {
    form: 'value',
    kind: 'number',
    symbol: 'k_r',
    meaning: 'minimum load factor of the bearing',
    range: ABOVE_ZERO,
  },
  viscosity: {
    form: 'value',
    kind: 'viscosity',
    symbol: 'ν',
    meaning: 'viscosity of the oil at work',
    range: ABOVE_ZERO,
  },
  speed: { form: 'value', kind: 'angularSpeed', symbol: 'ω', meaning: 'speed of rotation', range: { min: 0 } },
  bore: { form: 'value', kind: 'length', symbol: 'd', meaning: 'bore', range: ABOVE_ZERO },
  outside: { form: 'value', kind: 'length', symbol: 'D', meaning: 'outside diameter', range: ABOVE_ZERO },
} as const satisfies Params;

const KILONEWTON = 1e3;
/** One mm²/s, one turn a minute, a hundred millimetres: the units of the formula. */
const MM2_S = 1e-6;
const RPM = Math.PI / 30;
const LENGTH = 0.1;

/**
 * Least radial load under which the balls of a deep groove bearing roll and don't skid.
 *
 * Errors: factor, viscosity or a diameter not above zero, speed below zero.
 */
export const minimumLoad = defineMethod({
  id,
  gives: 'Least radial load under which a deep groove ball bearing rolls well',
  inputs,
  outputs: {
    load: { form: 'value', kind: 'force', symbol: 'F_rm', meaning: 'least radial load' },
    mean: { form: 'value', kind: 'length', symbol: 'd_m', meaning: 'mean diameter' },
    centistokes: { form: 'value', kind: 'viscosity', symbol: 'u_ν', meaning: 'one mm²/s, the unit of the formula' },
    minute: {
      form: 'value',
      kind: 'angularSpeed',
      symbol: 'u_n',
      meaning: 'one turn a minute, the unit of the formula',
    },
    hundred: {
      form: 'value',
      kind: 'length',
      symbol: 'u_l',
      meaning: 'a hundred millimetres, the unit of the formula',
    },
    kilonewton: { form: 'value', kind: 'force', symbol: 'u_F', meaning: 'one kilonewton, the unit of the formula' },
  },
  results: ['load'],
  steps: [
    { key: 'mean', is: div(add('bore', 'outside'), num(2)), says: 'Mean diameter.' },
    {
      key: 'load',
      is: mul(
        'kilonewton',
        'factor',
        pow(div(mul(div('viscosity', 'centistokes'), div('speed', 'minute')), num(1000)), div(2, 3)),
        pow(div('mean', 'hundred'), 2),
      ),
      says: 'Thick oil and speed make the balls skid under a light load.',
    },
  ],
  sources: [{ title: 'A maker’s catalogue of 2018', at: 'pages 106 and 254', how: 'read' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const mean = (input.bore + input.outside) / 2;
    const load =
      KILONEWTON *
      input.factor *
      (((input.viscosity / MM2_S) * (input.speed / RPM)) / 1000) ** (2 / 3) *
      (mean / LENGTH) ** 2;
    return { load, mean, centistokes: MM2_S, minute: RPM, hundred: LENGTH, kilonewton: KILONEWTON };
  },
});
