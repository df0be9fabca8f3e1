import { formatQuantity } from '@oddwheel/quantity/format';
import { parseInput } from '@oddwheel/quantity/range';
import { choicesOf } from './edit/choices.ts';
import { above } from './edit/ids.ts';
import { isOptional, raised, removePatches, setPatch } from './edit/place.ts';
import { exampleOf, typedValue } from './edit/typed.ts';
import { entryName, nameAt, ownerOf, valueText } from './edit/words.ts';
import { blankRow } from './model/rows.ts';
import { branchFor, isRecord, nodeAt, pointerKey, type SchemaNode, valueAt } from './schema/describe.ts';
import type { FieldFacts } from './schema/field.ts';
import type { Field, Session, TypedEdit } from './session-types.ts';

function entryOf(node: SchemaNode, facts: FieldFacts, chosen: boolean): Field['entry'] {
  if (facts.quantity) return 'quantity';
  if (node.enum) return 'choice';
  if (chosen || facts.table || facts.seat || facts.refersTo) return 'key';
  if (node.type === 'integer') return 'integer';
  if (node.type === 'number' || node.prefixItems) return 'number';
  return 'text';
}

/** The value in its own figures when the text says it otherwise: a fraction, or a length in inches. */
function resolvedText(session: Session, kind: NonNullable<FieldFacts['quantity']>, text: string): string | null {
  const parsed = parseInput(text, kind);
  if (!parsed.ok) return null;
  const unit = kind === 'length' ? (session.assessment.units.length ?? 'mm') : parsed.unit;
  if (unit === 'in 1/64') return null;
  const shown = formatQuantity(parsed.si, kind, unit);
  const plain = (s: string) => s.replaceAll(/\s/g, '').replaceAll('·', '.').replaceAll('−', '-');
  if (parsed.isRange) return `middle ${shown}`;
  return plain(shown) === plain(text) || (unit === parsed.unit && !/[/:'"%]/.test(text)) ? null : `is ${shown}`;
}

/** The group that a field stands in. */
interface Group {
  readonly name: string | null;
  readonly address: string | null;
}

/**
 * One field of the build, or of the form for something that is not in it yet.
 *
 * @param text as typed in the file, or what a form begins with; null when blank
 * @param kind of the stage that the field belongs to, in a form
 */
export function toField(
  session: Session,
  address: string,
  node: SchemaNode,
  facts: FieldFacts,
  group: Group,
  state: { readonly text: string | null; readonly optional: boolean; readonly row?: boolean; readonly kind?: unknown },
): Field {
  const { text } = state;
  const blank = text === null && facts.blank ? blankRow(facts.blank.row) : null;
  const choices = choicesOf(session, address, node, facts, state.kind);
  return {
    address,
    name: facts.name,
    group: group.name,
    groupAddress: group.address,
    entry: entryOf(node, facts, choices !== null),
    quantity: facts.quantity ?? null,
    range: facts.range === true,
    text,
    resolved: text !== null && facts.quantity ? resolvedText(session, facts.quantity, text) : null,
    optional: state.optional,
    row: state.row === true,
    choices: choices?.words ?? null,
    choiceNames: choices?.names ?? null,
    example: facts.example ?? null,
    recipe: facts.recipe ?? null,
    assumed: blank && { text: blank.text, source: blank.source },
  };
}

/** A group without required keys: its fields can be typed while it is missing, and typing makes it. */
const isOpen = (node: SchemaNode): boolean => node.properties !== undefined && (node.required ?? []).length === 0;

const textOf = (raw: unknown): string | null => (raw === undefined ? null : valueText(raw));

/** Name of a group within a group; entries of a map stand by themselves. */
function groupName(outer: Group, own: string | null, entry: boolean): string | null {
  if (entry || outer.name === null) return own;
  return own === null ? outer.name : `${outer.name}, ${own.toLowerCase()}`;
}

/** Fields of everything under a node, in the order of the schema, so that blank ones keep their place. */
function collect(
  session: Session,
  address: string,
  node: SchemaNode,
  group: Group,
  optional: boolean,
  out: Field[],
): void {
  const value = valueAt(session.build, address);
  const branch = branchFor(node, value) ?? node;
  const facts = branch['x-field'];
  if (branch.items && !branch.prefixItems) {
    const rows = Array.isArray(value) ? value : [];
    const item = branch.items;
    if (item.properties) {
      // A row of several values is a group of its own.
      rows.forEach((_, k) => {
        const at = `${address}/${k}`;
        collect(session, at, item, { name: groupName(group, nameAt(session, at), true), address: at }, false, out);
      });
      return;
    }
    const itemFacts = item['x-field'] ?? { name: entryName(address), example: '2500 32.5' };
    rows.forEach((row: unknown, k) => {
      out.push(
        toField(
          session,
          `${address}/${k}`,
          item,
          { ...itemFacts, name: `${itemFacts.name} ${k + 1}` },
          { name: facts?.name ?? group.name, address },
          { text: textOf(row), optional: false, row: rows.length > (branch.minItems ?? 0) },
        ),
      );
    });
    return;
  }
  if (!branch.properties && typeof branch.additionalProperties !== 'object') {
    if (facts) out.push(toField(session, address, branch, facts, group, { text: textOf(value), optional }));
    return;
  }
  for (const [key, child] of Object.entries(branch.properties ?? {})) {
    // What tells the kinds of a union apart is chosen when the entry is made.
    if (key === 'kind' && !child['x-field']) continue;
    const at = `${address}/${pointerKey(key)}`;
    const deeper = child.properties !== undefined || child.oneOf !== undefined;
    // A missing group with required values is added as a whole.
    if (deeper && valueAt(session.build, at) === undefined && !isOpen(child)) continue;
    const inner = deeper ? { name: groupName(group, child['x-field']?.name ?? null, false), address: at } : group;
    collect(session, at, child, inner, !(branch.required ?? []).includes(key), out);
  }
  if (typeof branch.additionalProperties !== 'object' || !isRecord(value)) return;
  for (const key of Object.keys(value)) {
    const at = `${address}/${pointerKey(key)}`;
    const name = groupName(group, nameAt(session, at), true);
    collect(session, at, branch.additionalProperties, { name, address: at }, false, out);
  }
}

/**
 * Every editable field of an element, blank ones included. A missing group has fields when none of its keys is required; else it is empty,
 * as it is where nothing can stand.
 */
export function fieldsAt(session: Session, address: string): readonly Field[] {
  const node = nodeAt(session.build, address);
  const out: Field[] = [];
  const there = valueAt(session.build, address) !== undefined;
  const holder = valueAt(session.build, above(address)) !== undefined;
  if (node && (there || isOpen(node) || (holder && !node.properties && !node.additionalProperties)))
    collect(session, address, node, { name: null, address: null }, isOptional(session, address), out);
  return out;
}

function fault(address: string, code: string, problem: string, read: string, accepted: string): TypedEdit {
  return { ok: false, fault: { code: `edit.${code}`, address, problem, read, accepted } };
}

const shown = (x: unknown): string => (x === undefined ? 'blank' : valueText(x).slice(0, 80));

/**
 * Turns what was typed in a field into a named edit of the file; the text stays as typed. Null or empty text blanks an optional field, and
 * takes a row out of a list. The whole file is checked by `applyEdit`; here the field alone.
 */
export function typeField(session: Session, address: string, typed: string | null): TypedEdit {
  const node = nodeAt(session.build, address);
  const parent = valueAt(session.build, above(address));
  const list = Array.isArray(parent);
  const facts = node?.['x-field'] ?? (node?.prefixItems && list ? { name: entryName(above(address)) } : undefined);
  if (!node || !facts || node.properties || typeof node.additionalProperties === 'object')
    return fault(address, 'address', 'Nothing can be typed at this address.', typed ?? '', 'The address of a field.');
  const before = valueAt(session.build, address);
  const owner = ownerOf(session, address);
  const number = list ? ` ${Number(address.split('/').at(-1)) + 1}` : '';
  const label = `${owner === 'the build' ? 'Build' : owner}, ${facts.name.charAt(0).toLowerCase()}${facts.name.slice(1)}${number}`;
  const text = typed?.trim() ?? '';
  if (text === '') {
    const least = nodeAt(session.build, above(address))?.minItems ?? 0;
    if (list ? parent.length <= least : !isOptional(session, address))
      return fault(address, 'required', `${facts.name} cannot be blank.`, text, exampleOf(facts, 'A value.'));
    const patches = before === undefined ? [] : [...raised(session), ...removePatches(session, [address])];
    return { ok: true, name: `${label} ${shown(before)} → ${list ? 'taken out' : 'blank'}`, patches };
  }
  const read = typedValue(address, text, node, facts);
  if (!read.ok) return read;
  return {
    ok: true,
    name: `${label} ${shown(before)} → ${shown(read.value)}`,
    patches: [...raised(session), setPatch(session, address, read.value)],
  };
}
