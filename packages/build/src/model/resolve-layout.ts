import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { BuildFile } from '../schema/build-file.ts';
import { pointerKey } from '../schema/describe.ts';
import type { Adjuster, Suspension, Vehicle } from './model.ts';
import { type Reader, typedNumber, value } from './value.ts';

type Point = { readonly x: string; readonly y: string; readonly z: string };

export const lengthOrNull = (text: string | undefined): number | null =>
  text === undefined ? null : typedNumber('length', text);

export const point = (p: Point): Vec3 => [
  typedNumber('length', p.x),
  typedNumber('length', p.y),
  typedNumber('length', p.z),
];

export function unitVector(d: readonly [number, number, number]): Vec3 {
  const length = Math.hypot(d[0], d[1], d[2]);
  return [d[0] / length, d[1] / length, d[2] / length];
}

export function resolveVehicle(reader: Reader, file: BuildFile['brief']['vehicle']): Vehicle {
  const read = (key: string) => value(reader, `/brief/vehicle/${key}`, file, key, 'Vehicle');
  return {
    mass: read('mass'),
    payload: read('payload'),
  };
}

export function resolveSuspension(file: BuildFile['brief']['suspension']): Suspension | null {
  if (!file) return null;
  return {
    address: '/brief/suspension',
    pivot: point(file.pivot),
    bump: typedNumber('angle', file.bump),
    rebound: typedNumber('angle', file.rebound),
  };
}

export function resolveAdjusters(file: BuildFile['path']['adjusters']): readonly Adjuster[] {
  return Object.entries(file ?? {}).map(
    ([id, adjuster]): Adjuster => ({
      id,
      address: `/path/adjusters/${pointerKey(id)}`,
      name: adjuster.name,
      sets: adjuster.sets,
      of: adjuster.of,
      moves: adjuster.moves,
      along: unitVector(adjuster.along),
      travel: typedNumber('length', adjuster.travel),
    }),
  );
}
