import { add, branch, choose, div, mul, num, pow, when } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'bearing.viscosityRatio';

const inputs = {
  speed: { form: 'value', kind: 'angularSpeed', symbol: 'ω', meaning: 'speed of rotation', range: ABOVE_ZERO },
  bore: { form: 'value', kind: 'length', symbol: 'd', meaning: 'bore', range: ABOVE_ZERO },
  outside: { form: 'value', kind: 'length', symbol: 'D', meaning: 'outside diameter', range: ABOVE_ZERO },
  viscosity: {
    form: 'value',
    kind: 'viscosity',
    symbol: 'ν',
    meaning: 'viscosity of the oil, or of the grease’s oil, at the bearing’s temperature',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

/** One turn a minute, in rad/s; one millimetre; one mm²/s: the units that the formula was printed in. */
const RPM = Math.PI / 30;
const MM = 1e-3;
const MM2_S = 1e-6;
const SLOW = 1000;

/**
 * How well the oil parts balls and rings: viscosity over the viscosity wanted at this size and speed.
 *
 * Errors: any input not above zero.
 */
export const viscosityRatio = defineMethod({
  id,
  gives: 'Viscosity at work over the viscosity that size and speed ask for',
  inputs,
  outputs: {
    ratio: { form: 'value', kind: 'number', symbol: 'κ', meaning: 'viscosity ratio' },
    wanted: { form: 'value', kind: 'viscosity', symbol: 'ν_1', meaning: 'viscosity wanted' },
    turns: { form: 'value', kind: 'number', symbol: 'n', meaning: 'speed in turns a minute' },
    mean: { form: 'value', kind: 'number', symbol: 'd_m', meaning: 'mean diameter in millimetres' },
    millimetre: { form: 'value', kind: 'length', symbol: 'u_l', meaning: 'one millimetre, the unit of the formula' },
    minute: {
      form: 'value',
      kind: 'angularSpeed',
      symbol: 'u_n',
      meaning: 'one turn a minute, the unit of the formula',
    },
    centistokes: {
      form: 'value',
      kind: 'viscosity',
      symbol: 'u_ν',
      meaning: 'one mm²/s, the unit of the formula',
    },
  },
  results: ['ratio', 'wanted'],
  steps: [
    { key: 'turns', is: div('speed', 'minute'), says: 'In turns a minute.' },
    { key: 'mean', is: div(add('bore', 'outside'), mul(2, 'millimetre')), says: 'In millimetres.' },
    {
      key: 'wanted',
      is: mul(
        'centistokes',
        choose(
          [branch(when('turns', '<', num(SLOW)), mul(45000, pow('turns', -0.83), pow('mean', -0.5)))],
          mul(4500, pow('turns', -0.5), pow('mean', -0.5)),
        ),
      ),
      says: 'Slow and small bearings need thicker oil.',
    },
    { key: 'ratio', is: div('viscosity', 'wanted'), says: 'Over 4 counts as 4; under 0.1 the method does not apply.' },
  ],
  sources: [{ title: 'ISO 281:2007', at: 'by way of a maker’s catalogue, equations 3.10 and 3.11', how: 'read' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const turns = input.speed / RPM;
    const mean = (input.bore + input.outside) / (2 * MM);
    const wanted = MM2_S * (turns < SLOW ? 45000 * turns ** -0.83 * mean ** -0.5 : 4500 * turns ** -0.5 * mean ** -0.5);
    return {
      ratio: input.viscosity / wanted,
      wanted,
      turns,
      mean,
      millimetre: MM,
      minute: RPM,
      centistokes: MM2_S,
    };
  },
});
