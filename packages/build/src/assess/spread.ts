import type { CornerResult, Evaluation } from './evaluation.ts';
import type { Spread } from './types.ts';

/** A number at the middle with its ends over all corners tried; null where it is not known. */
export function spreadOf(
  evaluation: Evaluation,
  read: (result: CornerResult) => number | null | undefined,
): Spread | null {
  const value = read(evaluation.middle) ?? null;
  if (value === null || Number.isNaN(value)) return null;
  let lo = value;
  let hi = value;
  for (const other of evaluation.others) {
    const x = read(other);
    if (x === null || x === undefined || Number.isNaN(x)) continue;
    lo = Math.min(lo, x);
    hi = Math.max(hi, x);
  }
  return { value, lo, hi };
}
