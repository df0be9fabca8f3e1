import { type Exact, exact, minus, over, plus, times, toDouble } from './exact.ts';
import { KINDS, type Kind } from './kinds.ts';
import type { Quantity } from './quantity.ts';
import { failure, type ParseFailure, type Reading, readQuantity } from './read.ts';
import { HARDNESS_SCALES, type HardnessScale, siOf } from './units.ts';

/** A text read as a quantity. */
export interface Parsed<K extends Kind = Kind> {
  readonly ok: true;
  readonly kind: K;
  /** In the SI unit of the kind; for hardness the number on its own scale. */
  readonly si: Quantity<K>;
  /** Symbol of the unit as printed; of "5 ft 3 in" the last one; empty for plain numbers. */
  readonly unit: string;
  /** The text as it was given. */
  readonly text: string;
  /** Hardness only. */
  readonly scale?: HardnessScale;
}

export type ParseResult<K extends Kind = Kind> = Parsed<K> | ParseFailure;

/** The value of a reading in SI units, exact; the sign of the first number holds for all that follow. */
function total(reading: Reading): { value: Exact; si: number; negative: boolean; unit: string } {
  if (reading.form === 'ratio') {
    const value = over(reading.driven.value, reading.driver.value);
    return { value, si: toDouble(value), negative: value.n < 0n, unit: '' };
  }
  const { first, rest } = reading;
  const { unit } = rest.at(-1) ?? first;
  if (rest.length === 0)
    return {
      value: first.number.value,
      si: siOf(unit, first.number.value),
      negative: first.number.negative,
      unit: unit.symbol,
    };
  const size = [first, ...rest].reduce((sum, part) => {
    const { value } = part.number;
    return plus(sum, times(value.n < 0n ? minus(value) : value, part.unit.factor));
  }, exact(0n));
  const value = first.number.negative ? minus(size) : size;
  return { value, si: toDouble(value), negative: first.number.negative, unit: unit.symbol };
}

/**
 * Reads one quantity as a shop writes it: "1 1/4 in", "3/4\"", "30 thou", "5 ft 3 in", "54 N.m", "12 500 N", "25,4 mm",
 * "64:22" (driven:driver), "97 %", "58 HRC". The result is the double nearest to what was written.
 *
 * A missing unit is an error, never guessed; so is a comma that may be a thousands mark. Hardness keeps its scale.
 * @param text As typed; typographic spaces, minus signs, quotes and fractions are read too.
 * @param kind What is wanted.
 * @returns The quantity, or the reason for refusing it. Never throws.
 */
export function parseQuantity<K extends Kind>(text: string, kind: K): ParseResult<K> {
  const reading = readQuantity(text, kind);
  if (!reading.ok) return reading;
  const { value, si, negative, unit } = total(reading);
  const { name } = KINDS[kind];
  if (!Number.isFinite(si)) return failure(kind, 'not-finite', `"${text}" is too large for a ${name}.`, text);
  if (si === 0 && value.n !== 0n && reading.form === 'parts' && reading.first.unit.zero.n === 0n)
    return failure(kind, 'not-finite', `"${text}" is too small to tell from zero.`, text);
  if (kind === 'count' && !Number.isInteger(si))
    return failure(kind, 'not-whole', `"${text}" is not a whole number.`, text);
  const scale = kind === 'hardness' ? HARDNESS_SCALES.find((known) => known === unit) : undefined;
  const signed = (value.n === 0n && negative ? -0 : si) as Quantity<K>;
  return { ok: true, kind, si: signed, unit, text, ...(scale === undefined ? {} : { scale }) };
}
