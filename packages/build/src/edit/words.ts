/** Names of things for labels and for the names of edits. */
import { isRecord, nodeAt, pointerKey, pointerKeys, valueAt } from '../schema/describe.ts';
import type { Session } from '../session-types.ts';
import { above } from './ids.ts';

/** What one entry of a map, or one row of a list, is called. */
const ENTRIES: Readonly<Record<string, string>> = {
  '/brief/engine/gears': 'Gear',
  '/brief/engine/curve/rows': 'Point of the torque curve',
  '/brief/reference/overall': 'Overall ratio',
  '/brief/shop/machines': 'Machine',
  '/brief/shop/stock': 'Piece of stock',
  '/brief/shop/shelf': 'Part on the shelf',
  '/brief/space/keepOuts': 'Keep-out',
  '/brief/space/tubes': 'Tube',
  '/brief/mounts': 'Mount',
  '/brief/duty/rows': 'Part of the duty',
  '/path/adjusters': 'Adjuster',
  '/path/plates': 'Plate',
  '/pictures': 'Picture',
  '/overrides': 'Design reserve of your own',
};

/** The same on any shaft, by the key of the map or list. */
const ENTRIES_OF_SHAFT: Readonly<Record<string, string>> = {
  seats: 'Seat',
  pieces: 'Stretch of one diameter',
  notches: 'Notch',
  joins: 'Joint',
};

/** Name of one entry of the map, or one row of the list, at an address. */
export function entryName(at: string): string {
  return ENTRIES[at] ?? ENTRIES_OF_SHAFT[at.slice(at.lastIndexOf('/') + 1)] ?? 'Entry';
}

/** A value of the file as it is typed: text as it stands, numbers of a row with blanks between. */
export function valueText(value: unknown): string {
  if (typeof value === 'string') return value;
  const row = Array.isArray(value) && value.every((one) => typeof one === 'number');
  return row ? value.join(' ') : JSON.stringify(value);
}

/** With a small first letter, for the middle of a sentence. */
export const small = (name: string): string =>
  /^[A-Z][a-z]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;

/** Name of the thing at an address: its own name, what the schema calls it, or its number in a list. */
export function nameAt(session: Session, address: string): string {
  const value = valueAt(session.build, address);
  const own = isRecord(value) ? value.name : undefined;
  if (typeof own === 'string') return own;
  const keys = pointerKeys(address);
  if (keys[0] === 'overrides' && keys.length === 2) {
    const finding = session.assessment.findings.find(({ id }) => id === keys[1]);
    if (finding) return `${finding.element}, ${finding.title}`;
  }
  const parent = valueAt(session.build, above(address));
  if (Array.isArray(parent)) return `${entryName(above(address))} ${Number(keys.at(-1)) + 1}`;
  return nodeAt(session.build, address)?.['x-field']?.name ?? keys.at(-1) ?? 'Build';
}

/** Name of the nearest named thing that holds an address, the build's own name apart; "the build" where there is none. */
export function ownerOf(session: Session, address: string): string {
  const keys = pointerKeys(address);
  for (let k = keys.length - 1; k > 1; k -= 1) {
    const at = `/${keys.slice(0, k).map(pointerKey).join('/')}`;
    const value = valueAt(session.build, at);
    if (isRecord(value) && typeof value.name === 'string') return value.name;
    const called = nodeAt(session.build, at)?.['x-field']?.name;
    if (k === 2 && called !== undefined && keys[0] === 'brief') return called;
  }
  return 'the build';
}
