import type { Fault } from '../fault.ts';
import { addressOf, UNSAFE_KEY } from './pointer.ts';
import { DEEPEST } from './syntax.ts';

/** A JSON value. */
export type Json = null | boolean | number | string | readonly Json[] | JsonObject;

/** A JSON object: own keys only. */
export interface JsonObject {
  readonly [key: string]: Json;
}

/** True for a JSON object, false for arrays, null and scalars. */
export function isJsonObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** True for a JSON array. `Array.isArray` alone does not narrow a read-only array. */
export function isJsonArray(value: Json): value is readonly Json[] {
  return Array.isArray(value);
}

/** The value under `key`, or undefined; never a thing inherited from the prototype. */
export function own(object: JsonObject, key: string): Json | undefined {
  return Object.hasOwn(object, key) ? object[key] : undefined;
}

/** True when two values say the same; the order of keys does not count, the sign of zero does. */
export function equalJson(a: Json, b: Json): boolean {
  if (Object.is(a, b)) return true;
  if (isJsonArray(a)) {
    return isJsonArray(b) && a.length === b.length && a.every((item, i) => equalJson(item, b[i] as Json));
  }
  if (!isJsonObject(a) || !isJsonObject(b)) return false;
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && equalJson(a[key] as Json, b[key] as Json))
  );
}

/** One text per value: keys sorted by code unit, no spaces. For comparing and for a fixed order. */
export function canonicalJson(value: Json): string {
  if (isJsonArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (!isJsonObject(value)) return JSON.stringify(value);
  const keys = Object.keys(value).sort();
  return `{${keys.map((key) => `${JSON.stringify(key)}:${canonicalJson(value[key] as Json)}`).join(',')}}`;
}

/**
 * Faults of a value that cannot stand in a build file: numbers that are not finite, the key "__proto__", more than 100
 * levels, things that are not JSON at all. `at` is the address the value is meant for.
 */
export function jsonFaults(value: unknown, at: readonly string[]): Fault[] {
  if (typeof value === 'number' && !Number.isFinite(value)) {
    return [
      {
        code: 'json.not-finite',
        address: addressOf(at),
        problem: 'The number is too large or is no number.',
        read: String(value),
        accepted: 'A finite number, such as 12.5.',
      },
    ];
  }
  if (value === null || typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean') return [];
  if (typeof value === 'object' && at.length >= DEEPEST) {
    return [
      {
        code: 'json.too-deep',
        address: addressOf(at),
        problem: 'The value is nested too deep.',
        read: Array.isArray(value) ? '[' : '{',
        accepted: `At most ${DEEPEST} levels of { and [.`,
      },
    ];
  }
  if (Array.isArray(value)) return value.flatMap((item, i) => jsonFaults(item, [...at, String(i)]));
  if (isJsonObject(value)) {
    return Object.entries(value).flatMap(([key, item]) =>
      key === UNSAFE_KEY ? [unsafeKeyFault(addressOf([...at, key]))] : jsonFaults(item, [...at, key]),
    );
  }
  return [
    {
      code: 'json.not-json',
      address: addressOf(at),
      problem: 'The value is not JSON.',
      read: typeof value,
      accepted: 'A string, number, true, false, null, array or object.',
    },
  ];
}

/** The fault for a key that would reach into the program instead of the file. */
export function unsafeKeyFault(address: string): Fault {
  return {
    code: 'json.unsafe-key',
    address,
    problem: 'This key is not allowed in a build file.',
    read: UNSAFE_KEY,
    accepted: 'Any other key, such as "chain-1".',
  };
}
