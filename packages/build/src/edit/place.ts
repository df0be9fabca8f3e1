/** Where a new key goes in the text, and what goes with a key that is taken out. */
import type { Json } from '../document/json.ts';
import type { Patch } from '../document/patch.ts';
import { FORMAT } from '../schema/build-file.ts';
import { isRecord, nodeAt, valueAt } from '../schema/describe.ts';
import type { Session } from '../session-types.ts';
import { above, lastKey } from './ids.ts';

/** The key before which a new one stands, so that a file keeps the order of the schema; null for the end. */
function nextKey(session: Session, address: string): string | null {
  const parent = above(address);
  const holder = valueAt(session.build, parent);
  const keys = Object.keys(nodeAt(session.build, parent)?.properties ?? {});
  const place = keys.indexOf(lastKey(address));
  if (place < 0) return null;
  return keys.slice(place + 1).find((key) => isRecord(holder) && Object.hasOwn(holder, key)) ?? null;
}

/** Raises the format of a file of an older one, which an edit does along the way. */
export function raised(session: Session): readonly Patch[] {
  return session.from < FORMAT ? [{ op: 'set', at: '/format', value: FORMAT }] : [];
}

/** Sets a value, making the groups that hold it where they are missing. */
export function setPatch(session: Session, address: string, value: Json): Patch {
  let at = address;
  let whole = value;
  while (at !== '' && valueAt(session.build, above(at)) === undefined) {
    whole = { [lastKey(at)]: whole };
    at = above(at);
  }
  return {
    op: 'set',
    at,
    value: whole,
    ...(valueAt(session.build, at) === undefined ? { before: nextKey(session, at) } : {}),
  };
}

/** Whether the file is whole without what stands at an address. */
export function isOptional(session: Session, address: string): boolean {
  const parent = nodeAt(session.build, above(address));
  if (parent?.properties) return !(parent.required ?? []).includes(lastKey(address));
  return typeof parent?.additionalProperties === 'object';
}

/** Takes things out, and with the last entry of an optional group or map the group itself. */
export function removePatches(session: Session, addresses: readonly string[]): Patch[] {
  const gone = new Set(addresses);
  const climb = (address: string): string => {
    const parent = above(address);
    const holder = valueAt(session.build, parent);
    const emptied =
      parent !== '' &&
      isRecord(holder) &&
      isOptional(session, parent) &&
      Object.keys(holder).every((key) => gone.has(`${parent}/${key.replaceAll('~', '~0').replaceAll('/', '~1')}`));
    return emptied ? climb(mark(parent)) : address;
  };
  const mark = (address: string): string => {
    gone.add(address);
    return address;
  };
  const tops = new Set(addresses.map(climb));
  return [...tops]
    .filter((address) => ![...tops].some((other) => address.startsWith(`${other}/`)))
    .map((at) => ({ op: 'remove', at }));
}
