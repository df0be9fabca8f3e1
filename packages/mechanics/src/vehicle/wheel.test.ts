import { describe, expect, it } from 'vitest';
import { checkMethod } from '../method/proof.ts';
import { integrate } from '../numerics/ode.ts';
import { clutchSlipEnergy } from './clutch-slip-energy.ts';
import { gyroscopicMoment } from './gyroscopic-moment.ts';
import { speedometerCorrection } from './speedometer-correction.ts';
import { tyreGrowth } from './tyre-growth.ts';
import { wheelInertiaBounds } from './wheel-inertia-bounds.ts';
import { wheelInertiaFromSwing } from './wheel-inertia-from-swing.ts';
import { wheelInertiaFromWires } from './wheel-inertia-from-wires.ts';

const near = (got: number, wanted: number, part: number): void => expect(Math.abs(got / wanted - 1)).toBeLessThan(part);
const KMH = 1 / 3.6;

describe('moment of inertia of a wheel', () => {
  const timed = { mass: 20, swings: 20, timing: 0.3, gravity: 9.81 };

  it('a hoop on an edge swings like a string as long as its diameter; its moment of inertia is m r² (textbook)', () => {
    const time = 20 * 2 * Math.PI * Math.sqrt(0.8 / 9.81);
    const given = { ...timed, arm: 0.4, time };
    near(wheelInertiaFromSwing.run(given).inertia, 20 * 0.4 ** 2, 1e-12);
    near(wheelInertiaFromSwing.run(given).gyration, 0.4, 1e-12);
    expect(checkMethod(wheelInertiaFromSwing, given)).toEqual([]);
  });

  it('a disc on its rim swings like a string of 3/2 radius; its moment of inertia is m r²/2 (textbook)', () => {
    const time = 20 * 2 * Math.PI * Math.sqrt((1.5 * 0.4) / 9.81);
    near(wheelInertiaFromSwing.run({ ...timed, arm: 0.4, time }).inertia, (20 * 0.4 ** 2) / 2, 1e-12);
  });

  it('on wires, the period found by integrating the motion of a known wheel gives that wheel back', () => {
    const [inertia, a, l, m, g] = [1.7, 0.35, 2.4, 20, 9.81];
    // Exact pull of wires that lean by the chord 2 a sin(φ/2): M = m g a² sin φ / √(l² − 4 a² sin²(φ/2)).
    const moment = (angle: number): number =>
      (-m * g * a * a * Math.sin(angle)) / Math.sqrt(l * l - 4 * a * a * Math.sin(angle / 2) ** 2);
    const start = 0.02;
    // A quarter of a twist: from rest to the middle.
    let [low, high] = [0.1, 1.5];
    for (let k = 0; k < 60; k++) {
      const t = (low + high) / 2;
      const [angle = 0] = integrate((_, [x = 0, w = 0]) => [w, moment(x) / inertia], 0, [start, 0], t);
      if (angle > 0) low = t;
      else high = t;
    }
    const given = { ...timed, wireLength: l, wireRadius: a, time: 20 * 4 * low };
    near(wheelInertiaFromWires.run(given).inertia, inertia, 1e-4);
    expect(checkMethod(wheelInertiaFromWires, given)).toEqual([]);
  });

  it('the stated spread is what a time so far off does', () => {
    const given = { ...timed, arm: 0.3, time: 30 };
    const { inertia, spread } = wheelInertiaFromSwing.run(given);
    const late = wheelInertiaFromSwing.run({ ...given, time: 30.003 }).inertia - inertia;
    near(late / 0.003, spread / 0.3, 1e-3);
    const wires = { ...timed, wireLength: 2, wireRadius: 0.3, time: 30 };
    const on = wheelInertiaFromWires.run(wires);
    near((wheelInertiaFromWires.run({ ...wires, time: 30.003 }).inertia - on.inertia) / 0.003, on.spread / 0.3, 1e-3);
  });

  it('refuses a time in which nothing of that arm can swing', () => {
    expect(() => wheelInertiaFromSwing.run({ ...timed, arm: 0.4, time: 20 })).toThrow(
      /20 swings on an arm of 0\.4 m take more than/,
    );
  });

  it('bounds hold a tyre built of rings and a wheel built of a disc', () => {
    const given = { mass: 30, tyreMass: 12, rimRadius: 0.4, outsideRadius: 0.52 };
    const { low, high } = wheelInertiaBounds.run(given);
    const built = 12 * 0.47 ** 2 + (18 * 0.4 ** 2) / 2;
    expect(low).toBeLessThan(built);
    expect(high).toBeGreaterThan(built);
    expect(low).toBeCloseTo(1.92, 12);
    expect(high).toBeCloseTo(6.1248, 12);
    expect(checkMethod(wheelInertiaBounds, given)).toEqual([]);
    expect(() => wheelInertiaBounds.run({ ...given, tyreMass: 31 })).toThrow(/at most the whole, 30 kg/);
    expect(() => wheelInertiaBounds.run({ ...given, rimRadius: 0.6 })).toThrow(/less than the outside radius/);
  });
});

describe('gyroscopic moment', () => {
  it('Khurmi & Gupta, example 14.1: disc of 5 kg and 300 mm at 300 rpm on an arm of 600 mm precesses at 16.7 rad/s (memory)', () => {
    const given = { inertia: (5 * 0.15 ** 2) / 2, speed: 10 * Math.PI * 0.15, rollingRadius: 0.15, turnRate: 16.7 };
    near(gyroscopicMoment.run(given).moment, 5 * 9.81 * 0.6, 0.005);
    expect(checkMethod(gyroscopicMoment, given)).toEqual([]);
  });

  it('is the change of the angular momentum vector in a short time', () => {
    const given = { inertia: 2, speed: 10, rollingRadius: 0.5, turnRate: 0.8 };
    const { moment, angularMomentum } = gyroscopicMoment.run(given);
    const angle = 0.8 * 1e-6;
    near(moment, (2 * angularMomentum * Math.sin(angle / 2)) / 1e-6, 1e-9);
  });
});

describe('speedometer', () => {
  const given = {
    indicated: 50 * KMH,
    designRatio: 3,
    designRollOut: 1.9209,
    ratio: 3,
    rollOut: 3.8119,
    allowance: 4 * KMH,
  };

  it('veh-donor-match — the wheel of 3811.9 mm in place of 1920.9 mm rolls 1.9844 times as far (computed)', () => {
    const found = speedometerCorrection.run(given);
    near(found.factor, 1.9844, 1e-4);
    expect(found.verdict).toBe('shows too little');
    expect(checkMethod(speedometerCorrection, given)).toEqual([]);
  });

  it('geared down by the same factor behind the sensor it is exact again', () => {
    const found = speedometerCorrection.run({ ...given, ratio: (3 * 3.8119) / 1.9209 });
    near(found.speed, given.indicated, 1e-12);
    const slow = speedometerCorrection.run({ ...given, rollOut: 1.9 });
    expect(slow.verdict).toBe('allowed');
    near(slow.mostIndicated, 1.1 * slow.speed + 4 * KMH, 1e-12);
    expect(speedometerCorrection.run({ ...given, rollOut: 1.5 }).verdict).toBe('shows too much');
  });
});

describe('growth of a tyre', () => {
  const table = {
    rowSpeeds: [60, 90, 120, 150, 180, 210].map((speed) => speed * KMH),
    rowGrowths: [0, 0.001, 0.001, 0.004, 0.007, 0.011],
  };

  it('Reimpell: 0.4 % at 150, 1.1 % at 210 km/h; halfway between rows in the middle (memory)', () => {
    const at = (speed: number) => tyreGrowth.run({ ...table, rollOut: 2, speed: speed * KMH }).grownRollOut;
    near(at(150), 2.008, 1e-9);
    near(at(210), 2.022, 1e-9);
    near(at(165), 2.011, 1e-9);
    near(at(60), 2, 1e-12);
    expect(checkMethod(tyreGrowth, { ...table, rollOut: 2, speed: 40 })).toEqual([]);
  });

  it('is not extended beyond its rows', () => {
    expect(() => tyreGrowth.run({ ...table, rollOut: 2, speed: 10 })).toThrow(/lies outside the table/);
    expect(() => tyreGrowth.run({ ...table, rollOut: 2, speed: 60 })).toThrow(/lies outside the table/);
  });
});

describe('clutch in one start', () => {
  const given = {
    engineSpeed: 250,
    torque: 40,
    efficiency: 0.9,
    ratio: 14,
    rollingRadius: 0.45,
    mass: 420,
    load: 80,
    referenceRatio: 14,
    referenceRadius: 0.3,
    referenceMass: 250,
    referenceLoad: 40,
  };

  it('heat by integrating torque times slip, and the balance of all energies', () => {
    const found = clutchSlipEnergy.run(given);
    const pull = (40 * 14 * 0.9) / 0.45;
    const [speed = 0, heat = 0, distance = 0] = integrate(
      (_, [v = 0]) => [(pull - 80) / 420, 40 * (250 - (v * 14) / 0.45), v],
      0,
      [0, 0, 0],
      found.time,
    );
    near(speed, found.syncSpeed, 1e-10);
    near(heat, found.energy, 1e-10);
    near(distance, found.distance, 1e-10);
    const passed = found.engineWork - found.energy;
    near(0.9 * passed, (420 * speed ** 2) / 2 + 80 * distance, 1e-10);
    expect(checkMethod(clutchSlipEnergy, given)).toEqual([]);
  });

  it('without load and loss the heat equals the energy of the vehicle at the end of slip, whatever the torque', () => {
    for (const torque of [20, 60]) {
      const { energy, syncSpeed } = clutchSlipEnergy.run({ ...given, torque, load: 0, efficiency: 1 });
      near(energy, (420 * syncSpeed ** 2) / 2, 1e-12);
    }
  });

  it('a larger wheel at the same ratio is harder on the clutch; the same vehicle is not', () => {
    expect(clutchSlipEnergy.run(given).energyRatio).toBeGreaterThan(3);
    const same = { ...given, referenceRadius: 0.45, referenceMass: 420, referenceLoad: 80 };
    expect(clutchSlipEnergy.run(same).energyRatio).toBe(1);
    expect(() => clutchSlipEnergy.run({ ...given, load: 2000 })).toThrow(/less than the pull of the clutch, 1120/);
  });
});
