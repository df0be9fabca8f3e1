import { isKnownCheck } from '../assess/check-ids.ts';
import type { Fault } from '../fault.ts';
import { nearestRows, tableHas } from '../model/rows.ts';
import { tyreFault } from '../model/tyre.ts';
import { BUILD_SCHEMA, isRecord, pointerKey, type SchemaNode, valueAt, walkSchema } from '../schema/describe.ts';
import { adjusterFaults } from './adjuster-references.ts';
import { engineFaults } from './engine-references.ts';
import { pathFaults } from './path-references.ts';

/**
 * Third pass, on whatever shape the file has: rows of tables, references between parts, the path from engine to wheel, and geometry that
 * could not be computed. Parts that the first pass found wanting are passed over.
 * @param before a value without faults; what it has in common with `value` keeps its rows, and its references while all names stay
 */
export function referenceFaults(value: unknown, before?: unknown): Fault[] {
  const faults: Fault[] = [];
  const visit: Parameters<typeof walkSchema>[1] = (address, read, node) => {
    const facts = node['x-field'];
    if (!facts || typeof read !== 'string') return;
    if (facts.table && !tableHas(facts.table, read))
      faults.push({
        code: 'reference.row',
        address,
        problem: `${facts.name} "${read}" is not in the table.`,
        read,
        accepted: `One of the table's rows, near it ${nearestRows(facts.table, read).join(', ')}.`,
      });
    if (facts.refersTo) {
      const map = valueAt(value, facts.refersTo);
      if (!isRecord(map) || !Object.hasOwn(map, read))
        faults.push({
          code: 'reference.entry',
          address,
          problem: `${facts.name}: there is no "${read}" in ${facts.refersTo}.`,
          read,
          accepted: isRecord(map) ? `One of ${Object.keys(map).join(', ')}.` : `First add it to ${facts.refersTo}.`,
        });
    }
  };
  walkSchema(value, visit, sameNames(value, before) ? before : undefined);
  faults.push(
    ...pathFaults(value),
    ...adjusterFaults(value),
    ...engineFaults(value),
    ...wheelFaults(value),
    ...addressFaults(value),
  );
  return faults;
}

/** Maps that something refers to, by the schema. */
const REFERRED: readonly string[] = (() => {
  const found = new Set<string>();
  const look = (node: SchemaNode): void => {
    const { refersTo } = node['x-field'] ?? {};
    if (refersTo) found.add(refersTo);
    const { additionalProperties, items } = node;
    const below = [
      ...Object.values(node.properties ?? {}),
      ...(typeof additionalProperties === 'object' ? [additionalProperties] : []),
      ...(items ? [items] : []),
      ...(node.prefixItems ?? []),
      ...(node.oneOf ?? []),
      ...(node.anyOf ?? []),
    ];
    for (const child of below) look(child);
  };
  look(BUILD_SCHEMA);
  return [...found];
})();

/** Whether every map that something refers to has the same names in both. */
function sameNames(value: unknown, before: unknown): boolean {
  return REFERRED.every((address) => {
    const [now, then] = [valueAt(value, address), valueAt(before, address)];
    if (now === then) return true;
    if (!isRecord(now) || !isRecord(then)) return false;
    return Object.keys(then).every((key) => Object.hasOwn(now, key));
  });
}

function wheelFaults(root: unknown): Fault[] {
  const text = valueAt(root, '/brief/wheel/tyre');
  const fault = typeof text === 'string' && text !== '' ? tyreFault(text) : null;
  return fault ? [{ ...fault, address: '/brief/wheel/tyre' }] : [];
}

function addressFaults(root: unknown): Fault[] {
  const faults: Fault[] = [];
  const notes = valueAt(root, '/notes');
  if (isRecord(notes))
    for (const key of Object.keys(notes))
      if (valueAt(root, key) === undefined)
        faults.push({
          code: 'reference.note',
          address: `/notes/${pointerKey(key)}`,
          problem: `The note stands on "${key}", and nothing is there.`,
          read: key,
          accepted: 'The address of a part, for example "/path/stages/chain-1".',
        });
  const pictures = valueAt(root, '/pictures');
  if (isRecord(pictures))
    for (const [id, picture] of Object.entries(pictures)) {
      const of = isRecord(picture) ? picture.of : undefined;
      if (typeof of === 'string' && valueAt(root, of) === undefined)
        faults.push({
          code: 'reference.picture',
          address: `/pictures/${pointerKey(id)}/of`,
          problem: `The picture shows "${of}", and nothing is there.`,
          read: of,
          accepted: 'The address of a part, for example "/path/stages/chain-1".',
        });
    }
  const overrides = valueAt(root, '/overrides');
  if (isRecord(overrides))
    for (const key of Object.keys(overrides)) {
      const [check = '', ...rest] = key.split(':');
      const place = rest.join(':');
      if (!isKnownCheck(check) || valueAt(root, place) === undefined)
        faults.push({
          code: 'reference.override',
          address: `/overrides/${pointerKey(key)}`,
          problem: `No finding has the id "${key}".`,
          read: key,
          accepted: 'A finding id as `check` prints it, for example "chain.wrap:/path/stages/chain-1".',
        });
    }
  return faults;
}
