import { add, div, fn, mul, num, pow } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';
import { INCH, INCH_OUTPUT, POUND, POUND_OUTPUT, RPM, RPM_OUTPUT } from './printed-units.ts';

const id = 'chain.gallingSpeed';

const inputs = {
  pitch: {
    form: 'value',
    kind: 'length',
    symbol: 'p',
    meaning: 'pitch of the chain',
    range: { min: 0.005, max: 0.08 },
  },
  teeth: { form: 'integer', symbol: 'z', meaning: 'teeth of the sprocket', range: { min: 6, max: 150 } },
  pull: { form: 'value', kind: 'force', symbol: 'F', meaning: 'pull of the tight span', range: { min: 0 } },
} as const satisfies Params;

/**
 * Speed of a sprocket above which the oil film in the joints tears and pins seize in their bushes.
 *
 * Errors: pitch outside 5 to 80 mm, fewer than 6 teeth, a pull below zero.
 */
export const chainGallingSpeed = defineMethod({
  id,
  gives: 'Speed of a sprocket above which pins seize in their bushes',
  inputs,
  outputs: {
    speed: { form: 'value', kind: 'angularSpeed', symbol: 'ω_g', meaning: 'speed of the sprocket' },
    inches: { form: 'value', kind: 'number', symbol: 'p_i', meaning: 'pitch in inches' },
    kips: { form: 'value', kind: 'number', symbol: 'F_k', meaning: 'pull in thousands of pounds-force' },
    base: { form: 'value', kind: 'number', symbol: 'B', meaning: 'what is raised' },
    exponent: { form: 'value', kind: 'number', symbol: 'e', meaning: 'power to which it is raised' },
    inch: INCH_OUTPUT,
    minute: RPM_OUTPUT,
    pound: POUND_OUTPUT,
  },
  results: ['speed'],
  steps: [
    { key: 'inches', is: div('pitch', 'inch'), says: 'In inches.' },
    { key: 'kips', is: div('pull', mul(1000, 'pound')), says: 'In thousands of pounds-force.' },
    {
      key: 'base',
      is: div(num(82.5), mul(pow(7.95, 'inches'), pow(1.0278, 'teeth'), pow(1.323, 'kips'))),
      says: 'Long pitch, many teeth and a hard pull all lower the speed.',
    },
    {
      key: 'exponent',
      is: div(1, add(mul(num(1.59), div(fn('ln', 'inches'), fn('ln', 10))), num(1.873))),
      says: 'By the common logarithm of the pitch.',
    },
    { key: 'speed', is: mul(1000, 'minute', pow('base', 'exponent')), says: 'In turns a minute.' },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      at: 'chapter 17, Eq. 17-38',
      how: 'memory',
    },
  ],
  holds: ['Which sprocket’s teeth are meant is printed both ways; the larger one gives the lower speed.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const inches = input.pitch / INCH;
    const kips = input.pull / (1000 * POUND);
    const base = 82.5 / (7.95 ** inches * 1.0278 ** input.teeth * 1.323 ** kips);
    const exponent = 1 / (1.59 * (Math.log(inches) / Math.log(10)) + 1.873);
    return {
      speed: 1000 * RPM * base ** exponent,
      inches,
      kips,
      base,
      exponent,
      inch: INCH,
      minute: RPM,
      pound: POUND,
    };
  },
});
