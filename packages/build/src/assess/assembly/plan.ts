import type { printer } from '../scene.ts';
import { type End, otherEnd, type Part } from './parts.ts';
import { allOf, passes, type Size, type Verdict, YES } from './verdict.ts';

export type Show = ReturnType<typeof printer>;

/**
 * One way to put a shaft together. Parts do not pass each other on a shaft, so whatever the order of work, those below `split` come on from the
 * low end and the others from the high end: trying every split and both ways in tries everything.
 */
export interface Plan {
  readonly split: number;
  /** Side from which the shaft comes in; null where no welded plate has to be passed. */
  readonly entry: End | null;
}

export interface Judged {
  readonly plan: Plan;
  readonly verdict: Verdict;
}

const sizeText = (size: Size, show: Show): string =>
  size.value === null || !Number.isFinite(size.value) ? 'outside size not in the build' : show('length', size.value);

/** Whether a part slides over the seats between it and one end. */
export function slides(parts: readonly Part[], index: number, from: End, show: Show): Verdict {
  const part = parts[index];
  if (!part) return YES;
  const passed = from === 'low' ? parts.slice(0, index) : parts.slice(index + 1);
  return allOf(
    passed.map((other) =>
      passes(
        other.bore,
        part.bore,
        () =>
          `${part.seat.name}, bore ${sizeText(part.bore, show)}, does not go over the seat of ${other.seat.name}, ${sizeText(other.bore, show)}`,
      ),
    ),
  );
}

/** Whether a part goes through the hole of a plate, bearing out. */
export function throughPlate(part: Part, plate: Part, show: Show): Verdict {
  if (!plate.opening) return YES;
  const { opening } = plate;
  return passes(
    part.outer,
    opening,
    () =>
      `${part.seat.name}, ${sizeText(part.outer, show)} over all, does not go through the hole of ${plate.seat.name}, ${sizeText(opening, show)}`,
  );
}

/** End from which a part comes on in a plan. */
export const comesFrom = (plan: Plan, index: number): End => (index < plan.split ? 'low' : 'high');

/** Whether each part slides to its seat from either end; worked out once for all plans. */
type Slid = Readonly<Record<End, readonly Verdict[]>>;

const slidOf = (parts: readonly Part[], show: Show): Slid => ({
  low: parts.map((_, k) => slides(parts, k, 'low', show)),
  high: parts.map((_, k) => slides(parts, k, 'high', show)),
});

const slideVerdict = (parts: readonly Part[], plan: Plan, slid: Slid): Verdict =>
  allOf(parts.map((_, k) => slid[comesFrom(plan, k)][k] ?? YES));

/** What stands or may stand against going through a plate. */
interface Obstacle {
  readonly part: number;
  /** Counts only where the part rides in on the shaft. */
  readonly riding: boolean;
  readonly verdict: Verdict;
}

/** What is against shaft and parts getting through the welded plates from one side; worked out once for all plans. */
function obstaclesOf(parts: readonly Part[], entry: End, show: Show): readonly Obstacle[] {
  const all = parts.flatMap((plate, p): Obstacle[] => {
    const { opening } = plate;
    if (!opening) return [];
    return parts.flatMap((part, index): Obstacle[] => {
      const through = (riding: boolean) => ({ part: index, riding, verdict: throughPlate(part, plate, show) });
      if (index === p) return [through(false)];
      // The leading end, and what stands on it, goes through the plate.
      const goesThrough = entry === 'high' ? index < p : index > p;
      if (!goesThrough) return [];
      const bare = passes(
        part.bore,
        opening,
        () =>
          `the shaft at ${part.seat.name}, ${sizeText(part.bore, show)}, does not go through the hole of ${plate.seat.name}, ${sizeText(opening, show)}`,
      );
      return [{ part: index, riding: false, verdict: bare }, through(true)];
    });
  });
  return all.filter(({ verdict }) => verdict.is !== 'yes');
}

/** Whether shaft and parts get through the welded plates: a part that the shaft meets inside does not have to. */
const entryVerdict = (obstacles: readonly Obstacle[], plan: Plan): Verdict =>
  allOf(
    obstacles.flatMap(({ part, riding, verdict }) => (riding && comesFrom(plan, part) !== plan.entry ? [] : [verdict])),
  );

/** The best of several: a yes, else the one with least missing, else the one with fewest reasons against it. */
function best(judged: readonly Judged[]): Judged {
  const weight = ({ verdict }: Judged): number =>
    verdict.is === 'yes' ? 0 : verdict.is === 'open' ? verdict.missing.length : 1000 + verdict.why.length;
  const first = judged[0];
  if (!first) throw new Error('There is always one way to try.');
  return judged.reduce((a, b) => (weight(b) < weight(a) ? b : a), first);
}

const splits = (parts: readonly Part[]): readonly number[] => Array.from({ length: parts.length + 1 }, (_, k) => k);

/** Whether every part slides to its seat from one end or the other. */
export function slidePlan(parts: readonly Part[], show: Show): Judged {
  const slid = slidOf(parts, show);
  return best(
    splits(parts).map((split) => {
      const plan: Plan = { split, entry: null };
      return { plan, verdict: slideVerdict(parts, plan, slid) };
    }),
  );
}

/** Whether the shaft gets into its welded plates with every part sliding to its seat. */
export function entryPlan(parts: readonly Part[], show: Show): Judged {
  const passing = ({ plan }: Judged): number => parts.filter((_, k) => comesFrom(plan, k) === plan.entry).length;
  const slid = slidOf(parts, show);
  const judged = (['high', 'low'] as const).flatMap((entry) => {
    const obstacles = obstaclesOf(parts, entry, show);
    return splits(parts).map((split): Judged => {
      const plan: Plan = { split, entry };
      return { plan, verdict: allOf([slideVerdict(parts, plan, slid), entryVerdict(obstacles, plan)]) };
    });
  });
  // Of ways that serve alike, the one where fewest parts ride in on the shaft.
  return best(judged.sort((a, b) => passing(a) - passing(b)));
}

/** The work of a plan, in order. Indices are into the parts by station. */
export interface Sequence {
  /** On the shaft before it goes in. */
  readonly bench: readonly number[];
  /** Waiting in the plates or between them, in the order in which the shaft meets them. */
  readonly waiting: readonly number[];
  /** Put on when the shaft is in. */
  readonly after: readonly number[];
}

/** Order of work of a plan. */
export function sequenceOf(parts: readonly Part[], plan: Plan): Sequence {
  const indices = parts.map((_, k) => k);
  const from = (end: End): number[] => {
    const own = indices.filter((k) => comesFrom(plan, k) === end);
    return end === 'low' ? own.reverse() : own;
  };
  const { entry } = plan;
  if (entry === null) return { bench: [...from('low'), ...from('high')], waiting: [], after: [] };
  const plates = indices.filter((k) => parts[k]?.opening);
  const [first, last] = [Math.min(...plates), Math.max(...plates)];
  const [riding, meeting] = [from(entry), from(otherEnd(entry))];
  // Beyond the plate at which the shaft comes in, and outside the one it reaches last, there is room to work afterwards.
  const later = (k: number, end: End): boolean => (end === 'low' ? k < first : k > last);
  return {
    bench: riding.filter((k) => !later(k, entry)),
    waiting: meeting.filter((k) => !later(k, otherEnd(entry))),
    after: [...meeting.filter((k) => later(k, otherEnd(entry))), ...riding.filter((k) => later(k, entry))],
  };
}
