import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MethodError } from '../method/method.ts';
import { checkMethod } from '../method/proof.ts';
import { ratioOverall } from './overall.ts';
import { ratioStage } from './stage.ts';
import { ratioTrainPower } from './train-power.ts';

const rpm = (n: number): number => (n * 2 * Math.PI) / 60;

describe('ratios', () => {
  it('veh-train-kh-13-1 — Khurmi & Gupta, example 13.1: 975 rpm through 20:50, 25:75, 26:65 gives 52 rpm (read)', () => {
    const pairs = [
      [20, 50],
      [25, 75],
      [26, 65],
    ] as const;
    const ratios = pairs.map(([teethDriver, teethDriven]) => ratioStage.run({ teethDriver, teethDriven }).ratio);
    const { overall } = ratioOverall.run({ ratios });
    expect(975 / overall).toBeCloseTo(52, 10);
    expect(checkMethod(ratioOverall, { ratios })).toEqual([]);
    const driven = ratioTrainPower.run({ torque: 1, angularSpeed: rpm(975), ratios, efficiencies: [1, 1, 1] });
    expect(driven.angularSpeedOut).toBeCloseTo(rpm(52), 12);
  });

  it('veh-train-shigley-30to1 — Shigley, example 13-4: 16:96 and 16:80 make exactly 30 (memory)', () => {
    const six = ratioStage.run({ teethDriver: 16, teethDriven: 96 }).ratio;
    const five = ratioStage.run({ teethDriver: 16, teethDriven: 80 }).ratio;
    expect([six, five, ratioOverall.run({ ratios: [six, five] }).overall]).toEqual([6, 5, 30]);
    expect(checkMethod(ratioStage, { teethDriver: 16, teethDriven: 96 })).toEqual([]);
  });

  it('the overall ratio is the product, in whatever order and grouping', () => {
    const ratios = fc.array(fc.double({ min: 0.2, max: 6, noNaN: true }), { minLength: 1, maxLength: 7 });
    fc.assert(
      fc.property(ratios, ratios, (one, other) => {
        const both = ratioOverall.run({ ratios: [...one, ...other] }).overall;
        const apart = ratioOverall.run({ ratios: one }).overall * ratioOverall.run({ ratios: other }).overall;
        expect(both / apart).toBeCloseTo(1, 12);
        expect(ratioOverall.run({ ratios: [...other, ...one].reverse() }).overall / both).toBeCloseTo(1, 12);
      }),
      { seed: 41, numRuns: 200 },
    );
  });

  it('refuses a train without stages', () => {
    expect(() => ratioOverall.run({ ratios: [] })).toThrow(
      'Ratio of each stage, input speed over output speed: 0 entries read; at least 1 are accepted.',
    );
    expect(() => ratioOverall.run({ ratios: [2, 0] })).toThrow(/entry 2: 0 is out of range; it must be more than 0/);
  });
});

describe('torque, speed and power along a train', () => {
  it('veh-amp-1 — 80.9 N·m through four stages: 142.71, 363.62, 846.5, 1219.0 N·m (computed)', () => {
    const train = {
      torque: 80.9,
      angularSpeed: rpm(3477),
      ratios: [1.8, 2.6, 2.4, 1.5],
      efficiencies: [0.98, 0.98, 0.97, 0.96],
    };
    const found = ratioTrainPower.run(train);
    [80.9, 142.71, 363.62, 846.5, 1219].forEach((torque, k) => {
      expect(Math.abs((found.torques[k] as number) / torque - 1)).toBeLessThan(5e-4);
    });
    expect(checkMethod(ratioTrainPower, train)).toEqual([]);
  });

  it('veh-train-kh-13-19 — Khurmi & Gupta, example 13.19: 100 N·m at 1000 rpm to 37.5 rpm without loss is 2666.7 N·m (read)', () => {
    const found = ratioTrainPower.run({
      torque: 100,
      angularSpeed: rpm(1000),
      ratios: [1000 / 37.5],
      efficiencies: [1],
    });
    expect(found.torqueOut).toBeCloseTo(2666.7, 1);
    expect(found.angularSpeedOut).toBeCloseTo(rpm(37.5), 12);
  });

  it('power in is power out and losses, shaft by shaft', () => {
    const stages = fc.array(
      fc.tuple(fc.double({ min: 0.2, max: 6, noNaN: true }), fc.double({ min: 0.5, max: 1, noNaN: true })),
      { minLength: 1, maxLength: 7 },
    );
    fc.assert(
      fc.property(
        stages,
        fc.double({ min: 0.001, max: 500, noNaN: true }),
        fc.double({ min: 0.001, max: 1000, noNaN: true }),
        (list, torque, angularSpeed) => {
          const train = {
            torque,
            angularSpeed,
            ratios: list.map(([i]) => i),
            efficiencies: list.map(([, eta]) => eta),
          };
          const found = ratioTrainPower.run(train);
          expect(Math.abs(found.residual)).toBeLessThanOrEqual(1e-12 * found.powerIn);
          found.losses.forEach((loss, k) => {
            const [before, after] = [found.powers[k] as number, found.powers[k + 1] as number];
            expect(Math.abs(before - after - loss)).toBeLessThanOrEqual(1e-12 * found.powerIn);
            expect(loss).toBeGreaterThanOrEqual(0);
          });
          expect(checkMethod(ratioTrainPower, train)).toEqual([]);
        },
      ),
      { seed: 42, numRuns: 200 },
    );
  });

  it('refuses lists of different length and an efficiency above one', () => {
    const train = { torque: 10, angularSpeed: 100, ratios: [2, 3], efficiencies: [0.9] };
    expect(() => ratioTrainPower.run(train)).toThrow(MethodError);
    expect(() => ratioTrainPower.run(train)).toThrow('must be a list as long as the ratios, 2 entries; read 1.');
    expect(() => ratioTrainPower.run({ ...train, efficiencies: [0.9, 1.01] })).toThrow(
      /entry 2: 1\.01 is out of range; it must be at least 0 and at most 1/,
    );
  });
});
