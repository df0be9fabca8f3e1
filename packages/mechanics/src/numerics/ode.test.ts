import { describe, expect, it } from 'vitest';
import { integrate } from './ode.ts';

describe('Runge–Kutta pair of Dormand and Prince', () => {
  it('decay, oscillator and a blunt curve meet their closed forms', () => {
    expect(integrate((_, [y = 0]) => [-y], 0, [1], 3)[0]).toBeCloseTo(Math.exp(-3), 10);
    const [x = 0, v = 0] = integrate((_, [x = 0, v = 0]) => [v, -x], 0, [1, 0], 10);
    expect(x).toBeCloseTo(Math.cos(10), 8);
    expect(v).toBeCloseTo(-Math.sin(10), 8);
    expect(integrate((t) => [1 / (1 + t * t)], 0, [0], 50)[0]).toBeCloseTo(Math.atan(50), 9);
  });

  it('conditions of order: polynomials up to the fourth power are integrated exactly, whatever the steps', () => {
    for (let power = 0; power <= 4; power++) {
      const [y = 0] = integrate((t) => [t ** power], 0, [0], 2, { relative: 1e9 });
      expect(y / (2 ** (power + 1) / (power + 1))).toBeCloseTo(1, 13);
    }
  });

  it('the error follows the tolerance asked for: y′ = y cos t from 1 ends at e^(sin 1)', () => {
    const end = (relative: number): number =>
      integrate((t, [y = 0]) => [y * Math.cos(t)], 0, [1], 1, { relative, absolute: relative })[0] as number;
    for (const relative of [1e-3, 1e-6, 1e-9, 1e-12])
      expect(Math.abs(end(relative) / Math.exp(Math.sin(1)) - 1)).toBeLessThan(3 * relative);
  });

  it('runs backwards, and stays put over an empty span', () => {
    expect(integrate((_, [y = 0]) => [y], 1, [Math.E], 0)[0]).toBeCloseTo(1, 10);
    expect(integrate(() => [1], 2, [5], 2)).toEqual([5]);
  });

  it('refuses slopes that are not finite, and says where the steps ran out', () => {
    expect(() => integrate((t) => [1 / (t - 1)], 0, [0], 1)).toThrow(RangeError);
    expect(() => integrate(() => [Number.NaN], 0, [0], 1)).toThrow('The slopes near 0 are not finite.');
    expect(() => integrate((t) => [Math.cos(1000 * t)], 0, [0], 100, { mostSteps: 10 })).toThrow(
      /was not reached in 10 steps/,
    );
  });
});
