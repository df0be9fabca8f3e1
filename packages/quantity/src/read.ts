import { acceptedFor, aKind } from './accepted.ts';
import { KINDS, type Kind } from './kinds.ts';
import { type NumberRead, readNumber, VULGAR_CHARACTERS } from './number.ts';
import { findUnit, kindsWithUnit, nearUnit, type Unit } from './units.ts';

/** Why a text is not a quantity. The codes are stable, the sentences are not. */
export type ParseCode =
  | 'empty'
  | 'too-long'
  | 'number-bad'
  | 'comma-ambiguous'
  | 'not-finite'
  | 'not-whole'
  | 'unit-missing'
  | 'unit-unknown'
  | 'unit-wrong-kind'
  | 'range-unexpected'
  | 'range-bad'
  | 'range-order';

/** A text that was refused: what is wrong, what was read, and what is accepted with a right example. */
export interface ParseFailure {
  readonly ok: false;
  readonly code: ParseCode;
  readonly problem: string;
  readonly read: string;
  readonly accepted: string;
}

/** One number with its unit: "5 ft" of "5 ft 3 in". */
export interface Part {
  readonly number: NumberRead;
  readonly unit: Unit;
  /** The unit as written; empty where none was. */
  readonly unitText: string;
  /** Everything between the number and the next one, or the end, as written. */
  readonly after: string;
}

/** Parts of a quantity text, in order; or a ratio "64:22" as its two numbers. */
export type Reading =
  | { readonly ok: true; readonly form: 'parts'; readonly first: Part; readonly rest: readonly Part[] }
  | { readonly ok: true; readonly form: 'ratio'; readonly driven: NumberRead; readonly driver: NumberRead };

const LONGEST = 200;

/** Units that may follow each other in one value, large to small. */
const CHAINS: Readonly<Partial<Record<Kind, readonly string[]>>> = {
  length: ['ft', 'in'],
  mass: ['lb', 'oz'],
  angle: ['°', '′', '″'],
  time: ['h', 'min', 's'],
};

/** A refusal with its sentence and right examples. */
export function failure(kind: Kind, code: ParseCode, problem: string, read: string): ParseFailure {
  return { ok: false, code, problem, read, accepted: acceptedFor(kind) };
}

/** Typographic spaces, minus signs, quotes and fraction bars as their keyboard characters, one for one. */
export function plainText(text: string): string {
  return text
    .replace(/[\t\u00a0\u2000-\u200a\u202f\u205f\u3000]/g, ' ')
    .replace(/[\u2010-\u2013\u2212]/g, '-')
    .replace(/[\u2018\u2019\u2032]/g, "'")
    .replace(/[\u201c\u201d\u2033]/g, '"')
    .replace(/[\u2044\u2215]/g, '/');
}

/** Length of the unit at the start of a text that follows a number. */
function unitLength(text: string): number {
  const mark = /^(?:''|"|'|°(?=$|[ \d]))/.exec(text);
  if (mark !== null) return mark[0].length;
  const nextNumber = new RegExp(` +(?=[+-]?\\.?[\\d${VULGAR_CHARACTERS}])`);
  const start = /^1\/[a-z]/i.test(text) ? 2 : 0;
  const end = text.slice(start).search(nextNumber);
  return end < 0 ? text.length : start + end;
}

function resolveUnit(kind: Kind, spelling: string, number: string, read: string): Unit | ParseFailure {
  const unit = findUnit(kind, spelling);
  if (unit !== undefined) return unit;
  if (spelling === '') return failure(kind, 'unit-missing', `"${number}" has no unit.`, read);
  if (/^-[\d.]/.test(spelling))
    return failure(kind, 'number-bad', `"${read}" is not one number; a range is written low..high.`, read);
  const others = kindsWithUnit(spelling).map((other) => KINDS[other].name);
  if (others.length > 0) {
    const names = [...new Set(others)].join(' or ');
    return failure(
      kind,
      'unit-wrong-kind',
      `"${spelling}" is a unit of ${names}; here ${aKind(kind)} is wanted.`,
      read,
    );
  }
  const near = nearUnit(kind, spelling);
  const advice = near === undefined ? '' : ` Is "${near.typed}" meant?`;
  return failure(kind, 'unit-unknown', `"${spelling}" is not a known unit of ${KINDS[kind].name}.${advice}`, read);
}

function readPart(
  kind: Kind,
  text: string,
  original: string,
  read: string,
): { part: Part; length: number } | ParseFailure {
  const number = readNumber(text);
  if (!number.ok) return failure(kind, number.code, number.problem, read);
  const gap = /^ */.exec(text.slice(number.length))?.[0].length ?? 0;
  const unitStart = number.length + gap;
  const unitEnd = unitStart + unitLength(text.slice(unitStart));
  const unitText = original.slice(unitStart, unitEnd).trim();
  const unit = resolveUnit(kind, text.slice(unitStart, unitEnd).trim(), original.slice(0, number.length), read);
  if ('ok' in unit) return unit;
  const length = unitEnd + (/^ */.exec(text.slice(unitEnd))?.[0].length ?? 0);
  return { part: { number, unit, unitText, after: original.slice(number.length, length) }, length };
}

function readRatio(kind: Kind, text: string, read: string): Reading | ParseFailure {
  const [left = '', right = '', ...more] = text.split(':');
  const [driven, driver] = [readNumber(left.trim()), readNumber(right.trim())];
  if (!driven.ok) return failure(kind, driven.code, driven.problem, read);
  if (!driver.ok) return failure(kind, driver.code, driver.problem, read);
  const whole = driven.length === left.trim().length && driver.length === right.trim().length && more.length === 0;
  if (!whole) return failure(kind, 'number-bad', `"${read}" is not a ratio driven:driver.`, read);
  if (driver.value.n === 0n) return failure(kind, 'number-bad', `"${read}" divides by zero.`, read);
  return { ok: true, form: 'ratio', driven, driver };
}

/** In a value such as "5 ft 3 in" the units go from large to small, and only the last number may be broken. */
function chainFault(kind: Kind, parts: readonly Part[], read: string): ParseFailure | undefined {
  if (parts.length < 2) return undefined;
  const chain = CHAINS[kind] ?? [];
  const places = parts.map((part) => chain.indexOf(part.unit.symbol));
  const ordered = places.every((place, i) => place >= 0 && (i === 0 || place > (places[i - 1] ?? place)));
  const wholes = parts.slice(0, -1).every((part) => part.number.value.d === 1n);
  const signs = parts.slice(1).some((part) => part.number.negative);
  if (ordered && wholes && !signs) return undefined;
  return failure(kind, 'number-bad', `"${read}" is more than one value.`, read);
}

/** "HRC 58" as "58 HRC"; drawings put the scale first. */
function scaleLast(text: string): string {
  const m = /^([A-Za-z][A-Za-z ]*?) *(\d[\d.,]*)$/.exec(text);
  return m === null ? text : `${m[2]} ${m[1]}`;
}

/** Reads the numbers and units of one value, without reckoning it out. */
export function readQuantity(text: string, kind: Kind): Reading | ParseFailure {
  const original = text.length > LONGEST ? text : text.trim();
  if (text.length > LONGEST)
    return failure(kind, 'too-long', `The text has ${text.length} characters; at most ${LONGEST} are read.`, text);
  if (original === '') return failure(kind, 'empty', 'Nothing is written here.', text);
  const turned = kind === 'hardness' ? scaleLast(original) : original;
  const plain = plainText(turned);
  if (plain.includes('..'))
    return failure(kind, 'range-unexpected', `"${original}" is a range; one value is wanted.`, text);
  if (kind === 'ratio' && plain.includes(':')) return readRatio(kind, plain, text);
  const parts: Part[] = [];
  for (let at = 0; at < plain.length; ) {
    const next = readPart(kind, plain.slice(at), turned.slice(at), text);
    if ('ok' in next) return next;
    parts.push(next.part);
    at += next.length;
  }
  const [first, ...rest] = parts;
  if (first === undefined) return failure(kind, 'empty', 'Nothing is written here.', text);
  return chainFault(kind, parts, text) ?? { ok: true, form: 'parts', first, rest };
}
