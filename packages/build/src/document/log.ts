/** The log of a build: what was measured and done, only ever added to. */
import type { Fault } from '../fault.ts';
import { canonicalJson, isJsonObject, type Json, jsonFaults } from './json.ts';
import { type BadLine, parseLines } from './ndjson.ts';

/** One line of the log. */
export interface LogEntry {
  /** "device.counter", such as "phone-1.27": given once by the device that made the entry, never used again. */
  readonly id: string;
  /** What it is, such as "run-out"; "strike" takes the entry `body.of` out. Unknown kinds are kept. */
  readonly kind: string;
  /** When it was measured or done, and when it was written down; ISO 8601, for show only. */
  readonly taken: string;
  readonly logged: string;
  /** The entry that this one comes after; null for a first one, left out where order does not matter. */
  readonly after?: string | null;
  readonly body: Json;
  /** Hash of the build file it was made with. */
  readonly design?: string;
}

const ID = /^[A-Za-z0-9_-]+\.(0|[1-9]\d{0,14})$/;
const KEYS = ['id', 'kind', 'taken', 'logged', 'after', 'body', 'design'];

export type ParsedEntry =
  | { readonly ok: true; readonly entry: LogEntry }
  | { readonly ok: false; readonly faults: Fault[] };

/** Checks that a value is a log entry. Addresses of faults begin at the entry. */
export function parseLogEntry(value: unknown): ParsedEntry {
  if (!isJsonObject(value)) {
    return { ok: false, faults: [logFault('', 'A log entry is an object.', value, '{ "id": "phone-1.27", … }')] };
  }
  const faults = jsonFaults(value, []);
  const text = (key: string, fits: (text: string) => boolean, accepted: string) => {
    const read = value[key];
    if (typeof read !== 'string' || !fits(read))
      faults.push(logFault(`/${key}`, `"${key}" is wrong or missing.`, read, accepted));
  };
  text('id', (id) => ID.test(id), 'Device, point, counter, such as "phone-1.27".');
  text('kind', (kind) => kind !== '', 'The kind of entry, such as "run-out".');
  for (const key of ['taken', 'logged']) text(key, isTime, 'An ISO 8601 time, such as "2031-05-04T16:20:00Z".');
  if (value.after !== undefined && value.after !== null)
    text('after', (id) => ID.test(id), 'The id of an entry, or null.');
  if (value.design !== undefined) text('design', (hash) => /^[0-9a-f]{64}$/.test(hash), 'A SHA-256 hash in hex.');
  if (value.body === undefined) faults.push(logFault('/body', '"body" is missing.', undefined, 'Any JSON value.'));
  if (value.kind === 'strike' && struckBy(value as unknown as LogEntry) === undefined) {
    faults.push(
      logFault('/body/of', 'A strike names the entry that it strikes out.', value.body, '{ "of": "phone-1.26" }'),
    );
  }
  for (const key of Object.keys(value)) {
    if (!KEYS.includes(key))
      faults.push(logFault(`/${key}`, 'A log entry has no such key.', key, `One of ${KEYS.join(', ')}.`));
  }
  return faults.length > 0 ? { ok: false, faults } : { ok: true, entry: value as unknown as LogEntry };
}

function isTime(text: string): boolean {
  return /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d+)?)?(Z|[+-]\d\d:\d\d)$/.test(text);
}

function logFault(address: string, problem: string, read: unknown, accepted: string): Fault {
  return {
    code: 'log.entry',
    address,
    problem,
    read: read === undefined ? '' : String(JSON.stringify(read)),
    accepted,
  };
}

export interface LogLines {
  readonly entries: LogEntry[];
  /** A cut-off last line; what follows will be written on a line of its own. */
  readonly torn?: BadLine;
  /** Other lines that are no entries; they stay in the file. */
  readonly bad: BadLine[];
}

/** Reads a log file. Lines that are no entries are reported with their number and cost nothing else. */
export function parseLogLines(text: string): LogLines {
  const { values, bad, torn } = parseLines(text);
  const entries: LogEntry[] = [];
  const unusable = [...bad];
  for (const { line, text: content, value } of values) {
    const parsed = parseLogEntry(value);
    if (parsed.ok) entries.push(parsed.entry);
    else unusable.push({ line, text: content, problem: parsed.faults.map(({ problem }) => problem).join(' ') });
  }
  unusable.sort((a, b) => a.line - b.line);
  return { entries, bad: unusable, ...(torn ? { torn } : {}) };
}

/** Same text for two entries that say the same; when they were written down does not count. */
export function entryContent({ logged: _, ...rest }: LogEntry): string {
  return canonicalJson(rest as unknown as Json);
}

export interface FoldedLog {
  /** Every entry once, each after the one it names in `after`. */
  readonly entries: LogEntry[];
  /** Ids of entries that a strike takes out; they stay in `entries`. */
  readonly struck: string[];
  /** Ids that stand for more than one content. Both are in `entries`. */
  readonly clashes: string[];
  /** Entries whose `after` names an entry that is not here (yet). They stand as first ones. */
  readonly gaps: { readonly id: string; readonly after: string }[];
  /** Ids of entries that come after themselves; they stand at the end. */
  readonly loops: string[];
}

/**
 * The record that a log holds. It does not depend on the order of the lines or on repeats: sequence comes from `after`,
 * and entries after the same one go by device and counter. Of a repeat the earliest `logged` is kept. A strike that is
 * struck itself takes nothing out.
 */
export function foldLog(lines: readonly LogEntry[]): FoldedLog {
  const versions = new Map<string, Map<string, LogEntry>>();
  for (const entry of lines) {
    const same = versions.get(entry.id) ?? new Map<string, LogEntry>();
    versions.set(entry.id, same);
    const content = entryContent(entry);
    const known = same.get(content);
    if (!known || entry.logged < known.logged) same.set(content, entry);
  }
  const ids = [...versions.keys()].sort(compareIds);
  const versionsOf = (id: string) =>
    [...(versions.get(id) ?? [])].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, entry]) => entry);
  const unique = ids.flatMap(versionsOf);
  const gaps = unique.flatMap(({ id, after }) =>
    typeof after === 'string' && !versions.has(after) ? [{ id, after }] : [],
  );
  const { order, loops } = inSequence(ids, versionsOf);
  return {
    entries: order.flatMap(versionsOf),
    struck: struckIds(unique, ids),
    clashes: ids.filter((id) => (versions.get(id)?.size ?? 0) > 1),
    gaps,
    loops,
  };
}

/** Devices by code unit, counters as numbers. */
function compareIds(a: string, b: string): number {
  const [deviceA, counterA] = splitId(a);
  const [deviceB, counterB] = splitId(b);
  if (deviceA !== deviceB) return deviceA < deviceB ? -1 : 1;
  return counterA - counterB;
}

function splitId(id: string): [string, number] {
  const point = id.lastIndexOf('.');
  return [id.slice(0, point), Number(id.slice(point + 1))];
}

/** Ids so that each comes after all that its versions name, a chain in one piece where it can be. */
function inSequence(
  ids: readonly string[],
  versionsOf: (id: string) => readonly LogEntry[],
): { order: string[]; loops: string[] } {
  const known = new Set(ids);
  const waiting = new Map<string, Set<string>>();
  const followers = new Map<string, string[]>();
  for (const id of ids) {
    const names = versionsOf(id).flatMap(({ after }) => (typeof after === 'string' && known.has(after) ? [after] : []));
    waiting.set(id, new Set(names));
    for (const name of new Set(names)) followers.set(name, [...(followers.get(name) ?? []), id]);
  }
  const order: string[] = [];
  const ready = ids.filter((id) => waiting.get(id)?.size === 0).reverse();
  for (let id = ready.pop(); id !== undefined; id = ready.pop()) {
    order.push(id);
    for (const follower of (followers.get(id) ?? []).toReversed()) {
      const rest = waiting.get(follower);
      rest?.delete(id);
      if (rest?.size === 0) ready.push(follower);
    }
  }
  const placed = new Set(order);
  const loops = ids.filter((id) => !placed.has(id));
  return { order: [...order, ...loops], loops };
}

/** Strikes are looked at in the order of who strikes whom; strikes in a circle all hold. */
function struckIds(unique: readonly LogEntry[], ids: readonly string[]): string[] {
  const strikers = new Map<string, string[]>();
  for (const entry of unique) {
    const of = struckBy(entry);
    if (of !== undefined) strikers.set(of, [...(strikers.get(of) ?? []), entry.id]);
  }
  const isStruck = (id: string, seen: readonly string[]): boolean =>
    (strikers.get(id) ?? []).some((striker) => seen.includes(striker) || !isStruck(striker, [...seen, striker]));
  return ids.filter((id) => isStruck(id, [id]));
}

function struckBy({ kind, body }: Pick<LogEntry, 'kind' | 'body'>): string | undefined {
  if (kind !== 'strike' || !isJsonObject(body)) return undefined;
  return typeof body.of === 'string' && ID.test(body.of) ? body.of : undefined;
}
