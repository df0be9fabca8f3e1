import { formatQuantity } from '@oddwheel/quantity/format';
import { parseInput } from '@oddwheel/quantity/range';
import type { Patch } from './document/patch.ts';
import type { Fault } from './fault.ts';
import { blankRow, tableKeys } from './model/rows.ts';
import { SEAT_OF_STAGE } from './read/path-references.ts';
import { quantityFault } from './read/quantities.ts';
import { FORMAT } from './schema/build-file.ts';
import {
  branchFor,
  childNode,
  isRecord,
  nodeAt,
  pointerKey,
  pointerKeys,
  type SchemaNode,
  valueAt,
} from './schema/describe.ts';
import type { FieldFacts } from './schema/field.ts';
import type { Field, Session, TypedEdit } from './session-types.ts';

function entryOf(node: SchemaNode, facts: FieldFacts): Field['entry'] {
  if (facts.quantity) return 'quantity';
  if (node.enum) return 'choice';
  if (facts.table || facts.seat || facts.refersTo) return 'key';
  if (node.type === 'integer') return 'integer';
  if (node.type === 'number') return 'number';
  return 'text';
}

function choicesOf(session: Session, address: string, node: SchemaNode, facts: FieldFacts): readonly string[] | null {
  if (node.enum) return node.enum;
  if (facts.table) return tableKeys(facts.table);
  if (facts.refersTo) {
    const map = valueAt(session.build, facts.refersTo);
    return isRecord(map) ? Object.keys(map) : [];
  }
  if (!facts.seat) return null;
  const kind = valueAt(session.build, `${address.slice(0, address.lastIndexOf('/'))}/kind`);
  const wanted = typeof kind === 'string' ? SEAT_OF_STAGE[kind] : undefined;
  return session.evaluation.model.shafts.flatMap((shaft) =>
    shaft.seats.filter((seat) => seat.kind === wanted).map((seat) => `${shaft.id}/${seat.id}`),
  );
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

function toField(
  session: Session,
  address: string,
  node: SchemaNode,
  facts: FieldFacts,
  group: string | null,
  optional: boolean,
): Field {
  const raw = valueAt(session.build, address);
  const text = raw === undefined ? null : typeof raw === 'string' ? raw : JSON.stringify(raw);
  const blank = text === null && facts.blank ? blankRow(facts.blank.row) : null;
  return {
    address,
    name: facts.name,
    group,
    entry: entryOf(node, facts),
    quantity: facts.quantity ?? null,
    text,
    resolved: text !== null && facts.quantity ? resolvedText(session, facts.quantity, text) : null,
    optional,
    choices: choicesOf(session, address, node, facts),
    example: facts.example ?? null,
    recipe: facts.recipe ?? null,
    assumed: blank && { text: blank.text, source: blank.source },
  };
}

/** Fields of everything under a node, in the order of the schema, so that blank ones keep their place. */
function collect(
  session: Session,
  address: string,
  node: SchemaNode,
  group: string | null,
  optional: boolean,
  out: Field[],
): void {
  const value = valueAt(session.build, address);
  const branch = branchFor(node, value) ?? node;
  const facts = branch['x-field'];
  const isObject = branch.properties !== undefined || typeof branch.additionalProperties === 'object';
  if (!isObject && branch.type !== 'array') {
    if (facts) out.push(toField(session, address, branch, facts, group, optional));
    return;
  }
  if (branch.type === 'array') {
    if (Array.isArray(value) && !branch.prefixItems)
      value.forEach((_, k) => {
        const item = childNode(branch, String(k));
        if (item?.['x-field'])
          out.push(
            toField(
              session,
              `${address}/${k}`,
              item,
              { ...item['x-field'], name: `${item['x-field'].name} ${k + 1}` },
              facts?.name ?? group,
              false,
            ),
          );
        else if (item?.prefixItems && Array.isArray(value[k]))
          out.push({
            ...toField(
              session,
              `${address}/${k}`,
              item,
              { name: `Row ${k + 1}`, example: '[2500, 32.5]' },
              facts?.name ?? group,
              false,
            ),
            entry: 'number',
          });
      });
    else if (branch.prefixItems && facts)
      out.push({ ...toField(session, address, branch, facts, group, optional), entry: 'number' });
    return;
  }
  const properties = branch.properties ? Object.entries(branch.properties) : [];
  const named =
    typeof branch.additionalProperties === 'object' && isRecord(value)
      ? Object.keys(value).map((key): [string, SchemaNode] => [key, branch.additionalProperties as SchemaNode])
      : [];
  for (const [key, child] of [...properties, ...named]) {
    if (key === 'kind') continue;
    const at = `${address}/${pointerKey(key)}`;
    const inner = valueAt(session.build, at);
    const childName = isRecord(inner) && typeof inner.name === 'string' ? inner.name : (child['x-field']?.name ?? null);
    const deeper =
      child.properties !== undefined || child.oneOf !== undefined || child.additionalProperties !== undefined;
    // A missing group of several values is offered by its own screen, not field by field.
    if (deeper && inner === undefined) continue;
    const childGroup = deeper
      ? named.length > 0 || group === null
        ? childName
        : childName === null
          ? group
          : `${group}, ${childName.toLowerCase()}`
      : group;
    collect(session, at, child, childGroup, branch.required ? !branch.required.includes(key) : false, out);
  }
}

/** Every editable field of an element, blank ones included; empty when nothing is at the address. */
export function fieldsAt(session: Session, address: string): readonly Field[] {
  const node = nodeAt(session.build, address);
  const out: Field[] = [];
  if (node && valueAt(session.build, address) !== undefined) collect(session, address, node, null, false, out);
  return out;
}

function fault(address: string, code: string, problem: string, read: string, accepted: string): TypedEdit {
  const found: Fault = { code, address, problem, read, accepted };
  return { ok: false, fault: found };
}

/** Name of the nearest thing above an address that has one. */
function ownerName(session: Session, address: string): string {
  const keys = pointerKeys(address);
  for (let k = keys.length - 1; k > 0; k -= 1) {
    const name = valueAt(session.build, `/${keys.slice(0, k).map(pointerKey).join('/')}/name`);
    if (typeof name === 'string' && k > 1) return name;
  }
  return keys[1] ? `${keys[1].charAt(0).toUpperCase()}${keys[1].slice(1)}` : 'Build';
}

/** The key before which a new one stands, so that a file keeps the order of the schema; null for the end. */
function nextKey(session: Session, address: string): string | null {
  const parent = address.slice(0, address.lastIndexOf('/'));
  const holder = valueAt(session.build, parent);
  const keys = Object.keys(nodeAt(session.build, parent)?.properties ?? {});
  const after = keys.slice(keys.indexOf(pointerKeys(address).at(-1) ?? '') + 1);
  return after.find((key) => isRecord(holder) && Object.hasOwn(holder, key)) ?? null;
}

/**
 * Turns what was typed in a field into a named edit of the file; the text stays as typed. Null or empty text blanks an optional field.
 * The whole file is checked by `applyEdit`; here the field alone.
 */
export function typeField(session: Session, address: string, typed: string | null): TypedEdit {
  const node = nodeAt(session.build, address);
  const facts = node?.['x-field'] ?? (node?.prefixItems ? { name: 'Row' } : undefined);
  if (!node || !facts)
    return fault(
      address,
      'edit.address',
      'Nothing can be typed at this address.',
      typed ?? '',
      'The address of a field.',
    );
  const before = valueAt(session.build, address);
  const label = `${ownerName(session, address)}, ${facts.name.charAt(0).toLowerCase()}${facts.name.slice(1)}`;
  const shown = (x: unknown): string => (x === undefined ? 'blank' : typeof x === 'string' ? x : JSON.stringify(x));
  const raised: readonly Patch[] = session.from < FORMAT ? [{ op: 'set', at: '/format', value: FORMAT }] : [];
  const done = (patches: readonly Patch[], after: unknown): TypedEdit => ({
    ok: true,
    name: `${label} ${shown(before)} → ${shown(after)}`,
    patches: [...raised, ...patches],
  });
  const set = (value: string | number | number[]): TypedEdit =>
    done(
      [{ op: 'set', at: address, value, ...(before === undefined ? { before: nextKey(session, address) } : {}) }],
      value,
    );
  const text = typed?.trim() ?? '';
  if (text === '') {
    const parent = address.slice(0, address.lastIndexOf('/'));
    const required = nodeAt(session.build, parent)?.required?.includes(pointerKeys(address).at(-1) ?? '') ?? true;
    if (required)
      return fault(
        address,
        'edit.required',
        `${facts.name} cannot be blank.`,
        text,
        facts.example ? `For example ${facts.example}.` : 'A value.',
      );
    return before === undefined ? done([], undefined) : done([{ op: 'remove', at: address }], undefined);
  }
  if (facts.quantity) {
    const wrong = quantityFault(address, text, facts);
    return wrong ? { ok: false, fault: wrong } : set(text);
  }
  if (node.type === 'integer' || node.type === 'number') {
    const value = Number(text);
    if (!Number.isFinite(value) || (node.type === 'integer' && !Number.isInteger(value)))
      return fault(
        address,
        'edit.number',
        `${facts.name} is a ${node.type === 'integer' ? 'whole ' : ''}number.`,
        text,
        'For example 17.',
      );
    if ((facts.min !== undefined && value < facts.min) || (facts.max !== undefined && value > facts.max))
      return fault(
        address,
        'edit.limit',
        `${facts.name} is outside its limits.`,
        text,
        `From ${facts.min ?? '…'} to ${facts.max ?? '…'}.`,
      );
    return set(value);
  }
  if (node.type === 'array') {
    const parts = text
      .replace(/^\[|\]$/g, '')
      .split(/[\s,;]+/)
      .filter((x) => x !== '')
      .map(Number);
    if (parts.length !== (node.prefixItems?.length ?? 0) || !parts.every(Number.isFinite))
      return fault(
        address,
        'edit.row',
        `${node.prefixItems?.length ?? 0} numbers are wanted.`,
        text,
        facts.example ? `For example ${facts.example}.` : 'Numbers with blanks between.',
      );
    return set(parts);
  }
  if (node.enum && !node.enum.includes(text))
    return fault(
      address,
      'edit.choice',
      `${facts.name}: this word is not one of the choices.`,
      text,
      `One of ${node.enum.join(', ')}.`,
    );
  return set(text);
}
