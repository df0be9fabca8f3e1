import { div, fn, mul } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'runout.face';

const inputs = {
  tir: { form: 'value', kind: 'length', symbol: 'T', meaning: 'face TIR, without end float', range: { min: 0 } },
  diameter: { form: 'value', kind: 'length', symbol: 'D', meaning: 'diameter it was read at', range: ABOVE_ZERO },
  shimDiameter: {
    form: 'value',
    kind: 'length',
    symbol: 'D_s',
    meaning: 'diameter of the bolt circle or seat that a shim lies on',
    range: ABOVE_ZERO,
  },
  reach: {
    form: 'value',
    kind: 'length',
    symbol: 'L',
    meaning: 'length from the face to the section that matters',
    range: { min: 0 },
    default: 0,
  },
} as const satisfies Params;

/**
 * A face out of square: its tilt, the shim that squares it, and the run-out it makes further out.
 *
 * Errors: a negative TIR or reach, a diameter not above zero.
 */
export const faceSquareness = defineMethod({
  id,
  gives: 'Tilt of a face, the shim that takes it away, and the run-out it makes at a distance',
  inputs,
  outputs: {
    tilt: { form: 'value', kind: 'angle', symbol: 'τ', meaning: 'tilt of the face from square' },
    shim: {
      form: 'value',
      kind: 'length',
      symbol: 's',
      meaning: 'shim under the low side, tapering to nothing opposite',
    },
    tirAtReach: {
      form: 'value',
      kind: 'length',
      symbol: 'T_L',
      meaning: 'radial TIR that the tilt makes at the reach',
    },
  },
  results: ['tilt', 'shim', 'tirAtReach'],
  steps: [
    { key: 'tilt', is: fn('atan', div('tir', 'diameter')), says: 'Swing over diameter.' },
    { key: 'shim', is: mul('shimDiameter', div('tir', 'diameter')), says: 'The same slope across the shimmed circle.' },
    { key: 'tirAtReach', is: mul(2, 'reach', fn('sin', 'tilt')), says: 'Twice the offset at the end of the reach.' },
  ],
  sources: [{ title: 'Circular run-out of a face, ISO 1101', how: 'memory' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const slope = input.tir / input.diameter;
    const tilt = Math.atan(slope);
    return { tilt, shim: input.shimDiameter * slope, tirAtReach: 2 * input.reach * Math.sin(tilt) };
  },
});
