/** Where a new shaft stands when a stage is put into the path: a first place, to be drawn to size in the layout. */
import { cross, dot, minus, norm, plus, times, unit } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Seat, Shaft } from '../model/model.ts';
import { chainSize } from '../model/rows.ts';

/** The sizes of a new stage that its place hangs on. */
export interface StageSize {
  readonly kind: string;
  readonly driver: number;
  readonly driven: number;
  /** Chain size by key. */
  readonly chain: string | null;
  /** Metres; null where it is not known. */
  readonly pitch: number | null;
  readonly module: number | null;
}

export interface ShaftPlace {
  readonly origin: Vec3;
  readonly direction: Vec3;
  /** Stations of the seats of the new and of the old stage, and of two bearings. */
  readonly newStage: number;
  readonly oldStage: number;
  readonly bearings: readonly [number, number];
}

/** Module that gears are placed by while theirs is not known. */
const MODULE = 0.004;
/** Between parts that sit side by side on a shaft, and from the outermost one to the end. */
const SIDE = 0.05;
const END = 0.02;
const JOINT = 0.06;
const NEARLY = 0.01;

const isParallel = (a: Vec3, b: Vec3): boolean => norm(cross(a, b)) < NEARLY;

/** Sum of the pitch radii, and for gears that are in mesh the centre distance. */
function radii(size: StageSize): number {
  const { kind, driver, driven } = size;
  if (kind === 'spur') return ((driver + driven) * (size.module ?? MODULE)) / 2;
  const pitch = size.chain === null ? (size.pitch ?? MODULE * Math.PI) : chainSize(size.chain).pitch;
  return ((driver + driven) * pitch) / (2 * Math.PI);
}

/** A unit vector square to `axis`: `wish` as far as it is square, else left, else forward. */
function square(axis: Vec3, wish: Vec3): Vec3 {
  for (const candidate of [wish, [0, 1, 0], [1, 0, 0], [0, 0, 1]] as const) {
    const part = minus(candidate, times(dot(candidate, axis), axis));
    if (norm(part) > 0.5) return unit(part);
  }
  return axis;
}

/** +1 when the seat stands at the end of its shaft that the direction points to. */
function outward(shaft: Shaft, seat: Seat): 1 | -1 {
  const others = shaft.seats.filter((one) => one.id !== seat.id);
  const middle = others.reduce((sum, one) => sum + one.station, 0) / Math.max(1, others.length);
  return others.length === 0 || seat.station >= middle ? 1 : -1;
}

/** A point on the new shaft's axis where the new stage sits, and the shaft's direction. */
function axisOf(
  size: StageSize,
  kept: Shaft,
  keptSeat: Seat,
  other: Shaft,
  otherSeat: Seat,
): { at: Vec3; along: Vec3 } {
  const axis = unit(kept.direction);
  if (size.kind === 'coupling' || size.kind === 'unit')
    return { at: plus(keptSeat.at, times(outward(kept, keptSeat) * JOINT, axis)), along: axis };
  if (size.kind === 'bevel') {
    const along = square(axis, unit(other.direction));
    const scale = (size.module ?? MODULE) / 2;
    const apex = plus(keptSeat.at, times(outward(kept, keptSeat) * size.driven * scale, axis));
    return { at: plus(apex, times(size.driver * scale, along)), along };
  }
  const toOther = minus(otherSeat.at, keptSeat.at);
  const across = minus(toOther, times(dot(toOther, axis), axis));
  const parallel = isParallel(axis, unit(other.direction));
  // Beside a bevel pair the new shaft moves along the other one, so that the axes still meet.
  const way =
    parallel && norm(across) > NEARLY ? unit(across) : square(axis, parallel ? [0, 0, 1] : unit(other.direction));
  const apart = size.kind === 'spur' ? radii(size) : Math.max(1.5 * radii(size), parallel ? norm(across) / 2 : 0);
  return { at: plus(keptSeat.at, times(apart, way)), along: axis };
}

/**
 * Place of a new shaft between two others: in line with the end that the new stage takes over, half-way to the other where both are
 * parallel, and at the new gears' own distance where they mesh.
 *
 * @param kept shaft whose seat the new stage takes over
 * @param other shaft at the far end of the stage that moves over to the new shaft
 */
export function placeShaft(size: StageSize, kept: Shaft, keptSeat: Seat, other: Shaft, otherSeat: Seat): ShaftPlace {
  const { at, along } = axisOf(size, kept, keptSeat, other, otherSeat);
  const inLine = isParallel(along, unit(other.direction))
    ? dot(minus(otherSeat.at, at), along)
    : dot(minus(keptSeat.at, at), along);
  const old = Math.abs(inLine) < SIDE ? SIDE : inLine;
  const [low, high] = [Math.min(0, old), Math.max(0, old)];
  const between = high - low >= 2.4 * SIDE;
  const bearings = between
    ? ([low + (high - low) / 4, high - (high - low) / 4] as const)
    : ([low - 0.8 * SIDE, high + 0.8 * SIDE] as const);
  const start = Math.min(low, bearings[0]) - END;
  return {
    origin: plus(at, times(start, along)),
    direction: along,
    newStage: -start,
    oldStage: old - start,
    bearings: [bearings[0] - start, bearings[1] - start],
  };
}
