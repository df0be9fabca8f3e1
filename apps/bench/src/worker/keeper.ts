import { validateText } from '@oddwheel/build/session';
import { archiveFileName, packArchive, readArchive } from '@oddwheel/store/archive';
import { PICTURE_LIMIT, pictureType } from '@oddwheel/store/picture';
import { type BuildContent, type BuildStore, type SaveResult, StoreError } from '@oddwheel/store/store';
import type { HostAnswer } from '../link/host-client.ts';
import type { Saved } from '../link/sync.ts';
import type { KeeperApi, Kept, KeptBuild, Shelf } from './keeper-api.ts';
import { findPlace, type KeptBuilds } from './kept-builds.ts';

/** Name in a build's text; a text that cannot be read has none. */
function nameIn(text: string): string {
  try {
    const build: unknown = JSON.parse(text);
    return typeof build === 'object' && build !== null && 'name' in build ? String(build.name) : '';
  } catch {
    return '';
  }
}

/** Ids in the order they were given: "cart", "cart-2", …, "cart-10". */
const byId = (a: { readonly id: string }, b: { readonly id: string }): number =>
  a.id.length - b.id.length || (a.id < b.id ? -1 : 1);

/** Builds with one name get a number each, the first none. */
function numbered(builds: readonly KeptBuild[]): readonly KeptBuild[] {
  return [...builds].sort(byId).map(({ id, name }, index, all) => {
    const before = all.slice(0, index).filter((one) => one.name === name).length;
    return { id, name: before === 0 ? name : `${name} (${before + 1})` };
  });
}

/** Why the browser did not keep something, for the builder. */
function plainly(why: unknown): string {
  const name = why instanceof DOMException ? why.name : '';
  if (name === 'QuotaExceededError')
    return 'This browser has no room left. Save the build as one file, then delete what is not needed.';
  if (why instanceof StoreError && why.code === 'store.no-build')
    return 'This build was deleted in another tab of this browser. Put it back there, and it goes on here.';
  return `The browser did not keep it: ${why instanceof Error ? why.message : String(why)}`;
}

/**
 * Keeps builds in the browser, and does for the open one what a host does for its folder.
 * @param place where they are kept; found on start when left out
 */
export function createKeeper(place: () => Promise<KeptBuilds> = findPlace): KeeperApi {
  let kept: KeptBuilds | null = null;
  let open: { readonly id: string; readonly store: BuildStore } | null = null;
  let told: (hash: string) => void = () => undefined;
  let toldRunOut: () => void = () => undefined;
  const deleted = new Map<string, { readonly name: string; readonly content: BuildContent }>();

  const builds = async (): Promise<KeptBuilds> => {
    kept ??= await place();
    return kept;
  };

  const leave = async (): Promise<void> => {
    const { store } = open ?? {};
    open = null;
    await store?.close();
  };

  const opened = async (id: string): Promise<BuildStore> => {
    const store = await (await builds()).open(id);
    await leave();
    open = { id, store };
    store.watch((change) => {
      if (change.runOut) toldRunOut();
      if (!change.build && !change.log) return;
      // What cannot be read now is met by the next read, which has somebody to tell.
      store
        .read()
        .then(({ hash }) => told(hash))
        .catch(() => undefined);
    });
    return store;
  };

  /** Works on the open build; once more on a fresh connection, since another page may have closed this one's. */
  const onOpen = async <T>(work: (store: BuildStore) => Promise<T>): Promise<T> => {
    if (!open) throw new Error('No build is open.');
    try {
      return await work(open.store);
    } catch (why) {
      if (!(why instanceof DOMException && why.name === 'InvalidStateError')) throw why;
      return work(await opened(open.id));
    }
  };

  const shelf = async (): Promise<Shelf> => {
    const { place: where, list } = await builds();
    const all = (await list()).map(({ name: id, text }) => ({ id, name: nameIn(text) || id }));
    return {
      place: where,
      builds: numbered(all),
      open: open?.id ?? null,
      deleted: [...deleted].map(([id, { name }]) => ({ id, name })),
    };
  };

  /** Keeps a build under the first id that is free, and gives it. */
  const keep = async (content: BuildContent): Promise<string> => {
    const { create } = await builds();
    const stem = archiveFileName(nameIn(content.build)).split('.')[0]?.toLowerCase() ?? 'build';
    for (let number = 1; ; number += 1) {
      const id = number === 1 ? stem : `${stem}-${number}`;
      try {
        await create(id, content);
        return id;
      } catch (why) {
        if (!(why instanceof StoreError && why.code === 'store.not-empty')) throw why;
      }
    }
  };

  const keepNew = async (content: BuildContent): Promise<Kept> => {
    const faults = validateText(content.build);
    if (faults.length > 0) return { ok: false, faults };
    await opened(await keep(content));
    return { ok: true, shelf: await shelf() };
  };

  const saved = async (store: BuildStore): Promise<Saved> => {
    const { text, hash, history } = await store.read();
    return { text, hash, undo: history.undo.at(-1)?.name ?? null, redo: history.redo.at(-1)?.name ?? null };
  };

  const answer = async (work: (store: BuildStore) => Promise<SaveResult>): Promise<HostAnswer> => {
    try {
      return await onOpen(async (store) => {
        const result = await work(store);
        if (result.ok) return { kind: 'saved', saved: await saved(store) };
        if (result.reason === 'conflict') return { kind: 'conflict', conflicts: result.conflicts };
        const [first] = result.faults;
        const says = first ? `${first.problem} Accepted: ${first.accepted}` : 'The build cannot be kept like this.';
        return { kind: 'refused', says, faults: result.faults };
      });
    } catch (why) {
      return { kind: 'unreached', says: plainly(why) };
    }
  };

  /** What goes wrong reaches the page as an error that can be shown. */
  const orSay = async <T>(work: () => Promise<T>): Promise<T> => {
    try {
      return await work();
    } catch (why) {
      throw new Error(plainly(why));
    }
  };

  return {
    start: (wanted) =>
      orSay(async () => {
        const { builds: all } = await shelf();
        const id = all.find((one) => one.id === wanted)?.id ?? all[0]?.id;
        if (id !== undefined) await opened(id);
        return shelf();
      }),
    shelf: () => orSay(shelf),
    open: (id) => orSay(async () => opened(id).then(shelf)),
    leave: () => orSay(async () => leave().then(shelf)),
    create: (text) => orSay(() => keepNew({ build: text, history: '', log: '', runOut: '', pictures: new Map() })),
    load: (bytes) =>
      orSay(async () => {
        const read = readArchive(bytes, validateText);
        return read.ok ? keepNew(read.content) : read;
      }),
    remove: (id) =>
      orSay(async () => {
        const { builds: all } = await shelf();
        const store = open?.id === id ? open.store : await (await builds()).open(id);
        const content = await store.content();
        await store.close();
        if (open?.id === id) open = null;
        await (await builds()).remove(id);
        deleted.set(id, { name: all.find((one) => one.id === id)?.name ?? id, content });
        return shelf();
      }),
    putBack: (id) =>
      orSay(async () => {
        const one = deleted.get(id);
        if (one) await keep(one.content);
        deleted.delete(id);
        return shelf();
      }),
    read: async () => {
      try {
        return open ? await onOpen(saved) : null;
      } catch {
        return null;
      }
    },
    edit: (base, { patches, name }, who) => answer((store) => store.save({ base, patches, name, who })),
    undo: (base, who) => answer((store) => store.undo({ base, who })),
    redo: (base, who) => answer((store) => store.redo({ base, who })),
    listen: (changed) => {
      told = changed;
    },
    readRunOut: async () => {
      try {
        return open ? await onOpen(async (store) => (await store.read()).runOut) : null;
      } catch {
        return null;
      }
    },
    addRunOut: async (entries) => {
      try {
        return await onOpen((store) => store.appendRunOut(entries));
      } catch {
        return null;
      }
    },
    listenRunOut: (changed) => {
      toldRunOut = changed;
    },
    putPicture: (bytes) =>
      orSay(() => {
        if (pictureType(bytes) === null) throw new Error('This is no JPEG, PNG or WebP picture.');
        if (bytes.length > PICTURE_LIMIT) throw new Error('The picture is larger than 25 MiB.');
        return onOpen((store) => store.putPicture(bytes));
      }),
    getPicture: (hash) => orSay(() => onOpen((store) => store.getPicture(hash))),
    archive: () =>
      orSay(() =>
        onOpen(async (store) => {
          const content = await store.content();
          return { name: archiveFileName(nameIn(content.build)), bytes: packArchive(content) };
        }),
      ),
  };
}
