import { allAtHand, choiceTicks, fractionOf, inSteps, lackingTicks, ratioError, TICKS } from './measure.ts';
import { type Row, ranks } from './rows.ts';
import type { Train, TrainSpace } from './types.ts';

/** The best trains so far, best first, and what a further train has to beat. */
export interface Keeper {
  /** Looks at a train, one choice per stage; true when it was kept. */
  readonly offer: (choices: ArrayLike<number>) => boolean;
  /** Key of the worst train that still counts; null while there are too few. */
  readonly ceiling: () => Float64Array | null;
  readonly found: () => number;
  /** Forgets the trains but not the ceiling: the next round meets them again. */
  readonly again: () => void;
  readonly trains: () => readonly Train[];
}

interface Kept {
  readonly key: Float64Array;
  readonly choices: readonly number[];
}

/** Order of two keys: negative when the first is better. */
export function compareKeys(a: ArrayLike<number>, b: ArrayLike<number>): number {
  for (let k = 0; k < a.length; k++) {
    const apart = (a[k] as number) - (b[k] as number);
    if (apart !== 0) return apart;
  }
  return 0;
}

/** Keeps the best trains by the order of the rows. */
export function keeperOf(space: TrainSpace, rows: readonly Row[], most: number): Keeper {
  const { stages, band, within, atHand } = space;
  const limits = rows.filter(({ kind }) => kind === 'limit');
  const levels = rows.filter(({ kind }) => kind === 'level');
  const ties = rows.length - limits.length - levels.length;
  const own = (row: Row): readonly Float64Array[] =>
    stages.map(({ choices }) => Float64Array.from(choices, (choice) => choiceTicks(row.sum, choice)));
  const ticks = new Map([...limits, ...levels].map((row) => [row, own(row)]));
  const tops = stages.map(({ choices }) => Float64Array.from(choices, (one) => fractionOf(one)[0]));
  const bottoms = stages.map(({ choices }) => Float64Array.from(choices, (one) => fractionOf(one)[1]));
  const rank = stages.map((_, stage) => ranks(space, stage));
  let kept: Kept[] = [];
  let held: Float64Array | null = null;
  const key = new Float64Array(levels.length + ties);

  const ratioOf = (choices: ArrayLike<number>): number => {
    let [top, bottom] = [1, 1];
    for (let s = 0; s < stages.length; s++) {
      top *= (tops[s] as Float64Array)[choices[s] as number] as number;
      bottom *= (bottoms[s] as Float64Array)[choices[s] as number] as number;
    }
    return top / bottom;
  };
  const partsOf = (choices: ArrayLike<number>): readonly number[] =>
    stages.flatMap((stage, s) => stage.choices[choices[s] as number]?.parts ?? []);
  const worth = (row: Row, choices: ArrayLike<number>, error: number): number => {
    const each = ticks.get(row) ?? [];
    let sum = 0;
    for (let s = 0; s < each.length; s++) sum += (each[s] as Float64Array)[choices[s] as number] as number;
    if (atHand !== null && atHand.lacking.length > 0) sum += lackingTicks(space, row.sum, partsOf(choices));
    return row.sum.ratio * error + sum / TICKS;
  };

  const offer = (choices: ArrayLike<number>): boolean => {
    const ratio = ratioOf(choices);
    if (within !== null && (ratio < within.least || ratio > within.most)) return false;
    const error = ratioError(band, ratio);
    let better = held === null;
    for (let k = 0; k < levels.length; k++) {
      const row = levels[k] as Row;
      const value = inSteps(worth(row, choices, error), row.step);
      key[k] = value;
      if (better) continue;
      const limit = (held as Float64Array)[k] as number;
      if (value > limit) return false;
      better = value < limit;
    }
    for (let s = 0; s < ties; s++) {
      const value = (rank[s] as Uint32Array)[choices[s] as number] as number;
      key[levels.length + s] = value;
      if (better) continue;
      const limit = (held as Float64Array)[levels.length + s] as number;
      if (value > limit) return false;
      better = value < limit;
    }
    for (const row of limits) if (!(worth(row, choices, error) < row.below / TICKS)) return false;
    if (atHand?.only && !allAtHand(space, partsOf(choices))) return false;
    let [low, high] = [0, kept.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (compareKeys((kept[middle] as Kept).key, key) < 0) low = middle + 1;
      else high = middle;
    }
    kept.splice(low, 0, { key: key.slice(), choices: Array.from(choices) });
    if (kept.length > most) kept.pop();
    if (kept.length === most) held = (kept[most - 1] as Kept).key;
    return true;
  };

  const trainOf = ({ key: ranked, choices }: Kept): Train => {
    const ratio = ratioOf(choices);
    const terms = Array.from({ length: space.terms }, (_, term) => {
      const sum = { ratio: 0, terms: [{ term, weight: 1 }] };
      let all = lackingTicks(space, sum, partsOf(choices));
      stages.forEach((stage, s) => {
        const choice = stage.choices[choices[s] as number];
        if (choice) all += choiceTicks(sum, choice);
      });
      return all / TICKS;
    });
    return {
      choices,
      ratio,
      error: ratioError(band, ratio),
      terms,
      levels: Array.from(ranked.slice(0, levels.length)),
    };
  };

  return {
    offer,
    ceiling: () => held,
    found: () => kept.length,
    again: () => {
      kept = [];
    },
    trains: () => kept.map(trainOf),
  };
}
