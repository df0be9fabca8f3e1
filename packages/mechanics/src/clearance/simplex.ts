import type { Vec3 } from '@oddwheel/quantity/quantity';
import { cross, dot, minus } from '../numerics/vector.ts';

/** Weights of the corners of a simplex, each at least 0, together 1. */
export type Weights = readonly number[];

function onLine(a: Vec3, b: Vec3): Weights {
  const ab = minus(b, a);
  const square = dot(ab, ab);
  const part = square > 0 ? Math.min(1, Math.max(0, -dot(a, ab) / square)) : 0;
  return [1 - part, part];
}

function at(corners: readonly Vec3[], weights: Weights): Vec3 {
  let [x, y, z] = [0, 0, 0];
  corners.forEach((corner, k) => {
    const weight = weights[k] ?? 0;
    x += weight * corner[0];
    y += weight * corner[1];
    z += weight * corner[2];
  });
  return [x, y, z];
}

/** The nearest of several candidates, each a set of weights over all corners. */
function nearest(corners: readonly Vec3[], candidates: readonly Weights[]): Weights {
  let best = candidates[0] ?? [];
  let least = Number.POSITIVE_INFINITY;
  for (const weights of candidates) {
    const point = at(corners, weights);
    const square = dot(point, point);
    if (square < least) [best, least] = [weights, square];
  }
  return best;
}

/** Parts of a figure that the origin cuts off, as weights; none when it falls outside. Rounding may admit a foot outside a flat figure. */
function shares(parts: readonly number[]): Weights[] {
  const sum = parts.reduce((total, part) => total + part, 0);
  const weights = parts.map((part) => part / sum);
  return sum !== 0 && weights.every((weight) => weight >= 0) ? [weights] : [];
}

/** The foot of the origin by areas when it falls inside, else the nearest of the three sides; of both, what proves nearer. */
function onTriangle(a: Vec3, b: Vec3, c: Vec3): Weights {
  const normal = cross(minus(b, a), minus(c, a));
  const foot = shares([dot(cross(b, c), normal), dot(cross(c, a), normal), dot(cross(a, b), normal)]);
  const [ab, bc, ca] = [onLine(a, b), onLine(b, c), onLine(c, a)];
  return nearest(
    [a, b, c],
    [...foot, [ab[0] ?? 0, ab[1] ?? 0, 0], [0, bc[0] ?? 0, bc[1] ?? 0], [ca[1] ?? 0, 0, ca[0] ?? 0]],
  );
}

const volume = (a: Vec3, b: Vec3, c: Vec3): number => dot(a, cross(b, c));

/** The origin itself by volumes when it lies inside, else the nearest of the four faces; of both, what proves nearer. */
function onTetrahedron(a: Vec3, b: Vec3, c: Vec3, d: Vec3): Weights {
  const inside = shares([volume(b, c, d), -volume(a, c, d), volume(a, b, d), -volume(a, b, c)]);
  const [abc, abd, acd, bcd] = [onTriangle(a, b, c), onTriangle(a, b, d), onTriangle(a, c, d), onTriangle(b, c, d)];
  const of = (weights: Weights, k: number): number => weights[k] ?? 0;
  return nearest(
    [a, b, c, d],
    [
      ...inside,
      [of(abc, 0), of(abc, 1), of(abc, 2), 0],
      [of(abd, 0), of(abd, 1), 0, of(abd, 2)],
      [of(acd, 0), 0, of(acd, 1), of(acd, 2)],
      [0, of(bcd, 0), of(bcd, 1), of(bcd, 2)],
    ],
  );
}

/**
 * Weights of the point of a simplex nearest to the origin.
 * @param corners one to four points; they may coincide or lie flat
 */
export function nearestToOrigin(corners: readonly Vec3[]): Weights {
  const [a, b, c, d] = corners;
  if (a === undefined) throw new RangeError('A simplex has at least one corner; none was given.');
  if (b === undefined) return [1];
  if (c === undefined) return onLine(a, b);
  return d === undefined ? onTriangle(a, b, c) : onTetrahedron(a, b, c, d);
}
