import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { folderOf, lastOf } from './command.ts';

/**
 * Question and answer on a Cardan joint at 30 degrees, read as stored: the driven shaft turns between 0.86603 and 1.1547 times as fast as the
 * driving one. The frame round the joint is invented.
 */
describe('a published universal joint, typed as a build', () => {
  let build: Awaited<ReturnType<typeof folderOf>>;
  beforeAll(async () => {
    build = await folderOf('joint-at-30-degrees');
  });
  afterAll(() => build.end());

  test('its speed varies as published, and the finding says so', async () => {
    const { checked } = await build.check();
    const uneven = lastOf(checked, 'coupling').facts.find(({ key }) => key === 'unevenness');
    expect(Math.abs((uneven?.spread.value ?? Number.NaN) - (1.1547 - 0.86603))).toBeLessThan(0.0001);
    expect(checked.findings.find(({ check }) => check === 'coupling.even')?.severity).toBe('thin');
  });

  test('30 degrees lie between good practice and the angle at which the forks touch', async () => {
    const { checked } = await build.check();
    const angle = checked.findings.find(({ check }) => check === 'coupling.angle');
    expect(angle?.severity).toBe('thin');
    expect(angle?.reserve?.value).toBeCloseTo(37.5 / 30, 9);
  });

  test('what moves between engine and subframe adds to the joint’s own angle', async () => {
    const { checked } = await build.check();
    const takes = checked.findings.find(({ check }) => check === 'coupling.takes');
    expect(takes?.demand?.value).toBeCloseTo(31 / 35 + 3 / 5 + 3 / 20, 9);
    expect(takes?.severity).toBe('fails');
  });
});
