import { MethodError } from '../method/method.ts';
import { type InLine, wrapped } from './arm.ts';

/** Where over the travel of an arm its chain is tightest. */
export type TightestAt = 'in line' | 'full rebound' | 'full bump' | 'everywhere alike';

/** Below this offset over arm length the centre distance does not change within rounding. */
const ON_PIVOT = 1e-12;

/**
 * The arm angle of the travel at which the centres are farthest apart, exactly: centre distance falls on both sides of the in-line angle.
 *
 * @param place the sprocket as seen from the pivot
 * @param armLength m
 * @param rebound one end of the travel, rad
 * @param bump other end of the travel, rad
 */
export function tightest(
  place: InLine,
  armLength: number,
  rebound: number,
  bump: number,
): { readonly at: TightestAt; readonly angle: number } {
  if (place.offset <= ON_PIVOT * armLength) return { at: 'everywhere alike', angle: rebound };
  const [low, high] = [Math.min(rebound, bump), Math.max(rebound, bump)];
  for (const turn of [0, 2 * Math.PI, -2 * Math.PI]) {
    const angle = place.inLineAngle + turn;
    if (angle >= low && angle <= high) return { at: 'in line', angle };
  }
  const off = (angle: number): number => Math.abs(wrapped(angle - place.inLineAngle));
  return off(rebound) <= off(bump) ? { at: 'full rebound', angle: rebound } : { at: 'full bump', angle: bump };
}

/**
 * @throws MethodError when arm angles neither rise nor fall throughout.
 */
export function refuseUnordered(method: string, input: string, angles: readonly number[]): void {
  const steps = angles.slice(1).map((angle, k) => Math.sign(angle - (angles[k] ?? Number.NaN)));
  if (steps.every((step) => step !== 0 && step === steps[0])) return;
  throw new MethodError(
    method,
    input,
    `Arm angles must rise or fall throughout, from full rebound to full bump; read ${angles.join(', ')} rad.`,
  );
}
