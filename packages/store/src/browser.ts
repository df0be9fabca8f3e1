import { type Changed, type Medium, storeOn } from './medium.ts';
import type { Step, Stored, Write } from './steps.ts';
import { type BuildContent, type BuildStore, StoreError, type StoreOptions } from './store.ts';

/** Object stores of a build's database. The files that only grow are kept as the pieces that were appended. */
const LINES = ['history', 'log', 'runOut'] as const;
const FILES = ['build', ...LINES] as const;
const PICTURES = 'pictures';
const BUILD_KEY = 'build.json';
/** Beginning of the name of every database that is a build. */
const PREFIX = 'oddwheel/';

export interface BrowserStoreOptions extends StoreOptions {
  /** Text to begin with when the browser has no build of this name yet; it must have no faults. */
  readonly initial?: string;
}

/**
 * A store on a build that the browser keeps (IndexedDB 3.0). Every change is one transaction with strict durability, so
 * several tabs may have the build open.
 *
 * `name` names the build in this browser. Rejects with a `StoreError` when there is no such build and no `initial`.
 */
export async function openBrowserStore(name: string, options: BrowserStoreOptions): Promise<BuildStore> {
  const database = await openDatabase(name);
  try {
    const { initial } = options;
    if (initial !== undefined) {
      const faults = options.validate(initial);
      if (faults.length > 0) throw new StoreError('store.refused', 'The text to begin with has faults.', faults);
      await begin(database, initial);
    }
    return await storeOn(browserMedium(database, name), options);
  } catch (error) {
    database.close();
    throw error;
  }
}

function openDatabase(name: string): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(PREFIX + name, 2);
    request.onupgradeneeded = () => {
      const { result } = request;
      const make = (name: string, options?: IDBObjectStoreParameters): void => {
        // A database of an earlier version has some of them.
        if (!result.objectStoreNames.contains(name)) result.createObjectStore(name, options);
      };
      make('build');
      for (const file of LINES) make(file, { autoIncrement: true });
      make(PICTURES);
    };
    request.onsuccess = () => {
      // Lets another tab delete the database or raise its version.
      request.result.onversionchange = () => request.result.close();
      resolve(request.result);
    };
    request.onerror = () => reject(request.error);
  });
}

function begin(database: IDBDatabase, initial: string): Promise<void> {
  return transact(database, ['build'], (transaction) => {
    const build = transaction.objectStore('build');
    const count = build.count(BUILD_KEY);
    count.onsuccess = () => {
      if (count.result === 0) build.put(initial, BUILD_KEY);
    };
  });
}

/**
 * Keeps a whole build in this browser under a new name, in one transaction.
 *
 * Rejects with a `StoreError`: `store.not-empty` when the browser has a build of this name, `store.refused` with the faults
 * when the text has any.
 */
export async function createBrowserBuild(
  name: string,
  content: BuildContent,
  { validate }: Pick<StoreOptions, 'validate'>,
): Promise<void> {
  const faults = validate(content.build);
  if (faults.length > 0) throw new StoreError('store.refused', 'The build file has faults.', faults);
  const database = await openDatabase(name);
  let there = false;
  try {
    await transact(database, [...FILES, PICTURES], (transaction) => {
      const count = transaction.objectStore('build').count(BUILD_KEY);
      count.onsuccess = () => {
        there = count.result > 0;
        if (there) return;
        carryOut(transaction, { file: 'build', text: content.build });
        for (const file of LINES) if (content[file] !== '') carryOut(transaction, { file, append: content[file] });
        for (const [hash, bytes] of content.pictures) transaction.objectStore(PICTURES).put(bytes, hash);
      };
    });
  } finally {
    database.close();
  }
  if (there) throw new StoreError('store.not-empty', `This browser has a build named "${name}" already.`);
}

/** Whether this browser keeps builds for this page. Some do not for a page from the disk, or in a private window. */
export async function browserKeeps(): Promise<boolean> {
  // Without a list of its databases, a build in the browser could not be found again.
  if (typeof indexedDB?.databases !== 'function' || typeof BroadcastChannel !== 'function') return false;
  const name = 'oddwheel';
  try {
    await indexedDB.databases();
    await new Promise<void>((resolve, reject) => {
      const request = indexedDB.open(name, 1);
      request.onsuccess = () => {
        request.result.close();
        resolve();
      };
      request.onerror = () => reject(request.error);
    });
    indexedDB.deleteDatabase(name);
    return true;
  } catch {
    return false;
  }
}

/** Names of the builds that this browser keeps, each with the text of its build.json; in the order of the names. */
export async function browserBuilds(): Promise<readonly { readonly name: string; readonly text: string }[]> {
  const names = (await indexedDB.databases()).flatMap(({ name }) =>
    name?.startsWith(PREFIX) ? [name.slice(PREFIX.length)] : [],
  );
  const builds: { readonly name: string; readonly text: string }[] = [];
  for (const name of names.sort()) {
    const database = await openDatabase(name);
    let text: string | undefined;
    try {
      await settled(database.transaction(FILES, 'readonly'), (transaction) => {
        readAll(transaction, (stored) => {
          text = stored?.build;
        });
      });
    } finally {
      database.close();
    }
    // An attempt to open a build that is not there leaves an empty database.
    if (text !== undefined) builds.push({ name, text });
  }
  return builds;
}

/** Deletes a build from this browser, for good. Pages that have it open lose it. */
export function deleteBrowserBuild(name: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.deleteDatabase(PREFIX + name);
    request.onsuccess = () => resolve();
    request.onerror = () => reject(request.error);
  });
}

function browserMedium(database: IDBDatabase, name: string): Medium {
  const channel = new BroadcastChannel(PREFIX + name);
  return {
    async load() {
      let stored: Stored | undefined;
      await settled(database.transaction(FILES, 'readonly'), (transaction) => {
        readAll(transaction, (all) => {
          stored = all;
        });
      });
      if (!stored) throw noBuild(name);
      return stored;
    },
    async change<T>(step: (stored: Stored) => Step<T>): Promise<Changed<T>> {
      let changed: Changed<T> | undefined;
      // IndexedDB ends a transaction that waits for anything else; hence steps are not asynchronous.
      await transact(database, FILES, (transaction) => {
        readAll(transaction, (before) => {
          if (!before) throw noBuild(name);
          const { writes, result } = step(before);
          for (const write of writes) carryOut(transaction, write);
          changed = { before, writes, result };
        });
      });
      if (!changed) throw noBuild(name);
      if (changed.writes.some(({ file }) => file !== 'history')) channel.postMessage('changed');
      return changed;
    },
    putPicture: (hash, bytes) =>
      transact(database, [PICTURES], (transaction) => transaction.objectStore(PICTURES).put(bytes, hash)),
    async getPicture(hash) {
      let bytes: Uint8Array | undefined;
      await settled(database.transaction([PICTURES], 'readonly'), (transaction) => {
        const request: IDBRequest<Uint8Array | undefined> = transaction.objectStore(PICTURES).get(hash);
        request.onsuccess = () => {
          bytes = request.result;
        };
      });
      return bytes;
    },
    async pictures() {
      let names: readonly string[] = [];
      await settled(database.transaction([PICTURES], 'readonly'), (transaction) => {
        const request = transaction.objectStore(PICTURES).getAllKeys();
        request.onsuccess = () => {
          names = request.result.map(String);
        };
      });
      return names;
    },
    watch(changed) {
      channel.addEventListener('message', changed);
      return () => channel.removeEventListener('message', changed);
    },
    async close() {
      channel.close();
      database.close();
    },
  };
}

function carryOut(transaction: IDBTransaction, write: Write): void {
  if (write.file === 'build') transaction.objectStore('build').put(write.text, BUILD_KEY);
  else transaction.objectStore(write.file).add(write.append);
}

function readAll(transaction: IDBTransaction, done: (stored: Stored | undefined) => void): void {
  const build: IDBRequest<string | undefined> = transaction.objectStore('build').get(BUILD_KEY);
  const history: IDBRequest<string[]> = transaction.objectStore('history').getAll();
  const log: IDBRequest<string[]> = transaction.objectStore('log').getAll();
  const runOut: IDBRequest<string[]> = transaction.objectStore('runOut').getAll();
  // Requests of one transaction are answered in the order they were made.
  runOut.onsuccess = () => {
    if (build.result === undefined) done(undefined);
    else {
      const [h, l, r] = [history, log, runOut].map(({ result }) => result.join('')) as [string, string, string];
      done({ build: build.result, history: h, log: l, runOut: r });
    }
  };
}

function transact(
  database: IDBDatabase,
  stores: readonly string[],
  work: (transaction: IDBTransaction) => void,
): Promise<void> {
  return settled(database.transaction(stores, 'readwrite', { durability: 'strict' }), work);
}

/** Resolves when the transaction is on the disk. What `work` or its callbacks throw takes the whole transaction back. */
function settled(transaction: IDBTransaction, work: (transaction: IDBTransaction) => void): Promise<void> {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new Error('The browser gave the transaction up.'));
    work(transaction);
  });
}

function noBuild(name: string): StoreError {
  return new StoreError('store.no-build', `This browser has no build named "${name}".`);
}
