import { clearanceDistance, flatSolid } from '@oddwheel/mechanics/clearance/distance';
import { TYRE_GROWTH } from '@oddwheel/tables/tyre-growth';
import type { Model } from '../../model/model.ts';
import type { Scene } from '../checks/check.ts';
import type { Used } from '../geometry/types.ts';
import type { Placed, Smallest } from './nearest.ts';
import { movementOf } from './pairs.ts';
import type { AtSlotEnd } from './slot.ts';
import type { ClearanceRow, Named, Taker } from './types.ts';

const named = ({ name, address }: Named): Named => ({ name, address });

type Show = Scene['show'];

const and = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/** "382 mm forward, 30 mm left, 424 mm up". */
function placeOf([x, y, z]: readonly [number, number, number], show: Show): string {
  const side = (value: number, plus: string, minus: string): string =>
    `${show('length', Math.abs(value))} ${value < 0 ? minus : plus}`;
  return [side(x, 'forward', 'back'), side(y, 'left', 'right'), side(z, 'up', 'down')].join(', ');
}

function cause(by: Taker, row: Pick<ClearanceRow, 'arm'>, topSpeed: number | null, show: Show): string {
  switch (by) {
    case 'stroke of the arm':
      return `with the wheel ${show('angle', Math.abs(row.arm ?? 0))} ${(row.arm ?? 0) < 0 ? 'down' : 'up'}`;
    case 'axle slot':
      return 'with the axle at an end of its slot';
    case 'largest sprocket':
      return 'with the largest sprocket';
    case 'growth of the tyre':
      return topSpeed === null ? 'at speed' : `at ${show('speed', topSpeed)}`;
    case 'movement between bodies':
      return 'with what carries them moved together';
  }
}

/** The line of one pair. */
function textOf(row: Omit<ClearanceRow, 'text' | 'place'>, topSpeed: number | null, show: Show): string {
  const head = `${row.first.name} to ${row.second.name}`;
  if (row.drawn === 0) return `${head}: they touch as drawn`;
  const drawn = `${head}: ${show('length', row.drawn)} as drawn`;
  const causes = and(row.takes.map(({ by }) => cause(by, row, topSpeed, show)));
  if (row.smallest <= 0) return `${drawn}, and they come to touch ${causes}`;
  const less = row.takes.length > 0 ? `, ${show('length', row.smallest)} ${causes}` : '';
  return `${drawn}${less}`;
}

/** A pair with what takes its clearance away. */
export interface Pair {
  readonly a: Placed;
  readonly b: Placed;
  /** With the axle as drawn. */
  readonly found: Smallest;
  /** At the end of the axle slot that brings them nearer; null where none does. */
  readonly slot: AtSlotEnd | null;
}

const growthOf = ({ a, b }: Pair): number => a.part.growth + b.part.growth;

export function rowOf(pair: Pair, element: string, model: Model, topSpeed: number | null, show: Show): ClearanceRow {
  const { a, b, found, slot } = pair;
  const { nearest, arm } = slot?.found ?? found;
  const movement = movementOf(a.part, b.part)?.length ?? 0;
  const growth = growthOf(pair);
  const stroke = Math.max(0, found.drawn - Math.max(found.asFitted, found.nearest.distance));
  const larger = Math.max(0, found.drawn - stroke - found.nearest.distance);
  const takes = (
    [
      ['stroke of the arm', stroke],
      ['axle slot', slot?.takes ?? 0],
      ['largest sprocket', larger],
      ['growth of the tyre', growth],
      ['movement between bodies', movement],
    ] as const
  )
    .flatMap(([by, length]) => (length > 0 ? [{ by, length }] : []))
    .sort((x, y) => y.length - x.length);
  const row = {
    first: named(a.part),
    second: named(b.part),
    element,
    drawn: found.drawn,
    smallest: nearest.distance - growth - movement,
    wanted: model.space.wanted.si,
    takes,
    arm: a.part.swings || b.part.swings ? arm : null,
    at: [nearest.pointA, nearest.pointB] as const,
  };
  const { pointA, pointB } = nearest;
  const middle = [0, 1, 2].map((k) => ((pointA[k] ?? 0) + (pointB[k] ?? 0)) / 2) as [number, number, number];
  return { ...row, text: textOf(row, topSpeed, show), place: placeOf(middle, show) };
}

/** The working of one pair, on the two solids that come nearest. */
export function usedOf(pair: Pair): Used {
  const { a, b, found, slot } = pair;
  const named = (solid: Parameters<typeof flatSolid>[0], letter: 'A' | 'B') =>
    Object.fromEntries(Object.entries(flatSolid(solid)).map(([key, value]) => [`${key}${letter}`, value]));
  const [first, second] = (slot?.found ?? found).nearest.solids;
  const movement = movementOf(a.part, b.part);
  const input = {
    ...named(first, 'A'),
    ...named(second, 'B'),
    growth: growthOf(pair),
    movement: movement?.length ?? 0,
  };
  const from = (placed: Placed, letter: string) =>
    Object.fromEntries(
      ['shape', 'from', 'to', 'across', 'radius', 'radiusTo', 'rounding', 'halfHeight', 'halfWidth', 'sag'].map(
        (key) => [`${key}${letter}`, `size and place of ${placed.part.name}`],
      ),
    );
  return {
    method: clearanceDistance,
    input,
    // The record of a method leaves its own types open; the inputs above are those that it declares.
    output: clearanceDistance.run(input as unknown as Parameters<typeof clearanceDistance.run>[0]),
    origins: {
      ...from(a, 'A'),
      ...from(b, 'B'),
      growth: growthOf(pair) > 0 ? `${TYRE_GROWTH.id} at top speed` : 'no tyre grows here',
      movement: movement?.row ?? 'one body carries both',
    },
  };
}
