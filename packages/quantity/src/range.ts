import type { Kind } from './kinds.ts';
import { readNumber } from './number.ts';
import { parseQuantity } from './parse.ts';
import type { Quantity } from './quantity.ts';
import { failure, type ParseFailure, plainText, readQuantity } from './read.ts';
import type { HardnessScale } from './units.ts';

/** A text read as a value or a range. */
export interface ParsedInput<K extends Kind = Kind> {
  readonly ok: true;
  readonly kind: K;
  /** Low and high end, SI; the same for a value. */
  readonly lo: Quantity<K>;
  readonly hi: Quantity<K>;
  /** The value, or the middle of the range; for counts the whole number at or below the middle. */
  readonly si: Quantity<K>;
  readonly isRange: boolean;
  readonly text: string;
  /** Symbol of the unit of the value, or of the high end. */
  readonly unit: string;
  /** Hardness only. */
  readonly scale?: HardnessScale;
}

export type InputResult<K extends Kind = Kind> = ParsedInput<K> | ParseFailure;

/** Whether a text is one number and nothing else. */
export function isBareNumber(text: string): boolean {
  const plain = plainText(text).trim();
  const number = readNumber(plain);
  return number.ok && number.length === plain.length;
}

/** The low end with the unit of the high end, where it has none of its own. */
function withUnit<K extends Kind>(low: string, high: string, kind: K): string {
  const end = readQuantity(high, kind);
  if (!end.ok || end.form === 'ratio' || end.rest.length > 0) return low;
  return isBareNumber(low) ? `${low.trim()} ${end.first.unitText}` : low;
}

function middle(kind: Kind, lo: number, hi: number): number {
  const sum = lo + hi;
  const half = Number.isFinite(sum) ? sum / 2 : lo / 2 + hi / 2;
  return kind === 'count' ? Math.floor(half) : half;
}

/**
 * Reads a value, or a range `low..high`. The unit may stand once, at the end: "3..5 mm", or at both ends: "1/8 in..5 mm".
 * @param text As typed.
 * @param kind What is wanted.
 * @returns Both ends and the value to reckon with, or the reason for refusing the text. Never throws.
 */
export function parseInput<K extends Kind>(text: string, kind: K): InputResult<K> {
  const key = `${kind} ${text}`;
  const known = KEPT.get(key);
  if (known) return known as InputResult<K>;
  const result = readInput(text, kind);
  if (KEPT.size >= MOST_KEPT) KEPT.clear();
  KEPT.set(key, result);
  return result;
}

/** Texts are read again and again while a build is edited; results never change, so they are kept. */
const KEPT = new Map<string, InputResult<Kind>>();
const MOST_KEPT = 4000;

function readInput<K extends Kind>(text: string, kind: K): InputResult<K> {
  const at = plainText(text).indexOf('..');
  if (at < 0) {
    const value = parseQuantity(text, kind);
    return value.ok ? { ...value, lo: value.si, hi: value.si, isRange: false } : value;
  }
  const [low, high] = [text.slice(0, at), text.slice(at + 2)];
  const bad = (problem: string): ParseFailure => failure(kind, 'range-bad', problem, text);
  if (/^\.|\.\./.test(high)) return bad(`"${text}" is not a range; two points stand between low and high.`);
  if (low.trim() === '' || high.trim() === '') return bad(`"${text}" lacks one end of the range.`);
  const hi = parseQuantity(high, kind);
  if (!hi.ok) return { ...hi, read: text };
  const lo = parseQuantity(withUnit(low, high, kind), kind);
  if (!lo.ok) return { ...lo, read: text };
  if (lo.scale !== hi.scale) return bad(`"${text}" mixes the scales ${lo.scale} and ${hi.scale}.`);
  if (kind === 'fraction' && lo.unit !== hi.unit && hi.unit === '')
    return failure(kind, 'unit-missing', `"${high.trim()}" has no % where the low end has one.`, text);
  if (lo.si > hi.si) return failure(kind, 'range-order', `In "${text}" the low end is above the high end.`, text);
  const ends = { lo: lo.si, hi: hi.si, si: middle(kind, lo.si, hi.si) as Quantity<K>, isRange: true };
  return { ...hi, ...ends, text };
}
