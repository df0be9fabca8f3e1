/** What every build store must do with the record: log, pictures, and word of what others changed. */
import { hashBytes, hashText } from '@oddwheel/build/document/hash';
import { describe, expect, it } from 'vitest';
import { BENCH_TEXT, reading } from './bench-build.ts';
import { type Bench, save, saved, set, TEETH } from './conformance-bench.ts';
import type { BuildStore, OutsideChange } from './store.ts';

/** Runs this part of the suite. */
export function recordConformance(name: string, bench: () => Promise<Bench>): void {
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

  describe(`${name}: everything at once`, () => {
    it('gives the three texts as they are stored, cut-off lines and all, and the pictures', async () => {
      const { open, appendRaw } = await bench();
      const store = await open();
      await save(store, set(TEETH, 19));
      await store.append([reading('a.1')]);
      await appendRaw('log', '{"id": "a.');
      const one = await store.putPicture(new Uint8Array([1, 2, 3]));
      const two = await store.putPicture(new Uint8Array([4]));
      const { build, history, log, pictures } = await (await open()).content();
      expect(build).toBe(BENCH_TEXT.replace('17', '19'));
      expect(history).toMatch(/"Edit".*\n$/);
      expect(log).toMatch(/"a\.1".*\n\{"id": "a\.$/);
      expect([...pictures.keys()]).toEqual([one, two].sort());
      expect([...(pictures.get(one) ?? [])]).toEqual([1, 2, 3]);
    });

    it('of a build with nothing but its file is that file', async () => {
      const store = await (await bench()).open();
      expect(await store.content()).toEqual({
        build: BENCH_TEXT,
        history: '',
        log: '',
        runOut: '',
        pictures: new Map(),
      });
    });
  });

  describe(`${name}: record of run-out`, () => {
    const part = (id: string, name: string) => ({
      ...reading(id, {
        part: 'shaft',
        name,
        seats: { a: '0 mm', b: '200 mm' },
        goal: { station: '9 in', tir: '3 thou' },
      }),
      kind: 'true-part',
    });

    it('takes each entry once, whoever sends it again and in whatever order, and stays beside the log', async () => {
      const { open } = await bench();
      const [one, two] = [await open(), await open()];
      await one.append([reading('a.1')]);
      expect((await two.appendRunOut([part('b.2', 'B'), part('a.1', 'A')])).acknowledged).toEqual(['b.2', 'a.1']);
      const again = [part('a.1', 'A'), part('b.2', 'B'), part('b.3', 'C')];
      expect(await one.appendRunOut(again)).toEqual({ acknowledged: ['a.1', 'b.2', 'b.3'], refused: [] });
      const { runOut, log } = await (await open()).read();
      expect(
        runOut
          .trimEnd()
          .split('\n')
          .map((line) => JSON.parse(line).id),
      ).toEqual(['b.2', 'a.1', 'b.3']);
      expect(log).toEqual([reading('a.1')]);
      expect((await one.content()).runOut).toBe(runOut);
    });

    it('refuses what is wrong or has the id of another entry, and that alone', async () => {
      const store = await (await bench()).open();
      await store.appendRunOut([part('a.1', 'A')]);
      const wrong = { ...part('a.3', 'C'), body: { part: 'shaft' } };
      const result = await store.appendRunOut([part('a.1', 'another'), wrong, part('a.4', 'D')]);
      expect(result.acknowledged).toEqual(['a.4']);
      expect(result.refused.map(({ address }) => address)).toEqual(expect.arrayContaining(['/0/id', '/1/body/seats']));
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
      expect(ear.heard.splice(0)).toEqual([{ build: true, log: false, runOut: false }]);
      await two.append([reading('a.1')]);
      await ear.next();
      expect(ear.heard.splice(0)).toEqual([{ build: false, log: true, runOut: false }]);
      await two.appendRunOut([{ ...reading('a.2', { of: 'a.1' }), kind: 'strike' }]);
      await ear.next();
      expect(ear.heard.splice(0)).toEqual([{ build: false, log: false, runOut: true }]);
      await replaceBuild(BENCH_TEXT);
      await ear.next();
      expect(ear.heard.splice(0)).toEqual([{ build: true, log: false, runOut: false }]);
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
      expect(ear.heard).toEqual([{ build: true, log: false, runOut: false }]);
      ear.stop();
    });
  });
}
