import { add, div, fn, mul } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';

const id = 'joint.locatingPlay';

const inputs = {
  diameter: {
    form: 'value',
    kind: 'length',
    symbol: 'd',
    meaning: 'diameter of the fit',
    range: { min: 0.003, max: 0.5 },
  },
} as const satisfies Params;

const MM = 1e-3;
const MICRON = 1e-6;
const GRADES = 26;

/**
 * Greatest play of a sliding fit that still centres, H7/h6: both tolerances together, by the formula of the tolerance unit.
 *
 * Errors: a diameter outside 3 to 500 mm.
 */
export const locatingPlay = defineMethod({
  id,
  gives: 'Greatest play of a sliding fit that still centres, H7/h6',
  inputs,
  outputs: {
    play: { form: 'value', kind: 'length', symbol: 's', meaning: 'greatest play' },
    unit: { form: 'value', kind: 'number', symbol: 'i', meaning: 'tolerance unit in microns' },
    size: { form: 'value', kind: 'number', symbol: 'D', meaning: 'diameter in millimetres' },
    millimetre: { form: 'value', kind: 'length', symbol: 'u_l', meaning: 'one millimetre, the unit of the formula' },
    micron: { form: 'value', kind: 'length', symbol: 'u_i', meaning: 'one micron, the unit of its answer' },
    third: { form: 'value', kind: 'number', symbol: 'e', meaning: 'natural logarithm of the diameter, a third of it' },
  },
  results: ['play'],
  steps: [
    { key: 'size', is: div('diameter', 'millimetre'), says: 'In millimetres.' },
    { key: 'third', is: div(fn('ln', 'size'), 3), says: 'For the cube root.' },
    {
      key: 'unit',
      is: add(mul(0.45, fn('exp', 'third')), mul(0.001, 'size')),
      says: 'Larger parts are harder to make alike.',
    },
    { key: 'play', is: mul(GRADES, 'unit', 'micron'), says: 'Sixteen units for the hole, ten for the spigot.' },
  ],
  sources: [{ title: 'ISO 286-1', at: 'standard tolerance factor i; IT6 10 i, IT7 16 i', how: 'memory' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const size = input.diameter / MM;
    const third = Math.log(size) / 3;
    const unit = 0.45 * Math.exp(third) + 0.001 * size;
    return { play: GRADES * unit * MICRON, unit, size, millimetre: MM, micron: MICRON, third };
  },
});
