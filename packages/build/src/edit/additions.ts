import { branchFor, isRecord, nodeAt, pointerKey, type SchemaNode, valueAt } from '../schema/describe.ts';
import type { Session } from '../session-types.ts';
import { kindsOf } from './form.ts';
import { isOptional } from './place.ts';
import type { Addition, Removal, Structure } from './types.ts';
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

const isMap = (node: SchemaNode): boolean => typeof node.additionalProperties === 'object';
const isList = (node: SchemaNode): boolean => node.items !== undefined && node.prefixItems === undefined;
const closed = (node: SchemaNode): boolean => node.properties !== undefined && (node.required ?? []).length > 0;

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
      if (Array.isArray(value) && value.length < (node.maxItems ?? Number.POSITIVE_INFINITY))
        out.push({ at, name: entryName(at), sort: 'row', kinds: null });
      return false;
    }
    if (value === undefined && closed(node)) {
      out.push({ at, name, sort: 'group', kinds: null });
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
    const entry = valueAt(session.build, at.slice(0, at.lastIndexOf('/')));
    const inMap = isRecord(entry) && !nodeAt(session.build, at.slice(0, at.lastIndexOf('/')))?.properties;
    const shaft = /^\/path\/shafts\/[^/]+$/.test(at);
    if (isOptional(session, at) && !shaft && (inMap || closed(node)))
      out.push({ at, name: nameAt(session, at), sort: inMap ? 'entry' : 'group' });
    if (Array.isArray(value) && isList(node) && !OWN_WAY.has(at) && value.length > (node.minItems ?? 0))
      value.forEach((_, k) => {
        out.push({ at: `${at}/${k}`, name: nameAt(session, `${at}/${k}`), sort: 'row' });
      });
    return true;
  });
  return out;
}

/** All that can be added to and taken out of an element, its note, and the pictures that show it. */
export function structureAt(session: Session, address: string): Structure {
  return {
    additions: additions(session, address),
    removals: removals(session, address),
    note: session.build.notes?.[address] ?? '',
    pictures: Object.entries(session.build.pictures ?? {})
      .filter(([, picture]) => picture.of === address)
      .map(([id, { name, file }]) => ({ at: `/pictures/${id}`, name, file })),
  };
}
