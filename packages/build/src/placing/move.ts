import { dot } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Patch } from '../document/patch.ts';
import { writeLike } from './length-text.ts';
import type { Coordinate, Placed } from './types.ts';

/** Changes below a tenth of a micrometre are rounding. */
const NOTHING = 1e-7;

const set = ({ address }: Coordinate, value: string): Patch => ({ op: 'set', at: address, value });

function moved(coordinate: Coordinate, by: number): readonly Patch[] {
  if (Math.abs(by) < NOTHING) return [];
  const text = writeLike(coordinate.si + by, coordinate.text);
  return text === coordinate.text ? [] : [set(coordinate, text)];
}

/** Patches that move something; each length keeps the unit that it is typed in. Empty when nothing changes. */
export function movePatches(placed: Placed, by: Vec3): readonly Patch[] {
  const { station, points } = placed;
  if (station) return moved(station.coordinate, dot(by, station.along));
  return points.flatMap(({ coordinates }) => coordinates.flatMap((one, axis) => moved(one, by[axis] ?? 0)));
}

/** Words for a positive and a negative change along each vehicle axis (ISO 8855). */
const WAYS = [
  ['forward', 'back'],
  ['left', 'right'],
  ['up', 'down'],
] as const;

/** "12 mm up, 3 mm back"; "not moved" for none. */
export function wayWords(by: Vec3, show: (si: number) => string): string {
  const parts = WAYS.flatMap(([positive, negative], axis) => {
    const length = by[axis] ?? 0;
    return Math.abs(length) < NOTHING ? [] : [`${show(Math.abs(length))} ${length > 0 ? positive : negative}`];
  });
  return parts.length === 0 ? 'not moved' : parts.join(', ');
}
