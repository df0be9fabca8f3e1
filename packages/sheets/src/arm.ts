import type { Body, Model, Shaft, Suspension } from '@oddwheel/build/model/model';
import { minus, plus } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';

const ON_ARM: Body = 'swinging arm';

export const isOnArm = (shaft: Shaft): boolean => shaft.seats.some((seat) => seat.body === ON_ARM);

/** Turns a direction about the cross axis, positive by the right-hand rule about +y. */
const turned = ([x, y, z]: Vec3, angle: number): Vec3 => {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return [x * c + z * s, y, z * c - x * s];
};

/** Where a point that moves with the arm stands. */
export type OnArm = (at: Vec3) => Vec3;

/**
 * Places what a swinging arm carries at an angle.
 * @param lift rad from where the wheel is drawn, positive with the wheel up
 */
export function armMove(suspension: Suspension, wheel: Vec3, lift: number): OnArm {
  // A wheel behind its pivot rises with a positive turn about +y, one ahead of it with a negative.
  const angle = wheel[0] <= suspension.pivot[0] ? lift : -lift;
  return (at) => plus(suspension.pivot, turned(minus(at, suspension.pivot), angle));
}

/** The build with its arm at an angle; the build itself where it has no arm, or nothing sits on it. */
export function modelAtArm(model: Model, lift: number): { readonly model: Model; readonly onArm: OnArm | null } {
  const { suspension } = model;
  const axle = model.shafts.at(-1);
  const wheel = axle?.seats.find((seat) => seat.kind === 'wheel') ?? axle?.seats[0];
  if (!suspension || !wheel || lift === 0 || !model.shafts.some(isOnArm)) return { model, onArm: null };
  const move = armMove(suspension, wheel.at, lift);
  const origin = move([0, 0, 0]);
  const shafts = model.shafts.map(
    (shaft): Shaft =>
      isOnArm(shaft)
        ? {
            ...shaft,
            origin: move(shaft.origin),
            direction: minus(move(shaft.direction), origin),
            seats: shaft.seats.map((seat) => ({ ...seat, at: move(seat.at) })),
          }
        : shaft,
  );
  return { model: { ...model, shafts }, onArm: move };
}
