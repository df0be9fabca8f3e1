import type { Assessment } from '@oddwheel/build/assess/types';

/** The parts of an assessment that changed since the one sent before; the page keeps the rest, and redraws nothing of it. */
export type AssessmentChange = Partial<Assessment>;

const object = (value: unknown): value is object => typeof value === 'object' && value !== null;

/** Whether two answers say the same; it ends at the first thing that differs. */
function same(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (!object(a) || !object(b)) return false;
  if (a instanceof Float64Array || Array.isArray(a)) {
    const [all, others] = [a as ArrayLike<unknown>, b as ArrayLike<unknown>];
    if (Object.getPrototypeOf(a) !== Object.getPrototypeOf(b) || all.length !== others.length) return false;
    for (let k = 0; k < all.length; k += 1) if (!same(all[k], others[k])) return false;
    return true;
  }
  const [one, other] = [a as Readonly<Record<string, unknown>>, b as Readonly<Record<string, unknown>>];
  const keys = Object.keys(one);
  return keys.length === Object.keys(other).length && keys.every((key) => key in other && same(one[key], other[key]));
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
