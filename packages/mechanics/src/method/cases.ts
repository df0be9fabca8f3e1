import type { Kind } from '@oddwheel/quantity/kinds';
import { parseQuantity } from '@oddwheel/quantity/parse';
import type { Method, Param, Source } from './method.ts';
import { type RowLookup, readInput } from './read-input.ts';
import type { Json } from './schema.ts';
import { kindOfParam } from './working.ts';

/** How far a result may be from the expected value: a difference of the same kind, or a part of the expected value. */
export type Within = { readonly abs: string | number } | { readonly rel: number };

export interface Expected {
  /** A unit text or an SI number; a list of these for lists and vectors; the word for words. */
  readonly value: string | number | readonly (string | number)[];
  /** Wanted for all values but whole numbers and words, which must be the same. */
  readonly within?: Within;
}

/** One worked example, its expected values and where they came from. */
export interface Case {
  readonly id: string;
  /** Input as `reckon` takes it. */
  readonly given: { readonly [key: string]: Json };
  /** Expected values by key of the method's outputs. */
  readonly expect: Readonly<Record<string, Expected>>;
  readonly source: Source & { readonly address?: string };
  readonly kind: 'published-example' | 'table-spot' | 'constructed' | 'reference-library';
  /** What a reader should know of the expected values: rounding in the source, which of them were computed anew. */
  readonly note?: string;
}

/** One compared number: entry `key/0` of a list or vector, else `key`. */
export interface Compared {
  readonly key: string;
  readonly expected: number | string;
  readonly got: number | string;
  /** Distance of both; infinite for words that differ. */
  readonly error: number;
  readonly allowed: number;
}

export interface CaseResult {
  readonly ok: boolean;
  /** Why the case could not be run or compared. */
  readonly faults: readonly string[];
  readonly compared: readonly Compared[];
  readonly misses: readonly Compared[];
  /** The comparison that uses most of what is allowed; null when there is none. */
  readonly worst: Compared | null;
}

/** Whether a case checks against something outside: a published or tabled value, or a general-purpose library, not our own making. */
export function countsAsOutside(of: Case): boolean {
  return of.kind !== 'constructed' && (of.source.how === 'read' || of.source.how === 'memory');
}

class Unreadable extends Error {}

function numberOf(value: string | number, kind: Kind, where: string): number {
  if (typeof value === 'number') return value;
  // A count that is declared as a value need not be whole.
  const parsed = parseQuantity(value, kind === 'count' ? 'number' : kind);
  if (parsed.ok) return parsed.si;
  throw new Unreadable(`${where}: ${parsed.problem} Accepted: ${parsed.accepted}.`);
}

/** A difference of temperatures has no zero point. */
const differenceKind = (kind: Kind): Kind => (kind === 'temperature' ? 'temperatureDifference' : kind);

function allowance(within: Within | undefined, expected: number, param: Param, kind: Kind, key: string): number {
  if (within === undefined) {
    if (param.form === 'integer') return 0;
    throw new Unreadable(`${key}: "within" is missing; accepted: {"abs": …} or {"rel": …}.`);
  }
  const allowed =
    'rel' in within ? within.rel * Math.abs(expected) : numberOf(within.abs, differenceKind(kind), `${key}, within`);
  if (Number.isFinite(allowed) && allowed >= 0) return allowed;
  throw new Unreadable(`${key}: "within" allows ${allowed}; a finite number, at least 0, is accepted.`);
}

function compareNumber(
  key: string,
  param: Param,
  kind: Kind,
  expected: Expected,
  value: string | number,
  got: unknown,
): Compared {
  const wanted = numberOf(value, kind, key);
  if (typeof got !== 'number')
    throw new Unreadable(`${key}: the method gave ${JSON.stringify(got) ?? 'nothing'}; a number is expected.`);
  const allowed = allowance(expected.within, wanted, param, kind, key);
  return { key, expected: wanted, got, error: Math.abs(got - wanted), allowed };
}

function compare(method: Method, key: string, expected: Expected, got: unknown): Compared[] {
  const param = Object.hasOwn(method.outputs, key) ? method.outputs[key] : undefined;
  if (param === undefined)
    throw new Unreadable(`${method.id} gives no "${key}"; it gives ${Object.keys(method.outputs).join(', ')}.`);
  const kind = kindOfParam(param);
  const { value } = expected;
  if (kind === null) {
    if (typeof value !== 'string') throw new Unreadable(`${key}: a word is expected of this output.`);
    return [
      { key, expected: value, got: String(got), error: value === got ? 0 : Number.POSITIVE_INFINITY, allowed: 0 },
    ];
  }
  if (typeof value === 'number' || typeof value === 'string')
    return [compareNumber(key, param, kind, expected, value, got)];
  if (!Array.isArray(got))
    throw new Unreadable(`${key}: the method gave ${JSON.stringify(got) ?? 'nothing'}; a list is expected.`);
  if (got.length !== value.length)
    throw new Unreadable(`${key}: the method gave ${got.length} entries, not ${value.length}.`);
  return value.map((entry, i) => compareNumber(`${key}/${i}`, param, kind, expected, entry, got[i]));
}

const isMiss = ({ error, allowed }: Compared): boolean => !(error <= allowed);

/** Part of the allowance that is used. */
function share({ error, allowed }: Compared): number {
  if (error === 0) return 0;
  return Number.isNaN(error) ? Number.POSITIVE_INFINITY : error / allowed;
}

function result(faults: readonly string[], compared: readonly Compared[] = []): CaseResult {
  const misses = compared.filter(isMiss);
  const worst = compared.reduce<Compared | null>(
    (most, one) => (most === null || share(one) > share(most) ? one : most),
    null,
  );
  return { ok: faults.length === 0 && misses.length === 0 && compared.length > 0, faults, compared, misses, worst };
}

function attempt<T>(faults: string[], run: () => T): T | undefined {
  try {
    return run();
  } catch (error) {
    faults.push(error instanceof Error ? error.message : String(error));
    return undefined;
  }
}

/**
 * Runs a method on a worked example and compares every expected value.
 * @param method The method that the case is about.
 * @param of The case.
 * @param lookup Finds the table rows that the case names.
 * @returns What was compared, what missed, and the worst; a case that cannot be read or run is not ok and says why. Never throws.
 */
export function runCase(method: Method, of: Case, lookup?: RowLookup): CaseResult {
  if (of.source.title.trim() === '') return result([`${of.id}: the source has no title.`]);
  if (Object.keys(of.expect).length === 0) return result([`${of.id}: nothing is expected.`]);
  const read = readInput(method, of.given, lookup);
  if (!read.ok)
    return result(
      read.faults.map((fault) => `${fault.input}: ${fault.problem} Read: ${fault.read}. Accepted: ${fault.accepted}.`),
    );
  const faults: string[] = [];
  const output: Readonly<Record<string, unknown>> | undefined = attempt(faults, () => method.run(read.input));
  if (output === undefined) return result(faults);
  const compared = Object.entries(of.expect).flatMap(
    ([key, expected]) => attempt(faults, () => compare(method, key, expected, output[key])) ?? [],
  );
  return result(faults, compared);
}
