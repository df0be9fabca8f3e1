import { writeLike } from '@oddwheel/build/placing/length-text';
import type { Placed, PlacedKind, Placing } from '@oddwheel/build/placing/types';
import { plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import { parseInput } from '@oddwheel/quantity/range';

/** Forward, left and up as typed. */
export type PlaceText = readonly [string, string, string];

export const NO_PLACE: PlaceText = ['', '', ''];
export const AXES = ['x', 'y', 'z'] as const;
export const AXIS_NAMES = ['Forward, x', 'Left, y', 'Up, z'] as const;

/** A place of the build that can be found in a picture. */
export interface KnownPlace {
  readonly address: string;
  readonly name: string;
  readonly text: PlaceText;
}

const KINDS: readonly PlacedKind[] = ['shaft', 'seat', 'pivot', 'idler'];

function placeOf({ station, points }: Placed): PlaceText | null {
  if (station) {
    const { coordinate } = station;
    const at = plus(station.origin, times(coordinate.si, station.along));
    const text = (si: number): string => writeLike(si, coordinate.text);
    return [text(at[0]), text(at[1]), text(at[2])];
  }
  const [point] = points;
  return point ? [point.coordinates[0].text, point.coordinates[1].text, point.coordinates[2].text] : null;
}

/** Centres that a picture may show: the wheel's, shafts at their origin, what sits on them in its middle. */
export function knownPlaces(placing: Placing | null): readonly KnownPlace[] {
  const found = (placing?.placed ?? [])
    .filter(({ kind }) => KINDS.includes(kind))
    .flatMap((one): KnownPlace[] => {
      const text = placeOf(one);
      return text
        ? [{ address: one.address, name: one.kind === 'shaft' ? `${one.name}, its origin` : one.name, text }]
        : [];
    });
  return [{ address: '/brief/wheel', name: 'Wheel, its centre', text: ['0 mm', '0 mm', '0 mm'] }, ...found];
}

export type ReadPlace = { readonly ok: true; readonly at: Vec3 } | { readonly ok: false; readonly says: string };

/** Reads a typed place, m; or says which length is wrong and gives a right example. */
export function readPlace(text: PlaceText): ReadPlace {
  const read = text.map((one, k): number | string => {
    if (one.trim() === '') return `${AXIS_NAMES[k]} is blank. Write a length, for example 212 mm.`;
    const parsed = parseInput(one, 'length');
    if (!parsed.ok) return `${AXIS_NAMES[k]}: ${parsed.problem} Write, for example, 212 mm or 8 3/8 in.`;
    return parsed.isRange ? `${AXIS_NAMES[k]}: a known place is one length, not a range.` : parsed.si;
  });
  const wrong = read.find((one) => typeof one === 'string');
  const [x, y, z] = read;
  if (typeof x === 'number' && typeof y === 'number' && typeof z === 'number') return { ok: true, at: [x, y, z] };
  return { ok: false, says: typeof wrong === 'string' ? wrong : '' };
}
