import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Known } from '@oddwheel/build/assess/road/types';
import { cubicAt, monotoneCubic } from '@oddwheel/mechanics/numerics/monotone-cubic';
import { toSi } from '@oddwheel/quantity/units';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Checked, checkDemo, folderOf, lastOf } from './command.ts';

/** What is used of odex 2.0.4 (BSD-2-Clause), a port of Hairer and Wanner's extrapolation code ODEX; it comes without usable types. */
interface Odex {
  readonly Solver: new (
    n: number,
  ) => {
    absoluteTolerance: number;
    relativeTolerance: number;
    maxSteps: number;
    solve(
      slopes: (t: number, y: readonly number[]) => readonly number[],
      from: number,
      y: readonly number[],
      to: number,
    ): { readonly y: readonly number[]; readonly outcome: number };
  };
}

const { Solver } = createRequire(import.meta.url)('odex') as Odex;

/** Values at the end of a span by odex; the slopes must be smooth there. */
function byOdex(
  slopes: (t: number, y: readonly number[]) => readonly number[],
  from: number,
  y: readonly number[],
  to: number,
): readonly number[] {
  const solver = new Solver(y.length);
  solver.absoluteTolerance = 1e-11;
  solver.relativeTolerance = 1e-11;
  solver.maxSteps = 100_000;
  const solved = solver.solve(slopes, from, y, to);
  expect(solved.outcome).toBe(0);
  return solved.y;
}

function known<T extends object>(part: Known<T> | null): T {
  if (part === null || 'missing' in part) throw new Error(JSON.stringify(part));
  return part as T;
}

const number = (value: number | null | undefined): number => value ?? Number.NaN;

/**
 * Theory of Machines (R. S. Khurmi, J. K. Gupta), example 3.15, read as printed in the public textbook companions: 1500 kg on wheels of
 * 600 mm, wheels and axles 8 kg·m², engine 1 kg·m² and 200 N·m, efficiency 85 %, resistance 300 N, slope with a sine of 0.25. The ratio
 * for the greatest acceleration is 22; it is then 1.38 m/s², and at 24 km/h the engine turns 489 rad/s and gives 97.8 kW. The
 * resistance is put as rolling, and the book's free fall, 9.81 m/s², is 0.03 % more than ours.
 */
describe('a published hill start, typed as a build', () => {
  let build: Awaited<ReturnType<typeof folderOf>>;
  let checked: Checked;
  beforeAll(async () => {
    build = await folderOf('hill-ratio');
    ({ checked } = await build.check('--gear', '1', '--speed', '24 km/h'));
  });
  afterAll(() => build.end());

  test('feels 1590 + 9.44 · 22² kg', () => {
    const gear = known(checked.road.pulls).gears[0];
    expect(number(gear?.massFactor.value) * 1500).toBeCloseTo(1500 + (8 + 0.85 * 22 ** 2) / 0.3 ** 2, 3);
    expect(Math.abs((number(gear?.massFactor.value) * 1500) / (1590 + 9.44 * 22 ** 2) - 1)).toBeLessThan(0.002);
  });

  test('speeds up with 1.38 m/s² on the slope', () => {
    const climb = checked.findings.find(({ check }) => check === 'target.climb');
    const left = number(climb?.capacity?.value) - number(climb?.demand?.value);
    const mass = number(known(checked.road.pulls).gears[0]?.massFactor.value) * 1500;
    expect(Math.abs(left / mass / 1.38 - 1)).toBeLessThan(0.01);
  });

  test('the slope asks for 300 N and a quarter of the weight', () => {
    const climb = checked.findings.find(({ check }) => check === 'target.climb');
    expect(Math.abs(number(climb?.demand?.value) / (300 + 1500 * 9.81 * 0.25) - 1)).toBeLessThan(0.001);
  });

  test('turns the engine at 489 rad/s and takes 97.8 kW from it at 24 km/h', () => {
    const { angularSpeed, power } = lastOf(checked, 'engine').here;
    expect(Math.abs(number(angularSpeed?.value) / 489 - 1)).toBeLessThan(0.001);
    expect(Math.abs(number(power?.value) / 97_800 - 1)).toBeLessThan(0.001);
  });
});

describe('the sprint of the demo against a general-purpose solver', () => {
  let checked: Checked;
  let rows: readonly (readonly [number, number])[];
  beforeAll(async () => {
    ({ checked } = await checkDemo('marsh-hauler'));
    const text = await readFile(new URL('../../examples/marsh-hauler/build.json', import.meta.url), 'utf8');
    const file = JSON.parse(text) as { brief: { engine: { curve: { rows: [number, number][] } } } };
    rows = file.brief.engine.curve.rows;
  });

  test('time and distance to 40 km/h, gear by gear, agree with odex to a part in a million', () => {
    const rpm = (n: number) => toSi('angularSpeed', 'rpm', n);
    const speeds = rows.map(([n]) => rpm(n));
    const curve = monotoneCubic(
      speeds,
      rows.map(([, torque]) => torque),
    );
    // Middles of what the demo states and of what stands in for its blanks.
    const [radius, mass, rolling, area] = [3.35 / (2 * Math.PI), 320 + 290, 0.055, 1.1];
    const [wheels, engine, launch, shift, pause] = [9 + 2.4, 0.025, rpm(3000), rpm(8800), 0.5];
    const efficiency = known(checked.road.pulls).efficiency.value;
    const grip = known(checked.road.grip).force.value;
    const ratios = checked.gears.map(({ overall }) => overall.value);
    const load = (v: number) => mass * 9.80665 * rolling + 0.6 * area * v * v;
    const rollingMass = mass + wheels / radius ** 2;
    let [v, t, s, gear] = [0, 0, 0, 0];
    for (const end = 40 / 3.6; ; gear += 1) {
      const ratio = number(ratios[gear]);
      const top = Math.min(end, (shift * radius) / ratio);
      const bite = (launch * radius) / ratio;
      const pull = (at: number) => {
        const turns = Math.min(Math.max(launch, (at * ratio) / radius), speeds.at(-1) ?? 0);
        return Math.min(grip, (cubicAt(curve, turns) * ratio * efficiency) / radius);
      };
      const places = [...speeds.map((speed) => (speed * radius) / ratio), bite].filter((x) => x > v && x < top);
      for (const next of [...places.sort((a, b) => a - b), top]) {
        const slips = next <= bite;
        const felt = rollingMass + (slips ? 0 : (efficiency * ratio ** 2 * engine) / radius ** 2);
        const slow = (at: number) => felt / (pull(at) - load(at));
        [t = 0, s = 0] = byOdex((at) => [slow(at), at * slow(at)], v, [t, s], next);
        v = next;
      }
      if (v === end) break;
      [v = 0, s = 0] = byOdex((_, [at = 0]) => [-load(at) / rollingMass, at], 0, [v, s], pause);
      t += pause;
    }
    const sprint = known(checked.road.sprint);
    expect(gear).toBe(sprint.shifts);
    expect(Math.abs(sprint.time.value / t - 1)).toBeLessThan(1e-6);
    expect(Math.abs(sprint.distance.value / s - 1)).toBeLessThan(1e-6);
  });
});

describe('the driving cycle of the demo', () => {
  test('is as long as the stored trace of the regulation, and every second stands in one gear', async () => {
    const cycle = known((await checkDemo('marsh-hauler')).checked.road.cycle);
    // UN GTR No. 2, part 1: 600 s; the stored trace adds up to 4065.9 m (published 4.07 km, from memory).
    expect(cycle.duration).toBe(600);
    expect(cycle.distance).toBeCloseTo(4065.9, 0);
    expect(cycle.gearTimes.reduce((sum, { time }) => sum + time, 0)).toBe(600);
  });
});
