import { type Kind, siUnit } from '@oddwheel/quantity/kinds';
import type { Range } from './method.ts';

const withUnit = (value: number, unit: string): string => (unit === '' ? String(value) : `${value} ${unit}`);

/** What a number must be to lie in a range: "more than 0 m and at most 2 m"; empty when all numbers do. */
export function rangeWords(range: Range | undefined, kind: Kind): string {
  const unit = siUnit(kind);
  const words: string[] = [];
  if (range?.min !== undefined) words.push(`${range.open ? 'more than' : 'at least'} ${withUnit(range.min, unit)}`);
  if (range?.max !== undefined) words.push(`${range.open ? 'less than' : 'at most'} ${withUnit(range.max, unit)}`);
  return words.join(' and ');
}

/** Whether a number lies in a range. */
function inRange(value: number, range: Range | undefined): boolean {
  const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY, open = false } = range ?? {};
  if (Number.isNaN(value)) return false;
  return open ? value > min && value < max : value >= min && value <= max;
}

/** Why a number does not fit, as the rest of a sentence that begins with it; undefined when it fits. */
export function misfit(value: number, kind: Kind, range: Range | undefined): string | undefined {
  if (!Number.isFinite(value)) return 'is not a finite number';
  return inRange(value, range) ? undefined : `is out of range; it must be ${rangeWords(range, kind)}`;
}
