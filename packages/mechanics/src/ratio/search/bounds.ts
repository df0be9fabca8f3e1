import { inSteps, TICKS } from './measure.ts';
import type { Row, Slot } from './rows.ts';
import type { TrainSpace } from './types.ts';

/** A ratio part smaller than this is taken as none, in millionths: it covers the rounding of logarithms. */
const SLACK = 1e-3;
/** Rounding of a sum of logarithms. */
export const LOG_SLACK = 1e-11;
/** Cells over the whole range of ratios. */
const CELLS = 512;

/** Interval of the logarithm of the whole ratio. */
export interface Window {
  readonly low: number;
  readonly high: number;
}

/** A sum that may not be passed, in millionths. */
export interface Ceiling {
  readonly row: number;
  readonly most: number;
}

/** What a train must meet to count, given the trains kept so far. */
export interface Cut {
  readonly window: Window;
  readonly ceilings: readonly Ceiling[];
  /** Row that decides now: the first whose best value does not settle it; -1 while nothing is kept. */
  readonly active: number;
}

/** Least share of each row over the slots, in millionths. */
export function leastOf(rows: readonly Row[], slots: readonly Slot[]): Float64Array {
  return Float64Array.from(rows, (_, row) => {
    let sum = 0;
    for (const { ticks, count } of slots) {
      const from = ticks[row] as Float64Array;
      let least = Number.POSITIVE_INFINITY;
      for (let k = 0; k < count; k++) if ((from[k] as number) < least) least = from[k] as number;
      sum += least;
    }
    return sum;
  });
}

/** Number by which a row compares, from a sum in millionths. */
const keyOf = (row: Row, ticks: number): number => (row.kind === 'tie' ? ticks : inSteps(ticks / TICKS, row.step));

/** Largest sum in millionths that still compares no worse than a key; a little more, never less. */
function mostFor(row: Row, key: number): number {
  if (row.kind === 'tie') return key;
  return (row.step > 0 ? (key + 1) * row.step : key) * TICKS * (1 + 1e-12) + SLACK;
}

/** Sums and ratios that still count. `least` may come from a bound or from the slots themselves. */
export function cutOf(space: TrainSpace, rows: readonly Row[], least: Float64Array, held: Float64Array | null): Cut {
  const ceilings: Ceiling[] = [];
  let active = -1;
  let level = 0;
  for (let row = 0; row < rows.length; row++) {
    const one = rows[row] as Row;
    if (one.kind === 'limit') {
      ceilings.push({ row, most: one.below + SLACK });
      continue;
    }
    if (held === null || active >= 0) continue;
    const key = held[level++] as number;
    ceilings.push({ row, most: mostFor(one, key) });
    if (keyOf(one, least[row] as number) < key) active = row;
  }
  let [low, high] =
    space.within === null
      ? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
      : [Math.log(space.within.least) - LOG_SLACK, Math.log(space.within.most) + LOG_SLACK];
  for (const { row, most } of ceilings) {
    const weight = (rows[row] as Row).ratio;
    if (!(weight > 0)) continue;
    const error = (most - (least[row] as number)) / weight;
    low = Math.max(low, Math.log(space.band.low) + lowest(error));
    high = Math.min(high, Math.log(space.band.high) + Math.log1p(Math.max(error, 0)) + LOG_SLACK);
  }
  return { window: { low, high }, ceilings, active };
}

/** Logarithm of the least ratio over the band's lower end that an error allows. */
const lowest = (error: number): number =>
  (error >= 1 ? Number.NEGATIVE_INFINITY : Math.log1p(-Math.max(error, 0))) - LOG_SLACK;

/** Least sum of a row over some slots, by cells of the logarithm of their ratio. */
interface Profile {
  readonly base: number;
  readonly slots: number;
  readonly least: Float64Array;
}

const EMPTY: Profile = { base: 0, slots: 0, least: new Float64Array(1) };

function profileOf(slot: Slot, row: number, cell: number): Profile {
  const { log, ticks, count } = slot;
  const base = log[0] as number;
  const least = new Float64Array(Math.floor(((log[count - 1] as number) - base) / cell) + 1).fill(
    Number.POSITIVE_INFINITY,
  );
  const from = ticks[row] as Float64Array;
  for (let k = 0; k < count; k++) {
    const at = Math.floor(((log[k] as number) - base) / cell);
    if ((from[k] as number) < (least[at] as number)) least[at] = from[k] as number;
  }
  return { base, slots: 1, least };
}

function together(a: Profile, b: Profile): Profile {
  if (a.slots === 0) return b;
  if (b.slots === 0) return a;
  const least = new Float64Array(a.least.length + b.least.length - 1).fill(Number.POSITIVE_INFINITY);
  for (let i = 0; i < a.least.length; i++) {
    const first = a.least[i] as number;
    if (first === Number.POSITIVE_INFINITY) continue;
    for (let j = 0; j < b.least.length; j++) {
      const sum = first + (b.least[j] as number);
      if (sum < (least[i + j] as number)) least[i + j] = sum;
    }
  }
  return { base: a.base + b.base, slots: a.slots + b.slots, least };
}

/** Least error over an interval of logarithms of the ratio. */
function leastError(space: TrainSpace, low: number, high: number): number {
  const [from, to] = [Math.log(space.band.low), Math.log(space.band.high)];
  if (high < from) return -Math.expm1(high - from);
  return low > to ? Math.expm1(low - to) : 0;
}

/** Lower bound of each row for each entry of each slot, in millionths: bounds[slot][row][entry]. Infinite: it fits no train. */
export function entryBounds(
  space: TrainSpace,
  rows: readonly Row[],
  slots: readonly Slot[],
  window: Window,
): readonly (readonly Float64Array[])[] {
  const range = slots.reduce((sum, { log, count }) => sum + (log[count - 1] as number) - (log[0] as number), 0);
  const cell = Math.max(range / CELLS, 1e-6);
  const lows = slots.map(({ ticks, count }) =>
    rows.map((_, row) => (ticks[row] as Float64Array).subarray(0, count).reduce((a, b) => Math.min(a, b), Infinity)),
  );
  return slots.map((slot, s) => {
    const rest = slots.filter((_, other) => other !== s);
    return rows.map((row, r) => {
      const own = slot.ticks[r] as Float64Array;
      if (row.kind === 'tie') {
        const others = lows.reduce((sum, low, other) => (other === s ? sum : sum + (low[r] as number)), 0);
        return own.map((ticks) => ticks + others);
      }
      const profile = rest.reduce((sum, other) => together(sum, profileOf(other, r, cell)), EMPTY);
      const start = slot.log[0] as number;
      const cells = Math.floor(((slot.log[slot.count - 1] as number) - start) / cell) + 1;
      const wide = (1 + profile.slots) * cell + LOG_SLACK;
      const extra = Float64Array.from({ length: cells + profile.least.length }, (_, t) => {
        const low = start + profile.base + t * cell - LOG_SLACK;
        if (low > window.high || low + wide < window.low) return Number.POSITIVE_INFINITY;
        return Math.max(0, row.ratio * leastError(space, low, low + wide) - SLACK);
      });
      const best = new Float64Array(cells).fill(Number.POSITIVE_INFINITY);
      for (let c = 0; c < cells; c++)
        for (let b = 0; b < profile.least.length; b++) {
          const sum = (profile.least[b] as number) + (extra[c + b] as number);
          if (sum < (best[c] as number)) best[c] = sum;
        }
      return own.map((ticks, k) => ticks + (best[Math.floor(((slot.log[k] as number) - start) / cell)] as number));
    });
  });
}

/**
 * Entries of a slot that may be part of a train that counts, most promising first.
 * @param bounds of this slot, row by row
 */
export function promising(
  rows: readonly Row[],
  bounds: readonly Float64Array[],
  count: number,
  held: Float64Array | null,
): Uint32Array {
  const ranked = rows.flatMap((row, r) => (row.kind === 'limit' ? [] : [{ row, from: bounds[r] as Float64Array }]));
  const keys = ranked.map(({ row, from }) => from.map((ticks) => keyOf(row, ticks)));
  const stays = (k: number): boolean => {
    for (let r = 0; r < rows.length; r++) {
      const [row, ticks] = [rows[r] as Row, (bounds[r] as Float64Array)[k] as number];
      if (ticks === Number.POSITIVE_INFINITY || (row.kind === 'limit' && !(ticks < row.below + SLACK))) return false;
    }
    for (let level = 0; held !== null && level < keys.length; level++) {
      const apart = ((keys[level] as Float64Array)[k] as number) - (held[level] as number);
      if (apart !== 0) return apart < 0;
    }
    return true;
  };
  const left: number[] = [];
  for (let k = 0; k < count; k++) if (stays(k)) left.push(k);
  return Uint32Array.from(left).sort((a, b) => {
    for (const key of keys) {
      const apart = (key[a] as number) - (key[b] as number);
      if (apart !== 0) return apart;
    }
    return a - b;
  });
}
