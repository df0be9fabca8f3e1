/** The two places where a page without a host keeps its builds. */
import { validateText } from '@oddwheel/build/session';
import {
  browserBuilds,
  browserKeeps,
  createBrowserBuild,
  deleteBrowserBuild,
  openBrowserStore,
} from '@oddwheel/store/browser';
import { type HeldBuild, heldBuild, openHeldStore } from '@oddwheel/store/browser-memory';
import { type BuildContent, type BuildStore, StoreError, type StoreOptions } from '@oddwheel/store/store';
import type { Shelf } from './keeper-api.ts';

/** Builds by an id that stays. */
export interface KeptBuilds {
  readonly place: Shelf['place'];
  readonly list: () => Promise<readonly { readonly name: string; readonly text: string }[]>;
  /** Rejects with `store.not-empty` when the id is taken, with `store.refused` when the build has faults. */
  readonly create: (id: string, content: BuildContent) => Promise<void>;
  readonly open: (id: string) => Promise<BuildStore>;
  readonly remove: (id: string) => Promise<void>;
}

const OPTIONS: StoreOptions = { validate: validateText, now: () => new Date().toISOString() };

/** The browser's own database where it may be used, else the page's memory. */
export async function findPlace(): Promise<KeptBuilds> {
  return (await browserKeeps()) ? IN_BROWSER : inMemory();
}

const IN_BROWSER: KeptBuilds = {
  place: 'browser',
  list: browserBuilds,
  create: (id, content) => createBrowserBuild(id, content, OPTIONS),
  open: (id) => openBrowserStore(id, OPTIONS),
  remove: deleteBrowserBuild,
};

function inMemory(): KeptBuilds {
  const builds = new Map<string, HeldBuild>();
  return {
    place: 'page',
    list: async () => [...builds].map(([name, held]) => ({ name, text: held.stored.build })),
    create: async (id, content) => {
      const faults = validateText(content.build);
      if (faults.length > 0) throw new StoreError('store.refused', 'The build file has faults.', faults);
      if (builds.has(id)) throw new StoreError('store.not-empty', `There is a build named "${id}" already.`);
      builds.set(id, heldBuild(content));
    },
    open: async (id) => {
      const held = builds.get(id);
      if (!held) throw new StoreError('store.no-build', `There is no build named "${id}".`);
      return openHeldStore(held, OPTIONS);
    },
    remove: async (id) => void builds.delete(id),
  };
}
