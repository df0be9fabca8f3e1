import type { Vec3 } from '@oddwheel/quantity/quantity';

/** Scalar product. */
export function dot(a: Vec3, b: Vec3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/** Vector product. */
export function cross(a: Vec3, b: Vec3): Vec3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/** Length of a vector. */
export function norm(a: Vec3): number {
  return Math.sqrt(dot(a, a));
}

export function plus(a: Vec3, b: Vec3): Vec3 {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

export function minus(a: Vec3, b: Vec3): Vec3 {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

export function times(factor: number, a: Vec3): Vec3 {
  return [factor * a[0], factor * a[1], factor * a[2]];
}

/**
 * The vector of length one in the same direction.
 * @throws RangeError when the vector has no direction.
 */
export function unit(a: Vec3): Vec3 {
  const length = norm(a);
  if (!(length > 0)) throw new RangeError(`A direction needs a length, and [${a.join(', ')}] has none.`);
  return [a[0] / length, a[1] / length, a[2] / length];
}
