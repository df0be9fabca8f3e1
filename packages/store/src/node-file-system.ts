import { type FSWatcher, unwatchFile, watch, watchFile } from 'node:fs';
import { appendFile, mkdir, open, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import type { FileSystem } from './file-system.ts';
import { lockFolder } from './folder-lock.ts';

/** Editors write in several steps; after the last of them it stays still for this long. */
const SETTLE_MS = 40;
/** Where the system reports no changes (network drives), they are found by looking. */
const POLL_MS = 1000;

/** The computer's own file system. */
export const nodeFileSystem: FileSystem = {
  read: (path) => unlessMissing(readFile(path)),
  write: (path, bytes) => writeFile(path, bytes),
  append: (path, bytes) => appendFile(path, bytes),
  async sync(path) {
    const file = await open(path, 'r+');
    try {
      await file.datasync();
    } finally {
      await file.close();
    }
  },
  syncFolder,
  rename,
  async makeFolder(path) {
    const first = await mkdir(path, { recursive: true });
    if (first === undefined) return;
    const top = dirname(resolve(first));
    for (let folder = dirname(resolve(path)); ; folder = dirname(folder)) {
      await syncFolder(folder);
      if (folder === top || folder === dirname(folder)) return;
    }
  },
  removeFolder: (path) => rm(path, { recursive: true, force: true }),
  list: (path) => unlessMissing(readdir(path)),
  lock: lockFolder,
  watch: watchFolder,
};

async function syncFolder(path: string): Promise<void> {
  // Windows knows no such thing: it opens no folder for that.
  if (process.platform === 'win32') return;
  const folder = await open(path, 'r');
  try {
    await folder.sync();
  } finally {
    await folder.close();
  }
}

/** Watches the folder, not the file: an editor that replaces the file by renaming would take a watched file along. */
function watchFolder(folder: string, names: readonly string[], changed: () => void): () => void {
  let timer: NodeJS.Timeout | undefined;
  const soon = () => {
    clearTimeout(timer);
    timer = setTimeout(changed, SETTLE_MS);
    timer.unref();
  };
  let watcher: FSWatcher | undefined;
  try {
    watcher = watch(folder, { persistent: false }, (_event, name) => {
      if (name === null || names.includes(name)) soon();
    });
    watcher.on('error', () => watcher?.close());
  } catch {
    // The system has no watches left, or none at all for this folder. Polling goes on.
  }
  const paths = names.map((name) => `${folder}/${name}`);
  for (const path of paths) watchFile(path, { persistent: false, interval: POLL_MS }, soon);
  return () => {
    clearTimeout(timer);
    watcher?.close();
    for (const path of paths) unwatchFile(path, soon);
  };
}

async function unlessMissing<T>(reading: Promise<T>): Promise<T | undefined> {
  try {
    return await reading;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return undefined;
    throw error;
  }
}
