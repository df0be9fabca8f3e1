import { dot } from '@oddwheel/mechanics/numerics/vector';
import type { Scene } from '../checks/check.ts';
import type { Missing } from '../types.ts';
import { takes, WAYS, type Way } from './bearing-loads.ts';
import type { ShaftStructure } from './shaft-structure.ts';
import { bearingLink, type Link, plateLink, plateStop, shaftStop } from './thrust-links.ts';

/** The way of a push along a shaft, part by part, from what pushes to the plate. */
export interface ThrustPath {
  readonly way: Way;
  /** Greatest push on the shaft that way over all cases, N. */
  readonly push: number;
  readonly links: readonly Link[];
}

/** Pushes below this part of the greatest force on the shaft are rounding. */
const ROUNDING = 1e-6;

interface Pushes {
  /** Greatest push on the shaft each way, then of each gear on its seat. */
  readonly shaft: Record<Way, number>;
  readonly seats: ReadonlyMap<string, Record<Way, number>>;
}

/** Greatest pushes along one shaft over all cases, the rare ones among them. */
function pushesOn({ strength, cases }: Scene, k: number): Pushes | { readonly missing: readonly Missing[] } {
  const structure = strength.shafts[k];
  const shaft = { start: 0, end: 0 };
  const seats = new Map<string, Record<Way, number>>();
  if (!structure) return { missing: [] };
  const { direction } = structure.shaft;
  for (const load of cases) {
    const answer = strength.answer(k, load);
    if (!answer.ok) return { missing: answer.missing };
    let push = 0;
    let largest = 0;
    for (const { seat, force } of answer.loads) {
      const along = dot(force, direction);
      push += along;
      largest = Math.max(largest, Math.hypot(...force));
      const own = seats.get(seat) ?? { start: 0, end: 0 };
      const way: Way = along > 0 ? 'end' : 'start';
      if (Math.abs(along) > ROUNDING * Math.hypot(...force)) own[way] = Math.max(own[way], Math.abs(along));
      seats.set(seat, own);
    }
    const way: Way = push > 0 ? 'end' : 'start';
    if (Math.abs(push) > ROUNDING * largest) shaft[way] = Math.max(shaft[way], Math.abs(push));
  }
  return { shaft, seats };
}

const opposite = (way: Way): Way => (way === 'end' ? 'start' : 'end');
const stopToward = <T>(held: { readonly towardStart: T; readonly towardEnd: T } | null, way: Way): T | null =>
  held === null ? null : way === 'end' ? held.towardEnd : held.towardStart;

/**
 * Traces what keeps a shaft from moving, each way: gear against its stop; shaft against the inner ring, through the bearing, to the stop
 * of the outer ring, to the plate. Where several bearings hold, the one that holds both ways is followed.
 */
export function thrustPaths(scene: Scene, k: number): readonly ThrustPath[] | { readonly missing: readonly Missing[] } {
  const structure = scene.strength.shafts[k];
  if (!structure) return { missing: [] };
  const pushes = pushesOn(scene, k);
  if ('missing' in pushes) return pushes;
  return WAYS.map((way) => ({
    way,
    push: pushes.shaft[way],
    links: [...gearLinks(scene, structure, pushes, way), ...holderLinks(scene, structure, pushes.shaft[way], way)],
  }));
}

function gearLinks(scene: Scene, { shaft }: ShaftStructure, { seats }: Pushes, way: Way): Link[] {
  return shaft.seats
    .filter(({ kind }) => kind === 'gear')
    .map((seat) => shaftStop(shaft, seat, stopToward(seat.held, way), way, seats.get(seat.id)?.[way] ?? 0, scene));
}

/** The bearing that holds the shaft this way, link by link; every bearing's gap where none does. */
function holderLinks(scene: Scene, { shaft, bearings }: ShaftStructure, push: number, way: Way): Link[] {
  const seats = bearings.map(({ seat }) => seat);
  const both = seats.find((seat) => WAYS.every((one) => takes(seat, one) === 'yes'));
  const holder = both ?? seats.find((seat) => takes(seat, way) === 'yes');
  const behind = opposite(way);
  if (holder)
    return [
      shaftStop(shaft, holder, stopToward(holder.held, behind), behind, push, scene),
      bearingLink(holder, push),
      plateStop(holder, stopToward(holder.bearing?.ring ?? null, way), way, push),
      plateLink(holder, push, scene.at),
    ];
  const open = seats.filter((seat) => takes(seat, way) === 'not said');
  return (open.length > 0 ? open : seats).flatMap((seat) =>
    [
      shaftStop(shaft, seat, stopToward(seat.held, behind), behind, push, scene),
      plateStop(seat, stopToward(seat.bearing?.ring ?? null, way), way, push),
    ].filter(({ state }) => state === (open.length > 0 ? 'open' : 'gap')),
  );
}
