import { aKind } from './accepted.ts';
import { type Digits, type Layout, layOut, roundDigits, roundNear } from './digits.ts';
import { decimal, exact, nearestWhole, times, toDouble } from './exact.ts';
import { KINDS, type Kind } from './kinds.ts';
import { inUnit, requireUnit, siOf, type Unit, unitsOf } from './units.ts';

/** U+2009, between a number and its unit and between groups of three digits (SI Brochure, 9th edition, 2019, 5.4.3, 5.4.4). */
export const THIN_SPACE = '\u2009';
/** U+2212, the true minus sign. */
export const TRUE_MINUS = '\u2212';

const TYPED: Layout = { minus: '-', thousands: '', above: 21, below: 6 };
const PRINTED: Layout = { minus: TRUE_MINUS, thousands: THIN_SPACE, above: 12, below: 5 };

function finite(si: number, kind: Kind): number {
  if (!Number.isFinite(si)) throw new RangeError(`Cannot print ${aKind(kind)} that is ${si}.`);
  return si;
}

/** The shortest digits in this unit that read back as the same double; undefined when 17 digits are not enough. */
function exactDigits(unit: Unit, si: number): Digits | undefined {
  const value = inUnit(unit, si);
  const readsBack = (digits: Digits): boolean => siOf(unit, decimal(layOut(digits, TYPED))) === si;
  const full = roundDigits(value, 17);
  if (!readsBack(full)) return undefined;
  // More digits are never further off, so the shortest can be found by halving.
  let [short, long] = [0, full.digits.length];
  while (long - short > 1) {
    const count = (short + long) >> 1;
    if (readsBack(roundDigits(value, count))) long = count;
    else short = count;
  }
  const digits = roundDigits(value, long);
  return Object.is(si, -0) ? { ...digits, negative: true } : digits;
}

/**
 * Prints a quantity as it would be typed ("54 N.m"), such that `parseQuantity` gives back the same double, bit for bit. Where no
 * 17 digits in the wanted unit do that (a thermometer scale near absolute zero), the SI unit is used.
 * @param si Finite SI value; for hardness the number on its scale.
 * @param kind Kind of the value.
 * @param unit Any spelling of a unit of that kind; '' for plain numbers; for hardness the scale.
 * @throws RangeError when the value is not finite, a count is not whole, or the unit is not of this kind.
 */
export function printExact(si: number, kind: Kind, unit: string): string {
  finite(si, kind);
  if (kind === 'count' && !Number.isInteger(si)) throw new RangeError(`A count must be a whole number, not ${si}.`);
  const wanted = requireUnit(kind, unit);
  for (const candidate of [wanted, ...unitsOf(kind).slice(0, 1)]) {
    // −0 has no thermometer reading.
    const digits = Object.is(si, -0) && candidate.zero.n !== 0n ? undefined : exactDigits(candidate, si);
    if (digits !== undefined) return `${layOut(digits, TYPED)}${candidate.typed === '' ? '' : ` ${candidate.typed}`}`;
  }
  throw new RangeError(`${si} has no exact text in ${wanted.symbol}.`);
}

/** Texts printed before, by kind, unit and figures, then by number: most numbers are printed again at the next edit. */
const PRINTED_BEFORE = new Map<Kind, Map<string, Map<number, Map<number, string>>>>();
/** Numbers of one sort that are kept. */
const MOST_PRINTED = 4_000;

function printedBefore(kind: Kind, unit: string, most: number): Map<number, string> {
  const known = PRINTED_BEFORE.get(kind)?.get(unit)?.get(most);
  if (known) return known;
  const ofKind = PRINTED_BEFORE.get(kind) ?? new Map<string, Map<number, Map<number, string>>>();
  PRINTED_BEFORE.set(kind, ofKind);
  const ofUnit = ofKind.get(unit) ?? new Map<number, Map<number, string>>();
  ofKind.set(unit, ofUnit);
  const texts = new Map<number, string>();
  ofUnit.set(most, texts);
  return texts;
}

const FACTORS = new WeakMap<Unit, number>();

/** Digits of an SI value in a unit: by doubles where they leave no doubt, else exactly. */
function digitsIn(unit: Unit, si: number, most: number): Digits {
  const factor = FACTORS.get(unit) ?? toDouble(unit.factor);
  FACTORS.set(unit, factor);
  const quick = unit.zero.n === 0n ? roundNear(si / factor, most) : null;
  return quick ?? roundDigits(inUnit(unit, si), most);
}

/**
 * Prints a quantity for reading: thin spaces between groups of three digits and before the unit, true minus, no trailing zeros.
 * @param si Finite SI value.
 * @param kind Kind of the value.
 * @param unit Any spelling of a unit of that kind; '' for plain numbers; for hardness the scale.
 * @param options `digits`: most significant figures, 1 to 17; 4 when left out. Counts are always printed whole.
 * @throws RangeError when the value is not finite, the digits are out of range, or the unit is not of this kind.
 */
export function formatQuantity(
  si: number,
  kind: Kind,
  unit: string,
  options: { readonly digits?: number } = {},
): string {
  const most = options.digits ?? 4;
  if (!Number.isInteger(most) || most < 1 || most > 17)
    throw new RangeError(`Significant figures must be a whole number from 1 to 17, not ${most}.`);
  const texts = printedBefore(kind, unit, most);
  const known = texts.get(si);
  if (known !== undefined) return known;
  const found = requireUnit(kind, unit);
  const number = layOut(digitsIn(found, finite(si, kind), kind === 'count' ? 17 : most), PRINTED);
  // The signs of plane angle follow the number directly (SI Brochure, 9th edition, 5.4.3).
  const gap = found.symbol === '' || /^[°′″]$/.test(found.symbol) ? '' : THIN_SPACE;
  const text = `${number}${gap}${found.symbol}`;
  if (texts.size >= MOST_PRINTED) texts.clear();
  texts.set(si, text);
  return text;
}

/**
 * Prints a part of one in percent, for a sentence: whole percent from 10 up, at most three figures below. Beside 100 % one decimal is kept, so that
 * what falls short is not shown as met. What three figures give exactly was typed or stands in a table, and is shown as it is.
 * @param part Finite part of one.
 * @throws RangeError when the part is not finite.
 */
export function formatPercent(part: number): string {
  const size = Math.abs(part) * 100;
  const typed = Math.abs(size - Number(size.toPrecision(3))) < 1e-9 * size;
  const whole = size < 10 ? 3 : Math.floor(Math.log10(size)) + 1;
  const digits = typed ? 3 : whole + (size > 99 && size < 101 ? 1 : 0);
  return formatQuantity(part, 'fraction', '%', { digits: Math.min(17, digits) });
}

/**
 * Prints a length in inches to the nearest 1/64, as a shop does: "1 1/4 in"; with ≈ before it when that is not the exact value.
 * @param si Finite length, m.
 * @throws RangeError when the length is not finite.
 */
export function formatFraction(si: number): string {
  const inch = requireUnit('length', 'in');
  const parts = nearestWhole(times(inUnit(inch, finite(si, 'length')), exact(64n)));
  const size = parts < 0n ? -parts : parts;
  const [whole, rest] = [size / 64n, exact(size % 64n, 64n)];
  const fraction = rest.n === 0n ? '' : `${rest.n}/${rest.d}`;
  const number = whole === 0n && fraction !== '' ? fraction : `${whole} ${fraction}`.trim();
  const about = siOf(inch, exact(parts, 64n)) === si ? '' : `≈${THIN_SPACE}`;
  return `${about}${parts < 0n ? TRUE_MINUS : ''}${number}${THIN_SPACE}in`;
}

/** What a number is shown as; each has its own unit. */
export type UnitUse =
  | 'length'
  | 'shopLength'
  | 'runOut'
  | 'speed'
  | 'torque'
  | 'force'
  | 'power'
  | 'mass'
  | 'pressure'
  | 'angularSpeed'
  | 'angle'
  | 'temperature'
  | 'stiffness';

/** The unit chosen for each use: a unit's symbol, or "in 1/64" for inches in fractions. */
export type UnitChoice = Readonly<Record<UnitUse, string>>;

/** Inches in fractions, as a choice of unit. */
export const FRACTION_UNIT = 'in 1/64';

const USES: Readonly<Record<UnitUse, { readonly kind: Kind; readonly only?: readonly string[] }>> = {
  length: { kind: 'length' },
  shopLength: { kind: 'length', only: ['mm', FRACTION_UNIT] },
  runOut: { kind: 'length', only: ['thou', 'µm'] },
  speed: { kind: 'speed' },
  torque: { kind: 'torque' },
  force: { kind: 'force' },
  power: { kind: 'power' },
  mass: { kind: 'mass' },
  pressure: { kind: 'pressure' },
  angularSpeed: { kind: 'angularSpeed' },
  angle: { kind: 'angle' },
  temperature: { kind: 'temperature' },
  stiffness: { kind: 'stiffness' },
};

/** Units shown where a build chooses none. */
export const DEFAULT_UNITS: UnitChoice = {
  length: 'mm',
  shopLength: 'mm',
  runOut: 'thou',
  speed: 'km/h',
  torque: 'N·m',
  force: 'N',
  power: 'kW',
  mass: 'kg',
  pressure: 'MPa',
  angularSpeed: 'rpm',
  angle: '°',
  temperature: '°C',
  stiffness: 'N/mm',
};

/** The units that may be chosen for a use. */
export function unitsForUse(use: UnitUse): readonly string[] {
  const { kind, only } = USES[use];
  return only ?? [...unitsOf(kind).map((unit) => unit.symbol), ...(use === 'length' ? [FRACTION_UNIT] : [])];
}

/**
 * Prints a number in the unit chosen for its use, to at most 4 significant figures.
 * @param choice Units chosen.
 * @param use What the number is shown as.
 * @param si Finite SI value.
 * @throws RangeError when the value is not finite or the choice names no unit of this use.
 */
export function formatFor(choice: UnitChoice, use: UnitUse, si: number): string {
  return choice[use] === FRACTION_UNIT ? formatFraction(si) : formatQuantity(si, USES[use].kind, choice[use]);
}

/** One thing wrong with a choice of units; `key` is the use it stands under, '' for the whole. */
export interface UnitChoiceFault {
  readonly key: string;
  readonly problem: string;
  readonly read: string;
  readonly accepted: string;
}

export type UnitChoiceResult =
  | { readonly ok: true; readonly choice: UnitChoice }
  | { readonly ok: false; readonly faults: readonly UnitChoiceFault[] };

const uses = Object.keys(USES) as UnitUse[];

function choiceFault(key: string, value: unknown): UnitChoiceFault | undefined {
  const use = uses.find((known) => known === key);
  const read = typeof value === 'string' ? value : (JSON.stringify(value) ?? String(value));
  if (use === undefined)
    return { key, problem: `"${key}" is not a use of units.`, read, accepted: `one of ${uses.join(', ')}` };
  const allowed = unitsForUse(use);
  if (typeof value === 'string' && allowed.includes(value)) return undefined;
  const problem = `"${read}" is not a unit that a ${KINDS[USES[use].kind].name} is shown in here.`;
  return { key, problem, read, accepted: `one of ${allowed.join(', ')}` };
}

/**
 * Checks a choice of units and fills it up with the defaults. All faults are given at once.
 * @param value Any value; an object from uses to unit symbols is accepted, with any of the uses left out.
 */
export function checkUnitChoice(value: unknown): UnitChoiceResult {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    const read = JSON.stringify(value) ?? String(value);
    const accepted = 'an object such as {"length": "mm", "torque": "N·m"}';
    return { ok: false, faults: [{ key: '', problem: 'A choice of units is an object.', read, accepted }] };
  }
  const faults = Object.entries(value).flatMap(([key, unit]) => choiceFault(key, unit) ?? []);
  return faults.length > 0 ? { ok: false, faults } : { ok: true, choice: { ...DEFAULT_UNITS, ...value } };
}
