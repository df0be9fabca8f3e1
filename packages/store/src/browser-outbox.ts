/** What a page keeps of its own in the browser until somebody else has it: entries on their way, and notes under a name. */
import { isJsonObject, type Json } from '@oddwheel/build/document/json';

/** An entry that waits to be sent, and the build it was made for. */
export interface Waiting {
  readonly id: string;
  /** Name of the build that it belongs to. */
  readonly build: string;
  readonly entry: { readonly [key: string]: Json };
}

export interface Outbox {
  /** False where the browser keeps nothing: then all lasts as long as the page. */
  readonly lasting: boolean;
  /** Keeps entries; returns when they would survive a flat battery. One with the id of another takes its place. */
  readonly put: (waiting: readonly Waiting[]) => Promise<void>;
  /** In the order in which they were put. */
  readonly all: () => Promise<readonly Waiting[]>;
  readonly remove: (ids: readonly string[]) => Promise<void>;
  /** A number that was never given before, and is not below `least`; also when other tabs ask at the same time. */
  readonly nextNumber: (least: number) => Promise<number>;
  /** Keeps a value under a name, in the place of the one before. */
  readonly note: (name: string, value: Json) => Promise<void>;
  readonly noted: (name: string) => Promise<Json | undefined>;
}

/** Its name does not begin as the names of builds do. */
const DATABASE = 'oddwheel-outbox';
const ENTRIES = 'entries';
const NOTES = 'notes';
const NUMBER = 'last number';

/** The outbox of this browser; in the page's memory where the browser keeps nothing. */
export async function openOutbox(): Promise<Outbox> {
  try {
    return outboxIn(await openDatabase());
  } catch {
    return heldOutbox();
  }
}

function openDatabase(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(DATABASE, 1);
    request.onupgradeneeded = () => {
      request.result.createObjectStore(ENTRIES, { autoIncrement: true }).createIndex('id', 'id', { unique: true });
      request.result.createObjectStore(NOTES);
    };
    request.onsuccess = () => {
      // Lets another tab delete the database or raise its version.
      request.result.onversionchange = () => request.result.close();
      resolve(request.result);
    };
    request.onerror = () => reject(request.error);
  });
}

function outboxIn(database: IDBDatabase): Outbox {
  const work = <T>(name: string, mode: IDBTransactionMode, ask: (store: IDBObjectStore) => IDBRequest<T> | undefined) =>
    new Promise<T | undefined>((resolve, reject) => {
      const transaction = database.transaction([name], mode, { durability: 'strict' });
      const request = ask(transaction.objectStore(name));
      transaction.oncomplete = () => resolve(request?.result);
      transaction.onabort = () => reject(transaction.error ?? new Error('The browser gave the transaction up.'));
    });
  /** Calls `found` with the key of an id, or undefined, within the transaction. */
  const keyOf = (store: IDBObjectStore, id: string, found: (key: IDBValidKey | undefined) => void): void => {
    const request = store.index('id').getKey(id);
    request.onsuccess = () => found(request.result);
  };
  return {
    lasting: true,
    put: async (waiting) => {
      await work(ENTRIES, 'readwrite', (store) => {
        for (const one of waiting) keyOf(store, one.id, (key) => store.put(one, key));
        return undefined;
      });
    },
    all: async () => ((await work<unknown[]>(ENTRIES, 'readonly', (store) => store.getAll())) ?? []).filter(isWaiting),
    remove: async (ids) => {
      await work(ENTRIES, 'readwrite', (store) => {
        for (const id of ids) keyOf(store, id, (key) => key !== undefined && store.delete(key));
        return undefined;
      });
    },
    nextNumber: async (least) => {
      let next = least;
      await work<unknown>(NOTES, 'readwrite', (store) => {
        const request: IDBRequest<unknown> = store.get(NUMBER);
        request.onsuccess = () => {
          next = Math.max(least, typeof request.result === 'number' ? request.result + 1 : 1);
          store.put(next, NUMBER);
        };
        return request;
      });
      return next;
    },
    note: async (name, value) => {
      await work(NOTES, 'readwrite', (store) => store.put(value, `note ${name}`));
    },
    noted: (name) => work<Json>(NOTES, 'readonly', (store) => store.get(`note ${name}`)),
  };
}

const isWaiting = (value: unknown): value is Waiting =>
  isJsonObject(value) &&
  typeof value.id === 'string' &&
  typeof value.build === 'string' &&
  value.entry !== undefined &&
  isJsonObject(value.entry);

function heldOutbox(): Outbox {
  const entries = new Map<string, Waiting>();
  const notes = new Map<string, Json>();
  let last = 0;
  return {
    lasting: false,
    put: async (waiting) => {
      for (const one of waiting) entries.set(one.id, one);
    },
    all: async () => [...entries.values()],
    remove: async (ids) => {
      for (const id of ids) entries.delete(id);
    },
    nextNumber: async (least) => {
      last = Math.max(least, last + 1);
      return last;
    },
    note: async (name, value) => void notes.set(name, value),
    noted: async (name) => notes.get(name),
  };
}
