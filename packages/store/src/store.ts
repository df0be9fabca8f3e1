/** What a build store does, wherever the build lies. */

import type { Conflict } from '@oddwheel/build/document/diff';
import type { Json } from '@oddwheel/build/document/json';
import type { LogEntry } from '@oddwheel/build/document/log';
import type { BadLine } from '@oddwheel/build/document/ndjson';
import type { Patch } from '@oddwheel/build/document/patch';
import type { Fault } from '@oddwheel/build/fault';

/** A step of the history, for a list of what can be undone or redone. */
export interface HistoryStep {
  readonly id: string;
  readonly name: string;
  /** When it was done, ISO 8601. */
  readonly at: string;
}

/** A line that no reader can use; it stays in its file. */
export interface SetAside extends BadLine {
  readonly file: 'history' | 'log';
}

/** A build as it stands. */
export interface Snapshot {
  /** build.json as it is, faults and all. */
  readonly text: string;
  /** SHA-256 of the text; a save names the hash it was made from. */
  readonly hash: string;
  /** Each list with the next step last. */
  readonly history: { readonly undo: readonly HistoryStep[]; readonly redo: readonly HistoryStep[] };
  /** Log entries as they stand in the file; `foldLog` makes the record of them. */
  readonly log: readonly LogEntry[];
  readonly setAside: readonly SetAside[];
  /** Record of run-out as it is stored; `readTrue` makes parts, sets and rounds of it. */
  readonly runOut: string;
}

/** All that a build consists of, as it is stored; a file that is not there is "". */
export interface BuildContent {
  readonly build: string;
  readonly history: string;
  readonly log: string;
  readonly runOut: string;
  /** Pictures by the SHA-256 of their bytes. */
  readonly pictures: ReadonlyMap<string, Uint8Array>;
}

export interface SaveRequest {
  /** Hash of the text that the patches were made from. */
  readonly base: string;
  readonly patches: readonly Patch[];
  /** What was done, for the undo list: "Driver teeth 17 to 19". */
  readonly name: string;
  readonly who?: string;
}

export interface StepRequest {
  /** Hash of the text that the builder sees. */
  readonly base: string;
  readonly who?: string;
}

/**
 * What became of a save, an undo or a redo.
 *
 * conflict: others changed the same addresses since `base` (or, for undo and redo, anything at all); `text` and `hash` are
 * the build as it now stands. refused: build.json has faults or is of a newer format, and is never rewritten then; or the
 * result would have faults; or the patches lead nowhere. In both cases the build is as it was.
 */
export type SaveResult =
  | {
      readonly ok: true;
      readonly hash: string;
      readonly text: string;
      /** Id of the history entry; null when there was nothing to change. */
      readonly entryId: string | null;
      /** What others changed since `base`; it is in `text` too. */
      readonly merged: readonly Patch[];
    }
  | {
      readonly ok: false;
      readonly reason: 'conflict';
      readonly conflicts: readonly Conflict[];
      readonly hash: string;
      readonly text: string;
    }
  | { readonly ok: false; readonly reason: 'refused'; readonly faults: readonly Fault[] };

export interface AppendResult {
  /** Ids of the entries that are in the file and on the disk, new or known. */
  readonly acknowledged: readonly string[];
  /** Faults of entries that are none; the first key of an address is the index in the request. */
  readonly refused: readonly Fault[];
}

/** What changed outside this store. */
export interface OutsideChange {
  readonly build: boolean;
  readonly log: boolean;
  readonly runOut: boolean;
}

/** A build that can be read, changed and undone. Promises reject with a `StoreError`, or with the system's own error. */
export interface BuildStore {
  read(): Promise<Snapshot>;
  save(request: SaveRequest): Promise<SaveResult>;
  undo(request: StepRequest): Promise<SaveResult>;
  redo(request: StepRequest): Promise<SaveResult>;
  /** Adds entries to the log. An entry that is there already is acknowledged again and not written again. */
  append(entries: readonly Json[]): Promise<AppendResult>;
  /** The same for the record of run-out; an id that stands for another entry there is refused. */
  appendRunOut(entries: readonly Json[]): Promise<AppendResult>;
  /** Keeps a picture and gives its name: the SHA-256 of its bytes. */
  putPicture(bytes: Uint8Array): Promise<string>;
  getPicture(hash: string): Promise<Uint8Array | undefined>;
  /** Everything that is stored, for an archive. Rejects with `store.damaged` when a picture is not what its name says. */
  content(): Promise<BuildContent>;
  /** Calls `listener` when build.json, the log or the record of run-out was changed by anybody but this store. Returns a function that stops it. */
  watch(listener: (change: OutsideChange) => void): () => void;
  close(): Promise<void>;
}

/** What a store needs from its caller. */
export interface StoreOptions {
  /** All faults of a build file. A text with faults is never rewritten, and never written. */
  readonly validate: (text: string) => readonly Fault[];
  /** The time, as ISO 8601 in UTC. */
  readonly now: () => string;
}

export type StoreErrorCode =
  | 'store.busy'
  | 'store.closed'
  | 'store.damaged'
  | 'store.no-build'
  | 'store.not-empty'
  | 'store.not-text'
  | 'store.read-only'
  | 'store.refused';

/** A build that cannot be reached or changed. `code` is stable, the message is not. */
export class StoreError extends Error {
  readonly code: StoreErrorCode;
  readonly faults: readonly Fault[];

  constructor(code: StoreErrorCode, message: string, faults: readonly Fault[] = []) {
    super(message);
    this.name = 'StoreError';
    this.code = code;
    this.faults = faults;
  }
}
