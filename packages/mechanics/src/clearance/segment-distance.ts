import type { Vec3 } from '@oddwheel/quantity/quantity';
import { dot, minus } from '../numerics/vector.ts';

const within = (part: number): number => Math.min(1, Math.max(0, part));

/** Where on two straight pieces the nearest points lie, as parts of their lengths from the first end. */
export interface Parts {
  readonly partA: number;
  readonly partB: number;
}

/**
 * Nearest points of two straight pieces in closed form; on parallel pieces one of many pairs. A piece may be a point.
 *
 * Source: least square of a quadratic of two parts, each held in 0..1 (derived).
 */
export function segmentParts(fromA: Vec3, toA: Vec3, fromB: Vec3, toB: Vec3): Parts {
  const [u, v, w] = [minus(toA, fromA), minus(toB, fromB), minus(fromA, fromB)];
  const [uu, uv, vv, uw, vw] = [dot(u, u), dot(u, v), dot(v, v), dot(u, w), dot(v, w)];
  if (uu === 0 && vv === 0) return { partA: 0, partB: 0 };
  if (uu === 0) return { partA: 0, partB: within(vw / vv) };
  if (vv === 0) return { partA: within(-uw / uu), partB: 0 };
  const square = uu * vv - uv * uv;
  // The foot on the other line is held on its piece, and the foot of that point on the first piece in turn.
  const free = square > 1e-14 * uu * vv ? within((uv * vw - vv * uw) / square) : 0;
  const partB = within((uv * free + vw) / vv);
  return { partA: within((uv * partB - uw) / uu), partB };
}
