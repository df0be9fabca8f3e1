/** The decisions of every store, as pure functions: what is stored and what is asked give what to write and to answer. */
import { type Conflict, diffJson, mergePatches } from '@oddwheel/build/document/diff';
import { hashText } from '@oddwheel/build/document/hash';
import { catchUp, foldHistory, type HistoryEntry, parseHistory, replay } from '@oddwheel/build/document/history';
import type { Json } from '@oddwheel/build/document/json';
import { parseJsonText } from '@oddwheel/build/document/json-text';
import { entryContent, parseLogEntry, parseLogLines } from '@oddwheel/build/document/log';
import { appendedLines } from '@oddwheel/build/document/ndjson';
import { applyPatches, type Patch } from '@oddwheel/build/document/patch';
import { valueAt } from '@oddwheel/build/document/patch-value';
import { keysOf } from '@oddwheel/build/document/pointer';
import type { Fault } from '@oddwheel/build/fault';
import { appendTrue } from '@oddwheel/build/true/record';
import type {
  AppendResult,
  HistoryStep,
  SaveRequest,
  SaveResult,
  Snapshot,
  StepRequest,
  StoreOptions,
} from './store.ts';

/** The texts of a build; a file that is not there is "". */
export interface Stored {
  readonly build: string;
  readonly history: string;
  readonly log: string;
  /** Record of run-out, `true.ndjson`. */
  readonly runOut: string;
}

/** One write. They are done in order, each on the disk before the next begins. */
export type Write =
  | { readonly file: 'history' | 'log' | 'runOut'; readonly append: string }
  | { readonly file: 'build'; readonly text: string };

export interface Step<T> {
  readonly writes: readonly Write[];
  readonly result: T;
}

/** What is stored after the writes. */
export function written(stored: Stored, writes: readonly Write[]): Stored {
  const now = { ...stored };
  for (const write of writes) {
    if (write.file === 'build') now.build = write.text;
    else now[write.file] += write.append;
  }
  return now;
}

/** What a step needs besides what is stored. */
export interface StepOptions extends StoreOptions {
  /** Hash of the text that this store last saw on the disk. */
  readonly reached: () => string;
}

interface Start {
  readonly hash: string;
  readonly faults: readonly Fault[];
  readonly entries: readonly HistoryEntry[];
  /** History as it is once `writes` are done. */
  readonly history: string;
  readonly writes: readonly Write[];
}

/** Brings the history up to the text on the disk, which another program may have changed. */
function start(stored: Stored, options: StepOptions): Start {
  const faults = options.validate(stored.build);
  const hash = hashText(stored.build);
  const { entries } = parseHistory(stored.history);
  const entry =
    faults.length > 0
      ? undefined
      : catchUp(entries, stored.build, options.now(), entryId(stored.history, hash), options.reached());
  if (!entry) return { hash, faults, entries, history: stored.history, writes: [] };
  const append = appendedLines(stored.history, [entry as unknown as Json]);
  return {
    hash,
    faults,
    entries: [...entries, entry],
    history: stored.history + append,
    writes: [{ file: 'history', append }],
  };
}

/** The history only grows, so its number of lines is never met again; the hash is for the reader's eye. */
function entryId(history: string, after: string): string {
  return `${history.split('\n').length}-${after.slice(0, 8)}`;
}

/** Reads the build, and notes in the history what another program changed. */
export function readStep(stored: Stored, options: StepOptions): Step<Snapshot> {
  const { hash, entries, writes } = start(stored, options);
  const fold = foldHistory(entries, hash);
  const log = parseLogLines(stored.log);
  const aside = (file: 'history' | 'log') => (line: (typeof log.bad)[number]) => ({ file, ...line });
  return {
    writes,
    result: {
      text: stored.build,
      hash,
      history: { undo: fold.undo.map(stepOf), redo: fold.redo.map(stepOf) },
      log: log.entries,
      runOut: stored.runOut,
      setAside: [
        ...parseHistory(stored.history).bad.map(aside('history')),
        ...[...log.bad, ...(log.torn ? [log.torn] : [])].map(aside('log')),
      ],
    },
  };
}

function stepOf({ id, name, at }: HistoryEntry): HistoryStep {
  return { id, name, at };
}

/** Saves patches, merging them with what others changed since their base. */
export function saveStep(stored: Stored, request: SaveRequest, options: StepOptions): Step<SaveResult> {
  const from = start(stored, options);
  if (from.faults.length > 0) return refused(from, from.faults);
  const { base, patches, name, who } = request;
  if (base === from.hash) return change(stored, from, { kind: 'edit', name, who, patches }, [], options);
  const current = jsonOf(stored.build);
  const baseText = replay(from.entries, base);
  if (baseText === undefined) {
    const conflicts = patches.map((patch) => conflictAt(patch, current));
    return conflict(stored, from, conflicts);
  }
  const theirs = diffJson(jsonOf(baseText), current);
  const merged = mergePatches(jsonOf(baseText), patches, theirs);
  if (!merged.ok) return refused(from, merged.faults);
  if (merged.conflicts.length > 0) return conflict(stored, from, merged.conflicts);
  return change(stored, from, { kind: 'edit', name, who, patches: merged.clean }, theirs, options);
}

/** Takes the last step back, or does the last undone step again. */
export function historyStep(
  stored: Stored,
  kind: 'undo' | 'redo',
  request: StepRequest,
  options: StepOptions,
): Step<SaveResult> {
  const from = start(stored, options);
  if (from.faults.length > 0) return refused(from, from.faults);
  if (request.base !== from.hash) {
    const baseText = replay(from.entries, request.base);
    const base = baseText === undefined ? undefined : jsonOf(baseText);
    const current = jsonOf(stored.build);
    const changes = base === undefined ? [] : diffJson(base, current);
    return conflict(
      stored,
      from,
      changes.map(({ at }) => conflictOf(at, { theirs: current, base })),
    );
  }
  const entry = foldHistory(from.entries, from.hash)[kind].at(-1);
  if (!entry) return refused(from, [nothingTo(kind)]);
  const patches = kind === 'undo' ? entry.inverse : entry.patches;
  return change(stored, from, { kind, name: entry.name, who: request.who, patches, of: entry.id }, [], options);
}

interface Deed {
  readonly kind: 'edit' | 'undo' | 'redo';
  readonly name: string;
  readonly who: string | undefined;
  readonly patches: readonly Patch[];
  readonly of?: string;
}

/** The history entry comes first, so that a text on the disk can always be taken back. */
function change(
  stored: Stored,
  from: Start,
  deed: Deed,
  merged: readonly Patch[],
  options: StepOptions,
): Step<SaveResult> {
  const patched = applyPatches(stored.build, deed.patches);
  if (!patched.ok) return refused(from, patched.faults);
  const { text, inverse } = patched;
  // An undo or redo that changes nothing still moves the lists.
  if (text === stored.build && deed.kind === 'edit') {
    return { writes: from.writes, result: { ok: true, hash: from.hash, text, entryId: null, merged } };
  }
  const faults = options.validate(text);
  if (faults.length > 0) return refused(from, faults);
  const hash = hashText(text);
  const { who, ...rest } = deed;
  const entry: HistoryEntry = {
    v: 1,
    id: entryId(from.history, hash),
    ...rest,
    at: options.now(),
    ...(who === undefined ? {} : { who }),
    before: from.hash,
    after: hash,
    inverse,
  };
  const append = appendedLines(from.history, [entry as unknown as Json]);
  return {
    writes: [...from.writes, { file: 'history', append }, { file: 'build', text }],
    result: { ok: true, hash, text, entryId: entry.id, merged },
  };
}

function refused(from: Start, faults: readonly Fault[]): Step<SaveResult> {
  return { writes: from.writes, result: { ok: false, reason: 'refused', faults } };
}

function conflict(stored: Stored, from: Start, conflicts: readonly Conflict[]): Step<SaveResult> {
  return {
    writes: from.writes,
    result: { ok: false, reason: 'conflict', conflicts, hash: from.hash, text: stored.build },
  };
}

function conflictAt(patch: Patch, current: Json): Conflict {
  return {
    ...conflictOf(patch.at, { theirs: current, base: undefined }),
    ...(patch.op === 'set' ? { mine: patch.value } : {}),
  };
}

function conflictOf(address: string, sides: { theirs: Json; base: Json | undefined }): Conflict {
  const keys = keysOf(address) ?? [];
  const theirs = valueAt(sides.theirs, keys);
  const base = sides.base === undefined ? undefined : valueAt(sides.base, keys);
  return { address, ...(theirs === undefined ? {} : { theirs }), ...(base === undefined ? {} : { base }) };
}

function nothingTo(kind: 'undo' | 'redo'): Fault {
  return {
    code: `history.nothing-to-${kind}`,
    address: '',
    problem: `There is nothing to ${kind}.`,
    read: '',
    accepted:
      kind === 'undo' ? 'A build with a step that can be taken back.' : 'A build whose last change was an undo.',
  };
}

/** Adds the entries that the log does not have yet. One id with two contents is kept twice: `foldLog` reports it. */
export function appendStep(stored: Stored, entries: readonly Json[]): Step<AppendResult> {
  const known = new Set(parseLogLines(stored.log).entries.map(entryContent));
  const fresh: Json[] = [];
  const acknowledged: string[] = [];
  const refusedEntries: Fault[] = [];
  for (const [i, value] of entries.entries()) {
    const parsed = parseLogEntry(value);
    if (!parsed.ok) {
      refusedEntries.push(...parsed.faults.map((fault) => ({ ...fault, address: `/${i}${fault.address}` })));
      continue;
    }
    acknowledged.push(parsed.entry.id);
    const content = entryContent(parsed.entry);
    if (!known.has(content)) fresh.push(value);
    known.add(content);
  }
  return {
    writes: fresh.length === 0 ? [] : [{ file: 'log', append: appendedLines(stored.log, fresh) }],
    result: { acknowledged, refused: refusedEntries },
  };
}

/**
 * Adds the entries that the record of run-out does not have yet, each judged by itself: one that is wrong, or whose id stands
 * for something else, keeps none of the others back.
 */
export function runOutStep(stored: Stored, entries: readonly Json[]): Step<AppendResult> {
  let text = stored.runOut;
  const acknowledged: string[] = [];
  const refusedEntries: Fault[] = [];
  for (const [i, value] of entries.entries()) {
    const one = appendTrue(text, [value]);
    if (one.ok) {
      text += one.text;
      acknowledged.push(...one.added, ...one.known);
    } else
      refusedEntries.push(
        ...one.faults.map((fault) => ({ ...fault, address: fault.address.replace(/^\/0/, `/${i}`) })),
      );
  }
  const append = text.slice(stored.runOut.length);
  return {
    writes: append === '' ? [] : [{ file: 'runOut', append }],
    result: { acknowledged, refused: refusedEntries },
  };
}

/** The value of a text that is known to be JSON: it was validated, or its hash is in the history. */
function jsonOf(text: string): Json {
  const parsed = parseJsonText(text);
  if (!parsed.ok)
    throw new TypeError(`validate() found no fault in a text that is not JSON: ${parsed.faults[0]?.problem}`);
  return parsed.value;
}
