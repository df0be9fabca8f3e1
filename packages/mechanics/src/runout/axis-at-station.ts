import { add, div, fn, mul, pow, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'runout.axisAtStation';

const TIR = { min: 0 } as const;

const inputs = {
  station1: { form: 'value', kind: 'length', symbol: 'z_1', meaning: 'station of the first section' },
  tir1: { form: 'value', kind: 'length', symbol: 'T_1', meaning: 'TIR there, from its offset alone', range: TIR },
  high1: { form: 'value', kind: 'angle', symbol: 'φ_1', meaning: 'angle of its high spot' },
  station2: { form: 'value', kind: 'length', symbol: 'z_2', meaning: 'station of the second section' },
  tir2: { form: 'value', kind: 'length', symbol: 'T_2', meaning: 'TIR there, from its offset alone', range: TIR },
  high2: { form: 'value', kind: 'angle', symbol: 'φ_2', meaning: 'angle of its high spot' },
  at: { form: 'value', kind: 'length', symbol: 'z', meaning: 'station that the run-out is wanted at' },
  faceDiameter: {
    form: 'value',
    kind: 'length',
    symbol: 'D',
    meaning: 'diameter that a face run-out is wanted at',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

/**
 * Run-out of a straight part anywhere, from two sections: offsets are vectors, and lie on one line.
 *
 * Errors: both sections at one station, a negative TIR, a diameter not above zero.
 */
export const axisAtStation = defineMethod({
  id,
  gives: 'Run-out at any station, and of a face, from two measured sections of a straight part',
  inputs,
  outputs: {
    tir: { form: 'value', kind: 'length', symbol: 'T', meaning: 'radial TIR at the wanted station' },
    high: { form: 'value', kind: 'angle', symbol: 'φ', meaning: 'angle of its high spot' },
    faceTir: { form: 'value', kind: 'length', symbol: 'T_D', meaning: 'face TIR at the given diameter' },
    tilt: { form: 'value', kind: 'angle', symbol: 'τ', meaning: 'tilt of the axis' },
    part: { form: 'value', kind: 'number', symbol: 's', meaning: 'how far along from the first section to the second' },
    x: { form: 'value', kind: 'length', symbol: 'e_x', meaning: 'offset towards mark 0' },
    y: { form: 'value', kind: 'length', symbol: 'e_y', meaning: 'offset a quarter turn on' },
    tiltX: { form: 'value', kind: 'angle', symbol: 'τ_x', meaning: 'tilt towards mark 0' },
    tiltY: { form: 'value', kind: 'angle', symbol: 'τ_y', meaning: 'tilt a quarter turn on' },
  },
  results: ['tir', 'high', 'faceTir', 'tilt'],
  steps: [
    { key: 'part', is: div(sub('at', 'station1'), sub('station2', 'station1')), says: 'Along the axis.' },
    {
      key: 'tiltX',
      is: div(
        sub(mul(div('tir2', 2), fn('cos', 'high2')), mul(div('tir1', 2), fn('cos', 'high1'))),
        sub('station2', 'station1'),
      ),
      says: 'Vectors are subtracted, never the two TIRs.',
    },
    {
      key: 'tiltY',
      is: div(
        sub(mul(div('tir2', 2), fn('sin', 'high2')), mul(div('tir1', 2), fn('sin', 'high1'))),
        sub('station2', 'station1'),
      ),
      says: 'Likewise.',
    },
    {
      key: 'x',
      is: add(mul(div('tir1', 2), fn('cos', 'high1')), mul('tiltX', sub('at', 'station1'))),
      says: 'From the first section along the tilt.',
    },
    {
      key: 'y',
      is: add(mul(div('tir1', 2), fn('sin', 'high1')), mul('tiltY', sub('at', 'station1'))),
      says: 'Likewise.',
    },
    { key: 'tir', is: mul(2, fn('sqrt', add(pow('x', 2), pow('y', 2)))), says: 'Twice the offset.' },
    { key: 'high', is: fn('atan2', 'y', 'x'), says: 'Direction of the offset.' },
    { key: 'tilt', is: fn('sqrt', add(pow('tiltX', 2), pow('tiltY', 2))), says: 'Both directions together.' },
    { key: 'faceTir', is: mul('faceDiameter', 'tilt'), says: 'A tilted face swings by its diameter times the tilt.' },
  ],
  sources: [{ title: 'Offsets of a straight axis as vectors', how: 'derived' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { station1, station2, at } = input;
    const span = station2 - station1;
    if (span === 0)
      throw new MethodError(id, 'station2', 'both sections stand at one station; two different stations are accepted.');
    const [x1, y1] = [(input.tir1 / 2) * Math.cos(input.high1), (input.tir1 / 2) * Math.sin(input.high1)];
    const [x2, y2] = [(input.tir2 / 2) * Math.cos(input.high2), (input.tir2 / 2) * Math.sin(input.high2)];
    const [tiltX, tiltY] = [(x2 - x1) / span, (y2 - y1) / span];
    const [x, y] = [x1 + tiltX * (at - station1), y1 + tiltY * (at - station1)];
    const tilt = Math.hypot(tiltX, tiltY);
    return {
      tir: 2 * Math.hypot(x, y),
      high: Math.atan2(y, x),
      faceTir: input.faceDiameter * tilt,
      tilt,
      part: (at - station1) / span,
      x,
      y,
      tiltX,
      tiltY,
    };
  },
});
