import 'fake-indexeddb/auto';
import { hashBytes } from '@oddwheel/build/document/hash';
import { packArchive } from '@oddwheel/store/archive';
import { deleteBrowserBuild } from '@oddwheel/store/browser';
import { beforeEach, describe, expect, it } from 'vitest';
import demo from '../../../../examples/marsh-hauler/build.json?raw';
import { createKeeper } from './keeper.ts';
import type { KeeperApi, Kept, Shelf } from './keeper-api.ts';

const TEETH = '/path/stages/chain-1/teeth/driver';
const set = (at: string, value: string | number) =>
  ({ name: `${at} → ${value}`, patches: [{ op: 'set', at, value }] }) as const;

const kept = (result: Kept): Shelf => {
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.shelf;
};
const read = async (keeper: KeeperApi) => {
  const saved = await keeper.read();
  if (!saved) throw new Error('nothing to read');
  return saved;
};

beforeEach(async () => {
  for (const { name = '' } of await indexedDB.databases()) await deleteBrowserBuild(name.replace('oddwheel/', ''));
});

describe.each([
  ['in the browser', () => createKeeper()],
  [
    'in the page, where the browser keeps nothing',
    () => {
      // As some browsers do for a page from the disk.
      const { open } = indexedDB;
      indexedDB.open = () => {
        throw new DOMException('The operation is insecure.', 'SecurityError');
      };
      const keeper = createKeeper();
      return {
        ...keeper,
        start: (id: string | null) =>
          keeper.start(id).finally(() => {
            indexedDB.open = open;
          }),
      };
    },
  ],
])('builds kept %s', (where, make) => {
  it('begin with none, and each new one is opened, changed and taken back', async () => {
    const keeper = make();
    expect(await keeper.start(null)).toEqual({
      place: where === 'in the browser' ? 'browser' : 'page',
      ...{ builds: [], open: null, deleted: [] },
    });
    expect(await keeper.read()).toBeNull();
    const shelf = kept(await keeper.create(demo));
    expect(shelf.builds).toHaveLength(1);
    expect(shelf.open).toBe(shelf.builds[0]?.id);
    const { hash, text, undo } = await read(keeper);
    expect({ text, undo }).toEqual({ text: demo, undo: null });
    const edited = await keeper.edit(hash, set(TEETH, 16), 'bench-1');
    expect(edited).toMatchObject({ kind: 'saved', saved: { undo: `${TEETH} → 16`, redo: null } });
    const now = await read(keeper);
    expect(await keeper.undo(now.hash, 'bench-1')).toMatchObject({ kind: 'saved', saved: { text: demo } });
    expect(await keeper.redo(hash, 'bench-1')).toMatchObject({ kind: 'saved', saved: { hash: now.hash } });
  });

  it('refuse a text with faults, an edit that would make one, and a picture that is none', async () => {
    const keeper = make();
    await keeper.start(null);
    expect(await keeper.create('{"format": 99}')).toMatchObject({ ok: false, faults: [{ address: '/format' }] });
    kept(await keeper.create(demo));
    const { hash } = await read(keeper);
    expect(await keeper.edit(hash, set(TEETH, 'many'), 'bench-1')).toMatchObject({
      kind: 'refused',
      faults: [{ address: TEETH }],
    });
    expect((await read(keeper)).text).toBe(demo);
    await expect(keeper.putPicture(new Uint8Array([1, 2, 3]))).rejects.toThrow('no JPEG, PNG or WebP');
  });

  it('go into one file and come back as a new build of the same bytes, under the same name with a number', async () => {
    const keeper = make();
    await keeper.start(null);
    kept(await keeper.create(demo));
    const { hash } = await read(keeper);
    await keeper.edit(hash, set(TEETH, 16), 'bench-1');
    const picture = new Uint8Array([0xff, 0xd8, 0xff, 9]);
    expect(await keeper.putPicture(picture)).toBe(hashBytes(picture));
    const { name, bytes } = await keeper.archive();
    expect(name).toMatch(/^[\w-]+\.oddwheel\.zip$/);
    const before = await read(keeper);
    const shelf = kept(await keeper.load(bytes));
    expect(shelf.builds.map((one) => one.name)).toEqual([expect.any(String), expect.stringMatching(/ \(2\)$/)]);
    expect(shelf.open).toBe(shelf.builds[1]?.id);
    expect(await read(keeper)).toEqual(before);
    expect(await keeper.getPicture(hashBytes(picture))).toEqual(picture);
    expect((await keeper.archive()).bytes).toEqual(bytes);
    // The first one is as it was.
    await keeper.open(shelf.builds[0]?.id ?? '');
    expect(await read(keeper)).toEqual(before);
  });

  it('stay as they are when a file cannot be opened', async () => {
    const keeper = make();
    await keeper.start(null);
    const shelf = kept(await keeper.create(demo));
    const newer = packArchive({ build: '{"format": 99}', history: '', log: '', runOut: '', pictures: new Map() });
    expect(await keeper.load(newer)).toMatchObject({ ok: false, faults: [{ address: '/format' }] });
    expect(await keeper.load(new Uint8Array([1]))).toMatchObject({ ok: false, faults: [{ code: 'archive.no-zip' }] });
    expect(await keeper.shelf()).toEqual(shelf);
  });

  it('are deleted, and put back with all they had', async () => {
    const keeper = make();
    await keeper.start(null);
    const { open } = kept(await keeper.create(demo));
    await keeper.edit((await read(keeper)).hash, set(TEETH, 16), 'bench-1');
    const before = await read(keeper);
    const gone = await keeper.remove(open ?? '');
    expect(gone).toMatchObject({ builds: [], open: null, deleted: [{ id: open }] });
    expect(await keeper.read()).toBeNull();
    const back = await keeper.putBack(open ?? '');
    expect(back).toMatchObject({ builds: [{ id: open }], open: null, deleted: [] });
    await keeper.open(open ?? '');
    expect(await read(keeper)).toEqual(before);
  });
});

describe('two tabs of one browser', () => {
  it('on one build: each hears of the other, and only fields changed by both collide', async () => {
    const one = createKeeper();
    const two = createKeeper();
    await one.start(null);
    const { open } = kept(await one.create(demo));
    expect((await two.start(open)).open).toBe(open);
    const base = (await read(two)).hash;
    const heard = new Promise<string>((resolve) => two.listen(resolve));
    const first = await one.edit(base, set(TEETH, 16), 'tab-1');
    expect(first.kind).toBe('saved');
    expect(await heard).toBe((await read(one)).hash);
    expect(await two.edit(base, set('/about', 'from the other tab'), 'tab-2')).toMatchObject({ kind: 'saved' });
    expect(JSON.parse((await read(one)).text)).toMatchObject({ about: 'from the other tab' });
    expect(await two.edit(base, set(TEETH, 15), 'tab-2')).toMatchObject({
      kind: 'conflict',
      conflicts: [{ address: TEETH, mine: 15, theirs: 16, base: 17 }],
    });
  });

  it('a build deleted in one is told in the other, which goes on once it is put back', async () => {
    const one = createKeeper();
    const two = createKeeper();
    await one.start(null);
    const { open } = kept(await one.create(demo));
    await two.start(open);
    const { hash } = await read(two);
    await one.remove(open ?? '');
    expect(await two.read()).toBeNull();
    expect(await two.edit(hash, set(TEETH, 16), 'tab-2')).toMatchObject({
      kind: 'unreached',
      says: expect.stringContaining('deleted in another tab'),
    });
    await one.putBack(open ?? '');
    expect(await two.edit(hash, set(TEETH, 16), 'tab-2')).toMatchObject({ kind: 'saved' });
  });
});
