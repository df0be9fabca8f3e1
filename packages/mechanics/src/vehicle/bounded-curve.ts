import { add, branch, choose, div, type Expr, fn, mul, num, pow, sub, when } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { hermite } from '../numerics/monotone-cubic.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'vehicle.boundedCurve';

/** Highest speed that is answered, over the speed of peak power. */
const HIGHEST = 1.5;

const inputs = {
  peakTorque: { form: 'value', kind: 'torque', symbol: 'T_p', meaning: 'peak torque', range: ABOVE_ZERO },
  peakTorqueAt: {
    form: 'value',
    kind: 'angularSpeed',
    symbol: 'ω_T',
    meaning: 'speed of peak torque',
    range: ABOVE_ZERO,
  },
  peakPower: { form: 'value', kind: 'power', symbol: 'P_p', meaning: 'peak power', range: ABOVE_ZERO },
  peakPowerAt: {
    form: 'value',
    kind: 'angularSpeed',
    symbol: 'ω_P',
    meaning: 'speed of peak power',
    range: ABOVE_ZERO,
  },
  angularSpeed: {
    form: 'value',
    kind: 'angularSpeed',
    symbol: 'ω_e',
    meaning: 'engine speed asked about',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

const below = when('angularSpeed', '<', 'peakTorqueAt');
const between = when('angularSpeed', '<=', 'peakPowerAt');

const part: Expr = div(sub('angularSpeed', 'peakTorqueAt'), sub('peakPowerAt', 'peakTorqueAt'));
const rest: Expr = sub(1, part);
/** Flat at the torque peak; at the power peak it falls as the torque of constant power does. */
const cubic: Expr = add(
  mul(pow(rest, 2), add(1, mul(2, part)), 'peakTorque'),
  mul(
    pow(part, 2),
    add(
      mul(sub(3, mul(2, part)), 'torqueAtPeakPower'),
      mul(rest, sub('peakPowerAt', 'peakTorqueAt'), div('torqueAtPeakPower', 'peakPowerAt')),
    ),
  ),
);

/**
 * Full-throttle torque where only the two peaks are known: a stated curve, and bounds that the true one keeps.
 *
 * Upper bound, everywhere: the torque never passes peak torque, and torque times speed never passes peak power.
 * Lower bound, from a single peak of each: between the two speeds torque has not yet fallen to that at peak power, and power has
 * not fallen below that at peak torque. Below the speed of peak torque it lies on the straight line from standstill, for an engine
 * whose torque rises without a hollow; above the speed of peak power it is zero, since a governor may cut in at any speed.
 *
 * Errors: a value not above zero, peak power below the speed of peak torque, peaks that contradict each other, a speed above
 * 1.5 times that of peak power.
 */
export const boundedCurve = defineMethod({
  id,
  gives: 'Full-throttle torque from peak torque and peak power alone, with the lowest and highest it can be',
  inputs,
  outputs: {
    torque: { form: 'value', kind: 'torque', symbol: 'T_e', meaning: 'stated full-throttle torque' },
    lower: { form: 'value', kind: 'torque', symbol: 'T_l', meaning: 'least torque' },
    upper: { form: 'value', kind: 'torque', symbol: 'T_u', meaning: 'greatest torque' },
    torqueAtPeakPower: { form: 'value', kind: 'torque', symbol: 'T_P', meaning: 'torque at the speed of peak power' },
    smooth: {
      form: 'value',
      kind: 'torque',
      symbol: 'T_s',
      meaning: 'smooth curve before it is held between the bounds',
    },
  },
  results: ['torque', 'lower', 'upper', 'torqueAtPeakPower'],
  steps: [
    { key: 'torqueAtPeakPower', is: div('peakPower', 'peakPowerAt'), says: 'Power over speed.' },
    {
      key: 'upper',
      is: fn('min', 'peakTorque', div('peakPower', 'angularSpeed')),
      says: 'Torque never passes its peak, and power never passes its own.',
    },
    {
      key: 'lower',
      is: choose(
        [
          branch(below, div(mul('peakTorque', 'angularSpeed'), 'peakTorqueAt')),
          branch(between, fn('max', 'torqueAtPeakPower', div(mul('peakTorque', 'peakTorqueAt'), 'angularSpeed'))),
        ],
        0,
      ),
      says: 'Below peak torque the straight line from standstill; between the peaks neither torque nor power has fallen yet; above peak power nothing is certain.',
    },
    {
      key: 'smooth',
      is: choose(
        [
          branch(below, mul('peakTorque', sub(1, div(pow(sub(1, div('angularSpeed', 'peakTorqueAt')), 2), 2)))),
          branch(between, cubic),
        ],
        mul(div('peakPower', 'angularSpeed'), sub(num(1), mul(2, pow(sub(div('angularSpeed', 'peakPowerAt'), 1), 2)))),
      ),
      says: 'Flat at the torque peak; at the power peak it falls as constant power does.',
    },
    {
      key: 'torque',
      is: fn('min', 'upper', fn('max', 'lower', 'smooth')),
      says: 'The smooth curve, held between the two bounds.',
    },
  ],
  sources: [
    {
      title: 'Bounds from the meaning of a peak, and a curve with the slopes that two peaks must have',
      how: 'derived',
    },
    {
      title: 'Vehicle Dynamics: Theory and Application (R. N. Jazar)',
      at: 'section 4.1, power of a spark-ignition engine as x + x² − x³ of its peak, which this curve repeats between the peaks',
      how: 'memory',
    },
  ],
  holds: [
    'One peak of torque and one of power, power peaking at the higher speed.',
    'Torque rises to its peak without a hollow.',
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { peakTorque, peakTorqueAt, peakPower, peakPowerAt, angularSpeed } = input;
    const torqueAtPeakPower = peakPower / peakPowerAt;
    if (!(peakPowerAt > peakTorqueAt))
      throw new MethodError(
        id,
        'peakPowerAt',
        `Speed of peak power must be above the speed of peak torque, ${peakTorqueAt} rad/s; read ${peakPowerAt} rad/s.`,
      );
    if (torqueAtPeakPower > peakTorque)
      throw new MethodError(
        id,
        'peakPower',
        `Peak power of ${peakPower} W at ${peakPowerAt} rad/s asks for ${torqueAtPeakPower} N·m, more than the peak torque of ${peakTorque} N·m.`,
      );
    if (peakTorque * peakTorqueAt > peakPower)
      throw new MethodError(
        id,
        'peakTorque',
        `Peak torque of ${peakTorque} N·m at ${peakTorqueAt} rad/s makes ${peakTorque * peakTorqueAt} W, more than the peak power of ${peakPower} W.`,
      );
    if (angularSpeed > HIGHEST * peakPowerAt)
      throw new MethodError(
        id,
        'angularSpeed',
        `Engine speed asked about: ${angularSpeed} rad/s is more than ${HIGHEST} times the speed of peak power, ${HIGHEST * peakPowerAt} rad/s.`,
      );
    const upper = Math.min(peakTorque, peakPower / angularSpeed);
    const span = peakPowerAt - peakTorqueAt;
    const x = angularSpeed / peakTorqueAt;
    let lower: number;
    let smooth: number;
    if (angularSpeed < peakTorqueAt) {
      lower = (peakTorque * angularSpeed) / peakTorqueAt;
      smooth = peakTorque * (1 - (1 - x) ** 2 / 2);
    } else if (angularSpeed <= peakPowerAt) {
      lower = Math.max(torqueAtPeakPower, (peakTorque * peakTorqueAt) / angularSpeed);
      smooth = hermite(
        (angularSpeed - peakTorqueAt) / span,
        span,
        peakTorque,
        torqueAtPeakPower,
        0,
        -torqueAtPeakPower / peakPowerAt,
      );
    } else {
      lower = 0;
      smooth = (peakPower / angularSpeed) * (1 - 2 * (angularSpeed / peakPowerAt - 1) ** 2);
    }
    return { torque: Math.min(upper, Math.max(lower, smooth)), lower, upper, torqueAtPeakPower, smooth };
  },
});
