import { MethodError } from '@oddwheel/mechanics/method/method';
import { findMaximum } from '@oddwheel/mechanics/numerics/maximum';
import { cubicAt, monotoneCubic } from '@oddwheel/mechanics/numerics/monotone-cubic';
import { boundedCurve } from '@oddwheel/mechanics/vehicle/bounded-curve';
import type { Engine } from '../model/model.ts';
import type { EngineCurve } from './cases.ts';
import type { At } from './geometry/types.ts';

/** A slider at the end of its range lands within rounding of the curve's end. */
const ROUNDING = 1e-9;

/** Full-throttle curve of the engine at one corner; null where neither rows nor peaks are known. */
export function engineCurve(engine: Engine, at: At): EngineCurve | null {
  if (!engine.redline) return null;
  const redline = at(engine.redline);
  const idle = at(engine.idle);
  const measured = engine.curve ? rowsCurve(engine.curve.speeds, engine.curve.torques, redline) : null;
  const band = engine.torqueBand;
  const shape = measured ?? (engine.peaks && band ? peaksCurve(engine.peaks, at(band)) : null);
  return shape && { ...shape, idle, redline };
}

type Shape = Pick<EngineCurve, 'torqueAt' | 'peakTorque' | 'peakPower'>;

/** Measured rows: a monotone cubic through them, no further than its ends and the redline. */
function rowsCurve(speeds: readonly number[], torques: readonly number[], redline: number): Shape {
  const curve = monotoneCubic(speeds, torques);
  const first = speeds[0] ?? 0;
  const last = speeds.at(-1) ?? 0;
  const torqueAt = (speed: number): number | null => {
    const inside = Math.min(Math.max(speed, first), last);
    return Math.abs(inside - speed) <= ROUNDING * last ? cubicAt(curve, inside) : null;
  };
  const end = Math.min(last, redline);
  const within = speeds.filter((speed) => speed < end);
  const marks = [...within, end];
  const torqueOf = (speed: number) => cubicAt(curve, speed);
  // Between two rows the cubic is monotone, so torque peaks at a row; power may peak between rows.
  const peak = (value: (speed: number) => number, candidates: readonly number[]): number =>
    candidates.reduce((best, speed) => (value(speed) > value(best) ? speed : best), candidates[0] ?? end);
  const power = (speed: number) => torqueOf(speed) * speed;
  const between = marks.slice(1).map((high, k) => findMaximum(power, marks[k] ?? first, high));
  const atTorque = peak(torqueOf, marks);
  const atPower = peak(power, [...marks, ...between]);
  return {
    torqueAt,
    peakTorque: { speed: atTorque, torque: torqueOf(atTorque) },
    peakPower: { speed: atPower, torque: torqueOf(atPower) },
  };
}

/**
 * Two known peaks: torque at any other speed lies between bounds.
 * @param place 0 at the lower bound, ½ on the stated curve, 1 at the upper bound
 */
function peaksCurve(peaks: NonNullable<Engine['peaks']>, place: number): Shape {
  const given = {
    peakTorque: peaks.torque,
    peakTorqueAt: peaks.torqueAt,
    peakPower: peaks.power,
    peakPowerAt: peaks.powerAt,
  };
  const torqueAt = (angularSpeed: number): number | null => {
    try {
      const { torque, lower, upper } = boundedCurve.run({ ...given, angularSpeed });
      return place <= 0.5 ? lower + (torque - lower) * 2 * place : torque + (upper - torque) * (2 * place - 1);
    } catch (error) {
      if (error instanceof MethodError) return null;
      throw error;
    }
  };
  return {
    torqueAt,
    peakTorque: { speed: peaks.torqueAt, torque: peaks.torque },
    peakPower: { speed: peaks.powerAt, torque: peaks.power / peaks.powerAt },
  };
}
