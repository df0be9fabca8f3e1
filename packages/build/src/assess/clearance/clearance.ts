import { type Cache, reuse } from '../../model/cache.ts';
import type { Model } from '../../model/model.ts';
import type { Scene } from '../checks/check.ts';
import type { Used } from '../geometry/types.ts';
import { accessRows } from './access.ts';
import { allParts } from './all-parts.ts';
import { boxGap, type Placed, placed, smallestOf } from './nearest.ts';
import { joining, matters, movementOf } from './pairs.ts';
import { type Pair, rowOf, usedOf } from './rows.ts';
import { type AxleSlot, axleSlot, nearestInSlot } from './slot.ts';
import type { ClearanceRow, Clearances } from './types.ts';
import { topSpeedOf } from './wheel-part.ts';

/** Pairs are listed up to so many times what is wanted, and in any case so many of them. */
const REACH = 3;
const LISTED = 12;

interface Worked {
  readonly clearances: Clearances;
  readonly pairs: ReadonlyMap<ClearanceRow, Pair>;
}

const worked = new WeakMap<Model, Worked>();

/** Nothing here depends on the ends of uncertain inputs: sizes count at their larger end, so one answer serves a model. */
function workedOf(scene: Scene, cache: Cache | null): Worked {
  const { model } = scene;
  const known = worked.get(model);
  if (known) return known;
  const { space, suspension, adjusters, wheel, shafts, stages, engine, units } = model;
  const inputs = [
    space,
    suspension,
    adjusters,
    wheel,
    engine,
    units.length,
    units.speed,
    units.angle,
    ...shafts,
    ...stages,
  ];
  const result = reuse(cache, 'clearance', inputs, () => work(scene, cache));
  worked.set(model, result);
  return result;
}

/** Clearances of a build, smallest first. */
export function clearancesOf(scene: Scene, cache: Cache | null): Clearances {
  return workedOf(scene, cache).clearances;
}

/** The working of a row that {@link clearancesOf} gave. */
export function clearanceUsed(scene: Scene, row: ClearanceRow): readonly Used[] {
  const pair = workedOf(scene, null).pairs.get(row);
  return pair ? [usedOf(pair)] : [];
}

interface Candidate {
  readonly a: Placed;
  readonly b: Placed;
  readonly element: string;
  /** Never nearer than this. */
  readonly least: number;
  /** What growth, movement and the axle slot take away at most. */
  readonly taken: number;
}

/** Pairs whose room counts, by how near their boxes come. */
function candidates(
  parts: readonly Placed[],
  joined: (a: Placed, b: Placed) => boolean,
  counts: (a: Placed, b: Placed) => boolean,
  slot: AxleSlot | null,
): Candidate[] {
  const found: Candidate[] = [];
  parts.forEach((a, k) => {
    for (const b of parts.slice(k + 1)) {
      // Parts stand in the order of the path, so that a pair is counted with the earlier element.
      const element = a.part.element ?? b.part.element;
      if (element === null || !counts(a, b) || joined(a, b)) continue;
      const slides = slot !== null && (slot.moves(a) || slot.moves(b)) ? slot.travel : 0;
      const taken = (movementOf(a.part, b.part)?.length ?? 0) + a.part.growth + b.part.growth + slides;
      found.push({ a, b, element, taken, least: boxGap(a.all, b.all) - taken });
    }
  });
  return found.sort((x, y) => x.least - y.least);
}

function work(scene: Scene, cache: Cache | null): Worked {
  const { model, stages, show } = scene;
  const topSpeed = topSpeedOf(model);
  const { arm, parts, unknown } = allParts(model, stages, topSpeed, cache);
  const angles = arm?.angles ?? [0];
  const all = parts.map((part) => placed(part, angles));
  const joined = joining(model, all);
  const wanted = model.space.wanted.si;
  const pairs = new Map<ClearanceRow, Pair>();
  const sizes: number[] = [];
  const nearest = new Map<string, number>();
  const slot = axleSlot(scene, topSpeed, cache);
  const matter = (x: Placed, y: Placed): boolean => matters(x.part, y.part, arm);
  for (const { a, b, element, least, taken } of candidates(all, joined, matter, slot)) {
    const dozen = sizes.length < LISTED ? Number.POSITIVE_INFINITY : (sizes[LISTED - 1] ?? 0);
    const limit = Math.max(REACH * wanted, dozen, nearest.get(element) ?? Number.POSITIVE_INFINITY);
    if (least >= limit) continue;
    const found = smallestOf(a, b, angles, limit + taken);
    if (!found) continue;
    const pair = { a, b, found, slot: slot && nearestInSlot(slot, a, b, angles, found) };
    const row = rowOf(pair, element, model, topSpeed, show);
    pairs.set(row, pair);
    sizes.push(row.smallest);
    sizes.sort((x, y) => x - y);
    nearest.set(element, Math.min(nearest.get(element) ?? Number.POSITIVE_INFINITY, row.smallest));
  }
  return {
    pairs,
    clearances: { wanted, topSpeed, rows: listed([...pairs.keys()], wanted), access: accessRows(all, joined), unknown },
  };
}

/** Smallest first; near ones, a dozen at least, and the nearest of each element. */
function listed(rows: readonly ClearanceRow[], wanted: number): readonly ClearanceRow[] {
  const key = ({ first, second }: ClearanceRow): string => `${first.address} ${second.address}`;
  const sorted = [...rows].sort((x, y) => x.smallest - y.smallest || (key(x) < key(y) ? -1 : 1));
  const seen = new Set<string>();
  return sorted.filter(({ smallest, element }, k) => {
    const first = !seen.has(element);
    seen.add(element);
    return first || k < LISTED || smallest < REACH * wanted;
  });
}
