/** Finds the smallest step of a ladder that does, by doubling and halving over its steps. */
import type { Finding } from '../assess/types.ts';
import type { Ladder, Step } from './ladder.ts';
import { type Trials, tryMiddle } from './trials.ts';

/** More than this is an improvement, as a part. */
export const BETTER = 0.02;

/** A step of a ladder with what the middle says of it. */
export interface Found {
  readonly ladder: Ladder;
  readonly at: number;
  readonly step: Step;
  /** Infinite where it holds without a number, or nothing is left to ask. */
  readonly score: number;
  readonly reaches: boolean;
}

/**
 * What the middle must come to for the worse end to come to the design reserve, taking their ratio as it is now.
 */
export function aimAt({ reserve, wanted }: Finding): number {
  if (!reserve || !(reserve.lo > 0) || !(reserve.value > 0)) return wanted;
  return (wanted * reserve.value) / reserve.lo;
}

/**
 * The first step from `from` on whose middle comes to the aim; else the best of those tried, where it is better at all.
 * @param now score without a change
 */
export function* findStep(
  trials: Trials,
  id: string,
  {
    ladder,
    from,
    aim,
    now,
  }: { readonly ladder: Ladder; readonly from: number; readonly aim: number; readonly now: number },
): Generator<void, Found | null> {
  const { steps } = ladder;
  const tried = new Map<number, number>();
  const scoreAt = function* (k: number): Generator<void, number> {
    const step = steps[k];
    const known = tried.get(k);
    if (known !== undefined || !step) return known ?? Number.NEGATIVE_INFINITY;
    const score = yield* tryMiddle(trials, step.patches, id);
    tried.set(k, score);
    return score;
  };
  const found = (at: number): Found | null => {
    const step = steps[at];
    const score = tried.get(at) ?? Number.NEGATIVE_INFINITY;
    return step ? { ladder, at, step, score, reaches: score >= aim } : null;
  };
  let below = from - 1;
  let reached = -1;
  let last = now;
  let falls = 0;
  for (
    let stride = 1, k = from;
    k < steps.length;
    stride *= 2, k = k < steps.length - 1 ? Math.min(k + stride, steps.length - 1) : steps.length
  ) {
    const score = yield* scoreAt(k);
    if (score >= aim) {
      reached = k;
      break;
    }
    below = k;
    falls = score < last ? falls + 1 : 0;
    // Past its best, or never any good.
    if (falls >= 2) break;
    last = score;
  }
  if (reached >= 0) {
    while (reached - below > 1) {
      const half = Math.floor((below + reached) / 2);
      if ((yield* scoreAt(half)) >= aim) reached = half;
      else below = half;
    }
    return found(reached);
  }
  const [best] = [...tried].sort((a, b) => b[1] - a[1] || a[0] - b[0]);
  return best && best[1] > now * (1 + BETTER) ? found(best[0]) : null;
}
