import { findMaximum } from '../numerics/maximum.ts';
import { cubicAt, type MonotoneCubic, monotoneCubic } from '../numerics/monotone-cubic.ts';

/** Full-throttle torque over speed, ready to be evaluated many times, with its two peaks. */
export interface TorqueCurve {
  /** N·m over rad/s. */
  readonly points: MonotoneCubic;
  readonly peakTorque: number;
  readonly peakTorqueAt: number;
  readonly peakPower: number;
  readonly peakPowerAt: number;
}

/** Places looked at in each span before the peak is closed in on. */
const LOOKS = 16;

/** Where a function over the curve's speeds is greatest: the best of many places, then closed in on between its neighbours. */
function peakAt(speeds: readonly number[], f: (speed: number) => number): number {
  const places: number[] = [];
  for (let k = 0; k + 1 < speeds.length; k++) {
    const [from, to] = [speeds[k] as number, speeds[k + 1] as number];
    for (let look = 0; look < LOOKS; look++) places.push(from + ((to - from) * look) / LOOKS);
  }
  places.push(speeds.at(-1) as number);
  let best = 0;
  let most = Number.NEGATIVE_INFINITY;
  places.forEach((place, k) => {
    const value = f(place);
    if (value <= most) return;
    best = k;
    most = value;
  });
  const low = places[Math.max(0, best - 1)] as number;
  const high = places[Math.min(places.length - 1, best + 1)] as number;
  const found = findMaximum(f, low, high);
  return f(found) > most ? found : (places[best] as number);
}

/** Curves by their speeds, then torques: rows do not change, and one engine is asked about many times. */
const KNOWN = new WeakMap<readonly number[], WeakMap<readonly number[], TorqueCurve>>();

/**
 * Full-throttle curve through measured rows.
 *
 * @param speeds rad/s, rising
 * @param torques N·m, one for each speed
 * @throws RangeError naming the row at fault.
 */
export function torqueCurveThrough(speeds: readonly number[], torques: readonly number[]): TorqueCurve {
  const known = KNOWN.get(speeds) ?? new WeakMap<readonly number[], TorqueCurve>();
  KNOWN.set(speeds, known);
  const curve = known.get(torques) ?? curveThrough(speeds, torques);
  known.set(torques, curve);
  return curve;
}

function curveThrough(speeds: readonly number[], torques: readonly number[]): TorqueCurve {
  const points = monotoneCubic(speeds, torques);
  const torque = (speed: number): number => cubicAt(points, speed);
  const peakTorqueAt = peakAt(speeds, torque);
  const peakPowerAt = peakAt(speeds, (speed) => torque(speed) * speed);
  return {
    points,
    peakTorque: torque(peakTorqueAt),
    peakTorqueAt,
    peakPower: torque(peakPowerAt) * peakPowerAt,
    peakPowerAt,
  };
}
