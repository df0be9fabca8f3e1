import { TRUE_FILE } from '@oddwheel/build/true/types';
import type { FileSystem, Lock } from './file-system.ts';
import type { Changed, Medium } from './medium.ts';
import type { Step, Stored, Write } from './steps.ts';
import { StoreError } from './store.ts';

export const BUILD_FILE = 'build.json';
export const HISTORY_FILE = 'history.ndjson';
export const LOG_FILE = 'log.ndjson';
export const PICTURE_FOLDER = 'pictures';
/** A file on its way in; left over only after a crash, and written over by the next. */
const NEXT = '.next';

/** How often a change begins anew because another program replaced build.json meanwhile. */
const ATTEMPTS = 5;

const FILES = { history: HISTORY_FILE, log: LOG_FILE, runOut: TRUE_FILE } as const;

/** A build folder as a medium. */
export function folderMedium(fs: FileSystem, folder: string): Medium {
  const path = (name: string) => `${folder}/${name}`;

  /** Some editors move build.json away before they put the new one in its place. */
  async function buildText(): Promise<string> {
    for (let attempt = 1; ; attempt += 1) {
      const bytes = await fs.read(path(BUILD_FILE));
      if (bytes) return exactText(bytes);
      if (attempt === ATTEMPTS) throw new StoreError('store.no-build', `There is no ${BUILD_FILE} in ${folder}.`);
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
  }

  async function lines(name: string): Promise<string> {
    const bytes = await fs.read(path(name));
    // A line that was cut off may end inside a character.
    return bytes ? new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes) : '';
  }

  async function load(): Promise<Stored> {
    // The build first: the history may run ahead of it, never behind.
    return {
      build: await buildText(),
      history: await lines(HISTORY_FILE),
      log: await lines(LOG_FILE),
      runOut: await lines(TRUE_FILE),
    };
  }

  async function append(name: string, before: string, text: string): Promise<void> {
    await fs.append(path(name), new TextEncoder().encode(text));
    await fs.sync(path(name));
    if (before === '') await fs.syncFolder(folder);
  }

  /** False when another program has replaced build.json since it was loaded; its text must not be lost. */
  async function replaceBuild(before: string, text: string, lock: Lock): Promise<boolean> {
    const next = path(`.${BUILD_FILE}${NEXT}`);
    await fs.write(next, new TextEncoder().encode(text));
    await fs.sync(next);
    await mustHold(lock, folder);
    if ((await buildText()) !== before) return false;
    await fs.rename(next, path(BUILD_FILE));
    await fs.syncFolder(folder);
    return true;
  }

  async function carryOut(before: Stored, writes: readonly Write[], lock: Lock): Promise<boolean> {
    let now = before;
    for (const write of writes) {
      if (write.file === 'build') {
        if (!(await replaceBuild(before.build, write.text, lock))) return false;
      } else {
        await mustHold(lock, folder);
        await append(FILES[write.file], now[write.file], write.append);
        now = { ...now, [write.file]: now[write.file] + write.append };
      }
    }
    return true;
  }

  async function locked<T>(work: (lock: Lock) => Promise<T>): Promise<T> {
    const lock = await fs.lock(folder);
    try {
      return await work(lock);
    } finally {
      await lock.release();
    }
  }

  return {
    load,
    change<T>(step: (stored: Stored) => Step<T>): Promise<Changed<T>> {
      return locked(async (lock) => {
        for (let attempt = 0; attempt < ATTEMPTS; attempt += 1) {
          const before = await load();
          const { writes, result } = step(before);
          if (await carryOut(before, writes, lock)) return { before, writes, result };
        }
        throw new StoreError('store.busy', `Another program keeps on replacing ${BUILD_FILE} in ${folder}. Try again.`);
      });
    },
    putPicture(hash, bytes) {
      return locked(async () => {
        const pictures = path(PICTURE_FOLDER);
        if (await fs.read(`${pictures}/${hash}`)) return;
        await fs.makeFolder(pictures);
        await writeDurably(fs, pictures, hash, bytes);
      });
    },
    getPicture: (hash) => fs.read(`${path(PICTURE_FOLDER)}/${hash}`),
    async pictures() {
      const names = (await fs.list(path(PICTURE_FOLDER))) ?? [];
      return names.filter((name) => /^[0-9a-f]{64}$/.test(name));
    },
    watch: (changed) => fs.watch(folder, [BUILD_FILE, LOG_FILE, TRUE_FILE], changed),
    close: async () => undefined,
  };
}

/** Puts a file into a folder so that it is there whole or not at all. */
export async function writeDurably(fs: FileSystem, folder: string, name: string, bytes: Uint8Array): Promise<void> {
  const next = `${folder}/.${name}${NEXT}`;
  await fs.write(next, bytes);
  await fs.sync(next);
  await fs.rename(next, `${folder}/${name}`);
  await fs.syncFolder(folder);
}

async function mustHold(lock: Lock, folder: string): Promise<void> {
  if (await lock.held()) return;
  throw new StoreError('store.busy', `Another program took over writing in ${folder}. Nothing was saved; try again.`);
}

/** Bytes that are not UTF-8 would be changed by reading and writing them, so they are refused. */
function exactText(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    const whole = new TextDecoder('utf-8').decode(bytes);
    const line = whole.slice(0, whole.indexOf('\ufffd')).split('\n').length;
    throw new StoreError(
      'store.not-text',
      `${BUILD_FILE} is not written in UTF-8 (line ${line}). Save it as UTF-8 in the editor it came from.`,
    );
  }
}
