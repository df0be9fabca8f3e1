import { toSi } from '@oddwheel/quantity/units';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Checked, folderOf, lastOf } from './command.ts';

/**
 * A measured full-load curve: NREL component data file FC_SI41_emis.M (T. Markel, 22 June 1998), 1.0 L three-cylinder petrol engine;
 * the file states 81 N·m at 3477 rpm and 41 kW at 5700 rpm (read). Values between the rows: SciPy 1.17.1,
 * scipy.interpolate.PchipInterpolator on the same rows. The build round the engine is invented.
 */
const BETWEEN_ROWS: readonly (readonly [rpm: number, torque: number])[] = [
  [1200, 64.46320046],
  [2000, 72.84533846],
  [3000, 79.496928],
  [3300, 80.65995302],
  [4000, 78.03422052],
  [5000, 75.46201716],
  [5500, 71.09000526],
];

describe('a measured engine in a build', () => {
  let build: Awaited<ReturnType<typeof folderOf>>;
  beforeAll(async () => {
    build = await folderOf('open-engine-curve');
  });
  afterAll(() => build.end());

  const GEAR = '3';

  /** The assessment with the slider where the engine runs at this speed. */
  async function atEngineSpeed(rpm: number): Promise<Checked> {
    const gear = (await build.check()).checked.gears.find(({ id }) => id === GEAR);
    // Road speed goes with engine speed in one gear; the redline of the build is 5700 rpm.
    const speed = ((gear?.speedAtRedline.value ?? Number.NaN) * rpm) / 5700;
    return (await build.check('--gear', GEAR, '--speed', `${speed} m/s`)).checked;
  }

  test('peak torque is 80.9 N·m at 3476.9 rpm', async () => {
    const peak = (await build.check()).checked.cases.find(({ id }) => id === `${GEAR}/peak-torque`);
    expect(peak?.engineTorque.value).toBeCloseTo(80.9, 6);
    expect(peak?.engineSpeed.value).toBeCloseTo(toSi('angularSpeed', 'rpm', 3476.9), 1);
  });

  test('peak power is 41.0 kW, on the flat top between 5600 and 5700 rpm', async () => {
    const peak = (await build.check()).checked.cases.find(({ id }) => id === `${GEAR}/peak-power`);
    const [speed, torque] = [peak?.engineSpeed.value ?? Number.NaN, peak?.engineTorque.value ?? Number.NaN];
    expect(Math.abs(speed * torque - 41_000)).toBeLessThan(50);
    expect(speed).toBeGreaterThan(toSi('angularSpeed', 'rpm', 5600));
    expect(speed).toBeLessThanOrEqual(toSi('angularSpeed', 'rpm', 5700));
  });

  test('power at 5700 rpm is the stated 41 kW', async () => {
    const engine = lastOf(await atEngineSpeed(5699.9), 'engine').here;
    expect(Math.abs((engine.power?.value ?? Number.NaN) - 41_000)).toBeLessThan(50);
  });

  test.each(BETWEEN_ROWS)('torque at %d rpm is %d N·m', async (rpm, torque) => {
    const { here } = lastOf(await atEngineSpeed(rpm), 'engine');
    expect(here.angularSpeed?.value).toBeCloseTo(toSi('angularSpeed', 'rpm', rpm), 8);
    expect(here.torque?.value).toBeCloseTo(torque, 6);
  });
});
