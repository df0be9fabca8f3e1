import { div, mul, num } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'joint.flankPressure';

const inputs = {
  torque: { form: 'value', kind: 'torque', symbol: 'T', meaning: 'torque through the joint', range: { min: 0 } },
  diameter: { form: 'value', kind: 'length', symbol: 'd_m', meaning: 'mean diameter of the flanks', range: ABOVE_ZERO },
  teeth: { form: 'integer', symbol: 'z', meaning: 'teeth or keys', range: { min: 1, max: 200 } },
  height: { form: 'value', kind: 'length', symbol: 'h', meaning: 'height of flank in contact', range: ABOVE_ZERO },
  length: { form: 'value', kind: 'length', symbol: 'l', meaning: 'length in contact', range: ABOVE_ZERO },
  share: {
    form: 'value',
    kind: 'number',
    symbol: 'k',
    meaning: 'part of the teeth that carry: 0.75 for a spline, 1 for a single key',
    range: { min: 0.1, max: 1 },
    default: 0.75,
  },
} as const satisfies Params;

/**
 * Pressure on the flanks of a spline or key.
 *
 * Errors: a size not above zero, torque below zero.
 */
export const flankPressure = defineMethod({
  id,
  gives: 'Pressure on the flanks of a spline or key',
  inputs,
  outputs: {
    pressure: { form: 'value', kind: 'pressure', symbol: 'p', meaning: 'pressure on the flanks' },
    push: { form: 'value', kind: 'force', symbol: 'F', meaning: 'push at the mean diameter' },
    area: { form: 'value', kind: 'area', symbol: 'A', meaning: 'flank area that carries' },
  },
  results: ['pressure'],
  steps: [
    { key: 'push', is: div(mul(num(2), 'torque'), 'diameter'), says: 'Torque over the mean radius.' },
    {
      key: 'area',
      is: mul('share', 'teeth', 'height', 'length'),
      says: 'Teeth are never alike: not all of them carry.',
    },
    { key: 'pressure', is: div('push', 'area'), says: 'Push over area.' },
  ],
  sources: [{ title: 'SAE J499 and texts of machine design on straight splines', how: 'memory' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const push = (2 * input.torque) / input.diameter;
    const area = input.share * input.teeth * input.height * input.length;
    return { pressure: push / area, push, area };
  },
});
