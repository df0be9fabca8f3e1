import type { Json } from '../document/json.ts';
import type { Fault } from '../fault.ts';
import { toField } from '../fields.ts';
import { isRecord, nodeAt, pointerKey, type SchemaNode, valueAt } from '../schema/describe.ts';
import type { Session } from '../session-types.ts';
import { branchOfKind, formFields, makeValue, NEW_KEY } from './form.ts';
import { newId } from './ids.ts';
import { raised, setPatch } from './place.ts';
import type { Answers, Form, StructureEdit } from './types.ts';
import { entryName, nameAt, ownerOf, small, valueText } from './words.ts';

interface Sort {
  readonly sort: 'group' | 'entry' | 'row';
  readonly branch: SchemaNode;
  readonly base: string;
  readonly name: string;
}

/** What is being added at an address; null where nothing can be. */
function sortOf(session: Session, at: string, kind: string | null): Sort | null {
  const node = nodeAt(session.build, at);
  if (!node) return null;
  if (typeof node.additionalProperties === 'object') {
    const branch = branchOfKind(node.additionalProperties, kind);
    return branch ? { sort: 'entry', branch, base: `${at}/${NEW_KEY}`, name: entryName(at) } : null;
  }
  if (node.items && !node.prefixItems)
    return { sort: 'row', branch: node.items, base: `${at}/${NEW_KEY}`, name: entryName(at) };
  if (!node.properties || valueAt(session.build, at) !== undefined) return null;
  return { sort: 'group', branch: node, base: at, name: node['x-field']?.name ?? 'Group' };
}

/** The form for an addition: every required value that has no honest default. */
export function formAt(session: Session, at: string, kind: string | null): Form {
  const what = sortOf(session, at, kind);
  if (!what) return { title: 'Nothing can be added here', fields: [] };
  const title = `Add ${small(kind ?? what.name)}`;
  if (what.sort === 'row' && !what.branch.properties) {
    const facts = what.branch['x-field'] ?? { name: what.name };
    const state = { text: null, optional: false };
    return {
      title,
      fields: [toField(session, what.base, what.branch, facts, { name: null, address: null }, state)],
    };
  }
  return { title, fields: formFields(session, at, what.branch, kind, what.sort !== 'group') };
}

/**
 * Adds an optional group, an entry of a named map, or a row of a list, made from a filled form.
 *
 * @param answers what was typed, by the addresses of the form's fields
 * @param id key of the new entry where it is not made from its name
 */
export function addAt(
  session: Session,
  at: string,
  how: { readonly kind: string | null; readonly answers: Answers; readonly id?: string | undefined },
): StructureEdit {
  const what = sortOf(session, at, how.kind);
  if (!what) return { ok: false, faults: [nowhere(at)] };
  const made = makeValue(what.branch, what.base, how.kind, how.answers);
  if (!made.ok) return made;
  const owner = ownerOf(session, `${at}/x`);
  const done = (name: string, address: string, value: Json, shows = address): StructureEdit => ({
    ok: true,
    name,
    patches: [...raised(session), setPatch(session, address, value)],
    also: [],
    shows,
  });
  if (what.sort === 'group') return done(`Add ${small(what.name)} to ${ownerOf(session, at)}`, at, made.value);
  if (what.sort === 'row') {
    const rows = valueAt(session.build, at);
    const address = `${at}/${Array.isArray(rows) ? rows.length : 0}`;
    const said = what.branch.properties ? '' : `, ${valueText(made.value)},`;
    const name = `Add ${small(nameAt(session, address))}${said} to ${owner}`;
    return rows === undefined ? done(name, at, [made.value], address) : done(name, address, made.value);
  }
  const map = valueAt(session.build, at);
  const name = isRecord(made.value) && typeof made.value.name === 'string' ? made.value.name : (how.id ?? what.name);
  const id = how.id ?? newId(name, isRecord(map) ? Object.keys(map) : [], newId(what.name, [], 'entry'));
  const whole = owner === 'the build' ? '' : ` to ${owner}`;
  return done(`Add ${small(what.name)} “${name}”${whole}`, `${at}/${pointerKey(id)}`, made.value);
}

const nowhere = (at: string): Fault => ({
  code: 'edit.add',
  address: at,
  problem: 'Nothing can be added at this address, or it is there already.',
  read: at,
  accepted: 'The address of a missing group, of a map, or of a list.',
});
