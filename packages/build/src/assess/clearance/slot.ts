import { times } from '@oddwheel/mechanics/numerics/vector';
import { type Cache, reuse } from '../../model/cache.ts';
import type { Model, Shaft } from '../../model/model.ts';
import { shifted } from '../adjusters/measures.ts';
import type { Scene } from '../checks/check.ts';
import { stageGeometry } from '../geometry/stage.ts';
import { allParts } from './all-parts.ts';
import { type Placed, placed, type Smallest, smallestOf } from './nearest.ts';
import type { Part } from './part.ts';

/** The wheel’s axle at one end of its slot: the parts that go with it, in the places that they then have. */
export interface SlotEnd {
  readonly moved: (part: Placed) => Placed | null;
}

/** The slot of the wheel’s axle: how far it reaches each way, and its two ends. */
export interface AxleSlot {
  readonly travel: number;
  /** Whether a part goes with the axle, or, a chain or belt, leads to it. */
  readonly moves: (part: Placed) => boolean;
  readonly ends: readonly SlotEnd[];
}

const keyOf = ({ role, address, name }: Part): string => `${role} ${address} ${name}`;

/** The build with the wheel’s axle moved along its slot: the parts that move with it, each placed when it is asked for. */
function endOf(
  { model, stages, at }: Scene,
  axle: Shaft,
  by: Shaft['origin'],
  topSpeed: number | null,
  moves: AxleSlot['moves'],
  cache: Cache | null,
  place: string,
): SlotEnd {
  const moved = reuse(cache, `axle:${place}`, [axle, ...by], () => shifted(axle, by));
  const there: Model = { ...model, shafts: model.shafts.map((shaft) => (shaft === axle ? moved : shaft)) };
  const geometry = stages.map((one) =>
    one.to === axle
      ? reuse(cache, `geometry:${place}:${one.stage.address}`, [one, moved], () =>
          stageGeometry(one.stage, one.from, moved, at),
        )
      : one,
  );
  const { arm, parts } = allParts(there, geometry, topSpeed, cache, place);
  const byKey = new Map(parts.map((part) => [keyOf(part), part]));
  const made = new Map<string, Placed>();
  return {
    moved: (one) => {
      if (!moves(one)) return one;
      const key = keyOf(one.part);
      const part = byKey.get(key);
      if (!part) return null;
      const known = made.get(key) ?? placed(part, arm?.angles ?? [0]);
      made.set(key, known);
      return known;
    },
  };
}

/** The slot of the wheel’s axle; null where no adjuster of a chain or belt moves it, or its travel is nothing. */
export function axleSlot(scene: Scene, topSpeed: number | null, cache: Cache | null): AxleSlot | null {
  const { model, stages } = scene;
  const axle = model.shafts.at(-1);
  if (!axle) return null;
  const slot = model.adjusters.find(({ sets, moves, travel }) => sets === 'slack' && moves === axle.id && travel > 0);
  if (!slot) return null;
  const own = new Set([axle.address, ...axle.seats.map(({ address }) => address)]);
  const leading = new Set(stages.flatMap(({ stage, to }) => (to === axle ? [stage.address] : [])));
  const moves = ({ part }: Placed): boolean => own.has(part.address) || leading.has(part.address);
  return {
    travel: slot.travel,
    moves,
    ends: [1, -1].map((sign) =>
      endOf(scene, axle, times(sign * slot.travel, slot.along), topSpeed, moves, cache, `slot ${sign}`),
    ),
  };
}

/** Two parts at the end of the slot where they come nearest. */
export interface AtSlotEnd {
  readonly a: Placed;
  readonly b: Placed;
  readonly found: Smallest;
  /** What the slot takes away beyond stroke and larger sprockets, m. */
  readonly takes: number;
}

/**
 * The end of the slot that brings two parts nearer than they come without it; null where neither does.
 * @param found the two with the axle as drawn
 */
export function nearestInSlot(
  slot: AxleSlot,
  a: Placed,
  b: Placed,
  angles: readonly number[],
  found: Smallest,
): AtSlotEnd | null {
  if (!slot.moves(a) && !slot.moves(b)) return null;
  let best: AtSlotEnd | null = null;
  for (const end of slot.ends) {
    const [there, other] = [end.moved(a), end.moved(b)];
    if (!there || !other) continue;
    const below = best ? best.found.nearest.distance : found.nearest.distance;
    const nearer = smallestOf(there, other, angles, below);
    if (nearer && nearer.nearest.distance < below)
      best = { a: there, b: other, found: nearer, takes: found.nearest.distance - nearer.nearest.distance };
  }
  return best;
}
