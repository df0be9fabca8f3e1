import type { Fault } from '@oddwheel/build/fault';
import type { BenchStore } from '../state/bench.ts';
import { keepChoice } from '../state/device.ts';
import type { Document } from '../state/document.ts';
import type { Archive, Kept, Shelf } from '../worker/keeper-api.ts';
import type { RemoteKeeper } from './browser-client.ts';
import type { HostClient } from './host-client.ts';
import { beginOnHost } from './http-host.ts';

/** What can be done with whole builds. All but `saveFile` need a page that keeps its builds itself. */
export interface BuildActions {
  /** Saves the build as one file, as a download. */
  readonly saveFile: () => Promise<void>;
  /** Brings the list of kept builds up to date with other tabs. */
  readonly refresh: () => Promise<void>;
  readonly open: (id: string) => Promise<void>;
  /** Leaves the build on the page, which stays kept, for the empty sheet. */
  readonly startNew: () => Promise<void>;
  /** Begins a new build with this text and shows it; gives what is wrong with it. */
  readonly begin: (text: string) => Promise<readonly Fault[]>;
  /** Keeps the build in a saved file as a new one and shows it; gives what is wrong with the file. */
  readonly load: (file: Blob) => Promise<readonly Fault[]>;
  readonly remove: (id: string) => Promise<void>;
  readonly putBack: (id: string) => Promise<void>;
}

/** Name under which a tab, and the browser for a new tab, remembers the open build. */
const OPEN = 'build';

/** The build that this tab, or else another one, had open last. */
export function buildToOpen(kept: (name: string) => string | null): string | null {
  try {
    return window.sessionStorage.getItem(OPEN) ?? kept(OPEN);
  } catch {
    return null;
  }
}

function rememberOpen(shelf: Shelf): void {
  keepChoice(OPEN, shelf.open ?? '');
  try {
    window.sessionStorage.setItem(OPEN, shelf.open ?? '');
  } catch {
    // Without storage the page opens any of the builds that are kept.
  }
}

function download({ name, bytes }: Archive): void {
  const url = URL.createObjectURL(new Blob([bytes], { type: 'application/zip' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The browser has taken the address over by the next turn.
  setTimeout(() => URL.revokeObjectURL(url), 0);
}

/**
 * @param client what keeps the build on the page
 * @param keeper the builds that the page keeps itself; null where a host serves one
 */
export function createBuildActions(
  store: BenchStore,
  page: Document,
  client: HostClient,
  keeper: RemoteKeeper | null,
): BuildActions {
  const trouble = (why: unknown): void => store.setState({ trouble: why instanceof Error ? why.message : String(why) });
  const showing = (shelf: Shelf): void => {
    store.setState({ shelf });
    rememberOpen(shelf);
  };
  /** Leaves the build on the page once all of it is kept. */
  const leaving = async (): Promise<boolean> => {
    const left = await page.settle();
    if (left > 0)
      trouble(`${left} ${left === 1 ? 'edit is' : 'edits are'} not kept yet. Save the build as one file first.`);
    return left === 0;
  };
  const turnTo = async (ask: (keeper: RemoteKeeper) => Promise<Shelf>): Promise<void> => {
    if (!keeper || !(await leaving())) return;
    try {
      showing(await ask(keeper));
      await page.reopen();
    } catch (why) {
      trouble(why);
    }
  };
  const takeNew = async (ask: (keeper: RemoteKeeper) => Promise<Kept>): Promise<readonly Fault[]> => {
    if (!keeper || !(await leaving())) return [];
    try {
      const kept = await ask(keeper);
      if (!kept.ok) return kept.faults;
      showing(kept.shelf);
      await page.reopen();
    } catch (why) {
      trouble(why);
    }
    return [];
  };

  return {
    saveFile: async () => {
      try {
        await page.settle();
        download(await client.archive());
        store.setState({ savedAs: store.getState().sync?.saved.hash ?? null });
      } catch (why) {
        trouble(why);
      }
    },
    refresh: async () => {
      if (!keeper) return;
      try {
        store.setState({ shelf: await keeper.shelf() });
      } catch (why) {
        trouble(why);
      }
    },
    open: (id) => turnTo((kept) => kept.open(id)),
    startNew: () => turnTo((kept) => kept.leave()),
    begin: async (text) => {
      if (keeper) return takeNew((kept) => kept.create(text));
      try {
        const faults = await beginOnHost(text);
        if (faults.length > 0) return faults;
        store.setState({ empty: false });
        await page.start();
      } catch (why) {
        trouble(why);
      }
      return [];
    },
    load: async (file) => {
      const bytes = new Uint8Array(await file.arrayBuffer());
      return takeNew((kept) => kept.load(bytes));
    },
    remove: async (id) => {
      const open = store.getState().shelf?.open === id;
      if (open) return turnTo((kept) => kept.remove(id));
      try {
        if (keeper) showing(await keeper.remove(id));
      } catch (why) {
        trouble(why);
      }
    },
    putBack: async (id) => {
      try {
        if (keeper) showing(await keeper.putBack(id));
      } catch (why) {
        trouble(why);
      }
    },
  };
}
