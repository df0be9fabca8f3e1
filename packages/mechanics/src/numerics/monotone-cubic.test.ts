import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cubicAt, monotoneCubic } from './monotone-cubic.ts';

/** 1.0 L petrol engine, 41 kW: NREL component data FC_SI41_emis (T. Markel, 1998); read. */
const PETROL = {
  rpm: [997.9, 1424.8, 2109.4, 2793.2, 3476.9, 4160.6, 4845.3, 5273.1, 5700.0],
  torque: [61, 67.6, 73.7, 78.5, 80.9, 77.3, 76.2, 73.3, 68.7],
};

describe('smooth curve through measured points', () => {
  it('petrol engine: slopes and values as scipy.interpolate.PchipInterpolator 1.17 gives them (computed)', () => {
    const curve = monotoneCubic(PETROL.rpm, PETROL.torque);
    const slopes = [0.017976, 0.011545, 0.0078526, 0.0046801, 0, -0.0024622, -0.002727, -0.0083228, -0.012771];
    slopes.forEach((slope, k) => {
      expect(curve.slope[k]).toBeCloseTo(slope, 6);
    });
    const at = [1200, 2000, 3000, 3300, 4000, 5000, 5500];
    const torque = [64.4628, 72.8456, 79.4968, 80.6599, 78.0341, 75.4619, 71.09];
    at.forEach((rpm, k) => {
      expect(cubicAt(curve, rpm)).toBeCloseTo(torque[k] as number, 3);
    });
  });

  it('passes through every point, the ends included', () => {
    const curve = monotoneCubic(PETROL.rpm, PETROL.torque);
    PETROL.rpm.forEach((rpm, k) => {
      expect(cubicAt(curve, rpm)).toBeCloseTo(PETROL.torque[k] as number, 12);
    });
  });

  it('two points make a straight line', () => {
    expect(cubicAt(monotoneCubic([0, 4], [10, 18]), 1)).toBeCloseTo(12, 14);
  });

  it('never leaves the range of the two neighbouring points, and keeps rising or falling between them', () => {
    const steps = fc.array(
      fc.tuple(fc.double({ min: 0.1, max: 10, noNaN: true }), fc.double({ min: -50, max: 50, noNaN: true })),
      {
        minLength: 2,
        maxLength: 12,
      },
    );
    fc.assert(
      fc.property(steps, (list) => {
        const x: number[] = [];
        const y: number[] = [];
        for (const [gap, value] of list) {
          x.push((x.at(-1) ?? 0) + gap);
          y.push(value);
        }
        const curve = monotoneCubic(x, y);
        for (let k = 0; k + 1 < x.length; k++) {
          const [x0, x1, y0, y1] = [x[k], x[k + 1], y[k], y[k + 1]] as [number, number, number, number];
          let last = y0;
          for (let part = 1; part <= 20; part++) {
            const value = cubicAt(curve, Math.min(x1, x0 + ((x1 - x0) * part) / 20));
            expect((value - last) * Math.sign(y1 - y0)).toBeGreaterThan(-1e-9);
            last = value;
          }
          expect(last).toBeCloseTo(y1, 9);
        }
      }),
      { seed: 14, numRuns: 300 },
    );
  });

  it('is not extended beyond its points', () => {
    const curve = monotoneCubic([1, 2, 3], [5, 6, 5]);
    expect(() => cubicAt(curve, 0.999)).toThrow('0.999 lies outside the curve, which runs from 1 to 3.');
    expect(() => cubicAt(curve, 3.001)).toThrow(RangeError);
    expect(() => cubicAt(curve, Number.NaN)).toThrow(RangeError);
  });

  it('names the point at fault', () => {
    expect(() => monotoneCubic([1], [1])).toThrow('A curve needs at least two points, not 1.');
    expect(() => monotoneCubic([1, 2], [1])).toThrow('A curve needs a value for each argument: 2 arguments, 1 values.');
    expect(() => monotoneCubic([1, 2, 2], [1, 2, 3])).toThrow(
      'Point 3 of the curve is at 2, not above 2 of the point before.',
    );
    expect(() => monotoneCubic([1, 2, 3], [1, Number.NaN, 3])).toThrow(
      'Point 2 of the curve is (2, NaN); finite numbers are needed.',
    );
  });
});
