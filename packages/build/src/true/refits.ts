import { runoutAt } from '@oddwheel/mechanics/runout/axis';
import { refitSpread } from '@oddwheel/mechanics/runout/re-clock';
import { chuckTurned } from '@oddwheel/mechanics/runout/supports';
import { clockText } from './clock.ts';
import type { PartView } from './part-view.ts';
import type { TrueRecord } from './record.ts';
import { lengthOf, madeOut, type SetMadeOut } from './section.ts';
import { dialText, withSpread } from './spread.ts';
import type { Kept, TrueSet } from './types.ts';
import { lengthWords } from './words.ts';

const SAME_STATION = 0.5e-3;
/** Readings of one position that tell how far putting it together again spreads. */
const REFITS = 3;

const ownSets = (record: TrueRecord, part: string): Kept<TrueSet>[] =>
  record.sets.filter(({ body }) => body.part === part && body.face === undefined);

const made = (kept: Kept<TrueSet>): SetMadeOut[] => {
  const found = madeOut(kept);
  return found.ok && !found.set.warm ? [found.set] : [];
};

/** Chuck and part told apart at every station that was read in a chuck before and after half a turn in it, in words. */
export function chuckWords(record: TrueRecord, { part }: PartView, unit: string): string[] {
  const inChuck = ownSets(record, part.part).filter(({ body }) => body.setup === 'chuck');
  const turned = inChuck.filter(({ body }) => body.turned).flatMap(made);
  const straight = inChuck.filter(({ body }) => !body.turned).flatMap(made);
  const stations = [...new Set(turned.map(({ station }) => Math.round(station / SAME_STATION)))];
  return stations.flatMap((key): string[] => {
    const at = ({ station }: SetMadeOut) => Math.round(station / SAME_STATION) === key;
    const [one, other] = [straight.findLast(at), turned.findLast(at)];
    const place = lengthWords(key * SAME_STATION, 'mm');
    if (!one || !other) return [`At ${place}: read it in the chuck before it is turned as well.`];
    const apart = chuckTurned(one.section.offset, other.section.offset);
    const [own, chuck] = [apart.part, apart.chuck].map(({ x, y }) => 2 * Math.hypot(x, y)) as [number, number];
    const spread = Math.hypot(one.section.spread, other.section.spread) / 2;
    const high = clockText(Math.atan2(apart.part.y, apart.part.x));
    return [
      `At ${place}: the part itself makes TIR ${withSpread(own, 4 * spread, unit)}, high spot at ${high}; the chuck and its spindle make ${dialText(chuck, unit)}\u2009${unit}.`,
    ];
  });
}

/** Readings at the station that matters, put together again in one position each time since the last correction. */
export interface Refits {
  readonly count: number;
  /** Standard deviation of either component, m; left out until there are three. */
  readonly spread?: number;
}

/** Undefined for a part without joints, or where both seats are not measured. */
export function refitsOf(record: TrueRecord, { part, sets }: PartView): Refits | undefined {
  const seats = { a: lengthOf(part.seats.a), b: lengthOf(part.seats.b) };
  const goal = lengthOf(part.goal.station);
  const on = (at: number) => sets.find(({ station }) => Math.abs(station - at) < SAME_STATION);
  const [a, b] = [on(seats.a), on(seats.b)];
  if ((part.joints ?? []).length === 0 || !a || !b) return undefined;
  const own = new Map(ownSets(record, part.part).map((kept) => [kept.id, kept]));
  const rounds = new Set(record.rounds.filter(({ body }) => body.part === part.part).map(({ id }) => id));
  let fits: Kept<TrueSet>[] = [];
  let clocking: string | undefined;
  for (const id of record.sequence) {
    const kept = own.get(id);
    if (rounds.has(id)) fits = [];
    if (!kept || kept.body.turned || Math.abs(lengthOf(kept.body.station) - goal) >= SAME_STATION) continue;
    const now = JSON.stringify(Object.entries(kept.body.clocking ?? {}).sort());
    // Without a refit it is the same fit, read again.
    fits = now !== clocking ? [kept] : kept.body.refit ? [...fits, kept] : [...fits.slice(0, -1), kept];
    clocking = now;
  }
  const offsets = fits.flatMap(made).map((set) => runoutAt([a.section, b.section, set.section], seats, goal).offset);
  return { count: offsets.length, ...(offsets.length < REFITS ? {} : { spread: refitSpread(offsets) }) };
}

/** What refits tell, in words; none before the first. */
export function refitWords(refits: Refits | undefined, unit: string): string[] {
  if (!refits || refits.count < 2) return [];
  const { count, spread } = refits;
  if (spread === undefined) return [`Put together ${count} times in one position: once more tells how far it spreads.`];
  return [
    `Put together ${count} times in one position: TIR spreads by ± ${dialText(4 * spread, unit)}\u2009${unit}. Positions nearer to one another than that are alike.`,
  ];
}
