import type { Vec3 } from '@oddwheel/quantity/quantity';
import { nearestOf, type Placed, placed } from './nearest.ts';
import { type Part, still } from './part.ts';
import type { AccessRow, Named } from './types.ts';

const named = ({ part: { name, address } }: Placed): Named => ({ name, address });

/** The part that stands nearest to the middle of a room: the tool goes to it. */
function served(room: Placed, others: readonly Placed[]): Placed | null {
  const [box] = room.at(0, false);
  if (!box) return null;
  const middle: Vec3 = [0, 1, 2].map((k) => ((box.low[k] ?? 0) + (box.high[k] ?? 0)) / 2) as [number, number, number];
  const point: Part = {
    ...room.part,
    at: still([{ shape: 'capsule', from: middle, to: middle, radius: 0 }]),
    swings: false,
  };
  const from = placed(point, [0]).at(0, false);
  let best: { readonly part: Placed; readonly distance: number } | null = null;
  for (const part of others) {
    if (!['shaft', 'bearing', 'sprocket', 'pulley', 'gear', 'idler', 'chain', 'belt', 'wheel'].includes(part.part.role))
      continue;
    const limit: number = best ? best.distance : Number.POSITIVE_INFINITY;
    const found = nearestOf(from, part.at(0, false), limit);
    if (found) best = { part, distance: found.distance };
    if (found?.distance === 0) break;
  }
  return best?.part ?? null;
}

/**
 * Rooms for tools as drawn: the part in the middle and what sits on it are what the tool is for; all else in the room stands in its way.
 * The driven wheel stands in the way of everything but itself.
 */
export function accessRows(parts: readonly Placed[], joined: (a: Placed, b: Placed) => boolean): readonly AccessRow[] {
  const solid = parts.filter(({ part }) => part.role !== 'access');
  return parts
    .filter(({ part }) => part.role === 'access')
    .map((room): AccessRow => {
      const serves = served(room, solid);
      const blockedBy = solid
        .filter((part) => part !== serves && !(serves && part.part.role !== 'wheel' && joined(serves, part)))
        .filter((part) => nearestOf(room.at(0, false), part.at(0, false), Number.MIN_VALUE)?.overlaps)
        .map(named);
      const goal = serves ? ` for ${serves.part.name}` : '';
      return {
        ...named(room),
        serves: serves && named(serves),
        blockedBy,
        text:
          blockedBy.length === 0
            ? `${room.part.name}${goal}: free`
            : `${room.part.name}${goal}: ${blockedBy.map(({ name }) => name).join(', ')} in it`,
      };
    });
}
