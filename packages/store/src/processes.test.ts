/** The disk store with programs of their own: killed at any moment, or writing at the same time. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdir, mkdtemp, readFile, rm, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { afterEach, describe, expect, it } from 'vitest';
import { BENCH_TEXT, benchOptions } from './bench-build.ts';
import { openDiskStore } from './disk.ts';
import { lockFolder } from './folder-lock.ts';

const CHILD = fileURLToPath(new URL('./disk.child.ts', import.meta.url));
const running = new Set<ChildProcess>();

interface Saver {
  readonly child: ChildProcess;
  /** Number acknowledged last. */
  acknowledged(): number;
  /** Resolves when this many saves were acknowledged in this run. */
  saves(count: number): Promise<void>;
  readonly ended: Promise<number | null>;
}

function startSaver(folder: string, key: string, limit = 0): Saver {
  const argv = ['--import', 'tsx', '--conditions=source', CHILD, folder, key, String(limit)];
  const child = spawn(process.execPath, argv, { stdio: ['ignore', 'pipe', 'inherit'] });
  running.add(child);
  let last = 0;
  let count = 0;
  let waiting: { count: number; resolve: () => void } | undefined;
  const lines = createInterface({ input: child.stdout });
  lines.on('line', (line) => {
    last = Number(line);
    count += 1;
    if (waiting && count >= waiting.count) waiting.resolve();
  });
  const ended = new Promise<number | null>((resolve) => {
    // "close" comes after the last of the output.
    child.on('close', (code) => {
      running.delete(child);
      waiting?.resolve();
      resolve(code);
    });
  });
  return {
    child,
    ended,
    acknowledged: () => last,
    saves: (wanted) =>
      new Promise((resolve) => {
        waiting = { count: wanted, resolve };
        if (count >= wanted) resolve();
      }),
  };
}

async function newFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'oddwheel-processes-'));
  await writeFile(join(folder, 'build.json'), BENCH_TEXT);
  return folder;
}

/** The seed of the kill times: the mulberry32 generator, common practice. Gives numbers from 0 to 1. */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

async function notesOf(folder: string): Promise<Record<string, number>> {
  const text = await readFile(join(folder, 'build.json'), 'utf8');
  expect(benchOptions.validate(text)).toEqual([]);
  return JSON.parse(text).notes;
}

afterEach(() => {
  for (const child of running) child.kill('SIGKILL');
});

describe('200 rapid saves of a program that is killed again and again', () => {
  it('always leave a valid build with at least the last acknowledged save, and undo goes on after each restart', async () => {
    const folder = await newFolder();
    const random = randomFrom(1);
    let total = 0;
    let acknowledged = 0;
    let kills = 0;
    while (total < 200) {
      const saver = startSaver(folder, 'n');
      await saver.saves(5 + Math.floor(random() * 30));
      await new Promise((resolve) => setTimeout(resolve, random() * 8));
      saver.child.kill('SIGKILL');
      await saver.ended;
      kills += 1;
      expect(saver.acknowledged()).toBeGreaterThan(acknowledged);
      const held = (await notesOf(folder)).n ?? 0;
      // One save may have reached the disk without being acknowledged.
      expect([saver.acknowledged(), saver.acknowledged() + 1]).toContain(held);
      total += saver.acknowledged() - acknowledged;
      acknowledged = held;
    }
    expect(kills).toBeGreaterThan(4);
    const store = await openDiskStore(folder, benchOptions);
    const { history, setAside } = await store.read();
    expect(history.undo.map(({ name }) => name)).toEqual(Array.from({ length: acknowledged }, (_, i) => `n ${i + 1}`));
    // A line that was cut off is all that may be left of a killed save.
    expect(setAside.every(({ file }) => file === 'history')).toBe(true);
    let base = (await store.read()).hash;
    for (let step = 0; step < 5; step += 1) {
      const undone = await store.undo({ base });
      base = undone.ok ? undone.hash : '';
    }
    expect((await notesOf(folder)).n).toBe(acknowledged - 5);
    await store.close();
    await rm(folder, { recursive: true });
  }, 300_000);
});

describe('programs that write at the same time', () => {
  it('wait for each other, and every save of each is kept and can be undone', async () => {
    const folder = await newFolder();
    const savers = ['a', 'b'].map((key) => startSaver(folder, key, 25));
    const store = await openDiskStore(folder, benchOptions);
    for (let n = 1; n <= 10; n += 1) {
      const { hash } = await store.read();
      const result = await store.save({
        base: hash,
        patches: [{ op: 'set', at: '/notes/c', value: n }],
        name: `c ${n}`,
      });
      expect(result.ok).toBe(true);
    }
    expect(await Promise.all(savers.map(({ ended }) => ended))).toEqual([0, 0]);
    expect(await notesOf(folder)).toEqual({ a: 25, b: 25, c: 10 });
    const names = (await store.read()).history.undo.map(({ name }) => name);
    expect(names).toHaveLength(60);
    for (const key of ['a', 'b', 'c']) {
      const own = names.filter((name) => name.startsWith(key));
      expect(own).toEqual(own.map((_, i) => `${key} ${i + 1}`));
    }
    await store.close();
    await rm(folder, { recursive: true });
  });
});

describe('the lock', () => {
  it('of a program that died is taken over', async () => {
    const folder = await newFolder();
    await mkdir(join(folder, '.lock'));
    const long = new Date(Date.now() - 60_000);
    await utimes(join(folder, '.lock'), long, long);
    const store = await openDiskStore(folder, benchOptions);
    const { hash } = await store.read();
    const result = await store.save({ base: hash, patches: [{ op: 'set', at: '/notes/c', value: 1 }], name: 'c' });
    expect(result.ok).toBe(true);
    await store.close();
    await rm(folder, { recursive: true });
  });

  it('that another program took over is noticed before the next write', async () => {
    const folder = await newFolder();
    const lock = await lockFolder(folder);
    expect(await lock.held()).toBe(true);
    const other = new Date(Date.now() + 1234);
    await utimes(join(folder, '.lock'), other, other);
    expect(await lock.held()).toBe(false);
    await rm(join(folder, '.lock'), { recursive: true });
    expect(await lock.held()).toBe(false);
    await lock.release();
    const next = await lockFolder(folder);
    expect(await next.held()).toBe(true);
    await next.release();
    await rm(folder, { recursive: true });
  });

  it('that is never given back is an error which says so, and nothing is saved', async () => {
    const folder = await newFolder();
    const store = await openDiskStore(folder, benchOptions);
    const { hash } = await store.read();
    const lock = await lockFolder(folder);
    const saving = store.save({ base: hash, patches: [{ op: 'set', at: '/notes/c', value: 1 }], name: 'c' });
    await expect(saving).rejects.toMatchObject({ code: 'store.busy', message: expect.stringContaining(folder) });
    await lock.release();
    expect((await store.read()).text).toBe(BENCH_TEXT);
    await store.close();
    await rm(folder, { recursive: true });
  });
});
