import { fieldsAt } from '../fields.ts';
import { branchFor, isRecord, nodeAt, pointerKey, type SchemaNode, valueAt } from '../schema/describe.ts';
import type { Session } from '../session-types.ts';
import { kindsOf } from './form.ts';
import { above } from './ids.ts';
import { isOptional } from './place.ts';
import { stageKinds } from './stages.ts';
import type { Addition, Pictured, Removal, Structure } from './types.ts';
import { entryName, nameAt } from './words.ts';

/** The shafts and the stages come and go together, so that the path stays closed; the curve has its own editor. */
const OWN_WAY = new Set(['/path/shafts', '/path/stages', '/brief/engine/curve', '/brief/engine/curve/rows']);

/** A seat of the driven wheel is refused where the build has one. */
function entryKinds(session: Session, at: string, node: SchemaNode): readonly string[] | null {
  const kinds = kindsOf(node);
  const hasWheel = session.evaluation.model.shafts.some((shaft) => shaft.seats.some((seat) => seat.kind === 'wheel'));
  return kinds && at.endsWith('/seats') && hasWheel ? kinds.filter((kind) => kind !== 'wheel') : kinds;
}

/** Visits what can come and go below an address: groups, maps and lists. */
function walk(
  session: Session,
  address: string,
  visit: (address: string, node: SchemaNode, value: unknown) => boolean,
): void {
  const node = nodeAt(session.build, address);
  if (!node || !visit(address, node, valueAt(session.build, address))) return;
  const value = valueAt(session.build, address);
  const branch = branchFor(node, value) ?? node;
  for (const key of Object.keys(branch.properties ?? {})) walk(session, `${address}/${pointerKey(key)}`, visit);
  if (typeof branch.additionalProperties === 'object' && isRecord(value))
    for (const key of Object.keys(value)) walk(session, `${address}/${pointerKey(key)}`, visit);
}

/** Whether what stands at an address is an entry of a map, which has a name of its own. */
const isEntry = (session: Session, at: string): boolean =>
  isRecord(valueAt(session.build, above(at))) && !nodeAt(session.build, above(at))?.properties;

const isMap = (node: SchemaNode): boolean => typeof node.additionalProperties === 'object';
const isList = (node: SchemaNode): boolean => node.items !== undefined && node.prefixItems === undefined;
const closed = (node: SchemaNode): boolean => node.properties !== undefined && (node.required ?? []).length > 0;

/** Whose a group below an element is: of what it is a part, and of which seat, plate or other named thing that is. */
function whoseOf(session: Session, element: string, at: string): string {
  const within = (one: string): boolean => one !== element && one.startsWith(`${element}/`);
  const parent = above(at);
  if (!within(parent)) return '';
  let entry = parent;
  while (within(entry) && !isEntry(session, entry)) entry = above(entry);
  return `, ${nameAt(session, parent)}${within(entry) && entry !== parent ? `, ${nameAt(session, entry)}` : ''}`;
}

/** What can be added at an element of the build, in the order of the schema. */
export function additions(session: Session, address: string): readonly Addition[] {
  const out: Addition[] = [];
  walk(session, address, (at, node, value) => {
    const name = node['x-field']?.name ?? entryName(at);
    if (OWN_WAY.has(at)) return false;
    if (isMap(node)) {
      const entry = node.additionalProperties as SchemaNode;
      if (closed(entry) || kindsOf(entry) !== null)
        out.push({ at, name: entryName(at), sort: 'entry', kinds: entryKinds(session, at, entry) });
      return value !== undefined;
    }
    if (isList(node)) {
      // A list of groups begins with its first; one of single values is typed where it is asked for.
      const begins = value === undefined && node.items?.properties !== undefined;
      if (begins || (Array.isArray(value) && value.length < (node.maxItems ?? Number.POSITIVE_INFINITY)))
        out.push({ at, name: entryName(at), sort: 'row', kinds: null });
      return false;
    }
    if (value === undefined && closed(node)) {
      out.push({ at, name: name + whoseOf(session, address, at), sort: 'group', kinds: null });
      return false;
    }
    return true;
  });
  return out;
}

/** What can be taken out of an element, itself included, in the order of the file. */
function removals(session: Session, address: string): readonly Removal[] {
  const out: Removal[] = [];
  walk(session, address, (at, node, value) => {
    if (value === undefined || at === '/path/shafts') return false;
    const inMap = isEntry(session, at);
    const shaft = /^\/path\/shafts\/[^/]+$/.test(at);
    const rows = isList(node) && node.items?.properties !== undefined;
    if (isOptional(session, at) && !shaft && (inMap || closed(node) || rows))
      out.push({
        at,
        name: nameAt(session, at) + (inMap ? '' : whoseOf(session, address, at)),
        sort: inMap ? 'entry' : 'group',
      });
    if (Array.isArray(value) && isList(node) && !OWN_WAY.has(at) && value.length > (node.minItems ?? 0))
      value.forEach((_, k) => {
        out.push({ at: `${at}/${k}`, name: nameAt(session, `${at}/${k}`), sort: 'row' });
      });
    return true;
  });
  return out;
}

/** Whether something stands at an element or in it, and not in another column of the path within it. */
function belongs(session: Session, element: string, address: string): boolean {
  const within = (at: string): boolean => address === at || address.startsWith(`${at}/`);
  return (
    within(element) &&
    !session.assessment.path.some((other) => other.address.startsWith(`${element}/`) && within(other.address))
  );
}

/** Pictures of an element; all of them at `/pictures`. Their bytes are put in place by attaching, never by typing their hash. */
function pictured(session: Session, address: string): readonly Pictured[] {
  return Object.entries(session.build.pictures ?? {})
    .filter(([, { of }]) => address === '/pictures' || (of !== undefined && belongs(session, address, of)))
    .map(([id, { name, file }]) => {
      const at = `/pictures/${pointerKey(id)}`;
      return { at, name, file, fields: fieldsAt(session, at).filter((field) => field.address !== `${at}/file`) };
    });
}

/** All that can be added to and taken out of an element, the notes on it, and the pictures that show it. */
export function structureAt(session: Session, address: string): Structure {
  const stage = /^\/path\/stages\/([^/]+)$/.exec(address)?.[1];
  return {
    additions: additions(session, address),
    removals: removals(session, address),
    notes: Object.entries(session.build.notes ?? {})
      .filter(([of]) => belongs(session, address, of))
      .sort(([a], [b]) => Number(b === address) - Number(a === address))
      .map(([of, text]) => ({ of, name: nameAt(session, of), text })),
    pictures: pictured(session, address),
    stage: stage === undefined ? null : { id: stage, kinds: stageKinds(session) },
    ownReserves: Object.keys(session.build.overrides ?? {}),
    present: valueAt(session.build, address) !== undefined,
  };
}
