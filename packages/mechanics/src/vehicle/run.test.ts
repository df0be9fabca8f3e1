import { describe, expect, it } from 'vitest';
import { checkMethod } from '../method/proof.ts';
import { acceleration } from './acceleration.ts';
import { topSpeed } from './top-speed.ts';

const near = (got: number, wanted: number, part: number): void => expect(Math.abs(got / wanted - 1)).toBeLessThan(part);
const KMH = 1 / 3.6;
const rpm = (n: number): number => (n * 2 * Math.PI) / 60;

/** Petrol engine of 1.0 litre, 41 kW: measured full-load rows of an open data set of a U.S. national laboratory (read). */
const petrol = {
  speeds: [104.5, 149.2, 220.9, 292.5, 364.1, 435.7, 507.4, 552.2, 596.9],
  torques: [61, 67.6, 73.7, 78.5, 80.9, 77.3, 76.2, 73.3, 68.7],
};
const car = {
  ...petrol,
  efficiency: 0.9,
  rollingRadius: 0.29,
  mass: 550,
  rollingCoefficient: 0.015,
  dragArea: 0.7,
  airDensity: 1.2,
  headWind: 0,
  slope: 0,
  gravity: 9.81,
};

describe('top speed', () => {
  it('veh-top-1 — power limits: 154.8 km/h at 5522 rpm (computed with a reference library)', () => {
    const given = { ...car, ratios: [3.9] };
    const found = topSpeed.run(given);
    near(found.speed / KMH, 154.8, 5e-4);
    near(found.angularSpeed / rpm(1), 5522, 5e-4);
    expect([found.limit, found.gear]).toEqual(['power', 1]);
    expect(Math.abs(found.surplus)).toBeLessThan(1e-9);
    expect(checkMethod(topSpeed, given)).toEqual([]);
  });

  it('veh-top-2 — the engine’s highest speed limits: 111.28 km/h at 5700 rpm (computed with a reference library)', () => {
    const given = { ...car, dragArea: 0.55, ratios: [5.6] };
    const found = topSpeed.run(given);
    near(found.speed / KMH, 111.28, 5e-4);
    near(found.angularSpeed / rpm(1), 5700, 5e-4);
    expect(found.limit).toBe('engine speed');
    expect(found.surplus).toBeGreaterThan(0);
    expect(checkMethod(topSpeed, given)).toEqual([]);
  });

  it('the best of several gears; an overdrive may be slower than the gear before it', () => {
    const found = topSpeed.run({ ...car, ratios: [8, 5.6, 3.9, 2.6] });
    expect(found.gear).toBe(3);
    near(found.speed, topSpeed.run({ ...car, ratios: [3.9] }).speed, 1e-14);
    expect(found.gearSpeeds[3]).toBeLessThan(found.speed);
    expect(found.gearSpeeds[0]).toBeCloseTo((596.9 * 0.29) / 8, 12);
  });

  it('constant torque against the square of speed, in closed form; a head wind takes its own speed away', () => {
    const flat = { ...car, speeds: [10, 10_000], torques: [50, 50], rollingCoefficient: 0, ratios: [4] };
    const still = Math.sqrt((2 * ((50 * 4 * 0.9) / 0.29)) / (1.2 * 0.7));
    near(topSpeed.run(flat).speed, still, 1e-12);
    near(topSpeed.run({ ...flat, headWind: 5 }).speed, still - 5, 1e-12);
  });

  it('takes the last of several crossings, and finds a hump narrower than the scan', () => {
    // Torque that dips below the load and comes back: three crossings.
    const dip = {
      ...car,
      dragArea: 0,
      rollingCoefficient: 0.02,
      ratios: [5],
      speeds: [100, 200, 300, 400, 500],
      torques: [10, 4, 10, 4, 2],
    };
    const { speed, angularSpeed } = topSpeed.run(dip);
    expect(angularSpeed).toBeGreaterThan(300);
    expect(angularSpeed).toBeLessThan(400);
    expect(topSpeed.run(dip).surplus).toBeCloseTo(0, 9);
    expect(speed).toBeCloseTo((angularSpeed * 0.29) / 5, 12);
    // Torque in proportion to speed, K v at the ground: the pull touches a + c v² near K/(2c) and nowhere else.
    const [k, c] = [8, 0.5 * 1.2 * 0.7];
    const a = ((k * k) / (4 * c)) * (1 - 1e-7);
    const slope = (k * 0.29 * 0.29) / (5 * 5 * 0.9);
    const hump = {
      ...car,
      rollingCoefficient: a / (550 * 9.81),
      ratios: [5],
      speeds: [100, 333],
      torques: [100 * slope, 333 * slope],
    };
    near(topSpeed.run(hump).speed, (k / (2 * c)) * (1 + Math.sqrt(1e-7)), 1e-9);
  });

  it('refuses a slope that no gear climbs', () => {
    expect(() => topSpeed.run({ ...car, slope: 0.6, ratios: [5, 3] })).toThrow(
      'In no gear does full throttle hold a steady speed against this load.',
    );
    expect(() => topSpeed.run({ ...car, ratios: [3, 5] })).toThrow(/entry 2: 5 is not below 3 of the gear before/);
    expect(() => topSpeed.run({ ...car, ratios: [5], torques: [1, 2] })).toThrow(
      /2 entries read; as many as speeds, 9/,
    );
  });
});

const gears = [3.42, 1.95, 1.28, 0.95, 0.76].map((ratio) => ratio * 4.1);
const start = {
  ...car,
  ratios: gears,
  wheelInertia: 2,
  engineInertia: 0.1,
  shiftSpeed: rpm(5500),
  shiftTime: 0,
  slipSpeed: 104.5,
  gripForce: 1e6,
  fromSpeed: 0,
  toSpeed: 80 * KMH,
};
/** No losses on the road. */
const free = { ...start, rollingCoefficient: 0, dragArea: 0, wheelInertia: 0, engineInertia: 0 };

describe('acceleration', () => {
  it('veh-accel-1 — 0 to 80 km/h: 42.88 km/h at 2.9098 s, 75.21 km/h at 6.273 s, 7.0557 s in third (computed with a reference library)', () => {
    const found = acceleration.run(start);
    near(found.time, 7.0557, 0.003);
    expect([found.lastGear, found.shifts]).toEqual([3, 2]);
    [42.88, 75.21, 80].forEach((speed, k) => {
      near((found.gearEndSpeeds[k] as number) / KMH, speed, 0.003);
    });
    [2.9098, 6.273, 7.0557].forEach((time, k) => {
      near(found.gearEndTimes[k] as number, time, 0.003);
    });
    expect(checkMethod(acceleration, start)).toEqual([]);
  });

  it('constant power without losses: t = m (v₂² − v₁²)/(2 P), s = m (v₂³ − v₁³)/(3 P)', () => {
    const power = 20_000;
    const speeds = Array.from({ length: 241 }, (_, k) => 100 * 1.01 ** k);
    const given = {
      ...free,
      speeds,
      torques: speeds.map((speed) => power / speed),
      efficiency: 1,
      ratios: [10],
      shiftSpeed: 1000,
      slipSpeed: 100,
      fromSpeed: 3,
      toSpeed: 25,
    };
    const found = acceleration.run(given);
    near(found.time, (550 * (25 ** 2 - 3 ** 2)) / (2 * power), 1e-6);
    near(found.distance, (550 * (25 ** 3 - 3 ** 3)) / (3 * power), 1e-6);
    near(found.driveWork, power * found.time, 1e-6);
    expect(checkMethod(acceleration, given)).toEqual([]);
  });

  it('constant pull against drag: t = m/(2√(FC)) ln((w + v)/(w − v)), w = √(F/C)', () => {
    const given = {
      ...free,
      dragArea: 0.7,
      speeds: [10, 1000],
      torques: [50, 50],
      ratios: [8],
      shiftSpeed: 900,
      slipSpeed: 10,
      toSpeed: 20,
    };
    const pull = (50 * 8 * 0.9) / 0.29;
    const square = 0.5 * 1.2 * 0.7;
    const limit = Math.sqrt(pull / square);
    near(
      acceleration.run(given).time,
      (550 / (2 * Math.sqrt(pull * square))) * Math.log((limit + 20) / (limit - 20)),
      1e-9,
    );
    // The same held back by the tyre: half the pull takes twice the time when nothing resists.
    const held = { ...given, dragArea: 0, gripForce: pull / 2 };
    near(acceleration.run(held).time, (2 * 550 * 20) / pull, 1e-9);
    expect(checkMethod(acceleration, held)).toEqual([]);
  });

  it('a shift coasts by the closed form v = √(A/C) tan(φ − t √(AC)/m), and the energies balance', () => {
    const given = { ...start, shiftTime: 0.7, wheelInertia: 0, ratios: gears.slice(0, 2), toSpeed: 60 * KMH };
    const found = acceleration.run(given);
    const [a, c] = [550 * 9.81 * 0.015, 0.5 * 1.2 * 0.7];
    const from = found.gearEndSpeeds[0] as number;
    const after = Math.sqrt(a / c) * Math.tan(Math.atan(from * Math.sqrt(c / a)) - (0.7 * Math.sqrt(a * c)) / 550);
    const second = acceleration.run({ ...given, ratios: gears.slice(1, 2), fromSpeed: after });
    near(found.time, (found.gearEndTimes[0] as number) + 0.7 + second.time, 1e-9);
    near(found.driveWork, found.kineticGain + found.engineGain + found.loadWork, 1e-10);
    expect(found.engineGain).toBeGreaterThan(0);
    expect(checkMethod(acceleration, given)).toEqual([]);
  });

  it('uphill, heavier, or with heavier wheels it takes longer; two parts of a run add up', () => {
    const { time, distance } = acceleration.run(start);
    for (const worse of [
      { slope: 0.05 },
      { mass: 600 },
      { wheelInertia: 6 },
      { engineInertia: 0.2 },
      { headWind: 5 },
      { shiftTime: 0.3 },
    ])
      expect(acceleration.run({ ...start, ...worse }).time).toBeGreaterThan(time);
    const low = acceleration.run({ ...start, toSpeed: 8 });
    const high = acceleration.run({ ...start, fromSpeed: 8 });
    near(low.time + high.time, time, 1e-9);
    near(low.distance + high.distance, distance, 1e-9);
  });

  it('names the speed and gear where the run ends early', () => {
    expect(() => acceleration.run({ ...start, toSpeed: 50 })).toThrow(
      /is not reached; in gear \d at [\d.]+ m\/s the pull/,
    );
    expect(() => acceleration.run({ ...start, ratios: gears.slice(0, 1), toSpeed: 20 })).toThrow(
      /more than the last gear reaches/,
    );
    expect(() => acceleration.run({ ...start, slope: 0.5 })).toThrow(/in gear 1 at 0 m\/s the pull/);
    expect(() => acceleration.run({ ...start, fromSpeed: 30 })).toThrow(/above the speed at the start, 30 m\/s/);
    expect(() => acceleration.run({ ...start, shiftSpeed: 700 })).toThrow(/at most 596\.9 rad\/s is accepted/);
    expect(() => acceleration.run({ ...start, slipSpeed: 50 })).toThrow(/at least 104\.5 and below the shift speed/);
    expect(() => acceleration.run({ ...start, slope: -0.3, shiftTime: 5, fromSpeed: 10, toSpeed: 13 })).toThrow(
      /passed by rolling downhill/,
    );
  });
});
