import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimal, exact, fromDouble, nearestWhole, over, PI, plus, times, toDouble } from './exact.ts';

const seed = { seed: 2, numRuns: 2000 };

describe('one rounding from an exact fraction to a double', () => {
  it('agrees with the reading of decimal numbers in ECMAScript (ECMA-262, StringToNumber, nearest ties to even)', () => {
    fc.assert(
      fc.property(
        fc.bigInt({ min: 0n, max: 10n ** 40n }),
        fc.integer({ min: -345, max: 305 }),
        fc.boolean(),
        (digits, power, negative) => {
          const text = `${negative ? '-' : ''}${digits}e${power}`;
          expect(toDouble(decimal(text)) + 0).toBe(Number(text) + 0);
        },
      ),
      seed,
    );
  });

  it.each([
    ['halfway between two doubles goes to the even one', '9007199254740993', 9007199254740992],
    ['just above halfway goes up', '9007199254740993.0000000000000000001', 9007199254740994],
    ['smallest subnormal', '4.9406564584124654e-324', 5e-324],
    ['half the smallest subnormal goes to zero', '2.4703282292062327e-324', 0],
    ['largest double', '1.7976931348623157e308', Number.MAX_VALUE],
    ['beyond the largest double', '1.7976931348623159e308', Infinity],
    ['below the largest negative', '-1.8e308', -Infinity],
  ])('%s (IEEE 754-2019, 4.3.1)', (_, text, value) => {
    expect(toDouble(decimal(text))).toBe(value);
  });

  it('takes every double apart and puts it together again', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(toDouble(fromDouble(value))).toBe(value + 0);
      }),
      seed,
    );
  });
});

describe('exact fractions', () => {
  it('has π right to 80 places: Machin, 1706, π = 16 arctan(1/5) − 4 arctan(1/239)', () => {
    const one = 10n ** 100n;
    const arctan = (k: bigint): bigint => {
      let sum = 0n;
      let term = one / k;
      for (let i = 1n; term !== 0n; i += 2n) {
        sum += i % 4n === 1n ? term / i : -term / i;
        term /= k * k;
      }
      return sum;
    };
    const machin = exact(4n * (4n * arctan(5n) - arctan(239n)), one);
    expect(nearestWhole(times(machin, exact(10n ** 80n)))).toBe(PI.n * (10n ** 80n / PI.d));
    expect(toDouble(PI)).toBe(Math.PI);
  });

  it('keeps lowest terms and the sign above the line', () => {
    expect(exact(6n, -4n)).toEqual({ n: -3n, d: 2n });
    expect(plus(exact(1n, 6n), exact(1n, 3n))).toEqual({ n: 1n, d: 2n });
    expect(over(exact(1n, 2n), exact(-3n))).toEqual({ n: -1n, d: 6n });
    expect(nearestWhole(exact(-5n, 2n))).toBe(-3n);
  });

  it('refuses what is no number', () => {
    expect(() => exact(1n, 0n)).toThrow(RangeError);
    expect(() => fromDouble(Number.NaN)).toThrow(/finite/);
    expect(() => decimal('1,5')).toThrow(/"1,5" is not a decimal number/);
  });
});
