import type { Conflict } from '@oddwheel/build/document/diff';
import type { Patch } from '@oddwheel/build/document/patch';
import type { Place } from './host-client.ts';

/** One edit made here, by the name that Undo shows. */
export interface Edit {
  readonly name: string;
  readonly patches: readonly Patch[];
  /** Its patches hold only together, as where a stage comes with its shaft: it is made whole or not at all. */
  readonly whole?: boolean;
}

/** What the host has on its disk. */
export interface Saved {
  readonly text: string;
  readonly hash: string;
  /** Name of the edit that Undo would take back, and of the one that Redo would make again. */
  readonly undo: string | null;
  readonly redo: string | null;
}

/** A conflict that waits for the builder's choice; the name is that of the edit made here. */
export interface HeldConflict extends Conflict {
  readonly name: string;
  /** The whole edit that waits for the choice; left out where only this value does. */
  readonly edit?: Edit;
}

/**
 * How the page stands to the file: what the host holds, and what was done here and is not there yet.
 * The build on the page is always `saved.text` with `pending` applied in order.
 */
export interface Sync {
  readonly saved: Saved;
  readonly pending: readonly Edit[];
  /** The first of `pending` is on its way. */
  readonly sending: boolean;
  readonly held: readonly HeldConflict[];
  readonly online: boolean;
  /** Hours and minutes of the last answer that an edit is on the disk. */
  readonly savedAt: string | null;
}

/** The state after a build was read from the host. */
export function startSync(saved: Saved): Sync {
  return { saved, pending: [], sending: false, held: [], online: true, savedAt: null };
}

/** An edit was made here. */
export function edited(sync: Sync, edit: Edit): Sync {
  return { ...sync, pending: [...sync.pending, edit] };
}

/** The edit to send now, or null: one at a time, and none without a connection. */
export function nextToSend(sync: Sync): Edit | null {
  return sync.sending || !sync.online ? null : (sync.pending[0] ?? null);
}

export function sendingStarted(sync: Sync): Sync {
  return { ...sync, sending: true };
}

/** The host has the first pending edit on its disk. */
export function accepted(sync: Sync, saved: Saved, savedAt: string): Sync {
  return { ...sync, saved, savedAt, pending: sync.pending.slice(1), sending: false, online: true };
}

/** The connection failed while sending: the edit stays, and is sent again later. */
export function disconnected(sync: Sync): Sync {
  return { ...sync, sending: false, online: false };
}

/** The host holds another text than was known here: an edit by another page or editor, an undo, or a new connection. */
export function refreshed(sync: Sync, saved: Saved): Sync {
  return { ...sync, saved, online: true };
}

const touches = (patch: Patch, address: string): boolean =>
  patch.at === address || patch.at.startsWith(`${address}/`) || address.startsWith(`${patch.at}/`);

/**
 * The first pending edit met a change made elsewhere. What does not collide stays pending; each colliding address is held
 * until the builder chooses, and theirs is in force meanwhile. Of an edit that is made whole or not at all, everything waits.
 */
export function collided(sync: Sync, theirs: Saved, conflicts: readonly Conflict[]): Sync {
  const [edit, ...later] = sync.pending;
  if (!edit) return refreshed(sync, theirs);
  const free = edit.whole
    ? []
    : edit.patches.filter((patch) => !conflicts.some((conflict) => touches(patch, conflict.address)));
  const held = conflicts.map((conflict) => ({ ...conflict, name: edit.name, ...(edit.whole ? { edit } : {}) }));
  return {
    ...sync,
    saved: theirs,
    pending: free.length === 0 ? later : [{ ...edit, patches: free }, ...later],
    sending: false,
    online: true,
    held: [...sync.held.filter((old) => !held.some((one) => one.address === old.address)), ...held],
  };
}

/** The first pending edit can't be saved at all: it is dropped. */
export function dropped(sync: Sync): Sync {
  return { ...sync, pending: sync.pending.slice(1), sending: false };
}

/** The last edit that is not on its way yet is taken back; null when there is none. */
export function cancelLast(sync: Sync): { readonly sync: Sync; readonly edit: Edit } | null {
  const edit = sync.pending.at(-1);
  if (!edit || (sync.sending && sync.pending.length === 1)) return null;
  return { sync: { ...sync, pending: sync.pending.slice(0, -1) }, edit };
}

/** The edit, on top of theirs, that keeps the value typed here; null when that address is not held. */
export function keptEdit(sync: Sync, address: string): Edit | null {
  const row = sync.held.find((one) => one.address === address);
  if (!row) return null;
  if (row.edit) return row.edit;
  const patch: Patch =
    row.mine === undefined ? { op: 'remove', at: address } : { op: 'set', at: address, value: row.mine };
  return { name: row.name, patches: [patch] };
}

/** The builder takes the other value: it is in force already. An edit that waits whole is settled at all its addresses. */
export function takeTheirs(sync: Sync, address: string): Sync {
  const edit = sync.held.find((one) => one.address === address)?.edit;
  return { ...sync, held: sync.held.filter((one) => one.address !== address && (!edit || one.edit !== edit)) };
}

/** Name of the edit that Undo would take back now; one that is on its way is taken back once it is kept. */
export function undoName(sync: Sync): string | null {
  return sync.pending.at(-1)?.name ?? sync.saved.undo;
}

/** Name of the edit that Redo would make again now; an edit made since leaves none. */
export function redoName(sync: Sync): string | null {
  return sync.pending.length > 0 ? null : sync.saved.redo;
}

const AS_FOUND: Readonly<Record<Place, string>> = {
  host: 'as on the disk',
  browser: 'kept in this browser',
  page: 'in this page only',
};

/** The saved state in words for the head of the page. */
export function savedWords(sync: Sync, place: Place): string {
  const count = sync.pending.length;
  if (count > 0 && !sync.online) return `${count} ${count === 1 ? 'edit' : 'edits'} not saved`;
  if (count > 0) return 'saving';
  if (!sync.online) return place === 'host' ? 'no connection' : 'not kept just now';
  if (sync.savedAt === null || place === 'page') return AS_FOUND[place];
  return `saved ${sync.savedAt}`;
}
