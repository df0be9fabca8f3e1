import type { Model, Shaft } from '@oddwheel/build/model/model';
import { dot } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Measure } from './dimensions.ts';
import { sizeText } from './lettering.ts';
import { onPage, type Plane } from './plane.ts';
import { inMm } from './shaft-solids.ts';

const PARALLEL = 1 - 1e-6;
const AXES: readonly Vec3[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

const isAlong = (shaft: Shaft, axis: 0 | 1 | 2): boolean =>
  Math.abs(dot(shaft.direction, AXES[axis] ?? [0, 0, 0])) > PARALLEL;

/** A place along one vehicle axis to be dimensioned from the wheel's centre. */
interface Place {
  readonly of: string;
  readonly at: Vec3;
}

/**
 * What is dimensioned along a vehicle axis, each once: the axes of shafts that don't lie along it, and the planes of
 * chains, belts and spur pairs square to it.
 */
export function placesAlong(model: Model, axis: 0 | 1 | 2): readonly Place[] {
  const shafts = model.shafts
    .filter((shaft) => !isAlong(shaft, axis))
    .map((shaft): Place => ({ of: shaft.address, at: inMm(shaft.origin) }));
  const planes = model.stages.flatMap((stage, k): Place[] => {
    const shaft = model.shafts[k];
    if (!shaft || !isAlong(shaft, axis) || !['chain', 'belt', 'spur'].includes(stage.kind)) return [];
    const seat = shaft.seats.find(({ id }) => id === stage.from.seat);
    return seat ? [{ of: seat.address, at: inMm(seat.at) }] : [];
  });
  return [...shafts, ...planes];
}

/** Dimensions from the wheel's centre along a vehicle axis, in a view. */
export function measuresAlong(model: Model, axis: 0 | 1 | 2, wheel: Vec3, plane: Plane): readonly Measure[] {
  return placesAlong(model, axis).map(({ of, at }) => ({
    of,
    from: onPage(plane, wheel),
    to: onPage(plane, at),
    text: sizeText(model, Math.abs(at[axis] - wheel[axis])),
  }));
}
