/**
 * A fault at every writing step of every operation, on a file system that knows what a power cut would leave: afterwards the
 * operation is wholly there or wholly absent, and the build is valid.
 */
import { hashBytes, hashText } from '@oddwheel/build/document/hash';
import { describe, expect, it } from 'vitest';
import { BENCH_TEXT, benchOptions, reading } from './bench-build.ts';
import { MEMORY_FOLDER, memoryBuild, openMemoryStore } from './memory.ts';
import type { MemoryFileSystem, Mishap, Survival } from './memory-file-system.ts';
import { createBuildFolder } from './new-build.ts';
import type { BuildStore, Snapshot } from './store.ts';

const WAYS: { mishap: Mishap; survival: Survival }[] = [
  { mishap: 'error', survival: 'all' },
  { mishap: 'power', survival: 'synced' },
  { mishap: 'power', survival: 'half' },
  { mishap: 'power', survival: 'all' },
];

const save = async (store: BuildStore, at: string, value: number) =>
  store.save({ base: (await store.read()).hash, patches: [{ op: 'set', at, value }], name: `${at} ${value}` });

/** What of a snapshot tells before from after. */
const essence = ({ text, history, log }: Snapshot) => ({
  text,
  undo: history.undo.map(({ name }) => name),
  redo: history.redo.map(({ name }) => name),
  log: log.map(({ id }) => id),
});

interface Operation {
  readonly name: string;
  readonly before: (store: BuildStore) => Promise<unknown>;
  readonly run: (store: BuildStore) => Promise<unknown>;
}

const TEETH = '/path/chain-1/teeth';
const twoSaves = async (store: BuildStore) => {
  await save(store, TEETH, 18);
  await save(store, TEETH, 19);
};

const OPERATIONS: Operation[] = [
  {
    name: 'the first save',
    before: async () => undefined,
    run: (store) =>
      store.save({ base: hashText(BENCH_TEXT), patches: [{ op: 'set', at: TEETH, value: 18 }], name: 'First' }),
  },
  { name: 'a later save', before: twoSaves, run: (store) => save(store, TEETH, 20) },
  { name: 'an undo', before: twoSaves, run: async (store) => store.undo({ base: (await store.read()).hash }) },
  {
    name: 'a redo',
    before: async (store) => {
      await twoSaves(store);
      await store.undo({ base: (await store.read()).hash });
    },
    run: async (store) => store.redo({ base: (await store.read()).hash }),
  },
  { name: 'the first append', before: async () => undefined, run: (store) => store.append([reading('a.1')]) },
  {
    name: 'a later append',
    before: (store) => store.append([reading('a.1')]),
    run: (store) => store.append([reading('a.2')]),
  },
];

/** A build on which `before` was done, and the number of writing steps so far. */
async function prepared({ before }: Operation): Promise<{ files: MemoryFileSystem; store: BuildStore }> {
  const files = memoryBuild(BENCH_TEXT);
  const store = await openMemoryStore(files, benchOptions);
  await before(store);
  return { files, store };
}

describe.each(OPERATIONS)('$name', (operation) => {
  it.each(WAYS)('with $mishap, when of unsynced writes $survival survives', async ({ mishap, survival }) => {
    const clean = await prepared(operation);
    const start = clean.files.steps();
    const old = essence(await (await prepared(operation)).store.read());
    await operation.run(clean.store);
    const steps = clean.files.steps() - start;
    const fresh = essence(await clean.store.read());
    expect(steps).toBeGreaterThan(1);
    expect(fresh).not.toEqual(old);
    const outcomes = new Set<string>();
    for (let step = 1; step <= steps; step += 1) {
      const { files, store } = await prepared(operation);
      files.failAt(start + step, mishap);
      await expect(operation.run(store)).rejects.toThrow(`Step ${start + step}`);
      const left = files.restart(survival);
      const reopened = await openMemoryStore(left, benchOptions);
      const found = await reopened.read();
      expect(benchOptions.validate(found.text)).toEqual([]);
      const isNew = JSON.stringify(essence(found)) === JSON.stringify(fresh);
      expect(essence(found)).toEqual(isNew ? fresh : old);
      outcomes.add(isNew ? 'there' : 'absent');
      // The store that met the error goes on as well as a new one.
      if (mishap === 'error') expect(essence(await store.read())).toEqual(essence(found));
      // And the work goes on: the same again leads to the same result, and can be taken back.
      const again = mishap === 'error' ? store : reopened;
      if (!isNew) await operation.run(again);
      expect(essence(await again.read())).toEqual(fresh);
      await save(again, '/notes/n', 1);
      expect((await again.undo({ base: (await again.read()).hash })).ok).toBe(true);
      expect((await again.read()).text).toBe(fresh.text);
    }
    expect(outcomes).toContain('absent');
  });

  it('once acknowledged survives any power cut', async () => {
    for (const survival of ['synced', 'half', 'all'] as const) {
      const { files, store } = await prepared(operation);
      await operation.run(store);
      const done = essence(await store.read());
      const reopened = await openMemoryStore(files.restart(survival), benchOptions);
      expect(essence(await reopened.read())).toEqual(done);
    }
  });
});

describe('a foreign edit', () => {
  it.each(WAYS)(
    'is never lost: $mishap at any step of a save over it, $survival survives',
    async ({ mishap, survival }) => {
      const theirs = BENCH_TEXT.replace('"teeth": 40', '"teeth": 42');
      const both = theirs.replace('17', '18');
      const arrange = async () => {
        const files = memoryBuild(BENCH_TEXT);
        const store = await openMemoryStore(files, benchOptions);
        const { hash } = await store.read();
        await files.write(`${MEMORY_FOLDER}/build.json`, new TextEncoder().encode(theirs));
        await files.sync(`${MEMORY_FOLDER}/build.json`);
        const run = () => store.save({ base: hash, patches: [{ op: 'set', at: TEETH, value: 18 }], name: 'Mine' });
        return { files, run };
      };
      const clean = await arrange();
      const start = clean.files.steps();
      await clean.run();
      for (let step = start + 1; step <= clean.files.steps(); step += 1) {
        const { files, run } = await arrange();
        files.failAt(step, mishap);
        await expect(run()).rejects.toThrow();
        const store = await openMemoryStore(files.restart(survival), benchOptions);
        const { text, history } = await store.read();
        expect([theirs, both]).toContain(text);
        expect(history.undo).toHaveLength(text === both ? 2 : 1);
        let { hash } = await store.read();
        for (const _ of history.undo) {
          const undone = await store.undo({ base: hash });
          hash = undone.ok ? undone.hash : '';
        }
        expect(hash).toBe(hashText(BENCH_TEXT));
      }
    },
  );

  it('that arrives in the middle of a save is merged, not written over', async () => {
    const files = memoryBuild(BENCH_TEXT);
    const theirs = BENCH_TEXT.replace('"teeth": 40', '"teeth": 42');
    let meddle = true;
    const store = await openMemoryStore(
      {
        ...files,
        async sync(path) {
          await files.sync(path);
          if (!meddle || !path.endsWith('.next')) return;
          meddle = false;
          await files.write(`${MEMORY_FOLDER}/build.json`, new TextEncoder().encode(theirs));
        },
      },
      benchOptions,
    );
    const { hash } = await store.read();
    const result = await store.save({ base: hash, patches: [{ op: 'set', at: TEETH, value: 18 }], name: 'Mine' });
    expect(result).toMatchObject({ ok: true, text: theirs.replace('17', '18') });
    expect((await store.read()).history.undo.map(({ name }) => name)).toEqual(['Edited in another program', 'Mine']);
  });

  it('that never ends is an error after some attempts, and nothing is lost', async () => {
    const files = memoryBuild(BENCH_TEXT);
    let teeth = 40;
    const store = await openMemoryStore(
      {
        ...files,
        async sync(path) {
          await files.sync(path);
          if (!path.endsWith('.next')) return;
          teeth += 1;
          const text = BENCH_TEXT.replace('"teeth": 40', `"teeth": ${teeth}`);
          await files.write(`${MEMORY_FOLDER}/build.json`, new TextEncoder().encode(text));
        },
      },
      benchOptions,
    );
    const { hash } = await store.read();
    const saving = store.save({ base: hash, patches: [{ op: 'set', at: TEETH, value: 18 }], name: 'Mine' });
    await expect(saving).rejects.toMatchObject({ code: 'store.busy' });
    expect(JSON.parse((await store.read()).text).path['chain-2'].teeth).toBe(teeth);
  });
});

describe('a lock that was taken over', () => {
  it('stops a save before anything is replaced', async () => {
    const files = memoryBuild(BENCH_TEXT);
    const store = await openMemoryStore(
      {
        ...files,
        async lock(folder) {
          const lock = await files.lock(folder);
          let looks = 0;
          return { ...lock, held: async () => ++looks < 2 };
        },
      },
      benchOptions,
    );
    const { hash } = await store.read();
    const saving = store.save({ base: hash, patches: [{ op: 'set', at: TEETH, value: 18 }], name: 'Mine' });
    await expect(saving).rejects.toMatchObject({ code: 'store.busy' });
    expect(await store.read()).toMatchObject({ text: BENCH_TEXT, history: { undo: [] } });
  });
});

describe('a picture', () => {
  it.each(WAYS)('is there whole or not at all: $mishap, $survival survives', async ({ mishap, survival }) => {
    const bytes = new Uint8Array(100).map((_, i) => i);
    const hash = hashBytes(bytes);
    const clean = memoryBuild(BENCH_TEXT);
    await (await openMemoryStore(clean, benchOptions)).putPicture(bytes);
    expect(clean.steps()).toBeGreaterThan(3);
    for (let step = 1; step <= clean.steps(); step += 1) {
      const files = memoryBuild(BENCH_TEXT);
      files.failAt(step, mishap);
      const store = await openMemoryStore(files, benchOptions);
      await expect(store.putPicture(bytes)).rejects.toThrow();
      const reopened = await openMemoryStore(files.restart(survival), benchOptions);
      expect([undefined, bytes]).toContainEqual(await reopened.getPicture(hash));
      expect(await reopened.putPicture(bytes)).toBe(hash);
      expect(await reopened.getPicture(hash)).toEqual(bytes);
    }
    const kept = await openMemoryStore(clean.restart('synced'), benchOptions);
    expect(await kept.getPicture(hash)).toEqual(bytes);
  });
});

describe('a new build folder', () => {
  const content = {
    validate: benchOptions.validate,
    log: `${JSON.stringify(reading('a.1'))}\n`,
    pictures: [new Uint8Array([1, 2])],
  };

  it.each(WAYS)('is there whole or not at all: $mishap, $survival survives', async ({ mishap, survival }) => {
    const clean = memoryBuild('');
    await createBuildFolder('/builds/cart', BENCH_TEXT, { ...content, fs: clean });
    expect(await clean.restart('synced').list('/builds/cart')).toEqual(await clean.list('/builds/cart'));
    for (let step = 1; step <= clean.steps(); step += 1) {
      const files = memoryBuild('');
      files.failAt(step, mishap);
      await expect(createBuildFolder('/builds/cart', BENCH_TEXT, { ...content, fs: files })).rejects.toThrow();
      const left = files.restart(survival);
      if ((await left.list('/builds/cart')) === undefined) {
        await createBuildFolder('/builds/cart', BENCH_TEXT, { ...content, fs: left });
      }
      const read = async (name: string) => new TextDecoder().decode(await left.read(`/builds/cart/${name}`));
      expect(await read('build.json')).toBe(BENCH_TEXT);
      expect(await read('log.ndjson')).toBe(content.log);
      expect(await left.read(`/builds/cart/pictures/${hashBytes(new Uint8Array([1, 2]))}`)).toEqual(
        new Uint8Array([1, 2]),
      );
    }
  });
});
