import { type ObjectNode, parse, type ValueNode } from '@humanwhocodes/momoa';
import type { Fault } from '../fault.ts';
import { type Json, unsafeKeyFault } from './json.ts';
import { addressBelow, UNSAFE_KEY } from './pointer.ts';
import { lineAndColumn, syntaxFault } from './syntax.ts';

/** A place in a text: line and column, both from 1. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

export type ParsedJson =
  | {
      readonly ok: true;
      readonly value: Json;
      /** Where the value at an address begins; for a member, where its key begins. Undefined when nothing is there. */
      readonly locate: (address: string) => Place | undefined;
    }
  | { readonly ok: false; readonly faults: Fault[] };

/** Some Windows editors begin a file with this mark; it is read past and kept. */
const BYTE_ORDER_MARK = '\ufeff';

/**
 * Reads JSON (RFC 8259) strictly, and gives every fault with its line and column.
 *
 * Refused beyond the grammar: a key that stands twice in one object (RFC 8259 section 4 leaves the outcome open), the key
 * "__proto__", a number too large for a double, and more than 100 levels. A leading byte order mark is tolerated (section
 * 8.1 allows that) and counts as no column.
 */
export function parseJsonText(text: string): ParsedJson {
  const parsed = parseSyntax(text);
  if (!parsed.ok) return parsed;
  const { body, value, offsets } = parsed;
  return {
    ok: true,
    value,
    locate: (address) => {
      const offset = offsets.get(address);
      return offset === undefined ? undefined : lineAndColumn(body, offset);
    },
  };
}

/** A text that was found good, with its syntax tree. */
export interface Syntax {
  readonly ok: true;
  /** Byte order mark, or "". */
  readonly mark: string;
  /** The text after the mark; offsets in `root` count from its beginning. */
  readonly body: string;
  readonly root: ValueNode;
  readonly value: Json;
  /** Where each address begins. */
  readonly offsets: ReadonlyMap<string, number>;
}

type Parsed = Syntax | { readonly ok: false; readonly faults: Fault[] };

let last: { readonly text: string; readonly parsed: Parsed } | null = null;

/** As `parseJsonText`, for those that need the syntax tree. A text that was just read, as an edit changes it, is not read again. */
export function parseSyntax(text: string): Parsed {
  if (last?.text !== text) last = { text, parsed: parsed(text) };
  return last.parsed;
}

function parsed(text: string): Parsed {
  const mark = text.startsWith(BYTE_ORDER_MARK) ? BYTE_ORDER_MARK : '';
  const body = text.slice(mark.length);
  const syntax = syntaxFault(body);
  if (syntax) return { ok: false, faults: [syntax] };
  const faults: Fault[] = [];
  const offsets = new Map<string, number>();
  const root = parse(body, { mode: 'json' }).body;
  const value = read(root, '', root.loc.start.offset, { body, faults, offsets });
  return faults.length > 0 ? { ok: false, faults } : { ok: true, mark, body, root, value, offsets };
}

interface Reading {
  readonly body: string;
  readonly faults: Fault[];
  readonly offsets: Map<string, number>;
}

function read(node: ValueNode, address: string, offset: number, reading: Reading): Json {
  reading.offsets.set(address, offset);
  switch (node.type) {
    case 'Object':
      return readObject(node, address, reading);
    case 'Array':
      return node.elements.map(({ value }, i) => read(value, `${address}/${i}`, value.loc.start.offset, reading));
    case 'Number':
      if (!Number.isFinite(node.value)) {
        reading.faults.push({
          code: 'json.not-finite',
          address,
          ...lineAndColumn(reading.body, node.loc.start.offset),
          problem: 'The number is too large.',
          read: reading.body.slice(node.loc.start.offset, node.loc.end.offset),
          accepted: 'A number between -1.79e308 and 1.79e308, such as 12.5.',
        });
      }
      return node.value;
    case 'String':
    case 'Boolean':
      return node.value;
    default:
      return null;
  }
}

function readObject(node: ObjectNode, address: string, reading: Reading): Json {
  const object: { [key: string]: Json } = {};
  for (const member of node.members) {
    const key = member.name.type === 'String' ? member.name.value : member.name.name;
    const at = addressBelow(address, key);
    const offset = member.name.loc.start.offset;
    if (key === UNSAFE_KEY) {
      reading.faults.push({ ...unsafeKeyFault(at), ...lineAndColumn(reading.body, offset) });
      continue;
    }
    if (Object.hasOwn(object, key)) {
      const first = lineAndColumn(reading.body, reading.offsets.get(at) ?? 0);
      reading.faults.push({
        code: 'json.duplicate-key',
        address: at,
        ...lineAndColumn(reading.body, offset),
        problem: `The key stands twice in this object, first in line ${first.line}.`,
        read: key,
        accepted: 'Each key once; rename or remove one of the two.',
      });
      continue;
    }
    object[key] = read(member.value, at, offset, reading);
  }
  return object;
}
