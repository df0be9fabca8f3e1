import type { Kind } from '@oddwheel/quantity/kinds';
import { parseInput } from '@oddwheel/quantity/range';
import type { FieldFacts } from '../schema/field.ts';
import type { Value } from './model.ts';
import { blankRow } from './rows.ts';

/** Reads inputs of one build; `facts` gives the schema's facts of an address. */
export interface Reader {
  readonly facts: (address: string) => FieldFacts | undefined;
}

/**
 * SI number of a typed quantity that the passes accepted.
 * @throws Error when it is not: a build with faults was resolved.
 */
export function typedNumber(kind: Kind, text: string): number {
  const parsed = parseInput(text, kind);
  if (!parsed.ok) throw new Error(`Not a ${kind}: ${JSON.stringify(text)}. ${parsed.problem}`);
  return parsed.si;
}

/**
 * One input of the build: typed, or the sourced row that a blank stands on.
 * @param holder the object or list that has the input under `key`
 * @param owner name of the part, for lists: "Chain 1"
 */
export function value(reader: Reader, address: string, holder: object, key: string, owner: string): Value {
  const found = valueOrNull(reader, address, holder, key, owner);
  if (!found) throw new Error(`${address} is blank and has no row to stand on.`);
  return found;
}

/** A blank that stands on the same unknown as others of its sort, and moves with them. */
export const sharedBlank = (value: Value, together: string): Value =>
  value.origin === 'assumed' ? { ...value, together } : value;

/** Like `value`, but null where a blank input has no row to stand on. */
export function valueOrNull(reader: Reader, address: string, holder: object, key: string, owner: string): Value | null {
  const facts = reader.facts(address);
  const raw: unknown = (holder as Record<string, unknown>)[key];
  const base = {
    address,
    name: facts ? `${owner}, ${facts.name.charAt(0).toLowerCase()}${facts.name.slice(1)}` : owner,
    kind: facts?.quantity ?? 'count',
    recipe: facts?.recipe ?? null,
    together: null,
  };
  if (typeof raw === 'number')
    return { ...base, si: raw, lo: raw, hi: raw, text: String(raw), origin: 'typed', source: null };
  if (typeof raw === 'string') {
    const parsed = parseInput(raw, base.kind);
    if (!parsed.ok) throw new Error(`${address}: ${parsed.problem}`);
    return { ...base, si: parsed.si, lo: parsed.lo, hi: parsed.hi, text: raw, origin: 'typed', source: null };
  }
  if (!facts?.blank) return null;
  const row = blankRow(facts.blank.row);
  return { ...base, si: row.si, lo: row.lo, hi: row.hi, text: row.text, origin: 'assumed', source: row.source };
}
