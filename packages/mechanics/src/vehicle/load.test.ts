import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkMethod } from '../method/proof.ts';
import { integrate } from '../numerics/ode.ts';
import { gradeability } from './gradeability.ts';
import { massFactor } from './mass-factor.ts';
import { roadLoad } from './road-load.ts';

const near = (got: number, wanted: number, part: number): void => expect(Math.abs(got / wanted - 1)).toBeLessThan(part);
const KMH = 1 / 3.6;

const still = { headWind: 0, slope: 0, gravity: 9.81, airDensity: 1.2, acceleration: 0, massFactor: 1 };

describe('road load', () => {
  // 40 CFR 86.529-98, Figure F98-9 (read): loaded mass, constant part, square part at 1 km/h, force at 65 km/h, seconds from 70 to 60 km/h.
  it.each([
    ['veh-coast-cfr-100', 100, 0, 0.0224, 94.8, 2.95],
    ['veh-coast-cfr-150', 150, 4.32, 0.0238, 104.9, 3.99],
    ['veh-coast-cfr-200', 200, 8.69, 0.0252, 115.1, 4.85],
    ['veh-coast-cfr-300', 300, 17.43, 0.0279, 135.4, 6.18],
  ] as const)(
    '%s — force at 65 km/h, and the time to coast from 70 to 60 km/h',
    (_, mass, constant, square, at65, seconds) => {
      const given = {
        ...still,
        mass,
        rollingCoefficient: constant / (mass * 9.81),
        dragArea: (2 * square * 3.6 ** 2) / 1.2,
        speed: 65 * KMH,
      };
      expect(Math.abs(roadLoad.run(given).force - at65)).toBeLessThan(0.3);
      const slowing = (speed: number) => -mass / roadLoad.run({ ...given, speed }).force;
      const [time = 0] = integrate((speed) => [slowing(speed)], 70 * KMH, [0], 60 * KMH);
      near(time, seconds, 0.005);
      expect(checkMethod(roadLoad, given)).toEqual([]);
    },
  );

  it('coasting down against the closed form m/√(AC) (atan(v₁√(C/A)) − atan(v₂√(C/A)))', () => {
    const given = { ...still, mass: 250, rollingCoefficient: 0.014, dragArea: 0.6, speed: 0 };
    const [a, c] = [250 * 9.81 * 0.014, 0.5 * 1.2 * 0.6];
    const [time = 0] = integrate((speed) => [-250 / roadLoad.run({ ...given, speed }).force], 30, [0], 2);
    const part = Math.sqrt(c / a);
    near(time, (250 / Math.sqrt(a * c)) * (Math.atan(30 * part) - Math.atan(2 * part)), 1e-9);
  });

  it('veh-acc-wong-3 — Wong, example 3.1: mass factor 1.084, pull 3583 N, 98.7 km/h, 1.2 m/s² (memory)', () => {
    const mass = 21240 / 9.81;
    const wheel = (244.6 / 9.81) * 0.254 ** 2;
    // The book leaves the efficiency out of the engine's part.
    const { massFactor: factor } = massFactor.run({
      mass,
      wheelInertias: [wheel, wheel, wheel, wheel],
      wheelRadii: [0.33, 0.33, 0.33, 0.33],
      drivenRadius: 0.33,
      partInertias: [0.733],
      partRatios: [4.28],
      partEfficiencies: [1],
      driver: 'engine',
    });
    expect(Math.abs(factor - 1.084)).toBeLessThan(0.002);
    const pull = (325 * 4.28 * 0.85) / 0.33;
    expect(Math.abs(pull - 3583)).toBeLessThan(2);
    const speed = (((3500 * 2 * Math.PI) / 60) * 0.33 * 0.97) / 4.28;
    expect(Math.abs(speed / KMH - 98.7)).toBeLessThan(0.3);
    const given = {
      ...still,
      mass,
      rollingCoefficient: 0.02,
      dragArea: 0.38 * 1.86,
      airDensity: 1.225,
      speed,
      massFactor: factor,
    };
    const acceleration = (pull - roadLoad.run(given).force) / (factor * mass);
    expect(Math.abs(acceleration - 1.2)).toBeLessThan(0.02);
    expect(roadLoad.run({ ...given, acceleration }).force).toBeCloseTo(pull, 8);
    expect(checkMethod(roadLoad, { ...given, acceleration })).toEqual([]);
  });

  it('a tail wind faster than the vehicle pushes; downhill the slope pushes', () => {
    const given = { ...still, mass: 100, rollingCoefficient: 0, dragArea: 0.5, speed: 5, headWind: -15 };
    expect(roadLoad.run(given).force).toBeCloseTo(-0.5 * 1.2 * 0.5 * 100, 12);
    expect(roadLoad.run({ ...given, headWind: 0, dragArea: 0, slope: -0.1 }).force).toBeCloseTo(
      -981 * Math.sin(0.1),
      10,
    );
    expect(checkMethod(roadLoad, given)).toEqual([]);
  });

  it('refuses a mass of zero and a negative speed', () => {
    const given = { ...still, mass: 100, rollingCoefficient: 0.01, dragArea: 0.5, speed: 5 };
    expect(() => roadLoad.run({ ...given, mass: 0 })).toThrow('Mass of the loaded vehicle: 0 kg is out of range');
    expect(() => roadLoad.run({ ...given, speed: -1 })).toThrow(/Road speed: -1 m\/s is out of range/);
  });
});

describe('mass factor', () => {
  it('veh-acc-kh-3-15 — Khurmi & Gupta, example 3.15: equivalent mass 1590 + 9.44 i², best ratio 22, 1.38 m/s² (read)', () => {
    const given = {
      mass: 1500,
      wheelInertias: [8],
      wheelRadii: [0.3],
      drivenRadius: 0.3,
      partInertias: [1],
      partRatios: [22],
      partEfficiencies: [0.85],
      driver: 'engine',
    } as const;
    near(massFactor.run(given).equivalentMass, 1590 + 9.44 * 22 ** 2, 0.001);
    const resistance = 300 + 1500 * 9.81 * 0.25;
    const acceleration = (ratio: number): number =>
      ((200 * 0.85 * ratio) / 0.3 - resistance) / massFactor.run({ ...given, partRatios: [ratio] }).equivalentMass;
    near(acceleration(22), 1.38, 0.01);
    expect(acceleration(22)).toBeGreaterThan(acceleration(21));
    expect(acceleration(22)).toBeGreaterThan(acceleration(23));
    expect(checkMethod(massFactor, given)).toEqual([]);
  });

  it('veh-acc-kh-3-13 — Khurmi & Gupta, example 3.13: a falling load drives the gears, 0.231 and 0.216 m/s² (read)', () => {
    const fall = (efficiency: number): number => {
      // The drum's shaft (100 kg·m²) turns with the load; the other (5 kg·m²) six times as fast.
      const given = {
        mass: 75,
        wheelInertias: [100],
        wheelRadii: [0.3],
        drivenRadius: 0.3,
        partInertias: [5],
        partRatios: [6],
        partEfficiencies: [efficiency],
        driver: 'load',
      } as const;
      expect(checkMethod(massFactor, given)).toEqual([]);
      return (75 * 9.81) / massFactor.run(given).equivalentMass;
    };
    expect(Math.abs(fall(1) - 0.231)).toBeLessThan(0.001);
    expect(Math.abs(fall(0.9) - 0.216)).toBeLessThan(0.001);
  });

  it('veh-tractive-gillespie-1 — Gillespie, chapter 2, example problem 1: 360.2 in·lb·s² at the wheel in first gear (memory)', () => {
    const unit = 4.4482216152605 * 0.0254;
    const given = {
      mass: 1000,
      wheelInertias: [22 * unit],
      wheelRadii: [12.59 * 0.0254],
      drivenRadius: 12.59 * 0.0254,
      partInertias: [0.8 * unit, 1.3 * unit, 1.2 * unit],
      partRatios: [4.28 * 2.92, 4.28 * 2.92, 2.92],
      partEfficiencies: [1, 1, 1],
      driver: 'engine',
    } as const;
    const found = massFactor.run(given);
    near((found.driveInertia + 22 * unit) / unit, 360.2, 0.005);
    near(found.equivalentMass, 1000 + (found.driveInertia + 22 * unit) / (12.59 * 0.0254) ** 2, 1e-12);
    expect(checkMethod(massFactor, given)).toEqual([]);
  });

  it('kinetic energy of all turning parts is that of the equivalent mass, without losses', () => {
    const v = 7;
    const found = massFactor.run({
      mass: 200,
      wheelInertias: [0.5, 3],
      wheelRadii: [0.3, 0.6],
      drivenRadius: 0.6,
      partInertias: [0.02, 0.01],
      partRatios: [14, 3],
      partEfficiencies: [1, 1],
      driver: 'load',
    });
    const turning =
      0.5 * (v / 0.3) ** 2 + 3 * (v / 0.6) ** 2 + 0.02 * ((v / 0.6) * 14) ** 2 + 0.01 * ((v / 0.6) * 3) ** 2;
    near(found.equivalentMass * v * v, 200 * v * v + turning, 1e-12);
  });

  it('refuses lists of different length', () => {
    expect(() =>
      massFactor.run({
        mass: 100,
        wheelInertias: [1],
        wheelRadii: [0.3],
        drivenRadius: 0.3,
        partInertias: [1],
        partRatios: [],
        partEfficiencies: [1],
        driver: 'engine',
      }),
    ).toThrow('Ratios must be a list of 1 entries, one for each moment of inertia; read 0.');
  });
});

describe('gradeability', () => {
  const given = { force: 1500, air: 0, mass: 450, rollingCoefficient: 0.015, gravity: 9.81 };

  it('veh-grade-1 — 19.002°, 34.437 %, not the 32.48 % of small angles (computed)', () => {
    const found = gradeability.run(given);
    near((found.slope * 180) / Math.PI, 19.002, 2e-4);
    near(found.grade, 0.34437, 2e-4);
    expect(checkMethod(gradeability, given)).toEqual([]);
  });

  it('the road load on that slope is the pull', () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(number(50, 2000), number(0, 0.4), number(0, 0.9), (mass, rollingCoefficient, part) => {
        const one = { force: part * mass * 9.81, air: 0, mass, rollingCoefficient, gravity: 9.81 };
        const { slope } = gradeability.run(one);
        const { force } = roadLoad.run({ ...still, mass, rollingCoefficient, dragArea: 0, speed: 1, slope });
        expect(Math.abs(force - one.force)).toBeLessThan(1e-9 * mass * 9.81);
        expect(checkMethod(gradeability, one)).toEqual([]);
      }),
      { seed: 62, numRuns: 200 },
    );
  });

  it('refuses a pull that no slope asks for', () => {
    expect(() => gradeability.run({ ...given, force: 5000 })).toThrow(
      /5000 N less 0 N for the air is more than any slope asks for/,
    );
  });
});
