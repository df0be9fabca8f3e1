/** Rounding for reading: doubles where they leave no doubt, against exact arithmetic. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roundDigits, roundNear } from './digits.ts';
import { toDouble } from './exact.ts';
import { KINDS, type Kind } from './kinds.ts';
import { inUnit, toSi, unitsOf } from './units.ts';

const units = (Object.keys(KINDS) as Kind[]).flatMap((kind) => unitsOf(kind)).filter(({ zero }) => zero.n === 0n);

describe('rounding a double', () => {
  const figures = fc.integer({ min: 1, max: 12 });

  it.each(units)('in $kind $symbol says what exact arithmetic says, or nothing', (unit) => {
    const factor = toDouble(unit.factor);
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), figures, (si, count) => {
        const quick = roundNear(si / factor, count);
        if (quick) expect(quick).toEqual(roundDigits(inUnit(unit, si), count));
      }),
      {
        seed: 7,
        numRuns: 60,
        examples: [
          [0, 4],
          [5e-324, 4],
          [1.7e308, 4],
        ],
      },
    );
  });

  it.each(units)('in $kind $symbol says nothing at a tie', (unit) => {
    const factor = toDouble(unit.factor);
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 99_999 }), fc.integer({ min: -6, max: 6 }), (whole, power) => {
        const tied = Number(`${whole}5e${power}`);
        if (unit.kind === 'count' || String(whole).endsWith('0')) return;
        expect(roundNear(toSi(unit.kind, unit.typed, tied) / factor, String(whole).length)).toBeNull();
      }),
      { seed: 8, numRuns: 20 },
    );
  });

  it('carries through nines, and leaves few numbers undecided', () => {
    expect(roundNear(999.96, 4)).toEqual({ negative: false, digits: '1', point: 4 });
    expect(roundNear(-0.000999996, 4)).toEqual({ negative: true, digits: '1', point: -2 });
    const numbers = Array.from({ length: 1000 }, (_, k) => Math.sqrt(k + 2) * 10 ** ((k % 13) - 6));
    expect(numbers.filter((x) => roundNear(x, 4) === null)).toEqual([]);
  });
});
