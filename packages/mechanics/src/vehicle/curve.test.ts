import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkMethod } from '../method/proof.ts';
import { boundedCurve } from './bounded-curve.ts';
import { torqueCurve } from './torque-curve.ts';

const rpm = (n: number): number => (n * 2 * Math.PI) / 60;
const toRpm = (w: number): number => (w * 60) / (2 * Math.PI);

/** 1.0 L petrol engine, 41 kW: NREL component data FC_SI41_emis (T. Markel, 1998); read. */
const PETROL = {
  speeds: [997.9, 1424.8, 2109.4, 2793.2, 3476.9, 4160.6, 4845.3, 5273.1, 5700.0].map(rpm),
  torques: [61, 67.6, 73.7, 78.5, 80.9, 77.3, 76.2, 73.3, 68.7],
};

/** 1.9 L diesel engine, 67 kW: NREL component data, measured full-load curve; read. */
const DIESEL = {
  speeds: [
    750.0, 1000.0, 1250.0, 1500.0, 1750.0, 2000.0, 2250.0, 2500.0, 2750.0, 3000.0, 3250.0, 3500.0, 3750.0, 4000.0,
    4250.0, 4500.0,
  ].map(rpm),
  torques: [
    89.61, 119.48, 131.81, 148.48, 167.77, 177.48, 180.09, 178.35, 177.48, 177.48, 175.74, 174.0, 168.2, 159.5, 145.0,
    123.98,
  ],
};

describe('torque curve from measured rows', () => {
  it('veh-pchip-petrol-1l — values of a monotone cubic on the same rows by scipy (computed); peaks as stated with the data', () => {
    const at = [1200, 2000, 3000, 3300, 4000, 5000, 5500];
    const torque = [64.4628, 72.8456, 79.4968, 80.6599, 78.0341, 75.4619, 71.09];
    at.forEach((n, k) => {
      expect(torqueCurve.run({ ...PETROL, angularSpeed: rpm(n) }).torque).toBeCloseTo(torque[k] as number, 3);
      expect(checkMethod(torqueCurve, { ...PETROL, angularSpeed: rpm(n) })).toEqual([]);
    });
    const found = torqueCurve.run({ ...PETROL, angularSpeed: rpm(3000) });
    expect(found.peakTorque).toBeCloseTo(80.9, 2);
    expect(Math.abs(toRpm(found.peakTorqueAt) - 3477)).toBeLessThan(30);
    expect(Math.abs(found.peakPower / 41_020 - 1)).toBeLessThan(5e-4);
    expect(Math.abs(toRpm(found.peakPowerAt) - 5640)).toBeLessThan(30);
    expect(found.power).toBeCloseTo(found.torque * rpm(3000), 9);
  });

  it('veh-pchip-diesel-1p9 — values of a monotone cubic on the same rows by scipy (computed)', () => {
    const at = [900, 1600, 2300, 2875, 3600, 4400];
    const torque = [110.162, 156.605, 179.946, 177.48, 172.241, 133.228];
    at.forEach((n, k) => {
      expect(torqueCurve.run({ ...DIESEL, angularSpeed: rpm(n) }).torque).toBeCloseTo(torque[k] as number, 2);
    });
    const found = torqueCurve.run({ ...DIESEL, angularSpeed: rpm(2000) });
    expect(Math.abs(found.peakTorque / 180.09 - 1)).toBeLessThan(1e-4);
    expect(Math.abs(toRpm(found.peakTorqueAt) - 2250)).toBeLessThan(30);
    expect(Math.abs(found.peakPower / 66_838 - 1)).toBeLessThan(5e-4);
    expect(Math.abs(toRpm(found.peakPowerAt) - 3964)).toBeLessThan(30);
  });

  it('no speed of the curve beats the peaks', () => {
    const { peakTorque, peakPower } = torqueCurve.run({ ...PETROL, angularSpeed: rpm(3000) });
    for (let n = 998; n <= 5700; n++) {
      const { torque, power } = torqueCurve.run({ ...PETROL, angularSpeed: rpm(n) });
      expect(torque).toBeLessThanOrEqual(peakTorque * (1 + 1e-12));
      expect(power).toBeLessThanOrEqual(peakPower * (1 + 1e-12));
    }
  });

  it('is not extended beyond its rows, and names the row at fault', () => {
    expect(() => torqueCurve.run({ ...PETROL, angularSpeed: rpm(900) })).toThrow(
      /lies outside the rows, which run from 104\.\d+ to 596\.\d+/,
    );
    expect(() => torqueCurve.run({ speeds: [100, 90], torques: [5, 6], angularSpeed: 95 })).toThrow(
      'Measured engine speeds, entry 2: 90 rad/s is not above 100 rad/s of the entry before.',
    );
    expect(() => torqueCurve.run({ speeds: [100, 200], torques: [5, 6, 7], angularSpeed: 150 })).toThrow(
      'Full-throttle torque at each speed: 3 entries read; as many as speeds, 2, are accepted.',
    );
  });
});

const peaks = { peakTorque: 41, peakTorqueAt: rpm(5200), peakPower: 27_000, peakPowerAt: rpm(7500) };

describe('curve from peak torque and peak power alone', () => {
  it('the bounds close at both peaks', () => {
    for (const angularSpeed of [peaks.peakTorqueAt, peaks.peakPowerAt]) {
      const found = boundedCurve.run({ ...peaks, angularSpeed });
      expect(found.lower).toBeCloseTo(found.upper, 10);
      expect(found.torque).toBeCloseTo(found.upper, 10);
    }
    expect(boundedCurve.run({ ...peaks, angularSpeed: peaks.peakPowerAt }).torque * peaks.peakPowerAt).toBeCloseTo(
      27_000,
      6,
    );
  });

  it('repeats the textbook power curve x + x² − x³ between its peaks (Jazar, Vehicle Dynamics, section 4.1; memory)', () => {
    // Of peak power P at speed n, torque is (P/n)(1 + x − x²): greatest at x = 1/2, 1.25 P/n.
    const [power, at] = [50_000, 500];
    const engine = { peakTorque: (1.25 * power) / at, peakTorqueAt: at / 2, peakPower: power, peakPowerAt: at };
    for (let x = 0.5; x <= 1.0001; x += 0.05) {
      const found = boundedCurve.run({ ...engine, angularSpeed: Math.min(at, x * at) });
      expect(found.torque).toBeCloseTo((power / at) * (1 + x - x * x), 8);
    }
  });

  it('two measured engines, known only by their peaks: between them each measured torque lies within the bounds', () => {
    for (const engine of [PETROL, DIESEL]) {
      const { peakTorque, peakTorqueAt, peakPower, peakPowerAt } = torqueCurve.run({
        ...engine,
        angularSpeed: engine.speeds[2] as number,
      });
      engine.speeds.forEach((angularSpeed, k) => {
        const { lower, upper } = boundedCurve.run({ peakTorque, peakTorqueAt, peakPower, peakPowerAt, angularSpeed });
        const measured = engine.torques[k] as number;
        expect(measured).toBeLessThanOrEqual(upper * (1 + 1e-3));
        expect(measured, `${toRpm(angularSpeed)} rpm`).toBeGreaterThanOrEqual(lower * (1 - 1e-3));
      });
    }
  });

  it('the stated curve lies within the bounds at every speed; every formula shown gives the value returned', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 300, noNaN: true }),
        fc.double({ min: 100, max: 800, noNaN: true }),
        fc.double({ min: 1.01, max: 4, noNaN: true }),
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        fc.double({ min: 0.01, max: 1.5, noNaN: true }),
        (peakTorque, peakTorqueAt, apart, part, place) => {
          const peakPowerAt = peakTorqueAt * apart;
          // Peak power lies between that of peak torque at its own speed and at the other.
          const peakPower = peakTorque * peakTorqueAt * (1 + part * (apart - 1));
          const input = { peakTorque, peakTorqueAt, peakPower, peakPowerAt, angularSpeed: place * peakPowerAt };
          const found = boundedCurve.run(input);
          expect(found.lower).toBeLessThanOrEqual(found.upper * (1 + 1e-12));
          expect(found.torque).toBeGreaterThanOrEqual(found.lower * (1 - 1e-12));
          expect(found.torque).toBeLessThanOrEqual(peakTorque * (1 + 1e-12));
          expect(found.torque * input.angularSpeed).toBeLessThanOrEqual(peakPower * (1 + 1e-12));
          expect(checkMethod(boundedCurve, input)).toEqual([]);
        },
      ),
      { seed: 61, numRuns: 300 },
    );
  });

  it('refuses peaks that contradict each other, and speeds far above the peak', () => {
    const at = { ...peaks, angularSpeed: rpm(6000) };
    expect(() => boundedCurve.run({ ...at, peakPowerAt: rpm(5000) })).toThrow(
      /Speed of peak power must be above the speed of peak torque/,
    );
    expect(() => boundedCurve.run({ ...at, peakPower: 40_000 })).toThrow(
      /asks for 50\.9\d* N·m, more than the peak torque of 41 N·m/,
    );
    expect(() => boundedCurve.run({ ...at, peakPower: 20_000 })).toThrow(
      /makes 22326\.\d* W, more than the peak power of 20000 W/,
    );
    expect(() => boundedCurve.run({ ...at, angularSpeed: rpm(11_400) })).toThrow(
      /more than 1\.5 times the speed of peak power/,
    );
  });
});
