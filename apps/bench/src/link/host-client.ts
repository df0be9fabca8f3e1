import type { Conflict } from '@oddwheel/build/document/diff';
import type { Fault } from '@oddwheel/build/fault';
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

/** The host, as the page asks it. */
export interface HostClient {
  /** The build on the disk; null without a connection. */
  readonly read: () => Promise<Saved | null>;
  readonly edit: (base: string, edit: Edit) => Promise<HostAnswer>;
  readonly undo: (base: string) => Promise<HostAnswer>;
  readonly redo: (base: string) => Promise<HostAnswer>;
  /**
   * Listens for changes of the file made elsewhere, and for the connection coming and going.
   *
   * @param changed is told the hash of the text now on the disk
   */
  readonly listen: (changed: (hash: string) => void, connection: (up: boolean) => void) => void;
}
