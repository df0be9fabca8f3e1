import type { Conflict } from '@oddwheel/build/document/diff';
import type { Json } from '@oddwheel/build/document/json';
import type { Fault } from '@oddwheel/build/fault';
import type { Archive } from '../worker/keeper-api.ts';
import type { Edit, Saved } from './sync.ts';

/** What the host answers to an edit, an undo or a redo. */
export type HostAnswer =
  | { readonly kind: 'saved'; readonly saved: Saved }
  /** The file changed meanwhile, at these addresses. */
  | { readonly kind: 'conflict'; readonly conflicts: readonly Conflict[] }
  /** The host won't save this: the build would be at fault, or there is nothing to undo. */
  | { readonly kind: 'refused'; readonly says: string; readonly faults: readonly Fault[] }
  /** The host can't be reached, or can't write just now: it is asked again. */
  | { readonly kind: 'unreached'; readonly says: string | null };

/** Where the build on the page lies: in a folder behind a host, in this browser, or in the page itself. */
export type Place = 'host' | 'browser' | 'page';

/** What became of entries of run-out that were sent. */
export interface RunOutAnswer {
  /** Ids that are kept for good, now or before. */
  readonly acknowledged: readonly string[];
  /** The first key of an address is the index in what was sent. */
  readonly refused: readonly Fault[];
}

/** What keeps the record of run-out. */
export interface RunOutClient {
  /** The record as it is kept; null without a connection. */
  readonly read: () => Promise<string | null>;
  /** Keeps entries, each once; null without a connection. */
  readonly add: (entries: readonly Json[]) => Promise<RunOutAnswer | null>;
  /** Listens for entries made elsewhere, and for the connection coming and going. */
  readonly listen: (changed: () => void, connection: (up: boolean) => void) => void;
}

/** What keeps the build, as the page asks it: the host that served the page, or the browser. */
export interface HostClient {
  /** The build on the disk; null without a connection. */
  readonly read: () => Promise<Saved | null>;
  /** The build as this browser last saw it, for a page that is loaded without a connection; null when it never did. */
  readonly lastSeen: () => Promise<Saved | null>;
  readonly edit: (base: string, edit: Edit) => Promise<HostAnswer>;
  readonly undo: (base: string) => Promise<HostAnswer>;
  readonly redo: (base: string) => Promise<HostAnswer>;
  /**
   * Listens for changes of the file made elsewhere, and for the connection coming and going.
   *
   * @param changed is told the hash of the text now on the disk
   */
  readonly listen: (changed: (hash: string) => void, connection: (up: boolean) => void) => void;
  /**
   * Keeps a picture (JPEG, PNG or WebP) and gives its name, the SHA-256 of its bytes.
   * Rejects with an `Error` that says why it was not kept.
   */
  readonly putPicture: (bytes: Uint8Array) => Promise<string>;
  /** An address that an `img` or a canvas can load; rejects with an `Error` when there is no such picture. */
  readonly pictureUrl: (hash: string) => Promise<string>;
  readonly runOut: RunOutClient;
  /** The build as one file; rejects with an `Error` that says why there is none. */
  readonly archive: () => Promise<Archive>;
}
