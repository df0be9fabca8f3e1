import { type Exact, exact, minus, plus, shifted } from './exact.ts';

/** How a number was written; a value changed by a drag is written back the same way. */
export type NumberStyle =
  /** `places` after the decimal mark, which is a comma when `comma`. */
  | { readonly form: 'decimal'; readonly places: number; readonly comma: boolean }
  /** "1 1/4" or "1-1/4": `joiner` stands between whole and fraction. */
  | { readonly form: 'fraction'; readonly denominator: bigint; readonly joiner: ' ' | '-' };

/** A number read from the start of a text. */
export interface NumberRead {
  readonly ok: true;
  readonly value: Exact;
  /** A minus sign was written; kept apart because −0 has no exact fraction. */
  readonly negative: boolean;
  readonly style: NumberStyle;
  /** Characters read. */
  readonly length: number;
}

/** Why no number could be read. */
export interface NumberFault {
  readonly ok: false;
  readonly code: 'number-bad' | 'comma-ambiguous';
  readonly problem: string;
}

const VULGAR: Readonly<Record<string, readonly [bigint, bigint]>> = {
  '½': [1n, 2n],
  '⅓': [1n, 3n],
  '⅔': [2n, 3n],
  '¼': [1n, 4n],
  '¾': [3n, 4n],
  '⅕': [1n, 5n],
  '⅖': [2n, 5n],
  '⅗': [3n, 5n],
  '⅘': [4n, 5n],
  '⅙': [1n, 6n],
  '⅚': [5n, 6n],
  '⅛': [1n, 8n],
  '⅜': [3n, 8n],
  '⅝': [5n, 8n],
  '⅞': [7n, 8n],
};

/** The ready-made fraction characters that are read. */
export const VULGAR_CHARACTERS = Object.keys(VULGAR).join('');

const FRACTION = new RegExp(
  `^(?:(\\d{1,30})( +|-)?(?=[${VULGAR_CHARACTERS}])|(\\d{1,30})( +|-)(?=\\d+/\\d))?(?:([${VULGAR_CHARACTERS}])|(\\d{1,30})/(\\d{1,30}))(?![\\d.,/])`,
);
const DECIMAL = /^([1-9]\d{0,2}(?: \d{3})+(?![\d/])|\d*)((?:[.,]\d+)*)(?:e([+-]?\d+))?/i;

const bad = (problem: string): NumberFault => ({ ok: false, code: 'number-bad', problem });

function readFraction(m: RegExpExecArray): Omit<NumberRead, 'negative'> | NumberFault {
  const whole = m[1] ?? m[3];
  const ready = m[5] === undefined ? undefined : VULGAR[m[5]];
  const [above, below] = ready ?? [BigInt(m[6] ?? 0), BigInt(m[7] ?? 0)];
  if (below === 0n) return bad(`"${m[0]}" divides by zero.`);
  if (whole !== undefined && above >= below)
    return bad(`In "${m[0]}" the fraction after the whole number is not below one.`);
  const joiner = (m[2] ?? m[4]) === '-' ? '-' : ' ';
  const value = plus(exact(BigInt(whole ?? 0)), exact(above, below));
  return { ok: true, value, style: { form: 'fraction', denominator: below, joiner }, length: m[0].length };
}

/** Takes the marks in "12,500.5" apart: digits before and after the decimal mark, or the reason why that is not certain. */
function splitMarks(head: string, tail: string): { whole: string; places: string; comma: boolean } | NumberFault {
  const grouped = head.includes(' ');
  const whole = head.replaceAll(' ', '');
  const marks = [...tail.matchAll(/([.,])(\d+)/g)].map((m) => ({ mark: m[1] ?? '', digits: m[2] ?? '' }));
  const last = marks.at(-1);
  if (last === undefined) return { whole, places: '', comma: false };
  const before = marks.slice(0, -1);
  const startsGroups = grouped || /^[1-9]\d{0,2}$/.test(head);
  const groups = (list: typeof marks): boolean =>
    startsGroups && !grouped && list.every((m) => m.mark === ',' && m.digits.length === 3);
  if (before.length === 0) {
    if (last.mark === ',' && last.digits.length === 3 && startsGroups) {
      const problem = `The comma in "${head}${tail}" may be a decimal mark or a thousands mark: write ${whole}.${last.digits} or ${whole}${last.digits}.`;
      return { ok: false, code: 'comma-ambiguous', problem };
    }
    return { whole, places: last.digits, comma: last.mark === ',' };
  }
  const joined = before.map((m) => m.digits).join('');
  // Two or more commas, or commas before a point, can only be thousands marks.
  if (groups(marks)) return { whole: whole + joined + last.digits, places: '', comma: false };
  if (groups(before) && last.mark === '.') return { whole: whole + joined, places: last.digits, comma: false };
  return bad(`"${head}${tail}" has more than one decimal mark.`);
}

function readDecimal(text: string): Omit<NumberRead, 'negative'> | NumberFault {
  const m = DECIMAL.exec(text);
  const [head, tail, power] = [m?.[1] ?? '', m?.[2] ?? '', m?.[3] ?? '0'];
  if (m === null || (head === '' && tail === '')) return bad(`"${text}" does not begin with a number.`);
  const split = splitMarks(head, tail);
  if ('ok' in split) return split;
  if (!/^[+-]?\d{1,4}$/.test(power)) return bad(`The power of ten in "${m[0]}" is out of range.`);
  const { whole, places, comma } = split;
  return {
    ok: true,
    value: shifted(exact(BigInt(whole + places)), Number(power) - places.length),
    style: { form: 'decimal', places: Math.max(0, places.length - Number(power)), comma },
    length: m[0].length,
  };
}

/**
 * Reads one number from the start of a text: "6.35", "25,4", "1 1/4", "1-1/4", "½", "12 500", "1e-3".
 *
 * A comma is a decimal mark only where it cannot be a thousands mark: never when exactly three digits follow one to three
 * digits that do not begin with zero. Two or more commas, or commas before a point, are thousands marks. A point is always the
 * decimal mark. Common practice; the space as thousands mark is from the SI Brochure, 9th edition, 2019, 5.4.4.
 * @param text Normalised text: plain spaces, "-" as minus, "/" as fraction bar.
 */
export function readNumber(text: string): NumberRead | NumberFault {
  const sign = /^[+-]?/.exec(text)?.[0] ?? '';
  const rest = text.slice(sign.length);
  const fraction = FRACTION.exec(rest);
  const read = fraction === null ? readDecimal(rest) : readFraction(fraction);
  if (!read.ok) return read;
  const after = rest.slice(read.length);
  if (/^ *[\d.,/:]/.test(after) && !/^ *1\/[a-z]/i.test(after)) return bad(`"${text}" is not one number.`);
  const negative = sign === '-';
  return { ...read, negative, value: negative ? minus(read.value) : read.value, length: sign.length + read.length };
}
