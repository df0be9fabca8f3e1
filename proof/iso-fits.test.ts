import { fitClearance } from '@oddwheel/mechanics/fit/clearance';
import { fitLimits } from '@oddwheel/mechanics/fit/limits';
import { inchFitKey } from '@oddwheel/tables/inch-fits';
import { GRADE_STEPS, ISO_GRADES } from '@oddwheel/tables/iso-grades';
import { isoClass } from '@oddwheel/tables/iso-limits';
import { describe, expect, test } from 'vitest';

const limitsOf = (code: string, mm: number) => {
  const { rows: _, ...made } = isoClass(code, mm / 1e3);
  const { upper, lower } = fitLimits.run({ size: mm / 1e3, ...made });
  return { upper: upper * 1e6, lower: lower * 1e6 };
};

/**
 * Limits in microns as a bearing maker's catalogue prints them in its appendix tables 9 to 11, restating ISO 286: every letter,
 * both sides of every rule, and the exceptions. Read in the public repository ArtemFilin1990/Mar, commit 7b871a5. Counted once.
 */
const PRINTED: readonly (readonly [code: string, upper: number, lower: number])[] = [
  ['20f6', -20, -33],
  ['20g6', -7, -20],
  ['25h6', 0, -13],
  ['25h7', 0, -21],
  ['30h9', 0, -52],
  ['25k6', 15, 2],
  ['30k5', 11, 2],
  ['35m5', 20, 9],
  ['40n6', 33, 17],
  ['45p6', 42, 26],
  ['60r6', 60, 41],
  ['75r7', 73, 43],
  ['25j5', 5, -4],
  ['20j6', 9, -4],
  ['17j7', 12, -6],
  ['50js6', 8.0, -8.0],
  ['15d6', -50, -61],
  ['40e6', -50, -66],
  ['25H7', 21, 0],
  ['52H8', 46, 0],
  ['47J7', 14, -11],
  ['62J6', 13, -6],
  ['40K7', 7, -18],
  ['62K6', 4, -15],
  ['35M7', 0, -25],
  ['80M6', -5, -24],
  ['72N7', -9, -39],
  ['47N6', -12, -28],
  ['62P7', -21, -51],
  ['35P6', -21, -37],
  ['85F7', 71, 36],
  ['52G7', 40, 10],
  ['30E6', 53, 40],
  ['110JS7', 17.5, -17.5],
  ['180k7', 43, 3],
  ['220m6', 46, 17],
  ['100E8', 126, 72],
  ['300M6', -9, -41],
  ['25P7', -14, -35],
  ['11S7', -21, -39],
  ['12N7', -5, -23],
  ['9P7', -9, -24],
  ['10U7', -22, -37],
  ['40s6', 59, 43],
  ['40t6', 64, 48],
  ['30u6', 61, 48],
  ['20u6', 54, 41],
  ['100x7', 213, 178],
];

describe('classes of ISO 286 against printed tables', () => {
  test.each(PRINTED)('%s', (code, upper, lower) => {
    const [, size = '', name = ''] = /^(\d+)(.*)$/.exec(code) ?? [];
    const own = limitsOf(name, Number(size));
    expect(own.upper).toBeCloseTo(upper, 6);
    expect(own.lower).toBeCloseTo(lower, 6);
  });
});

describe('the table of grades against the formula of the standard', () => {
  const units: readonly (readonly [string, number])[] = [
    ['IT5', 7],
    ['IT6', 10],
    ['IT7', 16],
    ['IT8', 25],
    ['IT9', 40],
    ['IT10', 64],
    ['IT11', 100],
    ['IT12', 160],
    ['IT13', 250],
    ['IT14', 400],
    ['IT15', 640],
    ['IT16', 1000],
  ];
  // Published widths are rounded by hand, those of the two smallest steps most.
  test.each(units)('%s is its tolerance units, rounded', (grade, count) => {
    for (const [n, to] of GRADE_STEPS.entries()) {
      const from = n === 0 ? 1 : (GRADE_STEPS[n - 1] ?? 0);
      const middle = Math.sqrt(from * to);
      const unit = 0.45 * Math.cbrt(middle) + 0.001 * middle;
      const row = Object.values(ISO_GRADES.rows)[n]?.values[grade as 'IT7'] ?? Number.NaN;
      expect(Math.abs(row / (count * unit) - 1), `${grade} to ${to} mm`).toBeLessThan(n < 2 ? 0.16 : 0.06);
    }
  });

  test('each grade is wider than the finer one and than that of smaller sizes', () => {
    const rows = Object.values(ISO_GRADES.rows).map(({ values }) => Object.values(values) as number[]);
    for (const [n, row] of rows.entries())
      for (const [k, width] of row.entries()) {
        if (k > 0) expect(width).toBeGreaterThan(row[k - 1] ?? 0);
        if (n > 0) expect(width).toBeGreaterThanOrEqual(rows[n - 1]?.[k] ?? 0);
      }
  });
});

const SIZES = [
  2, 5, 9, 12, 17, 22, 28, 35, 47, 62, 72, 90, 110, 130, 150, 170, 190, 210, 240, 260, 300, 340, 380, 430, 490,
];

describe('properties of the classes', () => {
  test('a fit is the same on a basic hole and on a basic shaft', () => {
    for (const mm of SIZES.filter((size) => size > 3))
      for (const [hole, shaft, mirrorHole, mirrorShaft] of [
        ['H7', 'k6', 'K7', 'h6'],
        ['H7', 'n6', 'N7', 'h6'],
        ['H7', 'p6', 'P7', 'h6'],
        ['H7', 's6', 'S7', 'h6'],
        ['H8', 'f7', 'F8', 'h7'],
      ] as const) {
        const play = (h: string, s: string) => {
          const [outer, inner] = [limitsOf(h, mm), limitsOf(s, mm)];
          return fitClearance.run({
            holeUpper: outer.upper,
            holeLower: outer.lower,
            shaftUpper: inner.upper,
            shaftLower: inner.lower,
          });
        };
        const [basic, mirror] = [play(hole, shaft), play(mirrorHole, mirrorShaft)];
        expect(mirror.greatest).toBeCloseTo(basic.greatest, 6);
        expect(mirror.least).toBeCloseTo(basic.least, 6);
      }
  });

  test('later letters are tighter', () => {
    const order = ['c8', 'd8', 'e8', 'f8', 'g8', 'h8', 'k8', 'm8', 'n8', 'p8', 'r8', 's8', 'u8', 'x8'];
    for (const mm of SIZES) {
      const lower = order.map((code) => limitsOf(code, mm).lower);
      expect(lower).toEqual([...lower].sort((a, b) => a - b));
    }
  });

  test('a step includes its end and not its beginning', () => {
    expect(limitsOf('h7', 50)).toEqual(limitsOf('h7', 40));
    expect(limitsOf('h7', 50.001)).toEqual(limitsOf('h7', 70));
    expect(inchFitKey('RC4', 1.19)).toBe('RC4 0.71 to 1.19');
    expect(inchFitKey('RC4', 1.1901)).toBe('RC4 1.19 to 1.97');
  });

  test('what the standard does not have is refused', () => {
    expect(() => isoClass('K9', 0.04)).toThrow(/K ends at grade 8/);
    expect(() => isoClass('t6', 0.02)).toThrow(/no t6/);
    expect(() => isoClass('H7', 0.6)).toThrow(/up to 500 mm/);
    expect(() => isoClass('7H', 0.04)).toThrow(/not a class/);
    expect(inchFitKey('FN3', 0.5)).toBeNull();
    expect(inchFitKey('XX1', 0.5)).toBeNull();
  });
});
