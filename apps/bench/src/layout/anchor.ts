import { pointOf } from '@oddwheel/build/placing/point';
import type { Placed } from '@oddwheel/build/placing/types';
import { dot, plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { MoveView } from './use-move.ts';

/** Where a thing stands in vehicle axes, m: a seat at its station, all else in the middle of its points. */
function middleOf({ points, station }: Placed): Vec3 {
  if (station) return plus(station.origin, times(station.coordinate.si, station.along));
  const sum = points.map(pointOf).reduce(plus, [0, 0, 0]);
  return times(1 / Math.max(1, points.length), sum);
}

/** The same in a view after a move, mm of the view. */
export function placeOf(placed: Placed, view: MoveView, by: Vec3): readonly [number, number] {
  const at = times(1000, plus(middleOf(placed), by));
  return [dot(at, view.right), dot(at, view.up)];
}
