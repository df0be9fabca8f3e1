import type { Choice, Level, TrainSpace } from '../types.ts';

/** Numbers from 0 to 1 that are the same for the same seed (Park and Miller's rule). */
export function seeded(seed: number): () => number {
  let state = (seed * 48271 + 11) % 2147483647;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** A small space with every kind of filter, cost and shelf now and then, and an order for it. */
export function randomSpace(seed: number): {
  readonly space: TrainSpace;
  readonly order: readonly Level[];
  readonly most: number;
} {
  const random = seeded(seed);
  const whole = (low: number, high: number): number => low + Math.floor(random() * (high - low + 1));
  const often = (part: number): boolean => random() < part;
  const terms = whole(0, 4);
  const parts = whole(3, 30);
  const coarse = Array.from({ length: terms }, () => often(0.5));
  const count = whole(1, 5);
  const longest = [0, 200, 90, 16, 9, 6][count] ?? 6;
  const choice = (): Choice => {
    const fixed = often(0.05);
    return {
      driver: fixed ? 1 : whole(9, 30),
      driven: fixed ? 1 : whole(9, 40),
      ratio: fixed ? 0.5 + 2 * random() : null,
      costs: coarse.map((steps) => (steps ? whole(0, 3) : 2 * random())),
      parts: Array.from({ length: whole(0, 2) }, () => whole(0, parts - 1)),
    };
  };
  const stages = Array.from({ length: count }, () => ({ choices: Array.from({ length: whole(1, longest) }, choice) }));
  const low = Math.exp(2 * random() - 0.5);
  const sum = () => ({
    ratio: often(0.5) ? ([1, 10, 100][whole(0, 2)] ?? 1) : 0,
    terms: coarse.flatMap((_, term) => (often(0.5) ? [{ term, weight: [1, 0.5, 0.3, 7][whole(0, 3)] ?? 1 }] : [])),
  });
  const atHand = often(0.5)
    ? {
        have: Array.from({ length: parts }, () => whole(0, 2)),
        only: often(0.3),
        lacking: coarse.flatMap((_, term) =>
          often(0.5) ? [{ term, each: Array.from({ length: parts }, () => (often(0.5) ? 1 : random())) }] : [],
        ),
      }
    : null;
  const space: TrainSpace = {
    stages,
    terms,
    band: { low, high: often(0.5) ? low : low * (1 + 0.1 * random()) },
    within: often(0.5) ? { least: low * (1 - 0.3 * random()), most: low * (1.1 + 0.3 * random()) } : null,
    limits: often(0.4) ? [{ ...sum(), below: 1 + 5 * random() }] : [],
    atHand,
  };
  const order = Array.from({ length: whole(0, 4) }, () => ({
    ...sum(),
    step: often(0.5) ? 0 : ([0.01, 0.1, 0.5, 1][whole(0, 3)] ?? 1),
  }));
  return { space, order, most: whole(1, 60) };
}
