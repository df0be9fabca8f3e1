import type { FileSystem } from './file-system.ts';

/** How a step goes wrong. error: half of it is done and it fails. power: the same, and nothing works from then on. */
export type Mishap = 'error' | 'power';

/**
 * What is left after a power cut of writes that were not synced. synced: nothing of them. half: names, and half of the
 * bytes. all: everything, as after a crash of the program alone.
 */
export type Survival = 'synced' | 'half' | 'all';

/** A file system in memory that knows what is durable, for stores that need no disk and for tests of those that do. */
export interface MemoryFileSystem extends FileSystem {
  /** Number of writing steps so far. */
  steps(): number;
  /** The writing step with this number, counted from 1, goes wrong. */
  failAt(step: number, mishap: Mishap): void;
  /** The file system as it is found after the power came back. */
  restart(survival: Survival): MemoryFileSystem;
}

interface Inode {
  now: Uint8Array;
  synced: Uint8Array;
}

interface Contents {
  readonly now: Map<string, Inode>;
  /** Names as they are on the disk. */
  readonly synced: Map<string, Inode>;
  readonly folders: Set<string>;
  readonly syncedFolders: Set<string>;
}

/** A memory file system with these files, all durable. */
export function memoryFileSystem(files: { readonly [path: string]: string }): MemoryFileSystem {
  const contents: Contents = { now: new Map(), synced: new Map(), folders: new Set(), syncedFolders: new Set() };
  for (const [path, text] of Object.entries(files)) {
    const bytes = new TextEncoder().encode(text);
    const inode = { now: bytes, synced: bytes };
    contents.now.set(path, inode);
    contents.synced.set(path, inode);
    contents.folders.add(parentOf(path));
    contents.syncedFolders.add(parentOf(path));
  }
  return fileSystemOf(contents);
}

function fileSystemOf(contents: Contents): MemoryFileSystem {
  const { now, synced, folders, syncedFolders } = contents;
  const mishaps = new Map<number, Mishap>();
  const watchers = new Set<{ folder: string; names: readonly string[]; changed: () => void }>();
  let turn: Promise<void> = Promise.resolve();
  let count = 0;
  let dead = false;

  /** Does a step that writes; `half` is what is done of it when it goes wrong. */
  async function step(work: () => void, half?: () => void): Promise<void> {
    if (dead) throw new Error('The power is off.');
    count += 1;
    const mishap = mishaps.get(count);
    if (!mishap) return work();
    half?.();
    dead = mishap === 'power';
    throw new Error(`Step ${count} went wrong (${mishap}).`);
  }

  function put(path: string, bytes: Uint8Array, start: Uint8Array): void {
    const joined = new Uint8Array(start.length + bytes.length);
    joined.set(start);
    joined.set(bytes, start.length);
    const inode = now.get(path);
    if (inode) inode.now = joined;
    else now.set(path, { now: joined, synced: new Uint8Array() });
    tell(path);
  }

  function tell(path: string): void {
    for (const { folder, names, changed } of watchers) {
      if (names.some((name) => path === `${folder}/${name}`)) queueMicrotask(changed);
    }
  }

  const firstHalf = (bytes: Uint8Array) => bytes.slice(0, Math.ceil(bytes.length / 2));
  const below = (folder: string, path: string) => path.startsWith(`${folder}/`);

  return {
    steps: () => count,
    failAt: (number, mishap) => mishaps.set(number, mishap),
    restart: (survival) => fileSystemOf(survivors(contents, survival)),
    async read(path) {
      if (dead) throw new Error('The power is off.');
      return now.get(path)?.now.slice();
    },
    write: (path, bytes) =>
      step(
        () => put(path, bytes, new Uint8Array()),
        () => put(path, firstHalf(bytes), new Uint8Array()),
      ),
    append: (path, bytes) =>
      step(
        () => put(path, bytes, now.get(path)?.now ?? new Uint8Array()),
        () => put(path, firstHalf(bytes), now.get(path)?.now ?? new Uint8Array()),
      ),
    sync: (path) =>
      step(() => {
        const inode = now.get(path);
        if (inode) inode.synced = inode.now;
      }),
    syncFolder: (folder) =>
      step(() => {
        for (const path of [...synced.keys()]) if (parentOf(path) === folder && !now.has(path)) synced.delete(path);
        for (const [path, inode] of now) if (parentOf(path) === folder) synced.set(path, inode);
        for (const path of folders) if (parentOf(path) === folder) syncedFolders.add(path);
      }),
    rename: (from, to) =>
      step(() => {
        for (const [path, inode] of [...now]) {
          if (path !== from && !below(from, path)) continue;
          now.delete(path);
          now.set(to + path.slice(from.length), inode);
        }
        // A folder takes the names in it along, as far as they are durable.
        for (const [path, inode] of [...synced]) {
          if (!below(from, path)) continue;
          synced.delete(path);
          synced.set(to + path.slice(from.length), inode);
        }
        for (const folder of [...folders]) {
          if (folder !== from && !below(from, folder)) continue;
          folders.delete(folder);
          folders.add(to + folder.slice(from.length));
        }
        for (const folder of [...syncedFolders]) {
          if (!below(from, folder)) continue;
          syncedFolders.delete(folder);
          syncedFolders.add(to + folder.slice(from.length));
        }
        tell(to);
      }),
    makeFolder: (path) =>
      step(() => {
        for (let folder = path; folder !== ''; folder = parentOf(folder)) {
          folders.add(folder);
          syncedFolders.add(folder);
        }
      }),
    removeFolder: (path) =>
      step(() => {
        for (const file of [...now.keys()]) if (below(path, file)) now.delete(file);
        for (const folder of [...folders]) if (folder === path || below(path, folder)) folders.delete(folder);
      }),
    async list(path) {
      if (!folders.has(path)) return undefined;
      return [...now.keys(), ...folders]
        .filter((name) => parentOf(name) === path)
        .map((name) => name.slice(path.length + 1));
    },
    async lock() {
      const before = turn;
      let done: () => void = () => undefined;
      turn = new Promise((resolve) => {
        done = resolve;
      });
      await before;
      return { held: async () => true, release: async () => done() };
    },
    watch(folder, names, changed) {
      const watcher = { folder, names, changed };
      watchers.add(watcher);
      return () => watchers.delete(watcher);
    },
  };
}

function survivors({ now, synced, folders, syncedFolders }: Contents, survival: Survival): Contents {
  const [names, places] = survival === 'synced' ? [synced, syncedFolders] : [now, folders];
  const left = new Map<string, Inode>();
  for (const [path, inode] of names) {
    if (!places.has(parentOf(path))) continue;
    const bytes = survival === 'all' ? inode.now : survival === 'half' ? halfSynced(inode) : inode.synced;
    left.set(path, { now: bytes, synced: bytes });
  }
  return { now: left, synced: new Map(left), folders: new Set(places), syncedFolders: new Set(places) };
}

/** An append half done, or a rewrite half done. */
function halfSynced({ now, synced }: Inode): Uint8Array {
  const appended = now.length >= synced.length && synced.every((byte, i) => byte === now[i]);
  const kept = appended ? synced.length : 0;
  return now.slice(0, kept + Math.floor((now.length - kept) / 2));
}

function parentOf(path: string): string {
  return path.slice(0, Math.max(path.lastIndexOf('/'), 0));
}
