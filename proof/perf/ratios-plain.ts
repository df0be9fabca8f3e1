import type { Level, TrainSpace } from '@oddwheel/mechanics/ratio/search/types';

/**
 * The best trains of three stages of toothed wheels by looking at each one: flat arrays, no objects in the inner loop, ranked only where the
 * first level is not already worse. It knows no shelf and no limits.
 */
export function plainBest({ stages, band, within }: TrainSpace, order: readonly Level[], most: number): number[][] {
  const lists = stages.map(({ choices }) => {
    const ranks = choices
      .map((_, k) => k)
      .sort((a, b) => {
        const [x, y] = [choices[a], choices[b]];
        return x && y ? x.driver - y.driver || x.driven - y.driven || a - b : 0;
      });
    return {
      order: ranks,
      driver: Float64Array.from(ranks, (k) => choices[k]?.driver ?? 0),
      driven: Float64Array.from(ranks, (k) => choices[k]?.driven ?? 0),
      costs: order.map((level) =>
        Float64Array.from(ranks, (k) =>
          level.terms.reduce(
            (sum, { term, weight }) => sum + Math.round(weight * (choices[k]?.costs[term] ?? 0) * 1e6),
            0,
          ),
        ),
      ),
    };
  });
  const [first, second, third] = lists;
  if (!first || !second || !third || lists.length !== 3 || !within)
    throw new Error('Three stages and a window, please.');
  const kept: { levels: number[]; at: number[] }[] = [];
  let worst = Number.POSITIVE_INFINITY;
  const [low, high] = [band.low, band.high];
  const better = (a: readonly number[], b: readonly number[]): boolean => {
    for (let k = 0; k < a.length; k++) if (a[k] !== b[k]) return (a[k] ?? 0) < (b[k] ?? 0);
    return false;
  };
  for (let i = 0; i < first.order.length; i++)
    for (let j = 0; j < second.order.length; j++) {
      const top = (first.driven[i] as number) * (second.driven[j] as number);
      const bottom = (first.driver[i] as number) * (second.driver[j] as number);
      for (let k = 0; k < third.order.length; k++) {
        const ratio = (top * (third.driven[k] as number)) / (bottom * (third.driver[k] as number));
        if (ratio < within.least || ratio > within.most) continue;
        const error = ratio < low ? 1 - ratio / low : ratio > high ? ratio / high - 1 : 0;
        const value = (level: number): number => {
          const { ratio: weight, step } = order[level] as Level;
          const sum =
            (first.costs[level]?.[i] as number) +
            (second.costs[level]?.[j] as number) +
            (third.costs[level]?.[k] as number);
          const plain = weight * error + sum / 1e6;
          return step > 0 ? Math.floor(plain / step) : plain;
        };
        if (value(0) > worst) continue;
        const levels = order.map((_, level) => value(level));
        const last = kept[most - 1];
        if (last && !better(levels, last.levels)) continue;
        let at = kept.length;
        while (at > 0 && better(levels, (kept[at - 1] as { levels: number[] }).levels)) at--;
        kept.splice(at, 0, { levels, at: [i, j, k] });
        if (kept.length > most) kept.pop();
        if (kept.length === most) worst = kept[most - 1]?.levels[0] ?? worst;
      }
    }
  return kept.map(({ at }) => at.map((entry, s) => lists[s]?.order[entry] ?? 0));
}
