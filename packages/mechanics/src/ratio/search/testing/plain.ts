import type { Level, Sum, Train, TrainSpace } from '../types.ts';

/** Every train of a small space, looked at one by one; shares no code with the search. */
export function everyTrain(
  space: TrainSpace,
  order: readonly Level[],
  most: number,
): Pick<Train, 'choices' | 'levels'>[] {
  const { stages, band, within, limits, atHand } = space;
  const found: { choices: number[]; levels: number[]; teeth: number[] }[] = [];
  const walk = (choices: number[]): void => {
    if (choices.length < stages.length) {
      const next = stages[choices.length];
      next?.choices.forEach((_, k) => {
        walk([...choices, k]);
      });
      return;
    }
    const picked = choices.map((k, s) => {
      const choice = stages[s]?.choices[k];
      if (!choice) throw new Error('no such choice');
      return choice;
    });
    let [top, bottom] = [1, 1];
    for (const { ratio, driver, driven } of picked) {
      top *= ratio ?? driven;
      bottom *= ratio === null ? driver : 1;
    }
    const ratio = top / bottom;
    if (within && (ratio < within.least || ratio > within.most)) return;
    const error = ratio < band.low ? 1 - ratio / band.low : ratio > band.high ? ratio / band.high - 1 : 0;
    const need: number[] = [];
    for (const part of picked.flatMap(({ parts }) => parts)) need[part] = (need[part] ?? 0) + 1;
    const lacks = need.map((count, part) => Math.max(0, count - (atHand?.have[part] ?? 0)));
    if (atHand?.only && lacks.some((count) => count > 0)) return;
    const value = (sum: Sum): number => {
      let millionths = 0;
      for (const { term, weight } of sum.terms) {
        for (const { costs } of picked) millionths += Math.round(weight * (costs[term] ?? 0) * 1e6);
        for (const one of atHand?.lacking ?? [])
          if (one.term === term)
            lacks.forEach((count, part) => {
              millionths += count * Math.round(weight * (one.each[part] ?? 0) * 1e6);
            });
      }
      return sum.ratio * error + millionths / 1e6;
    };
    if (limits.some((limit) => !(value(limit) < limit.below))) return;
    const levels = order.map((level) => (level.step > 0 ? Math.floor(value(level) / level.step) : value(level)));
    found.push({
      choices,
      levels,
      teeth: picked.flatMap(({ driver, driven }, s) => [driver, driven, choices[s] ?? 0]),
    });
  };
  walk([]);
  const compare = (a: readonly number[], b: readonly number[]): number => {
    const at = a.findIndex((x, k) => x !== b[k]);
    return at < 0 ? 0 : (a[at] ?? 0) - (b[at] ?? 0);
  };
  found.sort((a, b) => compare(a.levels, b.levels) || compare(a.teeth, b.teeth));
  return found.slice(0, most).map(({ choices, levels }) => ({ choices, levels }));
}
