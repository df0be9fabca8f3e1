/** What every build store must do, as a suite to run against one. All builds and readings here are invented. */
import { hashText } from '@oddwheel/build/document/hash';
import { FOREIGN_NAME } from '@oddwheel/build/document/history';
import { describe, expect, it } from 'vitest';
import { BENCH_TEXT, benchOptions } from './bench-build.ts';
import { type Bench, cleanBenches, save, saved, set, TEETH } from './conformance-bench.ts';
import { recordConformance } from './conformance-record.ts';

/** Runs the suite. `make` makes a bench with one build that holds `BENCH_TEXT`. */
export function storeConformance(name: string, make: () => Promise<Bench>): void {
  const bench = cleanBenches(make);
  recordConformance(name, bench);

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
}
