import { toSi } from '@oddwheel/quantity/units';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { folderOf, lastOf } from './command.ts';

/**
 * Theory of Machines (R. S. Khurmi, J. K. Gupta), example 13.1, read as printed in the public textbook companions: three pairs of
 * 20/50, 25/75 and 26/65 teeth, motor at 975 rpm, last shaft at 52 rpm. The frame round the train is invented; its wheel rolls
 * one metre a turn.
 */
describe('a published three-pair train, typed as a build', () => {
  let build: Awaited<ReturnType<typeof folderOf>>;
  beforeAll(async () => {
    build = await folderOf('three-pair-train');
  });
  afterAll(() => build.end());

  const rpm = (speed: number): number => toSi('angularSpeed', 'rpm', speed);

  test('has the published overall ratio', async () => {
    const { code, checked } = await build.check();
    expect(code).toBe(0);
    expect(checked.gears.map(({ overall }) => overall.value)).toEqual([18.75]);
  });

  test('turns its last shaft at 52 rpm when the motor runs at 975 rpm', async () => {
    const { checked } = await build.check();
    const atSpeed = checked.cases.find(({ id }) => id === '1/peak-torque');
    expect(atSpeed?.engineSpeed.value).toBeCloseTo(rpm(975), 9);

    const there = (await build.check('--gear', '1', '--speed', `${atSpeed?.roadSpeed.value} m/s`)).checked;
    const engine = lastOf(there, 'engine').here.angularSpeed?.value ?? Number.NaN;
    const shaft = lastOf(there, 'shaft').here.angularSpeed?.value ?? Number.NaN;
    expect(Math.abs(engine / rpm(975) - 1)).toBeLessThan(1e-9);
    expect(Math.abs(shaft / rpm(52) - 1)).toBeLessThan(1e-3);
  });

  test('three outside pairs turn the last shaft against the motor, and the drum still drives forward', async () => {
    const { checked } = await build.check();
    expect(checked.findings.find(({ check }) => check === 'path.forward')?.severity).toBe('holds');
  });
});
