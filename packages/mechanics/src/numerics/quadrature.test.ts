import { describe, expect, it } from 'vitest';
import { integralsOf } from './quadrature.ts';

describe('Gauss–Kronrod pair of 7 and 15 places', () => {
  it('powers up to the 22nd are integrated exactly without halving, the 13th and lower by both rules', () => {
    for (let power = 0; power <= 22; power++) {
      const [got = 0] = integralsOf((t) => [t ** power], 0, 1.5, power <= 13 ? 1e-13 : 1e9);
      expect(got / (1.5 ** (power + 1) / (power + 1))).toBeCloseTo(1, 13);
    }
  });

  it('several functions at once meet their closed forms; a span may run backwards or hold a kink', () => {
    const [bell = 0, log = 0] = integralsOf((t) => [1 / (1 + t * t), 1 / (1.001 - t)], 0, 1, 1e-11);
    expect(bell).toBeCloseTo(Math.PI / 4, 12);
    expect(log / Math.log(1001)).toBeCloseTo(1, 11);
    expect(integralsOf((t) => [Math.exp(t)], 1, 0, 1e-12)[0]).toBeCloseTo(1 - Math.E, 12);
    expect(integralsOf((t) => [Math.min(t, 0.3)], 0, 1, 1e-9)[0]).toBeCloseTo(0.045 + 0.21, 9);
  });

  it('a pole, and values that are no numbers, are refused', () => {
    expect(() => integralsOf((t) => [1 / (t - 0.3)], 0, 1, 1e-9)).toThrow(RangeError);
    expect(() => integralsOf(() => [Number.NaN], 0, 1, 1e-9)).toThrow('the values grow without end, or jump');
  });
});
