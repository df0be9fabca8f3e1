import { choiceTicks, fractionOf, lackingTicks, TICKS } from './measure.ts';
import type { Level, Sum, TrainSpace } from './types.ts';

/** One or more stages taken together: what a half of the search is put together from. Its entries are sorted by ratio. */
export interface Slot {
  /** Numbers of its stages. */
  readonly stages: readonly number[];
  readonly count: number;
  /** Logarithm of the ratio, rising. */
  readonly log: Float64Array;
  /** Choice of each of its stages: choices[stage][entry]. */
  readonly choices: readonly Uint32Array[];
  /** What an entry adds to each row, in millionths; ties in whole ranks. */
  readonly ticks: readonly Float64Array[];
}

/** Anything that a train is cut or ranked by. */
export interface Row {
  /** Weight of the ratio error, in millionths. */
  readonly ratio: number;
  readonly sum: Sum;
  readonly kind: 'limit' | 'level' | 'tie';
  readonly step: number;
  /** For a limit: sums not below this are refused, in millionths. */
  readonly below: number;
  /** For a tie: the stage whose teeth decide. */
  readonly stage: number;
}

const NOTHING: Sum = { ratio: 0, terms: [] };

/** Limits first, then the order, then the teeth of each stage in turn. */
export function rowsOf(space: TrainSpace, order: readonly Level[]): readonly Row[] {
  return [
    ...space.limits.map(
      (limit): Row => ({
        ratio: limit.ratio * TICKS,
        sum: limit,
        kind: 'limit',
        step: 0,
        below: limit.below * TICKS,
        stage: -1,
      }),
    ),
    ...order.map(
      (level): Row => ({
        ratio: level.ratio * TICKS,
        sum: level,
        kind: 'level',
        step: level.step,
        below: Number.POSITIVE_INFINITY,
        stage: -1,
      }),
    ),
    ...space.stages.map(
      (_, stage): Row => ({
        ratio: 0,
        sum: NOTHING,
        kind: 'tie',
        step: 0,
        below: Number.POSITIVE_INFINITY,
        stage,
      }),
    ),
  ];
}

/** Place of each choice of a stage by its teeth: driver, then driven, then as they came. */
export function ranks(space: TrainSpace, stage: number): Uint32Array {
  const choices = space.stages[stage]?.choices ?? [];
  const order = choices
    .map((_, k) => k)
    .sort((a, b) => {
      const [x, y] = [choices[a], choices[b]];
      return x && y ? x.driver - y.driver || x.driven - y.driven || a - b : 0;
    });
  const ranked = new Uint32Array(choices.length);
  order.forEach((choice, rank) => {
    ranked[choice] = rank;
  });
  return ranked;
}

/** Entries in the order of their ratios. */
function sorted(slot: Omit<Slot, 'count'>): Slot {
  const { log } = slot;
  const order = Uint32Array.from(log, (_, k) => k).sort((a, b) => (log[a] as number) - (log[b] as number) || a - b);
  return pick({ ...slot, count: log.length }, order);
}

/** The named entries of a slot, in the order given. */
export function pick(slot: Slot, entries: Uint32Array): Slot {
  const floats = (from: Float64Array): Float64Array => Float64Array.from(entries, (k) => from[k] as number);
  return {
    stages: slot.stages,
    count: entries.length,
    log: floats(slot.log),
    choices: slot.choices.map((from) => Uint32Array.from(entries, (k) => from[k] as number)),
    ticks: slot.ticks.map(floats),
  };
}

/** A stage as a slot of its own. What a choice lacks by itself counts from the start. */
export function slotOf(space: TrainSpace, rows: readonly Row[], stage: number): Slot {
  const choices = space.stages[stage]?.choices ?? [];
  const rank = ranks(space, stage);
  return sorted({
    stages: [stage],
    log: Float64Array.from(choices, (choice) => {
      const [top, bottom] = fractionOf(choice);
      return Math.log(top / bottom);
    }),
    choices: [Uint32Array.from(choices, (_, k) => k)],
    ticks: rows.map((row) =>
      Float64Array.from(choices, (choice, k) => {
        if (row.kind === 'tie') return row.stage === stage ? (rank[k] as number) : 0;
        return choiceTicks(row.sum, choice) + lackingTicks(space, row.sum, choice.parts);
      }),
    ),
  });
}

/** Two slots as one that holds all their pairs. */
export function merged(one: Slot, other: Slot): Slot {
  const count = one.count * other.count;
  const first = (k: number): number => Math.floor(k / other.count);
  const second = (k: number): number => k % other.count;
  const index = new Uint32Array(count);
  return sorted({
    stages: [...one.stages, ...other.stages],
    log: Float64Array.from(index, (_, k) => (one.log[first(k)] as number) + (other.log[second(k)] as number)),
    choices: [
      ...one.choices.map((from) => Uint32Array.from(index, (_, k) => from[first(k)] as number)),
      ...other.choices.map((from) => Uint32Array.from(index, (_, k) => from[second(k)] as number)),
    ],
    ticks: one.ticks.map((from, row) =>
      Float64Array.from(
        index,
        (_, k) => (from[first(k)] as number) + ((other.ticks[row] as Float64Array)[second(k)] as number),
      ),
    ),
  });
}
