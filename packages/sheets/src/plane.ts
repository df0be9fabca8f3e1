import { cross, dot } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Bounds, Point } from './drawing.ts';

/** The plane of a view: `right` and `up` on the page, `towards` at whoever looks. */
export interface Plane {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly towards: Vec3;
}

export const plane = (right: Vec3, up: Vec3): Plane => ({ right, up, towards: cross(right, up) });

// Vehicle axes: x forward, y left, z up. Third angle: each view stands on the side from which it is seen.
export const FROM_THE_LEFT = plane([-1, 0, 0], [0, 0, 1]);
export const FROM_ABOVE = plane([-1, 0, 0], [0, -1, 0]);
export const FROM_BEHIND = plane([0, -1, 0], [0, 0, 1]);
export const FROM_AHEAD = plane([0, 1, 0], [0, 0, 1]);

/** A point of space on the page. */
export const onPage = ({ right, up }: Plane, at: Vec3): Point => [dot(at, right), dot(at, up)];

export const depth = ({ towards }: Plane, at: Vec3): number => dot(at, towards);

/** Nothing drawn yet. */
export const NO_BOUNDS: Bounds = {
  left: Number.POSITIVE_INFINITY,
  right: Number.NEGATIVE_INFINITY,
  bottom: Number.POSITIVE_INFINITY,
  top: Number.NEGATIVE_INFINITY,
};

export function around(points: readonly Point[], start: Bounds = NO_BOUNDS): Bounds {
  let { left, right, bottom, top } = start;
  for (const [x, y] of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    bottom = Math.min(bottom, y);
    top = Math.max(top, y);
  }
  return { left, right, bottom, top };
}

export const joined = (all: readonly Bounds[]): Bounds =>
  around(
    all.flatMap(({ left, right, bottom, top }): Point[] => [
      [left, bottom],
      [right, top],
    ]),
  );

export const overlap = (a: Bounds, b: Bounds): boolean =>
  a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top;
