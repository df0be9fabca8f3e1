import { describe, expect, it } from 'vitest';
import { openSession } from '../../session.ts';
import { SMALL_BUILD } from '../../testing/small-build.ts';
import type { DutyRun } from './duty.ts';

const build = (brief: object): string => JSON.stringify({ ...SMALL_BUILD, brief: { ...SMALL_BUILD.brief, ...brief } });

function sceneOf(text: string) {
  const opened = openSession(text, { ends: 'not yet' });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session.evaluation.middle.scene;
}

function dutyOf(text: string): DutyRun {
  const duty = sceneOf(text).duty();
  if (!duty.ok) throw new Error(JSON.stringify(duty.missing));
  return duty;
}

const row = (more: object = {}) => ({
  name: 'tracks',
  gear: 1,
  speed: '10 km/h',
  throttle: '50 %',
  share: '100 %',
  ...more,
});
const sum = (list: readonly number[]): number => list.reduce((all, one) => all + one, 0);

describe('duty', () => {
  it('turns a typed table into speed, torque, hours and turns', () => {
    const text = build({ duty: { distance: '1000 km', rows: [row()] } });
    const duty = dutyOf(text);
    const scene = sceneOf(text);
    expect(duty.from).toBe('typed');
    expect(duty.time).toBeCloseTo(100 * 3600, 6);
    // 1000 km on a wheel that rolls 2 m; the output turns 45/15 times as often.
    expect(duty.turns).toEqual([3 * 500_000, 500_000]);
    const [bin] = duty.bins;
    // 10 km/h on 2 m: 1.389 turns a second, and the crank as often as the gear says.
    expect(bin?.point.engineSpeed).toBeCloseTo(2 * Math.PI * (10 / 3.6 / 2) * (scene.overall[0] ?? 0), 9);
    const full = scene.engine?.torqueAt(bin?.point.engineSpeed ?? 0) ?? Number.NaN;
    expect(bin?.point.engineTorque).toBeCloseTo(0.5 * full, 12);
    expect(bin?.load.shafts[1]?.speed).toBeCloseTo(2 * Math.PI * (10 / 3.6 / 2), 9);
  });

  it('takes parts of the distance by their sum', () => {
    const whole = dutyOf(build({ duty: { rows: [row(), row({ gear: 2, speed: '20 km/h' })] } }));
    const half = dutyOf(
      build({ duty: { rows: [row({ share: '50 %' }), row({ gear: 2, speed: '20 km/h', share: '50 %' })] } }),
    );
    expect(half.bins.map((bin) => bin.ofDistance)).toEqual([0.5, 0.5]);
    expect(whole.bins.map((bin) => bin.ofDistance)).toEqual([0.5, 0.5]);
    // The slower half takes twice the time.
    expect(half.bins[0]?.ofTime).toBeCloseTo(2 / 3, 12);
    expect(half.time).toBeCloseTo(20_000_000 / 2 / (10 / 3.6) + 20_000_000 / 2 / (20 / 3.6), 3);
  });

  it('names the row that the box or the engine cannot do', () => {
    const lost = sceneOf(build({ duty: { rows: [row({ gear: 5 }), row({ speed: '200 km/h' })] } })).duty();
    expect(lost.ok ? [] : lost.missing.map(({ address }) => address)).toEqual([
      '/brief/duty/rows/0/gear',
      '/brief/duty/rows/1/speed',
    ]);
  });

  it('lets the clutch slip where the road is too slow for the gear', () => {
    const scene = sceneOf(build({ duty: { rows: [row({ speed: '2 km/h' })] } }));
    const duty = scene.duty();
    const bin = duty.ok ? duty.bins[0] : undefined;
    const lowest = scene.engine?.torqueAt(scene.engine.idle) ?? Number.NaN;
    expect(bin?.point.engineTorque).toBeCloseTo(0.5 * lowest, 9);
    expect(bin?.load.shafts.at(-1)?.speed).toBeCloseTo((2 / 3.6) * Math.PI, 9);
  });

  it('follows the cycle of the targets where no table is typed, and keeps its distance and energy', () => {
    const { engine, vehicle } = SMALL_BUILD.brief;
    const scene = sceneOf(
      build({
        targets: { cycle: 'cycle-wmtc-part1' },
        engine: { ...engine, primary: '1', gears: ['8', '5', '3', '2'] },
        vehicle: { ...vehicle, rolling: '0.02', dragArea: '0.8 m2', wheelInertia: '1 kg.m2', otherInertia: '0 kg.m2' },
      }),
    );
    const duty = scene.duty();
    const cycle = scene.road.cycle();
    if (!duty.ok || !cycle?.ok) throw new Error('no cycle');
    expect(duty.from).toBe('cycle');
    expect(sum(duty.bins.map((bin) => bin.ofDistance))).toBeCloseTo(1, 12);
    expect(sum(duty.bins.map((bin) => bin.ofTime))).toBeCloseTo(1, 12);
    // Hours on the move: the target over the mean speed of the seconds that move.
    const moving = cycle.output.meanSpeeds.filter((speed) => speed > 0);
    expect(duty.time).toBeCloseTo(duty.distance / (sum(moving) / moving.length), 3);
    expect(duty.bins.length).toBeLessThan(120);
    expect(duty.bins.length).toBeGreaterThan(10);
    // Work of the driving bins over the cycle, against the cycle's own, where the engine follows it all.
    const { distance, driveEnergy, missed } = cycle.output;
    const pull = sum(
      duty.bins
        .filter((bin) => bin.point.engineTorque > 0)
        .map((bin) => {
          const wheel = bin.load.shafts.at(-1)?.torque ?? 0;
          return (bin.ofDistance * wheel * 2 * Math.PI) / (scene.rollOut ?? Number.NaN);
        }),
    );
    // A bin's torque is a cubic mean, so its work is a little more than that of its seconds.
    if (missed === 0) expect(pull * distance).toBeGreaterThan(driveEnergy * 0.95);
    expect(pull * distance).toBeLessThan(driveEnergy * 1.06);
  });

  it('stands on a usual spectrum where nothing is said, and shows it as assumed', () => {
    const text = build({});
    const duty = dutyOf(text);
    expect(duty.from).toBe('usual');
    expect(duty.distance).toBe(20_000_000);
    expect(duty.uses.filter(({ origin }) => origin === 'assumed').map(({ address }) => address)).toContain(
      '/brief/duty/rows',
    );
    expect(duty.bins).toHaveLength(6);
    expect(duty.bins[0]?.ofDistance).toBeCloseTo(0.05 * 0.1, 12);
    expect(duty.bins[5]?.ofDistance).toBeCloseTo(0.95 * 0.6, 12);
  });
});
