import { appendFile, chmod, mkdir, mkdtemp, readdir, readFile, rename, rm, unlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { hashText } from '@oddwheel/build/document/hash';
import { describe, expect, it } from 'vitest';
import { BENCH_TEXT, benchOptions, reading } from './bench-build.ts';
import { storeConformance } from './conformance.ts';
import type { Bench } from './conformance-bench.ts';
import { openDiskStore } from './disk.ts';
import type { FileSystem } from './file-system.ts';
import { createBuildFolder } from './new-build.ts';
import { nodeFileSystem } from './node-file-system.ts';
import { type OutsideChange, StoreError } from './store.ts';

async function newFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'oddwheel-store-'));
  await writeFile(join(folder, 'build.json'), BENCH_TEXT);
  return folder;
}

storeConformance('disk', async (): Promise<Bench> => {
  const folder = await newFolder();
  return {
    open: () => openDiskStore(folder, benchOptions),
    replaceBuild: (text) => writeFile(join(folder, 'build.json'), text),
    appendRaw: (file, text) => appendFile(join(folder, `${file}.ndjson`), text),
    deleteHistory: () => rm(join(folder, 'history.ndjson')),
    dispose: () => rm(folder, { recursive: true, force: true }),
  };
});

const bytes = (text: string) => new TextEncoder().encode(text);
const set = (at: string, value: number) => ({ op: 'set', at, value }) as const;

describe('a build folder', () => {
  it('holds what its users expect to find, one line a change, and no leftovers', async () => {
    const folder = await newFolder();
    const store = await openDiskStore(folder, benchOptions);
    const { hash } = await store.read();
    await store.save({ base: hash, patches: [set('/path/chain-1/teeth', 19)], name: 'More teeth' });
    await store.append([reading('a.1')]);
    const picture = await store.putPicture(bytes('no picture at all'));
    await store.close();
    expect((await readdir(folder)).sort()).toEqual(['build.json', 'history.ndjson', 'log.ndjson', 'pictures']);
    expect(await readdir(join(folder, 'pictures'))).toEqual([picture]);
    expect(await readFile(join(folder, 'build.json'), 'utf8')).toBe(BENCH_TEXT.replace('17', '19'));
    expect(await readFile(join(folder, 'log.ndjson'), 'utf8')).toBe(`${JSON.stringify(reading('a.1'))}\n`);
    await rm(folder, { recursive: true });
  });

  it('without a build file is an error that names it', async () => {
    const folder = await newFolder();
    await unlink(join(folder, 'build.json'));
    const message = `There is no build.json in ${folder}.`;
    await expect(openDiskStore(folder, benchOptions)).rejects.toMatchObject({ code: 'store.no-build', message });
    await rm(folder, { recursive: true });
  });

  it('whose build file is not UTF-8 is an error that names the line, and the file stays as it is', async () => {
    const folder = await newFolder();
    const file = join(folder, 'build.json');
    const latin1 = Buffer.from('{\n  "format": 1,\n  "path": {"a": "12 \xb5m"}\n}\n', 'latin1');
    await writeFile(file, latin1);
    await expect(openDiskStore(folder, benchOptions)).rejects.toMatchObject({
      code: 'store.not-text',
      message: expect.stringContaining('line 3'),
    });
    expect(await readFile(file)).toEqual(latin1);
    await rm(folder, { recursive: true });
  });

  it('keeps a byte order mark and CRLF through a save', async () => {
    const folder = await newFolder();
    const text = `\ufeff${BENCH_TEXT.replaceAll('\n', '\r\n')}`;
    await writeFile(join(folder, 'build.json'), text);
    const store = await openDiskStore(folder, benchOptions);
    await store.save({ base: (await store.read()).hash, patches: [set('/path/chain-1/teeth', 19)], name: 'Edit' });
    expect(await readFile(join(folder, 'build.json'), 'utf8')).toBe(text.replace('17', '19'));
    await rm(folder, { recursive: true });
  });

  it('that cannot be written is shown all the same', async () => {
    const folder = await newFolder();
    const readOnly: FileSystem = {
      ...nodeFileSystem,
      lock: async () => {
        throw new StoreError('store.read-only', 'The folder cannot be written.');
      },
    };
    const store = await openDiskStore(folder, { ...benchOptions, fs: readOnly });
    const { text, hash } = await store.read();
    expect(text).toBe(BENCH_TEXT);
    const saving = store.save({ base: hash, patches: [set('/path/chain-1/teeth', 19)], name: 'Edit' });
    await expect(saving).rejects.toMatchObject({ code: 'store.read-only' });
    await rm(folder, { recursive: true });
  });

  it.skipIf(process.getuid?.() === 0 || process.platform === 'win32')(
    'the same with a real folder without the right to write',
    async () => {
      const folder = await newFolder();
      await chmod(folder, 0o555);
      const store = await openDiskStore(folder, benchOptions);
      expect((await store.read()).text).toBe(BENCH_TEXT);
      await expect(store.append([reading('a.1')])).rejects.toMatchObject({ code: 'store.read-only' });
      await chmod(folder, 0o755);
      await rm(folder, { recursive: true });
    },
  );
});

describe('watching a build folder', () => {
  const editors: [name: string, save: (folder: string, text: string) => Promise<void>][] = [
    ['writes into the file', (folder, text) => writeFile(join(folder, 'build.json'), text)],
    [
      'puts a new file in its place',
      async (folder, text) => {
        await writeFile(join(folder, '4913.tmp'), text);
        await rename(join(folder, '4913.tmp'), join(folder, 'build.json'));
      },
    ],
    [
      'moves the old file away first',
      async (folder, text) => {
        await rename(join(folder, 'build.json'), join(folder, 'build.json~'));
        await writeFile(join(folder, 'build.json'), text);
      },
    ],
  ];

  it.each(editors)('hears each save of an editor that %s', async (_name, saveAs) => {
    const folder = await newFolder();
    const store = await openDiskStore(folder, benchOptions);
    await store.read();
    let wake: (change: OutsideChange) => void = () => undefined;
    store.watch((change) => wake(change));
    for (const teeth of [41, 42, 43]) {
      const heard = new Promise<OutsideChange>((resolve) => {
        wake = resolve;
      });
      await saveAs(folder, BENCH_TEXT.replace('"teeth": 40', `"teeth": ${teeth}`));
      expect(await heard).toEqual({ build: true, log: false, runOut: false });
    }
    expect((await store.read()).history.undo).toHaveLength(3);
    await store.close();
    await rm(folder, { recursive: true });
  });
});

describe('a new build folder', () => {
  it('is made with its log and pictures, also where an empty folder is, and opens as a build', async () => {
    const parent = await mkdtemp(join(tmpdir(), 'oddwheel-new-'));
    for (const name of ['cart', 'sledge', 'shelf/by/cart']) {
      const folder = join(parent, name);
      if (name === 'sledge') await mkdir(folder);
      const log = `${JSON.stringify(reading('a.1'))}\n`;
      await createBuildFolder(`${folder}/`, BENCH_TEXT, {
        validate: benchOptions.validate,
        log,
        pictures: [bytes('p')],
      });
      const store = await openDiskStore(folder, benchOptions);
      expect(await store.read()).toMatchObject({ text: BENCH_TEXT, log: [{ id: 'a.1' }] });
      expect(await store.getPicture(hashText('p'))).toBeDefined();
      await store.close();
    }
    expect((await readdir(parent)).sort()).toEqual(['cart', 'shelf', 'sledge']);
    await rm(parent, { recursive: true });
  });

  it('is refused where anything is, and a text with faults too, with nothing written', async () => {
    const folder = await newFolder();
    const options = { validate: benchOptions.validate };
    const inTheWay = createBuildFolder(folder, BENCH_TEXT, options);
    await expect(inTheWay).rejects.toMatchObject({
      code: 'store.not-empty',
      message: expect.stringContaining('build.json'),
    });
    const faulty = createBuildFolder(join(folder, 'new'), '{}', options);
    await expect(faulty).rejects.toMatchObject({
      code: 'store.refused',
      faults: [{ address: '/format' }, { address: '/path' }],
    });
    expect(await readdir(folder)).toEqual(['build.json']);
    await rm(folder, { recursive: true });
  });
});
