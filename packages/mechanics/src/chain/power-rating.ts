import { div, fn, mul, num, pow, sub } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { HORSEPOWER, HORSEPOWER_OUTPUT, INCH, INCH_OUTPUT, RPM, RPM_OUTPUT } from './printed-units.ts';

const id = 'chain.powerRating';

const inputs = {
  pitch: { form: 'value', kind: 'length', symbol: 'p', meaning: 'pitch of the chain', range: ABOVE_ZERO },
  teeth: { form: 'integer', symbol: 'z_1', meaning: 'teeth of the smaller sprocket', range: { min: 6, max: 150 } },
  speed: { form: 'value', kind: 'angularSpeed', symbol: 'ω', meaning: 'speed of that sprocket', range: ABOVE_ZERO },
  plateConstant: {
    form: 'value',
    kind: 'number',
    symbol: 'K_1',
    meaning: 'constant of the plates: 0.004, for No. 41 0.0022',
    range: ABOVE_ZERO,
    default: 0.004,
  },
  bushConstant: {
    form: 'value',
    kind: 'number',
    symbol: 'K_2',
    meaning: 'constant of rollers and bushes: 17, for No. 25 and 35 29, for No. 41 3.4',
    range: ABOVE_ZERO,
    default: 17,
  },
  strandFactor: {
    form: 'value',
    kind: 'number',
    symbol: 'K_s',
    meaning: 'factor of the strands: 1, 1.7, 2.5, 3.3 for one to four',
    range: { min: 1 },
    default: 1,
  },
} as const satisfies Params;

/**
 * Power that a chain carries for 15 000 h by the American formulas: plates against fatigue, rollers and bushes against blows.
 *
 * Errors: pitch, speed or a constant not above zero, fewer than 6 teeth, a strand factor below 1.
 */
export const chainPowerRating = defineMethod({
  id,
  gives: 'Power that a roller chain carries for 15 000 h by the American formulas',
  inputs,
  outputs: {
    rating: { form: 'value', kind: 'power', symbol: 'P_r', meaning: 'rated power, all strands' },
    plates: { form: 'value', kind: 'power', symbol: 'P_p', meaning: 'power that the plates bear, all strands' },
    bushes: { form: 'value', kind: 'power', symbol: 'P_b', meaning: 'power that rollers and bushes bear, all strands' },
    crossover: {
      form: 'value',
      kind: 'angularSpeed',
      symbol: 'ω_x',
      meaning: 'speed above which rollers and bushes give way first',
    },
    inches: { form: 'value', kind: 'number', symbol: 'p_i', meaning: 'pitch in inches' },
    turns: { form: 'value', kind: 'number', symbol: 'n', meaning: 'turns a minute' },
    inch: INCH_OUTPUT,
    minute: RPM_OUTPUT,
    horsepower: HORSEPOWER_OUTPUT,
  },
  results: ['rating', 'plates', 'bushes', 'crossover'],
  steps: [
    { key: 'inches', is: div('pitch', 'inch'), says: 'In inches.' },
    { key: 'turns', is: div('speed', 'minute'), says: 'In turns a minute.' },
    {
      key: 'plates',
      is: mul(
        'horsepower',
        'strandFactor',
        'plateConstant',
        pow('teeth', 1.08),
        pow('turns', 0.9),
        pow('inches', sub(3, mul(num(0.07), 'inches'))),
      ),
      says: 'Fatigue of the link plates.',
    },
    {
      key: 'bushes',
      is: mul(
        'horsepower',
        'strandFactor',
        1000,
        'bushConstant',
        pow('teeth', 1.5),
        pow('inches', 0.8),
        pow('turns', -1.5),
      ),
      says: 'Blows of the rollers on the teeth.',
    },
    { key: 'rating', is: fn('min', 'plates', 'bushes'), says: 'The lesser of the two.' },
    {
      key: 'crossover',
      is: mul(
        'minute',
        pow(
          div(
            mul(1000, 'bushConstant', pow('teeth', 0.42)),
            mul('plateConstant', pow('inches', sub(num(2.2), mul(num(0.07), 'inches')))),
          ),
          div(1, num(2.4)),
        ),
      ),
      says: 'Where both are equal.',
    },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      at: 'chapter 17, Eq. 17-32 and 17-33, equations of the American Chain Association',
      how: 'read',
    },
  ],
  holds: ['About 100 pitches, 15 000 h, even load, the lubrication recommended for the speed.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { teeth, plateConstant, bushConstant, strandFactor } = input;
    const inches = input.pitch / INCH;
    const turns = input.speed / RPM;
    const plates =
      HORSEPOWER * strandFactor * plateConstant * teeth ** 1.08 * turns ** 0.9 * inches ** (3 - 0.07 * inches);
    const bushes = HORSEPOWER * strandFactor * 1000 * bushConstant * teeth ** 1.5 * inches ** 0.8 * turns ** -1.5;
    const crossover =
      RPM * ((1000 * bushConstant * teeth ** 0.42) / (plateConstant * inches ** (2.2 - 0.07 * inches))) ** (1 / 2.4);
    return {
      rating: Math.min(plates, bushes),
      plates,
      bushes,
      crossover,
      inches,
      turns,
      inch: INCH,
      minute: RPM,
      horsepower: HORSEPOWER,
    };
  },
});
