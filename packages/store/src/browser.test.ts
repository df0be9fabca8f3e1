import 'fake-indexeddb/auto';
import { hashBytes } from '@oddwheel/build/document/hash';
import { describe, expect, it } from 'vitest';
import { BENCH_TEXT, benchOptions } from './bench-build.ts';
import { browserBuilds, browserKeeps, createBrowserBuild, deleteBrowserBuild, openBrowserStore } from './browser.ts';
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

describe('browser: several builds', () => {
  it('are kept where the browser has a database and lets the page use it', async () => {
    expect(await browserKeeps()).toBe(true);
    const { open } = indexedDB;
    indexedDB.open = () => {
      throw new DOMException('The operation is insecure.', 'SecurityError');
    };
    expect(await browserKeeps()).toBe(false);
    indexedDB.open = open;
  });

  const content = {
    build: BENCH_TEXT,
    history: '',
    log: '{"id": "cut',
    runOut: '{"id": "torn',
    pictures: new Map([[hashBytes(new Uint8Array([7])), new Uint8Array([7])]]),
  };

  it('are kept whole under names of their own, listed, and deleted', async () => {
    await createBrowserBuild('b-cart', content, benchOptions);
    await createBrowserBuild('a-cart', { ...content, log: '' }, benchOptions);
    const names = async () => (await browserBuilds()).map(({ name }) => name).filter((name) => name.endsWith('-cart'));
    expect(await names()).toEqual(['a-cart', 'b-cart']);
    const store = await openBrowserStore('b-cart', benchOptions);
    expect(await store.content()).toEqual(content);
    await store.close();
    await deleteBrowserBuild('b-cart');
    expect(await names()).toEqual(['a-cart']);
    await expect(openBrowserStore('b-cart', benchOptions)).rejects.toMatchObject({ code: 'store.no-build' });
    // The attempt left a database without a build, which is none.
    expect(await names()).toEqual(['a-cart']);
  });

  it('a name that is taken is refused, and what has it stays; so is a text with faults', async () => {
    await createBrowserBuild('taken', content, benchOptions);
    const again = createBrowserBuild('taken', { ...content, build: '{"format": 1, "path": {}}' }, benchOptions);
    await expect(again).rejects.toMatchObject({ code: 'store.not-empty' });
    const faulty = createBrowserBuild('faulty-too', { ...content, build: '{}' }, benchOptions);
    await expect(faulty).rejects.toMatchObject({ code: 'store.refused' });
    const store = await openBrowserStore('taken', benchOptions);
    expect((await store.read()).text).toBe(BENCH_TEXT);
    await store.close();
  });

  it('a page that has a build open does not keep another from deleting it, and then can no longer save', async () => {
    await createBrowserBuild('gone', content, benchOptions);
    const store = await openBrowserStore('gone', benchOptions);
    const { hash } = await store.read();
    await deleteBrowserBuild('gone');
    const patches = [{ op: 'set', at: '/notes/n', value: 1 }] as const;
    await expect(store.save({ base: hash, patches, name: 'Edit' })).rejects.toThrow();
    expect((await browserBuilds()).map(({ name }) => name)).not.toContain('gone');
    await store.close();
  });
});
