import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findRoot } from './root.ts';

describe('root in a bracket', () => {
  it('x³ − 2x − 5 = 0 at 2.0945514815423265915 (Wallis, 1685, the standing trial of root finders; from memory)', () => {
    expect(findRoot((x) => x ** 3 - 2 * x - 5, 2, 3)).toBeCloseTo(2.0945514815423265, 14);
  });

  it('cos x = x at 0.73908513321516064166 (from memory)', () => {
    expect(findRoot((x) => Math.cos(x) - x, 0, 1)).toBeCloseTo(0.7390851332151607, 14);
  });

  it('gives an end that is itself a root', () => {
    expect(findRoot((x) => x - 2, 2, 5)).toBe(2);
    expect(findRoot((x) => x - 5, 2, 5)).toBe(5);
  });

  it('stays in the bracket on a curve that throws other methods far away', () => {
    expect(findRoot((x) => Math.cbrt(x - 1) + 1e-3, -50, 80)).toBeCloseTo(1 - 1e-9, 12);
  });

  it('finds the root of any rising cubic with a bracket around it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -100, max: 100, noNaN: true }),
        fc.double({ min: 0.001, max: 50, noNaN: true }),
        fc.double({ min: 0.001, max: 50, noNaN: true }),
        (root, below, above) => {
          const found = findRoot((x) => (x - root) ** 3 + (x - root), root - below, root + above);
          expect(Math.abs(found - root)).toBeLessThan(1e-12 * Math.max(1, Math.abs(root)));
        },
      ),
      { seed: 11, numRuns: 300 },
    );
  });

  it('says what it read when nothing is bracketed', () => {
    expect(() => findRoot((x) => x * x + 1, -1, 2)).toThrow(
      'No root is bracketed: the function is 2 at -1 and 5 at 2; values of different sign are needed.',
    );
    expect(() => findRoot(() => Number.NaN, 0, 1)).toThrow(/No root is bracketed/);
  });

  it('says so when the steps run out', () => {
    expect(() => findRoot((x) => Math.exp(x) - 3, -40, 40, 0, 4)).toThrow(/was not reached in 4 steps/);
  });
});
