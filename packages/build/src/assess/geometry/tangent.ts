import { cross, dot, minus, norm, plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Action } from './types.ts';

/** Differences of coordinates below this are rounding, not places. */
const NOISE = 1e-12;

/** Two parallel axes seen along them: line of centres, offset of the planes. */
export interface ParallelPlace {
  readonly centreDistance: number;
  /** Unit vector from driver to driven, square to the axes; null when the axes coincide. */
  readonly u: Vec3 | null;
  readonly planeOffset: number;
}

/**
 * Places two seats on parallel axes.
 * @param direction unit direction of the driver's shaft
 */
export function parallelPlace(driver: Vec3, driven: Vec3, direction: Vec3): ParallelPlace {
  const between = minus(driven, driver);
  const along = dot(between, direction);
  const across = minus(between, times(along, direction));
  const centreDistance = norm(across);
  return {
    centreDistance,
    u: centreDistance > 0 ? times(1 / centreDistance, across) : null,
    planeOffset: Math.abs(along) < NOISE ? 0 : Math.abs(along),
  };
}

/**
 * Actions of an open chain or belt per newton metre through each of its wheels, with the pull along the true tangent of the tight span.
 * The tight span is the one that runs onto the driver; it pulls driver and driven towards each other.
 * Derivation: with ω̂ the driver's sense of rotation and n = ω̂ × u, the tight span lies on the +n side; its outward normal is
 * e = ((R₁ − R₂)/C) u + √(1 − ((R₁ − R₂)/C)²) n, and the pull on the driver acts at R₁e along the span towards the driven wheel.
 * Moments are about the seat points.
 */
export function tangentActions(
  u: Vec3,
  turning: Vec3,
  centreDistance: number,
  radiusDriver: number,
  radiusDriven: number,
): { readonly from: Action; readonly to: Action } {
  const n = cross(turning, u);
  const s = (radiusDriver - radiusDriven) / centreDistance;
  const c = Math.sqrt(1 - s * s);
  const e = plus(times(s, u), times(c, n));
  const t = minus(times(c, u), times(s, n));
  const onDriver = times(1 / radiusDriver, t);
  const onDriven = times(-1 / radiusDriven, t);
  return {
    from: { force: onDriver, moment: cross(times(radiusDriver, e), onDriver) },
    to: { force: onDriven, moment: cross(times(radiusDriven, e), onDriven) },
  };
}

/** A torque alone, per newton metre: what passes where the size of the part is not known. */
export function torqueAlone(fromTurning: Vec3, toTurning: Vec3): { readonly from: Action; readonly to: Action } {
  const nothing: Vec3 = [0, 0, 0];
  return { from: { force: nothing, moment: times(-1, fromTurning) }, to: { force: nothing, moment: toTurning } };
}
