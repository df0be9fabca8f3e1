import { type Cut, cutOf, LOG_SLACK, leastOf } from './bounds.ts';
import type { Keeper } from './keeper.ts';
import type { Row, Slot } from './rows.ts';
import type { TrainSpace } from './types.ts';

/** Pairs of one half that are laid out at a time. */
const AT_A_TIME = 1 << 16;
/** Pairs between two steps: some ten milliseconds. */
const STEP = 1 << 19;
/** Cells that one coarser cell covers. */
const COARSE = 32;

/** Two slots, or one with a slot that changes nothing. */
type Half = readonly [Slot, Slot];

const neutral = (rows: readonly Row[]): Slot => ({
  stages: [],
  count: 1,
  log: new Float64Array(1),
  choices: [],
  ticks: rows.map(() => new Float64Array(1)),
});

const pairs = ([a, b]: Half): number => a.count * b.count;

/** Up to four slots as two halves whose pairs are few on both sides; the half with fewer pairs comes first. */
function halvesOf(rows: readonly Row[], slots: readonly Slot[]): readonly [Half, Half] {
  const none = neutral(rows);
  const [a = none, b = none, c = none, d = none] = [...slots].sort((x, y) => y.count - x.count);
  const splits: readonly (readonly [Half, Half])[] = [
    [
      [a, d],
      [b, c],
    ],
    [
      [a, c],
      [b, d],
    ],
    [
      [a, b],
      [c, d],
    ],
  ];
  const work = ([x, y]: readonly [Half, Half]): number => pairs(x) + pairs(y);
  const [one, other] = splits.reduce((best, split) => (work(split) < work(best) ? split : best));
  return pairs(one) <= pairs(other) ? [one, other] : [other, one];
}

/** First entry of a rising list that is not below a value. */
function lowerBound(list: Float64Array, count: number, value: number): number {
  let [low, high] = [0, count];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((list[middle] as number) < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Pairs of one half within a part of the ratios, in cells by ratio, with the least sum of each cell. */
interface Laid {
  readonly count: number;
  readonly low: number;
  readonly high: number;
  readonly perCell: number;
  readonly cells: number;
  readonly start: Uint32Array;
  readonly log: Float64Array;
  readonly cost: Float64Array;
  readonly first: Uint32Array;
  readonly second: Uint32Array;
  readonly cellLeast: Float64Array;
  readonly coarseLeast: Float64Array;
  readonly least: number;
}

function layOut(
  [one, two]: Half,
  low: number,
  high: number,
  active: number,
  allowed: (i: number, j: number) => boolean,
): Laid {
  const ticks = (slot: Slot): Float64Array | null => (active < 0 ? null : (slot.ticks[active] as Float64Array));
  const [firstTicks, secondTicks] = [ticks(one), ticks(two)];
  let room = 1024;
  let [logs, costs, is, js] = [
    new Float64Array(room),
    new Float64Array(room),
    new Uint32Array(room),
    new Uint32Array(room),
  ];
  let count = 0;
  for (let i = 0; i < one.count; i++) {
    const own = one.log[i] as number;
    for (let j = lowerBound(two.log, two.count, low - own); j < two.count; j++) {
      const log = own + (two.log[j] as number);
      if (log >= high) break;
      if (!allowed(i, j)) continue;
      if (count === room) {
        room *= 2;
        const longer = <T extends Float64Array | Uint32Array>(from: T, to: T): T => {
          to.set(from);
          return to;
        };
        logs = longer(logs, new Float64Array(room));
        costs = longer(costs, new Float64Array(room));
        is = longer(is, new Uint32Array(room));
        js = longer(js, new Uint32Array(room));
      }
      logs[count] = log;
      costs[count] = firstTicks && secondTicks ? (firstTicks[i] as number) + (secondTicks[j] as number) : 0;
      is[count] = i;
      js[count] = j;
      count++;
    }
  }
  let [least, bottom, top] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let k = 0; k < count; k++) {
    least = Math.min(least, costs[k] as number);
    bottom = Math.min(bottom, logs[k] as number);
    top = Math.max(top, logs[k] as number);
  }
  const cells = Math.max(1, Math.ceil(count / 3));
  const perCell = count === 0 ? 0 : cells / Math.max(top - bottom, 1e-9);
  const start = new Uint32Array(cells + 1);
  const cellOf = (log: number): number => Math.min(cells - 1, Math.floor((log - bottom) * perCell));
  for (let k = 0; k < count; k++) {
    const next = cellOf(logs[k] as number) + 1;
    start[next] = (start[next] as number) + 1;
  }
  for (let c = 0; c < cells; c++) start[c + 1] = (start[c + 1] as number) + (start[c] as number);
  const fill = start.slice(0, cells);
  const [log, cost] = [new Float64Array(count), new Float64Array(count)];
  const [first, second] = [new Uint32Array(count), new Uint32Array(count)];
  const cellLeast = new Float64Array(cells).fill(Number.POSITIVE_INFINITY);
  const coarseLeast = new Float64Array(Math.ceil(cells / COARSE)).fill(Number.POSITIVE_INFINITY);
  for (let k = 0; k < count; k++) {
    const cell = cellOf(logs[k] as number);
    const at = fill[cell] as number;
    fill[cell] = at + 1;
    log[at] = logs[k] as number;
    const own = costs[k] as number;
    cost[at] = own;
    first[at] = is[k] as number;
    second[at] = js[k] as number;
    if (own < (cellLeast[cell] as number)) cellLeast[cell] = own;
    const coarse = (cell / COARSE) | 0;
    if (own < (coarseLeast[coarse] as number)) coarseLeast[coarse] = own;
  }
  return {
    count,
    low: bottom,
    high: top,
    perCell,
    cells,
    start,
    log,
    cost,
    first,
    second,
    cellLeast,
    coarseLeast,
    least,
  };
}

/**
 * Meets the two halves in the middle: for each pair of the one, the pairs of the other whose ratio completes it are looked up, and left out
 * by the least sum of their cell. Yields after each short step the part that is done.
 */
export function* meet(
  space: TrainSpace,
  rows: readonly Row[],
  slots: readonly Slot[],
  keeper: Keeper,
): Generator<number, void> {
  const [laidHalf, walked] = halvesOf(rows, slots);
  const least = leastOf(rows, slots);
  const [besideLaid, besideWalked] = [leastOf(rows, walked), leastOf(rows, laidHalf)];
  const [one, two] = walked;
  const [bandLow, bandHigh] = [Math.log(space.band.low), Math.log(space.band.high)];
  const chosen = new Uint32Array(space.stages.length);
  let cut = cutOf(space, rows, least, keeper.ceiling());
  let most = Number.POSITIVE_INFINITY;

  const fits =
    (a: Slot, b: Slot, rest: Float64Array) =>
    (i: number, j: number): boolean => {
      for (const { row, most: limit } of cut.ceilings) {
        const [first, second] = [a.ticks[row] as Float64Array, b.ticks[row] as Float64Array];
        if ((first[i] as number) + (second[j] as number) + (rest[row] as number) > limit) return false;
      }
      return true;
    };
  const [laidFits, walkedFits] = [fits(...laidHalf, besideLaid), fits(one, two, besideWalked)];

  const choose = (slot: Slot, entry: number): void => {
    for (let s = 0; s < slot.stages.length; s++)
      chosen[slot.stages[s] as number] = (slot.choices[s] as Uint32Array)[entry] as number;
  };

  /** Offers what completes a pair of the walked half; true when something was kept. */
  const lookUp = (there: Laid, i: number, j: number, log: number, ticks: number, weight: number): boolean => {
    if (ticks + there.least > most) return false;
    let [low, high] = [cut.window.low - log, cut.window.high - log];
    if (weight > 0) {
      const error = (most - ticks - there.least) / weight;
      // A little wider than the logarithms would make it: cheaper than taking them.
      if (error < 0.5) {
        low = Math.max(low, bandLow - error * (1 + error) - LOG_SLACK - log);
        high = Math.min(high, bandHigh + error + LOG_SLACK - log);
      }
    }
    const first = Math.max(0, Math.floor((low - there.low) * there.perCell - 1e-6));
    const last = Math.min(there.cells - 1, Math.floor((high - there.low) * there.perCell + 1e-6));
    let kept = false;
    for (let cell = first; cell <= last; cell++) {
      if (cell % COARSE === 0 && ticks + (there.coarseLeast[cell / COARSE] as number) > most) {
        cell += COARSE - 1;
        continue;
      }
      if (ticks + (there.cellLeast[cell] as number) > most) continue;
      const end = there.start[cell + 1] as number;
      for (let k = there.start[cell] as number; k < end; k++) {
        const at = there.log[k] as number;
        if (at < low || at > high || ticks + (there.cost[k] as number) > most) continue;
        choose(one, i);
        choose(two, j);
        choose(laidHalf[0], there.first[k] as number);
        choose(laidHalf[1], there.second[k] as number);
        if (keeper.offer(chosen)) kept = true;
      }
    }
    return kept;
  };

  const [laidLow, laidHigh] = endsOf(laidHalf);
  const [walkedLow, walkedHigh] = endsOf(walked);
  const bottom = Math.max(laidLow, cut.window.low - walkedHigh) - LOG_SLACK;
  const top = Math.min(laidHigh, cut.window.high - walkedLow) + 2 * LOG_SLACK;
  if (!(top > bottom)) return;
  const parts = Math.ceil(pairs(laidHalf) / AT_A_TIME);
  let work = 0;
  for (let part = 0; part < parts; part++) {
    const [from, to] = [part, part + 1].map((p) => bottom + ((top - bottom) * p) / parts) as [number, number];
    let laid: Laid | null = null;
    let active = -1;
    for (let i = 0; i < one.count; i++) {
      if (laid === null || cut.active !== active) {
        active = cut.active;
        laid = layOut(laidHalf, from, to, active, laidFits);
        most = mostOf(cut, active);
        work += laid.count;
      }
      if (laid.count === 0) break;
      if (work > STEP) {
        work = 0;
        yield (part + i / one.count) / parts;
      }
      const weight = active < 0 ? 0 : (rows[active] as Row).ratio;
      const own = one.log[i] as number;
      const start = lowerBound(two.log, two.count, cut.window.low - laid.high - own - LOG_SLACK);
      work += 8;
      for (let j = start; j < two.count; j++) {
        const log = own + (two.log[j] as number);
        if (log > cut.window.high - laid.low + LOG_SLACK) break;
        work++;
        if (!walkedFits(i, j)) continue;
        const ticks =
          active < 0
            ? 0
            : ((one.ticks[active] as Float64Array)[i] as number) + ((two.ticks[active] as Float64Array)[j] as number);
        if (!lookUp(laid, i, j, log, ticks, weight)) continue;
        cut = cutOf(space, rows, least, keeper.ceiling());
        most = mostOf(cut, active);
      }
    }
  }
}

/** Most that a row's sum may be; without end for a row that does not cut. */
const mostOf = (cut: Cut, row: number): number =>
  cut.ceilings.find((one) => one.row === row)?.most ?? Number.POSITIVE_INFINITY;

/** Least and greatest logarithm of a half's ratio. */
const endsOf = ([a, b]: Half): readonly [number, number] => [
  (a.log[0] as number) + (b.log[0] as number),
  (a.log[a.count - 1] as number) + (b.log[b.count - 1] as number),
];
