import { add, div, mul, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'bevel.lewisCapacity';
const SLOWNESS = 6.1;

const inputs = {
  module: {
    form: 'value',
    kind: 'length',
    symbol: 'm',
    meaning: 'module, at the large end of a bevel',
    range: ABOVE_ZERO,
  },
  faceWidth: { form: 'value', kind: 'length', symbol: 'b', meaning: 'face width', range: ABOVE_ZERO },
  shape: {
    form: 'value',
    kind: 'number',
    symbol: 'Y',
    meaning: 'Lewis form factor at the virtual teeth',
    range: ABOVE_ZERO,
  },
  coneDistance: {
    form: 'value',
    kind: 'length',
    symbol: 'R_e',
    meaning: 'outer cone distance; a very large one for a spur gear',
    range: ABOVE_ZERO,
    default: 1e9,
  },
  pitchSpeed: { form: 'value', kind: 'speed', symbol: 'v', meaning: 'pitch-line speed', range: { min: 0 } },
  allowed: { form: 'value', kind: 'pressure', symbol: 's', meaning: 'bending stress allowed', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Tooth load by the old beam formula, for gears of which only size, teeth and hardness are known. Its stress is a plain one: it compares with a
 * part of the tensile strength, never with the numbers of the rating standards.
 *
 * Errors: sizes, factor or stress not above zero, a speed below zero, a face as wide as the cone.
 */
export const bevelLewisCapacity = defineMethod({
  id,
  gives: 'Tooth load that a bevel or spur gear bears by the beam formula',
  inputs,
  outputs: {
    load: { form: 'value', kind: 'force', symbol: 'W_t', meaning: 'tooth load at the pitch diameter' },
    dynamic: { form: 'value', kind: 'number', symbol: 'K_v', meaning: 'factor of speed for cut teeth' },
    taper: { form: 'value', kind: 'number', symbol: 'k_b', meaning: 'factor of the taper' },
    slow: { form: 'value', kind: 'speed', symbol: 'u_v', meaning: '6.1 m/s, a constant of the formula' },
  },
  results: ['load', 'dynamic', 'taper'],
  steps: [
    { key: 'dynamic', is: div(add('slow', 'pitchSpeed'), 'slow'), says: 'For teeth that were cut or milled.' },
    {
      key: 'taper',
      is: sub(1, div('faceWidth', 'coneDistance')),
      says: 'Teeth of a bevel get smaller toward the apex.',
    },
    {
      key: 'load',
      is: div(mul('allowed', 'faceWidth', 'module', 'shape', 'taper'), 'dynamic'),
      says: 'A beam on the root of the tooth.',
    },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      at: 'chapter 14, Eq. 14-2 to 14-8, solved problems',
      how: 'read',
    },
    { title: 'Introduction to Machine Design (V. B. Bhandari)', at: 'factor of the taper', how: 'memory' },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    if (!(input.faceWidth < input.coneDistance))
      throw new MethodError(
        id,
        'faceWidth',
        `Face width must be less than the cone distance, ${input.coneDistance} m; read ${input.faceWidth} m.`,
      );
    const dynamic = (SLOWNESS + input.pitchSpeed) / SLOWNESS;
    const taper = 1 - input.faceWidth / input.coneDistance;
    const load = (input.allowed * input.faceWidth * input.module * input.shape * taper) / dynamic;
    return { load, dynamic, taper, slow: SLOWNESS };
  },
});
