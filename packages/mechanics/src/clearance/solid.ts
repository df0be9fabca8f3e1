import type { Vec3 } from '@oddwheel/quantity/quantity';
import { cross, dot, minus, norm, plus, times, unit } from '../numerics/vector.ts';

/** All points within `radius` of a straight piece; a ball when both ends are the same point. Lengths in m. */
export interface Capsule {
  readonly shape: 'capsule';
  readonly from: Vec3;
  readonly to: Vec3;
  readonly radius: number;
}

/**
 * Cylinder about the axis between two end faces: shaft, gear, sprocket, and with a rounded edge a tyre. The rounding lies inside the given size.
 */
export interface Cylinder {
  readonly shape: 'cylinder';
  readonly from: Vec3;
  readonly to: Vec3;
  readonly radius: number;
  /** Radius of the rounding of both edges, at most the radius and half the width; 0 for a sharp edge. */
  readonly rounding: number;
}

/** Frustum of a cone between two end faces; one radius may be 0. */
export interface Frustum {
  readonly shape: 'frustum';
  readonly from: Vec3;
  readonly to: Vec3;
  readonly radiusFrom: number;
  readonly radiusTo: number;
}

/** Box along the axes of the vehicle, between its two far corners. */
export interface Box {
  readonly shape: 'box';
  readonly low: Vec3;
  readonly high: Vec3;
}

/**
 * Bar of rectangular section at any angle: the straight span of a chain, a box that turns with an arm. With a sag its middle swings that far to
 * either side across, and the envelope is the hull of all its places.
 */
export interface Bar {
  readonly shape: 'bar';
  readonly from: Vec3;
  readonly to: Vec3;
  /** Direction in which the height counts; only its part square to the bar matters. */
  readonly across: Vec3;
  readonly halfHeight: number;
  readonly halfWidth: number;
  readonly sag: number;
}

/** A convex envelope that a part, still or moving, keeps within. */
export type Solid = Capsule | Cylinder | Frustum | Box | Bar;

/** A convex core, and a margin by which it is grown all round. */
export interface Grown {
  /** The point of the core farthest along a direction, which need not have length one. */
  readonly support: (direction: Vec3) => Vec3;
  /** A point of the core. */
  readonly inside: Vec3;
  readonly margin: number;
}

function refuse(part: string, read: unknown, accepted: string): never {
  throw new RangeError(`${part}: ${JSON.stringify(read)} read; ${accepted} is accepted.`);
}

function checkPoint(part: string, point: Vec3): void {
  if (point.length !== 3 || !point.every(Number.isFinite)) refuse(part, point, 'a point of three finite coordinates');
}

function checkSize(part: string, size: number): void {
  if (!(Number.isFinite(size) && size >= 0)) refuse(part, size, 'a finite length of at least 0 m');
}

interface Axis {
  readonly length: number;
  readonly along: Vec3;
  /** Two directions square to the axis and to each other, of length one. */
  readonly across: readonly [Vec3, Vec3];
}

/** A direction of length one square to another: from the coordinate axis that lies farthest off it. */
function squareTo(along: Vec3): Vec3 {
  const [x, y, z] = along.map(Math.abs) as [number, number, number];
  const off: Vec3 = x <= y && x <= z ? [1, 0, 0] : y <= z ? [0, 1, 0] : [0, 0, 1];
  return unit(cross(along, off));
}

function axisOf(part: string, from: Vec3, to: Vec3): Axis {
  checkPoint(`${part}, from`, from);
  checkPoint(`${part}, to`, to);
  const line = minus(to, from);
  const length = norm(line);
  if (!(length > 0)) refuse(`${part}, to`, to, 'an end face apart from the other');
  const along = times(1 / length, line);
  const first = squareTo(along);
  return { length, along, across: [first, cross(along, first)] };
}

/** The point of a disc farthest along a direction; built from two directions in its plane, so that rounding cannot lift it out. */
function rim(centre: Vec3, [first, second]: Axis['across'], radius: number, direction: Vec3): Vec3 {
  const [x, y] = [dot(direction, first), dot(direction, second)];
  const length = Math.hypot(x, y);
  if (!(length > 0)) return centre;
  return plus(centre, plus(times((radius * x) / length, first), times((radius * y) / length, second)));
}

function farther(direction: Vec3, a: Vec3, b: Vec3): Vec3 {
  return dot(minus(a, b), direction) >= 0 ? a : b;
}

function grownCapsule({ from, to, radius }: Capsule): Grown {
  checkPoint('Capsule, from', from);
  checkPoint('Capsule, to', to);
  checkSize('Capsule, radius', radius);
  return { support: (direction) => farther(direction, to, from), inside: from, margin: radius };
}

function grownCylinder({ from, to, radius, rounding }: Cylinder): Grown {
  const { length, along, across } = axisOf('Cylinder', from, to);
  checkSize('Cylinder, radius', radius);
  checkSize('Cylinder, rounding', rounding);
  const most = Math.min(radius, length / 2);
  if (rounding > most) refuse('Cylinder, rounding', rounding, `at most ${most} m, the radius and half the width`);
  const [near, far] = [plus(from, times(rounding, along)), minus(to, times(rounding, along))];
  const core = radius - rounding;
  return {
    support: (direction) => rim(farther(direction, far, near), across, core, direction),
    inside: near,
    margin: rounding,
  };
}

function grownFrustum({ from, to, radiusFrom, radiusTo }: Frustum): Grown {
  const { across } = axisOf('Frustum', from, to);
  checkSize('Frustum, radiusFrom', radiusFrom);
  checkSize('Frustum, radiusTo', radiusTo);
  return {
    support: (direction) =>
      farther(direction, rim(to, across, radiusTo, direction), rim(from, across, radiusFrom, direction)),
    inside: from,
    margin: 0,
  };
}

function grownBox({ low, high }: Box): Grown {
  checkPoint('Box, low', low);
  checkPoint('Box, high', high);
  if (!(low[0] <= high[0] && low[1] <= high[1] && low[2] <= high[2]))
    refuse('Box, high', high, 'a corner that is nowhere below the low corner');
  return {
    support: ([x, y, z]) => [x >= 0 ? high[0] : low[0], y >= 0 ? high[1] : low[1], z >= 0 ? high[2] : low[2]],
    inside: low,
    margin: 0,
  };
}

function grownBar({ from, to, across, halfHeight, halfWidth, sag }: Bar): Grown {
  const { along } = axisOf('Bar', from, to);
  checkPoint('Bar, across', across);
  checkSize('Bar, halfHeight', halfHeight);
  checkSize('Bar, halfWidth', halfWidth);
  checkSize('Bar, sag', sag);
  const side = cross(along, across);
  if (!(norm(side) > 0)) refuse('Bar, across', across, 'a direction that is not the bar’s own');
  const wide = unit(side);
  const high = cross(wide, along);
  const middle = times(0.5, plus(from, to));
  return {
    support: (direction) => {
      const [up, aside] = [dot(direction, high), dot(direction, wide)];
      const end = farther(direction, to, from);
      const swung = sag > 0 ? farther(direction, plus(middle, times(up >= 0 ? sag : -sag, high)), end) : end;
      return plus(
        swung,
        plus(times(up >= 0 ? halfHeight : -halfHeight, high), times(aside >= 0 ? halfWidth : -halfWidth, wide)),
      );
    },
    inside: from,
    margin: 0,
  };
}

/**
 * A solid as a core and a margin.
 * @throws RangeError naming the measure that is wrong, what was read and what is accepted.
 */
export function grown(solid: Solid): Grown {
  switch (solid.shape) {
    case 'capsule':
      return grownCapsule(solid);
    case 'cylinder':
      return grownCylinder(solid);
    case 'frustum':
      return grownFrustum(solid);
    case 'box':
      return grownBox(solid);
    case 'bar':
      return grownBar(solid);
  }
}
