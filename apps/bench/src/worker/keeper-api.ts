import type { Json } from '@oddwheel/build/document/json';
import type { Fault } from '@oddwheel/build/fault';
import type { HostAnswer, RunOutAnswer } from '../link/host-client.ts';
import type { Edit, Saved } from '../link/sync.ts';

/** A build that is kept here. */
export interface KeptBuild {
  readonly id: string;
  /** Name in the build; with a number where several have the same. */
  readonly name: string;
}

/** The builds kept where no host serves the page. */
export interface Shelf {
  /** browser: they are there the next time. page: this browser keeps nothing; they last as long as the page. */
  readonly place: 'browser' | 'page';
  readonly builds: readonly KeptBuild[];
  /** Id of the build on the page; null when there is none. */
  readonly open: string | null;
  /** Deleted since the page was opened; each can be put back until it closes. */
  readonly deleted: readonly KeptBuild[];
}

export type Kept =
  | { readonly ok: true; readonly shelf: Shelf }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** Builds kept in the browser, as the page asks for them. What goes wrong rejects with an `Error` to show. */
export interface KeeperApi {
  /** Finds what is kept, and opens the build with this id, or any. */
  readonly start: (wanted: string | null) => Promise<Shelf>;
  readonly shelf: () => Promise<Shelf>;
  readonly open: (id: string) => Promise<Shelf>;
  /** Leaves the open build; it stays where it is. */
  readonly leave: () => Promise<Shelf>;
  /** Keeps a new build and opens it. */
  readonly create: (text: string) => Promise<Kept>;
  /** Keeps the build in a saved file as a new one and opens it. */
  readonly load: (bytes: Uint8Array) => Promise<Kept>;
  readonly remove: (id: string) => Promise<Shelf>;
  readonly putBack: (id: string) => Promise<Shelf>;

  /** The open build; null when there is none, or it cannot be read. */
  readonly read: () => Promise<Saved | null>;
  readonly edit: (base: string, edit: Edit, device: string) => Promise<HostAnswer>;
  readonly undo: (base: string, device: string) => Promise<HostAnswer>;
  readonly redo: (base: string, device: string) => Promise<HostAnswer>;
  /** Tells the hash of the open build whenever another page changed it. */
  readonly listen: (changed: (hash: string) => void) => void;
  /** Record of run-out of the open build; null when there is none, or it cannot be read. */
  readonly readRunOut: () => Promise<string | null>;
  /** Adds entries to it, each once; null when the browser does not keep them just now. */
  readonly addRunOut: (entries: readonly Json[]) => Promise<RunOutAnswer | null>;
  /** Tells whenever another page added to it. */
  readonly listenRunOut: (changed: () => void) => void;
  readonly putPicture: (bytes: Uint8Array) => Promise<string>;
  readonly getPicture: (hash: string) => Promise<Uint8Array | undefined>;
  /** The open build as one file. */
  readonly archive: () => Promise<Archive>;
}

/** A build as one file, and the name to save it under. */
export interface Archive {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}
