import { MethodError, type Params } from '../method/method.ts';
import { cubicAt } from '../numerics/monotone-cubic.ts';
import { ABOVE_ZERO } from '../numerics/refuse.ts';
import { type TorqueCurve, torqueCurveThrough } from './curve.ts';

/** Engine, gears and wheel of a drive. */
export const DRIVE_INPUTS = {
  speeds: {
    form: 'list',
    kind: 'angularSpeed',
    symbol: 'ω',
    meaning: 'measured engine speeds, rising; the last is the highest allowed',
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
  ratios: {
    form: 'list',
    kind: 'ratio',
    symbol: 'i',
    meaning: 'engine speed over wheel speed in each gear, first gear first',
    range: ABOVE_ZERO,
    atLeast: 1,
  },
  efficiency: {
    form: 'value',
    kind: 'fraction',
    symbol: 'η',
    meaning: 'efficiency from engine to wheel',
    range: { min: 0.01, max: 1 },
  },
  rollingRadius: {
    form: 'value',
    kind: 'length',
    symbol: 'r',
    meaning: 'rolling radius of the driven wheel',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

/** A drive, ready to be evaluated many times. */
export interface Drive {
  readonly curve: TorqueCurve;
  readonly lowest: number;
  readonly highest: number;
}

/**
 * The full-throttle curve of a drive.
 * @throws MethodError when lists differ in length, engine speeds do not rise, or gears do not fall.
 */
export function driveOf(
  method: string,
  input: {
    readonly speeds: readonly number[];
    readonly torques: readonly number[];
    readonly ratios: readonly number[];
  },
): Drive {
  const { speeds, torques, ratios } = input;
  if (torques.length !== speeds.length)
    throw new MethodError(
      method,
      'torques',
      `Full-throttle torque at each speed: ${torques.length} entries read; as many as speeds, ${speeds.length}, are accepted.`,
    );
  const rises = speeds.findIndex((speed, k) => k > 0 && speed <= (speeds[k - 1] as number));
  if (rises >= 0)
    throw new MethodError(
      method,
      'speeds',
      `Measured engine speeds, entry ${rises + 1}: ${speeds[rises]} rad/s is not above ${speeds[rises - 1]} rad/s of the entry before.`,
    );
  const falls = ratios.findIndex((ratio, k) => k > 0 && ratio >= (ratios[k - 1] as number));
  if (falls >= 0)
    throw new MethodError(
      method,
      'ratios',
      `Ratio of each gear, entry ${falls + 1}: ${ratios[falls]} is not below ${ratios[falls - 1]} of the gear before.`,
    );
  return { curve: torqueCurveThrough(speeds, torques), lowest: speeds[0] as number, highest: speeds.at(-1) as number };
}

/** Full-throttle torque, N·m, at a speed that may lie a rounding outside the curve. */
export function torqueAt({ curve, lowest, highest }: Drive, angularSpeed: number): number {
  return cubicAt(curve.points, Math.min(highest, Math.max(lowest, angularSpeed)));
}
