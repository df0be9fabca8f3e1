import { describe, expect, it } from 'vitest';
import { searchTrains } from './search.ts';
import { seeded } from './testing/random-space.ts';
import type { Choice, Found, Level, TrainSpace } from './types.ts';

function run(space: TrainSpace, order: readonly Level[], most: number): Found {
  const steps = searchTrains(space, order, most);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** All pairs of teeth, each with a whole cost from 0 to 3 and one that is no whole number. */
function stage(low: number, high: number, seed: number): { readonly choices: readonly Choice[] } {
  const random = seeded(seed);
  const choices: Choice[] = [];
  for (let driver = low; driver <= high; driver++)
    for (let driven = low; driven <= high; driven++)
      choices.push({ driver, driven, ratio: null, costs: [Math.floor(4 * random()), 2 * random()], parts: [] });
  return { choices };
}

/**
 * A second way to the same answer, for three stages and orders in which the error of the last train kept is bounded: every pair of the
 * first two stages is looked at, and the third is looked up by halving in its sorted ratios. It counts what compares no worse than the
 * last train found, by the levels alone.
 */
function countNoWorse(
  { stages, band }: TrainSpace,
  order: readonly Level[],
  last: readonly number[],
  widest: number,
): { better: number; same: number } {
  const [one, two, three] = stages.map(({ choices }) => choices);
  if (!one || !two || !three) throw new Error('three stages');
  const sorted = [...three].sort((a, b) => a.driven / a.driver - b.driven / b.driver);
  const ratios = Float64Array.from(sorted, (choice) => choice.driven / choice.driver);
  const count = { better: 0, same: 0 };
  for (const a of one)
    for (const b of two) {
      const [top, bottom] = [a.driven * b.driven, a.driver * b.driver];
      const low = (band.low * (1 - widest) * bottom) / top;
      let [from, to] = [0, ratios.length];
      while (from < to) {
        const middle = (from + to) >> 1;
        if ((ratios[middle] as number) < low * (1 - 1e-12)) from = middle + 1;
        else to = middle;
      }
      for (let k = from; k < sorted.length; k++) {
        const c = sorted[k] as Choice;
        const ratio = (top * c.driven) / (bottom * c.driver);
        if (ratio > band.high * (1 + widest) * (1 + 1e-12)) break;
        const error = ratio < band.low ? 1 - ratio / band.low : ratio > band.high ? ratio / band.high - 1 : 0;
        let apart = 0;
        for (let level = 0; level < order.length && apart === 0; level++) {
          const { ratio: weight, terms, step } = order[level] as Level;
          let millionths = 0;
          for (const { term, weight: each } of terms)
            for (const choice of [a, b, c]) millionths += Math.round(each * (choice.costs[term] as number) * 1e6);
          const value = weight * error + millionths / 1e6;
          apart = (step > 0 ? Math.floor(value / step) : value) - (last[level] as number);
        }
        if (apart < 0) count.better++;
        if (apart === 0) count.same++;
      }
    }
  return count;
}

const both = [
  { term: 0, weight: 0.5 },
  { term: 1, weight: 0.3 },
];

describe('the best of some hundred million trains', () => {
  const space: TrainSpace = {
    stages: [stage(9, 45, 1), stage(11, 45, 2), stage(9, 22, 3)],
    terms: 2,
    band: { low: 11.237, high: 11.237 },
    within: null,
    limits: [],
    atHand: null,
  };
  it.each<readonly [string, readonly Level[], (last: readonly number[]) => number]>([
    ['nearest ratio', [{ ratio: 1, terms: [], step: 0 }], ([error = 1]) => error],
    [
      'ratio in steps, then costs',
      [
        { ratio: 1, terms: [], step: 0.001 },
        { ratio: 0, terms: both, step: 0 },
      ],
      ([steps = 1]) => 0.001 * (steps + 1),
    ],
    ['all weighed together', [{ ratio: 100, terms: both, step: 0 }], ([sum = 100]) => sum / 100],
    [
      'costs with the ratio, then whole costs',
      [
        { ratio: 50, terms: [{ term: 1, weight: 1 }], step: 0.05 },
        { ratio: 0, terms: [{ term: 0, weight: 1 }], step: 0 },
      ],
      ([steps = 100]) => (0.05 * (steps + 1)) / 50,
    ],
  ])('%s: as another method counts them', (_, order, widest) => {
    const { trains, size } = run(space, order, 50);
    expect(size).toBe(37 ** 2 * 35 ** 2 * 14 ** 2);
    const last = trains.at(-1)?.levels ?? [];
    const { better, same } = countNoWorse(space, order, last, widest(last));
    const before = trains.filter(({ levels }) => levels.some((value, k) => value !== last[k])).length;
    expect(trains).toHaveLength(50);
    expect(better).toBe(before);
    expect(same).toBeGreaterThanOrEqual(50 - before);
  });
});
