import 'fake-indexeddb/auto';
import { describe, expect, it } from 'vitest';
import { BENCH_TEXT, benchOptions } from './bench-build.ts';
import { openBrowserStore } from './browser.ts';
import { storeConformance } from './conformance.ts';
import type { Bench } from './conformance-bench.ts';

let count = 0;

/** What another tab with other code does: a transaction of its own, and word of it. */
async function tamper(name: string, work: (database: IDBDatabase) => IDBRequest): Promise<void> {
  const database = await new Promise<IDBDatabase>((resolve, reject) => {
    const request = indexedDB.open(`oddwheel/${name}`);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  await new Promise((resolve, reject) => {
    const request = work(database);
    request.onerror = () => reject(request.error);
    request.onsuccess = resolve;
  });
  database.close();
  const channel = new BroadcastChannel(`oddwheel/${name}`);
  channel.postMessage('changed');
  channel.close();
}

storeConformance('browser', async (): Promise<Bench> => {
  count += 1;
  const name = `bench-${count}`;
  const write = (database: IDBDatabase, store: string) => database.transaction([store], 'readwrite').objectStore(store);
  return {
    open: () => openBrowserStore(name, { ...benchOptions, initial: BENCH_TEXT }),
    replaceBuild: (text) => tamper(name, (database) => write(database, 'build').put(text, 'build.json')),
    appendRaw: (file, text) => tamper(name, (database) => write(database, file).add(text)),
    deleteHistory: () => tamper(name, (database) => write(database, 'history').clear()),
    dispose: async () => {
      indexedDB.deleteDatabase(`oddwheel/${name}`);
    },
  };
});

describe('browser: opening', () => {
  it('a build that is not there is an error that names it', async () => {
    await expect(openBrowserStore('nowhere', benchOptions)).rejects.toMatchObject({
      code: 'store.no-build',
      message: expect.stringContaining('"nowhere"'),
    });
  });

  it('a text to begin with must have no faults', async () => {
    const opening = openBrowserStore('faulty', { ...benchOptions, initial: '{"format": 4}' });
    await expect(opening).rejects.toMatchObject({
      code: 'store.refused',
      faults: [{ address: '/format' }, { address: '/path' }],
    });
  });

  it('a text to begin with does not replace a build that is there', async () => {
    const first = await openBrowserStore('kept', { ...benchOptions, initial: BENCH_TEXT });
    await first.close();
    const other = await openBrowserStore('kept', { ...benchOptions, initial: '{"format": 1, "path": {}}' });
    expect((await other.read()).text).toBe(BENCH_TEXT);
    await other.close();
  });

  it('a step that fails takes its whole transaction back', async () => {
    const name = 'failing';
    let clock = () => benchOptions.now();
    const store = await openBrowserStore(name, { ...benchOptions, now: () => clock(), initial: BENCH_TEXT });
    const { hash } = await store.read();
    clock = () => {
      throw new Error('no clock');
    };
    const patches = [{ op: 'set', at: '/notes/n', value: 1 }] as const;
    await expect(store.save({ base: hash, patches, name: 'Edit' })).rejects.toThrow();
    clock = () => benchOptions.now();
    expect((await store.read()).text).toBe(BENCH_TEXT);
    expect(await store.save({ base: hash, patches, name: 'Edit' })).toMatchObject({ ok: true });
    await store.close();
  });
});
