import { cross, dot, norm, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Seat, SeatRef, Shaft } from '../../model/model.ts';
import { torqueAlone } from './tangent.ts';
import type { Action } from './types.ts';

/** Angle between two shafts taken as lines, 0 to a right angle; an arc tangent keeps its figures near parallel. */
export function lineAngle(a: Vec3, b: Vec3): number {
  return Math.atan2(norm(cross(a, b)), Math.abs(dot(a, b)));
}

/** Beyond this angle sprockets, pulleys or spur gears no longer share a plane, and nothing of the stage is computed. */
export const MOST_SKEW = Math.PI / 36;

/** A seat that the references pass has found to exist. */
export function seatOf(shaft: Shaft, ref: SeatRef): Seat {
  const seat = shaft.seats.find((s) => s.id === ref.seat);
  if (!seat) throw new Error(`${shaft.address} has no seat ${ref.seat}.`);
  return seat;
}

/** Unit vector about which a shaft turns, by the right-hand rule. */
export const turning = (shaft: Shaft, sense: 1 | -1): Vec3 => times(sense, shaft.direction);

export interface Actions {
  readonly from: Action;
  readonly to: Action;
  readonly forcesKnown: boolean;
}

/** Only the torque passes: the size of the part is not known. An open relation counts as the same sense. */
export function onlyTorque(from: Shaft, to: Shaft, relation: 1 | -1 | null): (sense: 1 | -1) => Actions {
  return (sense) => ({
    ...torqueAlone(turning(from, sense), turning(to, sense === (relation ?? 1) ? 1 : -1)),
    forcesKnown: false,
  });
}
