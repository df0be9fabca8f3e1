import { add, div, type Expr, mul, pow, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { cubicAt, spanAt } from '../numerics/monotone-cubic.ts';
import { refuseOutside } from '../numerics/refuse.ts';
import { type TorqueCurve, torqueCurveThrough } from './curve.ts';

const id = 'vehicle.torqueCurve';

const inputs = {
  speeds: {
    form: 'list',
    kind: 'angularSpeed',
    symbol: 'ω',
    meaning: 'measured engine speeds, rising',
    range: { min: 0 },
    atLeast: 2,
  },
  torques: {
    form: 'list',
    kind: 'torque',
    symbol: 'T',
    meaning: 'full-throttle torque at each speed',
    range: { min: 0 },
    atLeast: 2,
  },
  angularSpeed: {
    form: 'value',
    kind: 'angularSpeed',
    symbol: 'ω_e',
    meaning: 'engine speed asked about',
    range: { min: 0 },
  },
} as const satisfies Params;

const rest: Expr = sub(1, 'part');
const width: Expr = sub('upperSpeed', 'lowerSpeed');

/** Cubic between two rows with given slopes. */
const CUBIC: Expr = add(
  mul(pow(rest, 2), add(mul(add(1, mul(2, 'part')), 'lowerTorque'), mul('part', width, 'lowerSlope'))),
  mul(pow('part', 2), sub(mul(sub(3, mul(2, 'part')), 'upperTorque'), mul(rest, width, 'upperSlope'))),
);

function curveOf(speeds: readonly number[], torques: readonly number[]): TorqueCurve {
  if (torques.length !== speeds.length)
    throw new MethodError(
      id,
      'torques',
      `Full-throttle torque at each speed: ${torques.length} entries read; as many as speeds, ${speeds.length}, are accepted.`,
    );
  for (let k = 1; k < speeds.length; k++) {
    const [before, here] = [speeds[k - 1] as number, speeds[k] as number];
    if (!(here > before))
      throw new MethodError(
        id,
        'speeds',
        `Measured engine speeds, entry ${k + 1}: ${here} rad/s is not above ${before} rad/s of the entry before.`,
      );
  }
  return torqueCurveThrough(speeds, torques);
}

/**
 * Full-throttle torque at a speed, from measured rows, and the peaks of torque and power.
 *
 * Errors: fewer than two rows, lists of different length, speeds that do not rise, a speed outside the rows (a curve is not extended).
 */
export const torqueCurve = defineMethod({
  id,
  gives: 'Full-throttle torque and power at a speed from measured rows, and their peaks',
  inputs,
  outputs: {
    torque: { form: 'value', kind: 'torque', symbol: 'T_e', meaning: 'full-throttle torque' },
    power: { form: 'value', kind: 'power', symbol: 'P_e', meaning: 'full-throttle power' },
    peakTorque: { form: 'value', kind: 'torque', symbol: 'T_p', meaning: 'peak torque' },
    peakTorqueAt: { form: 'value', kind: 'angularSpeed', symbol: 'ω_T', meaning: 'speed of peak torque' },
    peakPower: { form: 'value', kind: 'power', symbol: 'P_p', meaning: 'peak power' },
    peakPowerAt: { form: 'value', kind: 'angularSpeed', symbol: 'ω_P', meaning: 'speed of peak power' },
    lowerSpeed: { form: 'value', kind: 'angularSpeed', symbol: 'ω_a', meaning: 'speed of the row below' },
    upperSpeed: { form: 'value', kind: 'angularSpeed', symbol: 'ω_b', meaning: 'speed of the row above' },
    lowerTorque: { form: 'value', kind: 'torque', symbol: 'T_a', meaning: 'torque of the row below' },
    upperTorque: { form: 'value', kind: 'torque', symbol: 'T_b', meaning: 'torque of the row above' },
    lowerSlope: { form: 'value', kind: 'torqueSlope', symbol: 'd_a', meaning: 'slope of the curve at the row below' },
    upperSlope: { form: 'value', kind: 'torqueSlope', symbol: 'd_b', meaning: 'slope of the curve at the row above' },
    part: { form: 'value', kind: 'fraction', symbol: 't', meaning: 'part of the way between the two rows' },
    torqueAtPeakPower: { form: 'value', kind: 'torque', symbol: 'T_P', meaning: 'torque at the speed of peak power' },
  },
  results: ['torque', 'power', 'peakTorque', 'peakTorqueAt', 'peakPower', 'peakPowerAt'],
  steps: [
    {
      key: 'part',
      is: div(sub('angularSpeed', 'lowerSpeed'), sub('upperSpeed', 'lowerSpeed')),
      says: 'Where the speed lies between the two rows next to it.',
    },
    {
      key: 'torque',
      is: CUBIC,
      says: 'Cubic between the two rows; its slopes are weighted harmonic means, so it never leaves the range of the two torques.',
    },
    { key: 'power', is: mul('torque', 'angularSpeed'), says: 'Torque times speed.' },
    {
      key: 'peakPower',
      is: mul('torqueAtPeakPower', 'peakPowerAt'),
      says: 'The greatest product of torque and speed on the curve.',
    },
  ],
  sources: [
    {
      title: 'A method for constructing local monotone piecewise cubic interpolants (F. N. Fritsch, J. Butland)',
      edition: 'SIAM J. Sci. Stat. Comput. 5 (1984)',
      at: 'page 300',
      how: 'memory',
    },
  ],
  holds: ['Full throttle, engine warm and steady. Below the first row and above the last nothing is claimed.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { speeds, torques, angularSpeed } = input;
    const { points, peakTorque, peakTorqueAt, peakPower, peakPowerAt } = curveOf(speeds, torques);
    const [first, last] = [speeds[0] as number, speeds.at(-1) as number];
    if (angularSpeed < first || angularSpeed > last)
      throw new MethodError(
        id,
        'angularSpeed',
        `Engine speed asked about: ${angularSpeed} rad/s lies outside the rows, which run from ${first} to ${last} rad/s.`,
      );
    const k = spanAt(points, angularSpeed);
    const [lowerSpeed, upperSpeed] = [speeds[k] as number, speeds[k + 1] as number];
    const torque = cubicAt(points, angularSpeed);
    return {
      torque,
      power: torque * angularSpeed,
      peakTorque,
      peakTorqueAt,
      peakPower,
      peakPowerAt,
      lowerSpeed,
      upperSpeed,
      lowerTorque: torques[k] as number,
      upperTorque: torques[k + 1] as number,
      lowerSlope: points.slope[k] as number,
      upperSlope: points.slope[k + 1] as number,
      part: (angularSpeed - lowerSpeed) / (upperSpeed - lowerSpeed),
      torqueAtPeakPower: peakPower / peakPowerAt,
    };
  },
});
