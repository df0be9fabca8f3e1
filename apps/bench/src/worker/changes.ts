import type { Assessment } from '@oddwheel/build/assess/types';

/** The parts of an assessment that changed since the one sent before; the page keeps the rest, and redraws nothing of it. */
export type AssessmentChange = Partial<Assessment>;

const bits = (numbers: Float64Array): string => numbers.join();

function same(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (a instanceof Float64Array && b instanceof Float64Array) return a.length === b.length && bits(a) === bits(b);
  return JSON.stringify(a) === JSON.stringify(b);
}

/** The keys of `next` whose content differs from `before`; all of them when nothing was sent before. */
export function assessmentChange(before: Assessment | null, next: Assessment): AssessmentChange {
  if (before === null) return next;
  const keys = (Object.keys(next) as (keyof Assessment)[]).filter((key) => !same(before[key], next[key]));
  return Object.fromEntries(keys.map((key) => [key, next[key]]));
}

/** The assessment after a change. */
export function withChange(before: Assessment | null, change: AssessmentChange): Assessment {
  return before === null ? (change as Assessment) : { ...before, ...change };
}
