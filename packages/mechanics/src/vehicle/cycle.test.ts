import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkMethod } from '../method/proof.ts';
import { cycleRun } from './cycle-run.ts';
import { nextGear } from './gear-use.ts';
import { shiftSpeeds } from './shift-speeds.ts';

const near = (got: number, wanted: number, part: number): void => expect(Math.abs(got / wanted - 1)).toBeLessThan(part);
const KMH = 1 / 3.6;
const rpm = (n: number): number => (n * 2 * Math.PI) / 60;

describe('shift speeds', () => {
  // Engine turns per minute at 1 km/h in each gear, as ratios on a wheel of 0.3 m.
  const perKmh = [133.66, 94.91, 76.16, 65.69, 58.85, 54.04];
  const given = {
    ratedPower: 72_000,
    kerbMass: 199,
    riderMass: 75,
    ratedSpeed: rpm(11_800),
    idleSpeed: rpm(1150),
    ratios: perKmh.map((n) => (rpm(n) * 0.3) / KMH),
    rollingRadius: 0.3,
  };

  it('veh-shift-gtr2-example — UN GTR No. 2, Annex 13: 3804 and 4869 rpm; up 28.5, 51.3, 63.9, 74.1, 82.7 km/h; clutch 15.5 km/h (memory)', () => {
    const found = shiftSpeeds.run(given);
    expect(Math.abs(found.firstEngineSpeed / rpm(1) - 3804)).toBeLessThan(1);
    expect(Math.abs(found.engineSpeed / rpm(1) - 4869)).toBeLessThan(1);
    expect(found.upSpeeds).toHaveLength(5);
    [28.5, 51.3, 63.9, 74.1, 82.7].forEach((speed, k) => {
      expect(Math.abs((found.upSpeeds[k] as number) / KMH - speed)).toBeLessThan(0.06);
    });
    expect(found.downSpeeds).toHaveLength(5);
    [15.5, 28.5, 51.3, 63.9, 74.1].forEach((speed, k) => {
      expect(Math.abs((found.downSpeeds[k] as number) / KMH - speed)).toBeLessThan(0.06);
    });
    expect(checkMethod(shiftSpeeds, given)).toEqual([]);
  });

  it('a heavier vehicle is shifted later; every gear is left at a higher speed than it is entered from above', () => {
    const light = shiftSpeeds.run(given);
    const heavy = shiftSpeeds.run({ ...given, kerbMass: 260 });
    heavy.upSpeeds.forEach((speed, k) => {
      expect(speed).toBeGreaterThan(light.upSpeeds[k] as number);
      expect(speed).toBeGreaterThan(heavy.downSpeeds[k] as number);
    });
  });

  it('refuses what the rule does not cover', () => {
    expect(() => shiftSpeeds.run({ ...given, idleSpeed: rpm(12_000) })).toThrow(/below the speed of rated power/);
    expect(() => shiftSpeeds.run({ ...given, ratedPower: 300_000 })).toThrow(/would leave first gear below idle/);
    expect(() => shiftSpeeds.run({ ...given, ratios: [10] })).toThrow(/at least 2 are accepted/);
  });
});

describe('gear of the next step', () => {
  const rule = { upSpeeds: [5, 9], downSpeeds: [3, 5], holdSteps: 2 };
  it('takes gears up, holds each for two steps, goes down while slowing, and declutches', () => {
    let use = { gear: 0, held: 2 };
    const drive = (speeds: readonly number[], slows: boolean): number[] =>
      speeds.map((speed) => {
        use = nextGear(rule, use, speed, slows, slows);
        return use.gear;
      });
    expect(drive([2, 6, 6.5, 9.5, 10, 10.5], false)).toEqual([1, 1, 2, 2, 3, 3]);
    expect(drive([8, 4.9, 4, 3.5, 2.9, 1], true)).toEqual([3, 2, 2, 2, 0, 0]);
    expect(drive([0, 0], false)).toEqual([0, 0]);
  });
  it('after declutching at speed the gear that suits the speed is taken', () => {
    expect(nextGear(rule, { gear: 0, held: 2 }, 7, false, false).gear).toBe(2);
    expect(nextGear(rule, { gear: 0, held: 2 }, 12, false, false).gear).toBe(3);
  });
});

const bike = {
  speeds: [104.5, 149.2, 220.9, 292.5, 364.1, 435.7, 507.4, 552.2, 596.9],
  torques: [61, 67.6, 73.7, 78.5, 80.9, 77.3, 76.2, 73.3, 68.7],
  ratios: [14, 8, 5.2],
  efficiency: 0.9,
  rollingRadius: 0.3,
  mass: 200,
  rollingCoefficient: 0.015,
  dragArea: 0.5,
  airDensity: 1.2,
  headWind: 0,
  slope: 0,
  gravity: 9.81,
  step: 1,
  turningMass: 8,
  idleSpeed: 104.5,
  upSpeeds: [6, 10],
  downSpeeds: [3, 6],
  holdTime: 2,
};

describe('cycle run', () => {
  it('a trapezoid by hand: 0, 4, 8, 8, 8, 4, 0 m/s', () => {
    const given = { ...bike, trace: [0, 0, 4, 8, 8, 8, 4, 0] };
    const found = cycleRun.run(given);
    const [rolling, square] = [200 * 9.81 * 0.015, 0.5 * 1.2 * 0.5];
    const pulls = [
      0,
      208 * 4 + rolling + square * 4,
      208 * 4 + rolling + square * 36,
      rolling + square * 64,
      rolling + square * 64,
    ];
    pulls.forEach((pull, k) => {
      expect(found.drivePulls[k]).toBeCloseTo(pull, 9);
    });
    near(found.distance, 2 + 6 + 8 + 8 + 6 + 2, 1e-12);
    near(found.driveEnergy, (pulls[1] as number) * 2 + (pulls[2] as number) * 6 + 2 * (pulls[3] as number) * 8, 1e-12);
    near(found.brakeEnergy, (208 * 4 - rolling - square * 36) * 6 + (208 * 4 - rolling - square * 4) * 2, 1e-12);
    // Up is 6 m/s: the step at a mean of 6 stays in first; at 8 second is taken; at a mean of 2 the clutch is open.
    expect(found.gears).toEqual([0, 1, 1, 2, 2, 2, 0]);
    expect(found.gearTimes).toEqual([2, 2, 3, 0]);
    near(found.engineSpeeds[2] as number, (6 * 14) / 0.3, 1e-12);
    near(found.engineTorques[2] as number, ((pulls[2] as number) * 0.3) / (14 * 0.9), 1e-12);
    expect(found.engineSpeeds[6]).toBe(104.5);
    expect(found.engineTorques[5]).toBeLessThan(0);
    expect(found.missed).toBe(0);
    near(found.meanGearSpeed, (104.5 + 280 + 2 * ((8 * 8) / 0.3) + (6 * 8) / 0.3) / 5, 1e-12);
    expect(checkMethod(cycleRun, given)).toEqual([]);
  });

  it('energy given less energy taken back is rolling, air and what is left in speed, on any trace', () => {
    const speed = fc.integer({ min: 0, max: 250 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(fc.array(speed, { minLength: 2, maxLength: 40 }), fc.constantFrom(0.5, 1, 2), (trace, step) => {
        const given = { ...bike, trace, step, slope: 0.02, headWind: 2 };
        const found = cycleRun.run(given);
        expect(found.gearTimes.reduce((all, one) => all + one, 0)).toBeCloseTo((trace.length - 1) * step, 9);
        expect(found.gears).toHaveLength(trace.length - 1);
        expect(checkMethod(cycleRun, given)).toEqual([]);
      }),
      { seed: 63, numRuns: 100 },
    );
  });

  it('steps are missed where torque or engine speed do not suffice, and only there', () => {
    // First gear is held for 2 s: at a mean of 18 m/s the engine would turn at 840 rad/s; so would second at 24 m/s with 640 rad/s.
    const quick = cycleRun.run({ ...bike, trace: [0, 12, 24, 24] });
    expect([quick.gears, quick.missedAt]).toEqual([
      [1, 1, 2],
      [1, 2],
    ]);
    const fast = cycleRun.run({ ...bike, ratios: [14], upSpeeds: [], downSpeeds: [], trace: [12, 13, 13] });
    expect(fast.missedAt).toEqual([1]);
    // At 13 m/s the engine would turn at 606.7 rad/s, above the last row; at a mean of 12.5 m/s at 583 rad/s.
    near(fast.engineSpeeds[1] as number, (13 * 14) / 0.3, 1e-12);
    // The clutch slips at idle speed: the greatest start that the torque there follows.
    const limit = ((61 * 14 * 0.9) / 0.3 - 200 * 9.81 * 0.015) / 208;
    const light = { ...bike, dragArea: 0, step: 0.1 };
    expect(cycleRun.run({ ...light, trace: [0, limit * 0.0999] }).missed).toBe(0);
    expect(cycleRun.run({ ...light, trace: [0, limit * 0.1001] }).missed).toBe(1);
  });

  it('standing all the time takes no energy and idles', () => {
    const found = cycleRun.run({ ...bike, trace: [0, 0, 0], slope: 0.1 });
    expect([found.driveEnergy, found.distance, found.meanGearSpeed]).toEqual([0, 0, 0]);
    expect(found.meanEngineSpeed).toBe(104.5);
  });

  it('refuses shift speeds that do not suit the gears', () => {
    expect(() => cycleRun.run({ ...bike, trace: [0, 1], upSpeeds: [5] })).toThrow(
      'Shift speeds: 1 entries read; one fewer than the gears, 2, is accepted.',
    );
    expect(() => cycleRun.run({ ...bike, trace: [0] })).toThrow(/at least 2 are accepted/);
  });
});
