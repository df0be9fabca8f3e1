import type { Solid } from '@oddwheel/mechanics/clearance/solid';
import { minus, plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Suspension } from '../../model/model.ts';

/** Widest step of the arm between two places that are tried: half of it leaves less than a tenth of a millimetre on an arm of 0.65 m. */
const STEP = Math.PI / 90;

/** A swinging arm in motion. */
export interface Arm {
  /** Places that are tried: as drawn first, both ends, then those between. */
  readonly angles: readonly number[];
  /** A point that the arm carries, at an angle up from where it is drawn. */
  readonly turn: (angle: number, point: Vec3) => Vec3;
  readonly pivot: Vec3;
  /** Distance of a point from the axis of the pivot. */
  readonly fromPivot: (point: Vec3) => number;
}

/**
 * The arm about the cross axis through its pivot.
 * @param axle the driven wheel's place: whether the arm leads or trails says which way is up
 */
export function armOf({ pivot, bump, rebound }: Suspension, axle: Vec3): Arm {
  const lift = axle[0] <= pivot[0] ? 1 : -1;
  const between: number[] = [];
  for (let k = -Math.ceil(rebound / STEP); k <= Math.ceil(bump / STEP); k += 1) {
    const angle = k * STEP;
    if (k !== 0 && angle > -rebound && angle < bump) between.push(angle);
  }
  const ends = [bump, -rebound].filter((angle) => angle !== 0);
  return {
    pivot,
    angles: [0, ...ends, ...between],
    turn: (angle, point) => {
      if (angle === 0) return point;
      const [x, y, z] = minus(point, pivot);
      const [c, s] = [Math.cos(lift * angle), Math.sin(lift * angle)];
      return plus(pivot, [x * c + z * s, y, z * c - x * s]);
    },
    fromPivot: (point) => Math.hypot(point[0] - pivot[0], point[2] - pivot[2]),
  };
}

/** A box as a bar along its longest side, so that it can stand at an angle; a box that is but a point stays one. */
function asBar(low: Vec3, high: Vec3): Solid {
  const [middle, size] = [times(0.5, plus(low, high)), minus(high, low)];
  const longest = size.indexOf(Math.max(...size));
  const [height, width] = [(longest + 1) % 3, (longest + 2) % 3];
  const axis = (k: number): Vec3 => [k === 0 ? 1 : 0, k === 1 ? 1 : 0, k === 2 ? 1 : 0];
  const half = (k: number): number => (size[k] ?? 0) / 2;
  if (half(longest) === 0) return { shape: 'capsule', from: low, to: high, radius: 0 };
  const reach = times(half(longest), axis(longest));
  return {
    shape: 'bar',
    from: minus(middle, reach),
    to: plus(middle, reach),
    across: axis(height),
    halfHeight: half(height),
    halfWidth: half(width),
    sag: 0,
  };
}

/** A solid that the arm carries, at an angle. */
export function turned(solid: Solid, angle: number, arm: Arm): Solid {
  if (angle === 0) return solid;
  if (solid.shape === 'box') return turned(asBar(solid.low, solid.high), angle, arm);
  const [from, to] = [arm.turn(angle, solid.from), arm.turn(angle, solid.to)];
  if (solid.shape !== 'bar') return { ...solid, from, to };
  return { ...solid, from, to, across: minus(arm.turn(angle, plus(solid.from, solid.across)), from) };
}
