import { KINDS, type Kind } from './kinds.ts';

declare const kindMark: unique symbol;

/**
 * A number in the SI unit of its kind. The mark exists for the type checker only: a plain number may be given where a
 * quantity is wanted, but a length cannot be given where a force is wanted.
 */
export type Quantity<K extends Kind> = number & { readonly [kindMark]?: K };

export type Length = Quantity<'length'>;
export type Angle = Quantity<'angle'>;
export type Speed = Quantity<'speed'>;
export type AngularSpeed = Quantity<'angularSpeed'>;
export type Torque = Quantity<'torque'>;
export type Power = Quantity<'power'>;
export type Force = Quantity<'force'>;
export type Mass = Quantity<'mass'>;

/** A point or vector in vehicle axes: x forward, y left, z up (ISO 8855:2011). */
export type Vec3 = readonly [x: number, y: number, z: number];

/**
 * Marks a number as a quantity in SI units.
 * @throws RangeError when the number is not finite, naming the kind.
 */
export function quantity<K extends Kind>(kind: K, si: number): Quantity<K> {
  if (!Number.isFinite(si)) throw new RangeError(`A ${KINDS[kind].name} must be a finite number, not ${si}.`);
  return si as Quantity<K>;
}
