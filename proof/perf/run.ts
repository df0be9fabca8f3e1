/**
 * Prints how long the usual things take, as medians in milliseconds. Nothing is asserted: times belong to the machine.
 * Run by `npm run perf`.
 */
import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { fileURLToPath } from 'node:url';
import { applyEdit, moveHere, openSession, rangePass, validateText } from '@oddwheel/build/session';
import type { Session } from '@oddwheel/build/session-types';
import { openDiskStore } from '@oddwheel/store/disk';
import { trainOf } from './trains.ts';

const HOME = fileURLToPath(new URL('../../', import.meta.url));
const DEMO = join(HOME, 'examples/marsh-hauler');
const TEXT = readFileSync(join(DEMO, 'build.json'), 'utf8');
const TEETH = '/path/stages/chain-1/teeth/driver';

const median = (times: readonly number[]): number => {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
};

function timed(run: () => unknown): number {
  const start = performance.now();
  run();
  return performance.now() - start;
}

const times = (runs: number, run: (k: number) => unknown): number[] =>
  Array.from({ length: runs }, (_, k) => timed(() => run(k)));

const print = (what: string, runs: number, time: number): void =>
  console.log(`${what.padEnd(56)} ${time.toFixed(2).padStart(9)} ms  (${runs} runs)`);

function opened(): Session {
  const result = openSession(TEXT, { cache: true });
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.session;
}

function command(): void {
  try {
    execFileSync(process.execPath, [join(HOME, 'apps/cli/bin/oddwheel.mjs'), 'check', DEMO], { stdio: 'pipe' });
  } catch (error) {
    // Exit code 1 says that the build has failing findings; the run itself is whole.
    if ((error as { readonly status?: number | null }).status !== 1) throw error;
  }
}

async function saves(runs: number): Promise<number[]> {
  const folder = mkdtempSync(join(tmpdir(), 'oddwheel-perf-'));
  try {
    cpSync(join(DEMO, 'build.json'), join(folder, 'build.json'));
    const store = await openDiskStore(folder, { validate: validateText, now: () => new Date().toISOString() });
    const spent: number[] = [];
    let base = (await store.read()).hash;
    for (let k = 0; k < runs; k++) {
      const start = performance.now();
      const saved = await store.save({
        base,
        patches: [{ op: 'set', at: TEETH, value: k % 2 === 0 ? 16 : 17 }],
        name: 'driver teeth',
      });
      spent.push(performance.now() - start);
      if (!saved.ok) throw new Error(JSON.stringify(saved));
      base = saved.hash;
    }
    await store.close();
    return spent;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

command(); // The first run may build the command.
print('check of the demo build, a new process', 7, median(times(7, command)));
print('open a build, nothing kept', 50, median(times(50, () => openSession(TEXT, { cache: false }))));

let session = opened();
const edits = times(50, (k) => {
  const edited = applyEdit(session, [{ op: 'set', at: TEETH, value: k % 2 === 0 ? 16 : 17 }]);
  if (!edited.ok) throw new Error(JSON.stringify(edited.faults));
  session = edited.session;
});
print('one edit, with all ends of ranges', 50, median(edits));

session = opened();
const middles = times(50, (k) => {
  const edited = applyEdit(session, [{ op: 'set', at: TEETH, value: k % 2 === 0 ? 16 : 17 }], 'not yet');
  if (!edited.ok) throw new Error(JSON.stringify(edited.faults));
  session = edited.session;
});
print('one edit, at the middle of the ranges', 50, median(middles));

let longest = 0;
const passes = times(20, (k) => {
  const edited = applyEdit(session, [{ op: 'set', at: TEETH, value: k % 2 === 0 ? 16 : 17 }], 'not yet');
  if (!edited.ok) throw new Error(JSON.stringify(edited.faults));
  const pass = rangePass(edited.session);
  for (let done = false; !done; )
    longest = Math.max(
      longest,
      timed(() => {
        const step = pass.next();
        if (step.done) {
          done = true;
          session = step.value;
        }
      }),
    );
});
print('the ends of ranges after it', 20, median(passes));
print('longest step of those', 20, longest);

const STEPS = 500;
session = opened();
const gear = session.assessment.gears.find(({ id }) => id === session.here.gear);
const [low, high] = [gear?.speedAtIdle.value ?? 1, gear?.speedAtRedline.value ?? 2];
const drag = times(STEPS, (k) => {
  session = moveHere(session, { roadSpeed: low + ((high - low) * k) / (STEPS - 1) });
});
print('one move of the slider', STEPS, median(drag));
print('worst step of that drag', STEPS, Math.max(...drag));
print('save to the disk', 30, median(await saves(30)));

/** The whole assessment at the middle of a build made for it, nothing kept from before; medians, with what each one more costs. */
function growth(
  what: string,
  sizes: readonly number[],
  shapeOf: (size: number) => Parameters<typeof trainOf>[0],
): void {
  let before: { readonly size: number; readonly time: number } | null = null;
  for (const size of sizes) {
    const text = JSON.stringify(trainOf(shapeOf(size)));
    const open = (): Session => {
      const result = openSession(text, { cache: true, ends: 'not yet' });
      if (!result.ok) throw new Error(JSON.stringify(result.faults));
      return result.session;
    };
    open();
    const time = median(times(9, open));
    const grown = before ? `, ${((time - before.time) / (size - before.size)).toFixed(2)} ms for each one more` : '';
    print(`${size} ${what}${grown}`, 9, time);
    before = { size, time };
  }
}

growth('gears', [1, 2, 5, 8], (gears) => ({ stages: 2, seats: 4, gears }));
growth('seats on each of 2 shafts', [4, 8, 16, 32], (seats) => ({ stages: 2, seats, gears: 5 }));
growth('stages', [1, 2, 4, 8, 16, 40], (stages) => ({ stages, seats: 4, gears: 5 }));
