import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkMethod } from '../method/proof.ts';
import { roadSpeed } from './road-speed.ts';
import { shaftSpeed } from './shaft-speed.ts';
import { tractiveForce } from './tractive-force.ts';

const INCH = 0.0254;
const MPH = 0.44704;
const POUND_FORCE = 0.45359237 * 9.80665;
const rpm = (n: number): number => (n * 2 * Math.PI) / 60;
const toRpm = (w: number): number => (w * 60) / (2 * Math.PI);

describe('road speed and shaft speed', () => {
  it('veh-rpm-65mph — gear-ratio handout: 65 mph, 3.08, 30 in tyre: 2242 rpm with 336 rounded (read)', () => {
    const drive = { speed: 65 * MPH, overallRatio: 3.08, rollOut: Math.PI * 30 * INCH };
    const n = toRpm(shaftSpeed.run(drive).angularSpeed);
    expect(n).toBeCloseTo(2243.2, 0);
    expect(Math.abs(n / 2242 - 1)).toBeLessThan(1e-3);
    expect(checkMethod(shaftSpeed, drive)).toEqual([]);
  });

  it('veh-revs-per-mile — Gillespie, ch. 2: 801 turns a mile is a rolling radius of 12.59 in (memory)', () => {
    const rollOut = (1760 * 3 * 12 * INCH) / 801;
    const { rollingRadius } = tractiveForce.run({ torque: 1, overallRatio: 1, efficiency: 1, rollOut });
    expect(rollingRadius / INCH).toBeCloseTo(12.59, 2);
    expect(roadSpeed.run({ angularSpeed: rpm(801), overallRatio: 1, rollOut }).speed).toBeCloseTo(60 * MPH, 9);
  });

  it('veh-donor-match — same engine speed at 80 km/h on both wheels: 3609.4 rpm (computed)', () => {
    const speed = 80 / 3.6;
    const donor = shaftSpeed.run({ speed, overallRatio: 5.2, rollOut: 1.9209 });
    const fitted = shaftSpeed.run({ speed, overallRatio: 10.319, rollOut: 3.8119 });
    expect(Math.abs(toRpm(donor.angularSpeed) / 3609.4 - 1)).toBeLessThan(5e-4);
    expect(Math.abs(fitted.angularSpeed / donor.angularSpeed - 1)).toBeLessThan(5e-4);
  });

  it('veh-tractive-gillespie-1 — 26.4 mph in first at 4400 rpm (memory)', () => {
    const drive = { angularSpeed: rpm(4400), overallRatio: 4.28 * 2.92, rollOut: 2 * Math.PI * 12.59 * INCH };
    expect(Math.abs(roadSpeed.run(drive).speed / MPH / 26.4 - 1)).toBeLessThan(5e-3);
    expect(checkMethod(roadSpeed, drive)).toEqual([]);
  });

  it('veh-acc-wong-3 — 98.7 km/h at 3500 rpm, 4.28, 0.33 m and 3 % slip (memory)', () => {
    const { speed } = roadSpeed.run({ angularSpeed: rpm(3500), overallRatio: 4.28, rollOut: 2 * Math.PI * 0.33 });
    expect(Math.abs(speed * 3.6 * (1 - 0.03) - 98.7)).toBeLessThan(0.3);
  });

  it('undo each other', () => {
    const positive = fc.double({ min: 0.05, max: 50, noNaN: true });
    fc.assert(
      fc.property(positive, positive, positive, (angularSpeed, overallRatio, rollOut) => {
        const { speed } = roadSpeed.run({ angularSpeed, overallRatio, rollOut });
        expect(shaftSpeed.run({ speed, overallRatio, rollOut }).angularSpeed / angularSpeed).toBeCloseTo(1, 12);
      }),
      { seed: 62, numRuns: 200 },
    );
    expect(() => roadSpeed.run({ angularSpeed: 1, overallRatio: 0, rollOut: 1 })).toThrow(
      /is out of range; it must be more than 0/,
    );
  });
});

describe('pull at the ground', () => {
  const common = { torque: 201 * 12 * INCH * POUND_FORCE, rollOut: 2 * Math.PI * 12.59 * INCH };

  it('veh-tractive-gillespie-1 — Gillespie, ch. 2, example problem 1: 2290 lbf in first, 537 lbf in fifth (memory)', () => {
    const first = { ...common, overallRatio: 4.28 * 2.92, efficiency: 0.966 * 0.99 };
    const fifth = { ...common, overallRatio: 2.92, efficiency: 0.97 * 0.99 };
    expect(Math.abs(tractiveForce.run(first).force / POUND_FORCE / 2290 - 1)).toBeLessThan(5e-3);
    expect(Math.abs(tractiveForce.run(fifth).force / POUND_FORCE / 537 - 1)).toBeLessThan(5e-3);
    expect(checkMethod(tractiveForce, first)).toEqual([]);
  });

  it('veh-acc-wong-3 — Wong, Theory of Ground Vehicles, example 3.1: 3583 N (memory)', () => {
    const drive = { torque: 325, overallRatio: 4.28, efficiency: 0.85, rollOut: 2 * Math.PI * 0.33 };
    expect(Math.abs(tractiveForce.run(drive).force - 3583)).toBeLessThan(2);
  });

  it('refuses an efficiency above one', () => {
    expect(() => tractiveForce.run({ ...common, overallRatio: 3, efficiency: 1.2 })).toThrow(
      'Efficiency from engine to wheel: 1.2 is out of range; it must be at least 0 and at most 1.',
    );
  });
});
