import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findMaximum } from './maximum.ts';

describe('greatest value in a bracket', () => {
  it('x² (3 − x) on 0..3 is greatest at 2', () => {
    expect(findMaximum((x) => x * x * (3 - x), 0, 3)).toBeCloseTo(2, 7);
  });

  it('sin x on 0..3 is greatest at π/2', () => {
    expect(findMaximum(Math.sin, 0, 3)).toBeCloseTo(Math.PI / 2, 7);
  });

  it('a rising or falling curve is greatest at its end, exactly', () => {
    expect(findMaximum((x) => x, 2, 7)).toBe(7);
    expect(findMaximum((x) => -x, 2, 7)).toBe(2);
  });

  it('finds the vertex of any parabola inside the bracket', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1000, noNaN: true }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (wide, part) => {
          const peak = wide * part;
          expect(Math.abs(findMaximum((x) => -((x - peak) ** 2), 0, wide) - peak)).toBeLessThan(1e-6 * wide);
        },
      ),
      { seed: 12, numRuns: 300 },
    );
  });

  it('refuses an empty bracket, and says when the steps run out', () => {
    expect(() => findMaximum(Math.sin, 3, 3)).toThrow('A bracket runs from low to high, not from 3 to 3.');
    expect(() => findMaximum(Math.sin, 0, 3, 1e-9, 3)).toThrow(/was not reached in 3 steps/);
  });
});
