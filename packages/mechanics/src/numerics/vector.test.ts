import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cross, dot, minus, norm, plus, times, unit } from './vector.ts';

const number = fc.double({ min: -100, max: 100, noNaN: true });
const vector = fc.tuple(number, number, number);

describe('vectors in space', () => {
  it('x × y = z', () => {
    expect(cross([1, 0, 0], [0, 1, 0])).toEqual([0, 0, 1]);
    expect(dot([1, 2, 3], [4, -5, 6])).toBe(12);
    expect(norm([2, 3, 6])).toBe(7);
  });

  it('a vector product stands square to both, and Lagrange’s identity holds', () => {
    fc.assert(
      fc.property(vector, vector, (a, b) => {
        const n = cross(a, b);
        expect(dot(n, a)).toBeCloseTo(0, 6);
        expect(dot(n, b)).toBeCloseTo(0, 6);
        expect(dot(n, n) + dot(a, b) ** 2).toBeCloseTo(dot(a, a) * dot(b, b), 2);
      }),
      { seed: 13, numRuns: 200 },
    );
  });

  it('a unit vector has length one and the same direction', () => {
    const u = unit([0, -3, 4]);
    expect(u).toEqual([0, -0.6, 0.8]);
    expect(plus(times(5, u), minus([1, 1, 1], [1, 1, 1]))).toEqual([0, -3, 4]);
    expect(() => unit([0, 0, 0])).toThrow('A direction needs a length, and [0, 0, 0] has none.');
  });
});
