import { add, div, fn, mul, num, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'joint.taperGrip';

const inputs = {
  draw: { form: 'value', kind: 'force', symbol: 'F', meaning: 'force that draws the hub on', range: { min: 0 } },
  diameter: { form: 'value', kind: 'length', symbol: 'D', meaning: 'large diameter of the taper', range: ABOVE_ZERO },
  length: { form: 'value', kind: 'length', symbol: 'l', meaning: 'length in contact', range: ABOVE_ZERO },
  ratio: {
    form: 'value',
    kind: 'ratio',
    symbol: 'C',
    meaning: 'length over change of diameter: 10 for one in ten',
    range: { min: 2, max: 50 },
  },
  friction: {
    form: 'value',
    kind: 'number',
    symbol: 'μ',
    meaning: 'friction',
    range: { min: 0.03, max: 0.5 },
    default: 0.12,
  },
} as const satisfies Params;

/**
 * Torque that a taper passes by friction alone, and the pressure in it, after it was drawn on by a nut or bolt that stays tight.
 *
 * Errors: a size not above zero; a taper that comes to a point within its length.
 */
export const taperGrip = defineMethod({
  id,
  gives: 'Torque and pressure of a taper drawn on by a nut',
  inputs,
  outputs: {
    torque: { form: 'value', kind: 'torque', symbol: 'T', meaning: 'torque at which it slips' },
    pressure: { form: 'value', kind: 'pressure', symbol: 'p', meaning: 'pressure in the taper' },
    mean: { form: 'value', kind: 'length', symbol: 'd_m', meaning: 'mean diameter' },
    half: { form: 'value', kind: 'angle', symbol: 'β', meaning: 'half of the cone angle' },
    normal: { form: 'value', kind: 'force', symbol: 'N', meaning: 'force square to the cone, all round' },
  },
  results: ['torque', 'pressure'],
  steps: [
    { key: 'mean', is: sub('diameter', div('length', mul(num(2), 'ratio'))), says: 'Half way along.' },
    { key: 'half', is: fn('atan', div(num(1), mul(num(2), 'ratio'))), says: 'From the change of diameter.' },
    {
      key: 'normal',
      is: div('draw', add(fn('sin', 'half'), mul('friction', fn('cos', 'half')))),
      says: 'Friction resists while it is drawn on.',
    },
    { key: 'torque', is: div(mul('friction', 'normal', 'mean'), num(2)), says: 'Friction at the mean radius.' },
    {
      key: 'pressure',
      is: div(mul('normal', fn('cos', 'half')), mul(num(Math.PI, 'π'), 'mean', 'length')),
      says: 'Over the area of the cone.',
    },
  ],
  sources: [{ title: 'Roloff/Matek, Machine Elements', at: 'conical press joints', how: 'memory' }],
  holds: ['A key in the taper is left out: friction must pass the torque, or the key is beaten loose.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { draw, diameter, length, ratio, friction } = input;
    const mean = diameter - length / (2 * ratio);
    if (!(diameter - length / ratio > 0))
      throw new MethodError(id, 'length', 'The taper comes to a point within its length.');
    const half = Math.atan(1 / (2 * ratio));
    const normal = draw / (Math.sin(half) + friction * Math.cos(half));
    return {
      torque: (friction * normal * mean) / 2,
      pressure: (normal * Math.cos(half)) / (Math.PI * mean * length),
      mean,
      half,
      normal,
    };
  },
});
