/** What every build store must do, as a suite to run against one. All builds and readings here are invented. */
import { hashBytes, hashText } from '@oddwheel/build/document/hash';
import { FOREIGN_NAME } from '@oddwheel/build/document/history';
import type { Json } from '@oddwheel/build/document/json';
import type { Patch } from '@oddwheel/build/document/patch';
import { afterEach, describe, expect, it } from 'vitest';
import { BENCH_TEXT, benchOptions, reading } from './bench-build.ts';
import type { BuildStore, OutsideChange, SaveResult } from './store.ts';

/** One build, and the ways to it. */
export interface Bench {
  /** Opens a store on the build; several may be open at once. */
  open(): Promise<BuildStore>;
  /** What another program does: it replaces build.json with this text. */
  replaceBuild(text: string): Promise<void>;
  /** What a cut-off write leaves behind: this text at the end of a file. */
  appendRaw(file: 'history' | 'log', text: string): Promise<void>;
  /** The history file is deleted. */
  deleteHistory(): Promise<void>;
  dispose(): Promise<void>;
}

const set = (at: string, value: Json): Patch => ({ op: 'set', at, value });
const TEETH = '/path/chain-1/teeth';

function saved(result: SaveResult): Extract<SaveResult, { ok: true }> {
  if (!result.ok) throw new Error(`not saved: ${JSON.stringify(result)}`);
  return result;
}

/** Runs the suite. `make` makes a bench with one build that holds `BENCH_TEXT`. */
export function storeConformance(name: string, make: () => Promise<Bench>): void {
  const open: Bench[] = [];
  const stores: BuildStore[] = [];

  async function bench(): Promise<Bench> {
    const made = await make();
    open.push(made);
    return {
      ...made,
      async open() {
        const store = await made.open();
        stores.push(store);
        return store;
      },
    };
  }

  /** Saves one patch on what the store reads now. */
  async function save(store: BuildStore, patch: Patch, name = 'Edit') {
    return saved(await store.save({ base: (await store.read()).hash, patches: [patch], name }));
  }

  afterEach(async () => {
    for (const store of stores.splice(0)) await store.close();
    for (const made of open.splice(0)) await made.dispose();
  });

  describe(`${name}: saving`, () => {
    it('changes what the patches say and nothing else, and says what it holds then', async () => {
      const { open } = await bench();
      const store = await open();
      const before = await store.read();
      expect(before).toMatchObject({ text: BENCH_TEXT, hash: hashText(BENCH_TEXT), log: [], setAside: [] });
      const result = await store.save({ base: before.hash, patches: [set(TEETH, 19)], name: 'More teeth', who: 'Ada' });
      const text = BENCH_TEXT.replace('17', '19');
      expect(result).toMatchObject({ ok: true, text, hash: hashText(text), merged: [] });
      const after = await store.read();
      expect(after.text).toBe(text);
      expect(after.history.undo).toEqual([{ id: saved(result).entryId, name: 'More teeth', at: benchOptions.now() }]);
      expect((await (await open()).read()).text).toBe(text);
    });

    it('nothing to change makes no step', async () => {
      const store = await (await bench()).open();
      expect(await save(store, set(TEETH, 17))).toMatchObject({ entryId: null, text: BENCH_TEXT });
      expect((await store.read()).history.undo).toEqual([]);
    });

    it('a result with faults is refused, and so are patches that lead nowhere', async () => {
      const store = await (await bench()).open();
      const base = (await store.read()).hash;
      for (const [patch, address] of [
        [set('/format', 2), '/format'],
        [set('/none/x', 1), '/none/x'],
        [set('/path/x', Number.NaN), '/path/x'],
      ] as const) {
        const result = await store.save({ base, patches: [set(TEETH, 99), patch], name: 'Wrong' });
        expect(result).toMatchObject({ ok: false, reason: 'refused', faults: [{ address }] });
      }
      expect((await store.read()).text).toBe(BENCH_TEXT);
      expect((await store.read()).history.undo).toEqual([]);
    });

    it('saves asked for at the same time are all done, each on top of the one before', async () => {
      const store = await (await bench()).open();
      const base = (await store.read()).hash;
      const saves = ['a', 'b', 'c'].map((key) => store.save({ base, patches: [set(`/notes/${key}`, key)], name: key }));
      for (const result of await Promise.all(saves)) expect(result.ok).toBe(true);
      const { text, history } = await store.read();
      expect(JSON.parse(text).notes).toEqual({ a: 'a', b: 'b', c: 'c' });
      expect(history.undo.map((step) => step.name)).toEqual(['a', 'b', 'c']);
    });

    it('a closed store does nothing more', async () => {
      const store = await (await bench()).open();
      await store.close();
      await expect(store.read()).rejects.toMatchObject({ code: 'store.closed' });
    });
  });

  describe(`${name}: two stores on one build`, () => {
    it('edits of different addresses are merged, and the later one hears what the other did', async () => {
      const { open } = await bench();
      const [one, two] = [await open(), await open()];
      const base = (await one.read()).hash;
      await two.read();
      saved(await one.save({ base, patches: [set(TEETH, 19)], name: 'One' }));
      const result = saved(await two.save({ base, patches: [set('/path/chain-2/teeth', 42)], name: 'Two' }));
      expect(result.merged).toEqual([set(TEETH, 19)]);
      expect(JSON.parse(result.text).path).toEqual({
        'chain-1': { teeth: 19, pitch: '1/2 in' },
        'chain-2': { teeth: 42 },
      });
      expect((await one.read()).text).toBe(result.text);
    });

    it('edits of one address are a conflict: the first stays, both values are told', async () => {
      const { open } = await bench();
      const [one, two] = [await open(), await open()];
      const base = (await one.read()).hash;
      const first = saved(await one.save({ base, patches: [set(TEETH, 19)], name: 'One' }));
      expect(await two.save({ base, patches: [set(TEETH, 21), set('/notes/n', 1)], name: 'Two' })).toEqual({
        ok: false,
        reason: 'conflict',
        conflicts: [{ address: TEETH, mine: 21, theirs: 19, base: 17 }],
        hash: first.hash,
        text: first.text,
      });
      expect((await two.read()).text).toBe(first.text);
    });

    it('the same edit twice is no conflict', async () => {
      const { open } = await bench();
      const [one, two] = [await open(), await open()];
      const base = (await one.read()).hash;
      await one.save({ base, patches: [set(TEETH, 19)], name: 'One' });
      expect(await two.save({ base, patches: [set(TEETH, 19)], name: 'Two' })).toMatchObject({
        ok: true,
        entryId: null,
      });
    });

    it('a base that nobody knows any more is a conflict at every address', async () => {
      const { open } = await bench();
      const store = await open();
      const result = await store.save({ base: hashText('other'), patches: [set(TEETH, 19)], name: 'Lost' });
      expect(result).toMatchObject({
        ok: false,
        reason: 'conflict',
        conflicts: [{ address: TEETH, mine: 19, theirs: 17 }],
      });
    });

    it('an undo of what the builder does not see yet is not done', async () => {
      const { open } = await bench();
      const [one, two] = [await open(), await open()];
      const base = (await two.read()).hash;
      await save(one, set(TEETH, 19));
      expect(await two.undo({ base })).toMatchObject({
        ok: false,
        reason: 'conflict',
        conflicts: [{ address: TEETH, theirs: 19, base: 17 }],
      });
    });
  });

  describe(`${name}: history`, () => {
    it('undo and redo go through all steps, byte for byte, across a restart too', async () => {
      const { open } = await bench();
      let store = await open();
      const texts = [BENCH_TEXT];
      texts.push((await save(store, set(TEETH, 19), 'A')).text);
      texts.push((await save(store, { op: 'remove', at: '/path/chain-2' }, 'B')).text);
      texts.push((await save(store, set('/notes/n1', 'press fit'), 'C')).text);
      await store.close();
      store = await open();
      for (const text of texts.slice(0, -1).reverse()) {
        expect(saved(await store.undo({ base: (await store.read()).hash })).text).toBe(text);
      }
      const nothing = await store.undo({ base: (await store.read()).hash });
      expect(nothing).toMatchObject({ ok: false, reason: 'refused', faults: [{ code: 'history.nothing-to-undo' }] });
      expect((await store.read()).history.redo.map((step) => step.name)).toEqual(['C', 'B', 'A']);
      await store.close();
      store = await open();
      for (const text of texts.slice(1)) {
        expect(saved(await store.redo({ base: (await store.read()).hash })).text).toBe(text);
      }
      expect(await store.redo({ base: (await store.read()).hash })).toMatchObject({ ok: false, reason: 'refused' });
    });

    it('a new edit clears the redo list', async () => {
      const store = await (await bench()).open();
      await save(store, set(TEETH, 19), 'A');
      await store.undo({ base: (await store.read()).hash });
      await save(store, set(TEETH, 21), 'B');
      const { history } = await store.read();
      expect(history.undo.map((step) => step.name)).toEqual(['B']);
      expect(history.redo).toEqual([]);
    });

    it('deleting the history loses undo and nothing else', async () => {
      const { open, deleteHistory } = await bench();
      const first = await open();
      const { text } = await save(first, set(TEETH, 19));
      await first.close();
      await deleteHistory();
      const store = await open();
      expect(await store.read()).toMatchObject({ text, history: { undo: [], redo: [] } });
      await save(store, set(TEETH, 21));
      expect(saved(await store.undo({ base: (await store.read()).hash })).text).toBe(text);
    });

    it('a history line that was cut off is set aside', async () => {
      const { open, appendRaw } = await bench();
      const store = await open();
      await save(store, set(TEETH, 19));
      await appendRaw('history', '{"v":1,"id":"half');
      expect((await store.read()).setAside).toMatchObject([{ file: 'history', text: '{"v":1,"id":"half' }]);
      await save(store, set(TEETH, 21));
      expect((await store.read()).history.undo).toHaveLength(2);
    });
  });

  describe(`${name}: edits of another program`, () => {
    it('appear, are merged with a save from before, and can be undone', async () => {
      const { open, replaceBuild } = await bench();
      const store = await open();
      const base = (await store.read()).hash;
      const theirs = BENCH_TEXT.replace('"teeth": 40', '"teeth": 42');
      await replaceBuild(theirs);
      const result = saved(await store.save({ base, patches: [set(TEETH, 19)], name: 'Mine' }));
      expect(result.text).toBe(theirs.replace('17', '19'));
      expect(result.merged).toEqual([set('/path/chain-2/teeth', 42)]);
      expect((await store.read()).history.undo.map((step) => step.name)).toEqual([FOREIGN_NAME, 'Mine']);
      await store.undo({ base: result.hash });
      const back = saved(await store.undo({ base: hashText(theirs) }));
      expect(back.text).toBe(BENCH_TEXT);
    });

    it('made while no store was open appear too', async () => {
      const { open, replaceBuild } = await bench();
      const first = await open();
      const { text } = await save(first, set(TEETH, 19));
      await first.close();
      await replaceBuild(text.replace('"teeth": 40', '"teeth": 42'));
      const store = await open();
      const snapshot = await store.read();
      expect(snapshot.history.undo.map((step) => step.name)).toEqual(['Edit', FOREIGN_NAME]);
      expect(saved(await store.undo({ base: snapshot.hash })).text).toBe(text);
    });

    it('of the same address are a conflict', async () => {
      const { open, replaceBuild } = await bench();
      const store = await open();
      const base = (await store.read()).hash;
      await replaceBuild(BENCH_TEXT.replace('17', '18'));
      const result = await store.save({ base, patches: [set(TEETH, 19)], name: 'Mine' });
      expect(result).toMatchObject({ conflicts: [{ address: TEETH, mine: 19, theirs: 18, base: 17 }] });
    });

    it.each([
      ['a slip of the pen', BENCH_TEXT.replace('"notes": {}', '"notes": {')],
      ['a newer format', BENCH_TEXT.replace('"format": 1', '"format": 2')],
    ])('%s: the file is shown as it is and not rewritten, until it is put right', async (_name, faulty) => {
      const { open, replaceBuild } = await bench();
      const store = await open();
      const { hash } = await save(store, set(TEETH, 19));
      await replaceBuild(faulty);
      expect((await store.read()).text).toBe(faulty);
      const [faults] = [benchOptions.validate(faulty)];
      expect(faults.length).toBeGreaterThan(0);
      for (const base of [hash, hashText(faulty)]) {
        const refused = { ok: false, reason: 'refused', faults };
        expect(await store.save({ base, patches: [set(TEETH, 21)], name: 'Mine' })).toEqual(refused);
        expect(await store.undo({ base })).toEqual(refused);
        expect(await store.redo({ base })).toEqual(refused);
      }
      expect((await store.read()).text).toBe(faulty);
      await replaceBuild(BENCH_TEXT);
      const result = saved(await store.save({ base: hashText(BENCH_TEXT), patches: [set(TEETH, 21)], name: 'Mine' }));
      expect(result.text).toBe(BENCH_TEXT.replace('17', '21'));
    });
  });

  describe(`${name}: log`, () => {
    it('entries are acknowledged, and sending them again changes nothing', async () => {
      const { open } = await bench();
      const store = await open();
      const entries = [reading('phone-1.1'), reading('phone-1.2', { tir: '3 thou' }, 'phone-1.1')];
      for (let i = 0; i < 3; i += 1) {
        expect(await store.append(entries)).toEqual({ acknowledged: ['phone-1.1', 'phone-1.2'], refused: [] });
      }
      const later = { ...reading('phone-1.1'), logged: '2031-05-05T00:00:00Z' };
      expect((await store.append([later, reading('phone-1.3')])).acknowledged).toEqual(['phone-1.1', 'phone-1.3']);
      expect((await (await open()).read()).log).toEqual([...entries, reading('phone-1.3')]);
    });

    it('one id with two contents is kept twice', async () => {
      const store = await (await bench()).open();
      const clash = [reading('a.1', 1), reading('a.1', 2)];
      await store.append(clash);
      await store.append(clash);
      expect((await store.read()).log).toEqual(clash);
    });

    it('an entry that is none is refused by its place, and costs the others nothing', async () => {
      const store = await (await bench()).open();
      const result = await store.append([reading('a.1'), { id: 'a.2' }, reading('a.3')]);
      expect(result.acknowledged).toEqual(['a.1', 'a.3']);
      expect(result.refused.map(({ address }) => address)).toContain('/1/kind');
      expect((await store.read()).log.map(({ id }) => id)).toEqual(['a.1', 'a.3']);
    });

    it('a line that was cut off is set aside, reported, and stays', async () => {
      const { open, appendRaw } = await bench();
      const store = await open();
      await store.append([reading('a.1')]);
      const torn = JSON.stringify(reading('a.2')).slice(0, 30);
      await appendRaw('log', torn);
      expect(await store.read()).toMatchObject({
        log: [{ id: 'a.1' }],
        setAside: [{ file: 'log', line: 2, text: torn }],
      });
      await store.append([reading('a.2')]);
      const after = await store.read();
      expect(after.log.map(({ id }) => id)).toEqual(['a.1', 'a.2']);
      expect(after.setAside).toMatchObject([{ file: 'log', line: 2, text: torn }]);
    });

    it('is kept also while build.json has faults', async () => {
      const { open, replaceBuild } = await bench();
      const store = await open();
      await replaceBuild('{');
      expect((await store.append([reading('a.1')])).acknowledged).toEqual(['a.1']);
      expect((await store.read()).log).toHaveLength(1);
    });

    it('two stores append at the same time without losing a line', async () => {
      const { open } = await bench();
      const [one, two] = [await open(), await open()];
      const ids = (device: string) => [1, 2, 3, 4, 5].map((n) => `${device}.${n}`);
      await Promise.all([
        ...ids('a').map((id) => one.append([reading(id)])),
        ...ids('b').map((id) => two.append([reading(id)])),
      ]);
      const log = (await one.read()).log.map(({ id }) => id);
      expect([...log].sort()).toEqual([...ids('a'), ...ids('b')]);
    });
  });

  describe(`${name}: pictures`, () => {
    it('go by the hash of their bytes, once', async () => {
      const { open } = await bench();
      const store = await open();
      const bytes = new Uint8Array([0xff, 0xd8, 0x00, 0x80]);
      const hash = await store.putPicture(bytes);
      expect(hash).toBe(hashBytes(bytes));
      expect(await store.putPicture(bytes)).toBe(hash);
      expect(new Uint8Array((await (await open()).getPicture(hash)) ?? [])).toEqual(bytes);
    });

    it('a name that is no hash is no picture', async () => {
      const store = await (await bench()).open();
      expect(await store.getPicture(hashText('none'))).toBeUndefined();
      expect(await store.getPicture('../build.json')).toBeUndefined();
    });
  });

  describe(`${name}: watching`, () => {
    /** Changes heard so far, and a way to wait for the next. */
    function listen(store: BuildStore) {
      const heard: OutsideChange[] = [];
      let wake: () => void = () => undefined;
      const stop = store.watch((change) => {
        heard.push(change);
        wake();
      });
      const next = () =>
        heard.length > 0
          ? Promise.resolve()
          : new Promise<void>((resolve) => {
              wake = resolve;
            });
      return { heard, next, stop };
    }

    it('tells what others changed in the build and in the log', async () => {
      const { open, replaceBuild } = await bench();
      const [one, two] = [await open(), await open()];
      const ear = listen(one);
      await save(two, set(TEETH, 19));
      await ear.next();
      expect(ear.heard.splice(0)).toEqual([{ build: true, log: false }]);
      await two.append([reading('a.1')]);
      await ear.next();
      expect(ear.heard.splice(0)).toEqual([{ build: false, log: true }]);
      await replaceBuild(BENCH_TEXT);
      await ear.next();
      expect(ear.heard.splice(0)).toEqual([{ build: true, log: false }]);
      expect((await one.read()).history.undo).toHaveLength(2);
    });

    it('tells what another program changed just before an own save, and never the own save', async () => {
      const { open, replaceBuild } = await bench();
      const store = await open();
      const ear = listen(store);
      let base = (await store.read()).hash;
      for (const teeth of [18, 19, 20]) {
        base = saved(await store.save({ base, patches: [set(TEETH, teeth)], name: 'Own' })).hash;
      }
      await store.append([reading('a.1')]);
      expect(ear.heard).toEqual([]);
      await replaceBuild((await store.read()).text.replace('"teeth": 40', '"teeth": 42'));
      await ear.next();
      expect(ear.heard).toEqual([{ build: true, log: false }]);
      ear.stop();
    });
  });
}
