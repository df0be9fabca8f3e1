import { defineTable, type How, type Row } from './table.ts';

/** Ends of the steps of sizes, inches; the first is where the first step begins, which it leaves out. */
const COARSE = [0, 0.12, 0.24, 0.4, 0.71, 1.19, 1.97, 3.15, 4.73];
const FROM_QUARTER = [0.24, 0.4, 0.71, 1.19, 1.97, 3.15, 4.73];
const FINE = [0, 0.12, 0.24, 0.4, 0.56, 0.71, 0.95, 1.19, 1.58, 1.97, 2.56, 3.15, 3.94, 4.73];
const FROM_INCH = [0.95, 1.19, 1.58, 1.97, 2.56, 3.15, 3.94, 4.73];

/** Thousandths by step: upper limit of the hole, whose lower is 0; upper and lower limit of the shaft. */
type Figures = readonly [
  steps: readonly number[],
  how: How,
  hole: readonly number[],
  shaftUpper: readonly number[],
  shaftLower: readonly number[],
  note?: string,
];

const FITS: Readonly<Record<string, Figures>> = {
  RC1: [
    COARSE,
    'read',
    [0.2, 0.2, 0.25, 0.3, 0.4, 0.4, 0.5, 0.6],
    [-0.1, -0.15, -0.2, -0.25, -0.3, -0.4, -0.4, -0.5],
    [-0.25, -0.3, -0.35, -0.45, -0.55, -0.7, -0.7, -0.9],
  ],
  RC2: [
    COARSE,
    'read',
    [0.25, 0.3, 0.4, 0.4, 0.5, 0.6, 0.7, 0.9],
    [-0.1, -0.15, -0.2, -0.25, -0.3, -0.4, -0.4, -0.5],
    [-0.3, -0.35, -0.45, -0.55, -0.7, -0.8, -0.9, -1.1],
  ],
  RC3: [
    COARSE,
    'read',
    [0.4, 0.5, 0.6, 0.7, 0.8, 1, 1.2, 1.4],
    [-0.3, -0.4, -0.5, -0.6, -0.8, -1, -1.2, -1.4],
    [-0.55, -0.7, -0.9, -1, -1.3, -1.6, -1.9, -2.3],
  ],
  RC4: [
    COARSE,
    'read',
    [0.6, 0.7, 0.9, 1, 1.2, 1.6, 1.8, 2.2],
    [-0.3, -0.4, -0.5, -0.6, -0.8, -1, -1.2, -1.4],
    [-0.7, -0.9, -1.1, -1.3, -1.6, -2, -2.4, -2.8],
  ],
  RC5: [
    COARSE,
    'read',
    [0.6, 0.7, 0.9, 1, 1.2, 1.6, 1.8, 2.2],
    [-0.6, -0.8, -1, -1.2, -1.6, -2, -2.5, -3],
    [-1, -1.3, -1.6, -1.9, -2.4, -3, -3.7, -4.4],
  ],
  RC6: [
    COARSE,
    'read',
    [1, 1.2, 1.4, 1.6, 2, 2.5, 3, 3.5],
    [-0.6, -0.8, -1, -1.2, -1.6, -2, -2.5, -3],
    [-1.2, -1.5, -1.9, -2.2, -2.8, -3.6, -4.3, -5.2],
  ],
  RC7: [
    COARSE,
    'read',
    [1, 1.2, 1.4, 1.6, 2, 2.5, 3, 3.5],
    [-1, -1.2, -1.6, -2, -2.5, -3, -4, -5],
    [-1.6, -1.9, -2.5, -3, -3.7, -4.6, -5.8, -7.2],
  ],
  RC8: [
    COARSE,
    'read',
    [1.6, 1.8, 2.2, 2.8, 3.5, 4, 4.5, 5],
    [-2.5, -2.8, -3, -3.5, -4.5, -5, -6, -7],
    [-3.5, -4, -4.4, -5.1, -6.5, -7.5, -9, -10.5],
  ],
  RC9: [
    COARSE,
    'read',
    [2.5, 3, 3.5, 4, 5, 6, 7, 9],
    [-4, -4.5, -5, -6, -7, -8, -9, -10],
    [-5.6, -6, -7.2, -8.8, -10.5, -12, -13.5, -15],
  ],
  LC1: [
    COARSE,
    'memory',
    [0.25, 0.3, 0.4, 0.4, 0.5, 0.6, 0.7, 0.9],
    [0, 0, 0, 0, 0, 0, 0, 0],
    [-0.2, -0.2, -0.25, -0.3, -0.4, -0.4, -0.5, -0.6],
  ],
  LC2: [
    COARSE,
    'memory',
    [0.4, 0.5, 0.6, 0.7, 0.8, 1, 1.2, 1.4],
    [0, 0, 0, 0, 0, 0, 0, 0],
    [-0.25, -0.3, -0.4, -0.4, -0.5, -0.6, -0.7, -0.9],
  ],
  LC3: [
    COARSE,
    'memory',
    [0.6, 0.7, 0.9, 1, 1.2, 1.6, 1.8, 2.2],
    [0, 0, 0, 0, 0, 0, 0, 0],
    [-0.4, -0.5, -0.6, -0.7, -0.8, -1, -1.2, -1.4],
  ],
  LC4: [
    COARSE,
    'memory',
    [1.6, 1.8, 2.2, 2.8, 3.5, 4, 4.5, 5],
    [0, 0, 0, 0, 0, 0, 0, 0],
    [-1, -1.2, -1.4, -1.6, -2, -2.5, -3, -3.5],
  ],
  LC5: [
    COARSE,
    'memory',
    [0.4, 0.5, 0.6, 0.7, 0.8, 1, 1.2, 1.4],
    [-0.1, -0.15, -0.2, -0.25, -0.3, -0.4, -0.4, -0.5],
    [-0.35, -0.45, -0.6, -0.65, -0.8, -1, -1.1, -1.4],
  ],
  LC6: [
    COARSE,
    'read',
    [1, 1.2, 1.4, 1.6, 2, 2.5, 3, 3.5],
    [-0.3, -0.4, -0.5, -0.6, -0.8, -1, -1.2, -1.4],
    [-0.9, -1.1, -1.4, -1.6, -2, -2.6, -3, -3.6],
    'read up to 1.97 in, memory above (recomputed from grade widths)',
  ],
  LC7: [
    COARSE,
    'read',
    [1.6, 1.8, 2.2, 2.8, 3.5, 4, 4.5, 5],
    [-0.6, -0.8, -1, -1.2, -1.6, -2, -2.5, -3],
    [-1.6, -2, -2.4, -2.8, -3.6, -4.5, -5.5, -6.5],
    'read up to 1.97 in, memory above (recomputed from grade widths)',
  ],
  LC8: [
    COARSE,
    'read',
    [1.6, 1.8, 2.2, 2.8, 3.5, 4, 4.5, 5],
    [-1, -1.2, -1.6, -2, -2.5, -3, -4, -5],
    [-2, -2.4, -3, -3.6, -4.5, -5.5, -7, -8.5],
    'read up to 1.97 in, memory above (recomputed from grade widths)',
  ],
  LC9: [
    COARSE,
    'read',
    [2.5, 3, 3.5, 4, 5, 6, 7, 9],
    [-2.5, -2.8, -3, -3.5, -4.5, -5, -6, -7],
    [-4.1, -4.6, -5.2, -6.3, -8, -9, -10.5, -12],
    'read up to 1.19 in, memory above (recomputed from grade widths)',
  ],
  LC10: [
    COARSE,
    'read',
    [4, 5, 6, 7, 8, 10, 12, 14],
    [-4, -4.5, -5, -6, -7, -8, -10, -11],
    [-8, -9.5, -11, -13, -15, -18, -22, -25],
    'read up to 1.19 in, memory above',
  ],
  LC11: [
    COARSE,
    'read',
    [6, 7, 9, 10, 12, 16, 18, 22],
    [-5, -6, -7, -8, -10, -12, -14, -16],
    [-11, -13, -16, -18, -22, -28, -32, -38],
    'read up to 1.19 in, memory above',
  ],
  LT1: [
    COARSE,
    'read',
    [0.4, 0.5, 0.6, 0.7, 0.8, 1, 1.2, 1.4],
    [0.12, 0.15, 0.2, 0.2, 0.25, 0.3, 0.3, 0.4],
    [-0.12, -0.15, -0.2, -0.2, -0.25, -0.3, -0.3, -0.4],
    'read to 3.15 in, memory above',
  ],
  LT2: [
    COARSE,
    'read',
    [0.6, 0.7, 0.9, 1, 1.2, 1.6, 1.8, 2.2],
    [0.2, 0.25, 0.3, 0.35, 0.4, 0.5, 0.6, 0.7],
    [-0.2, -0.25, -0.3, -0.35, -0.4, -0.5, -0.6, -0.7],
  ],
  LT3: [
    FROM_QUARTER,
    'read',
    [0.6, 0.7, 0.8, 1, 1.2, 1.4],
    [0.5, 0.5, 0.6, 0.7, 0.8, 1],
    [0.1, 0.1, 0.1, 0.1, 0.1, 0.1],
    'read to 3.15 in, memory above',
  ],
  LT4: [
    FROM_QUARTER,
    'read',
    [0.9, 1, 1.2, 1.6, 1.8, 2.2],
    [0.7, 0.8, 0.9, 1.1, 1.3, 1.5],
    [0.1, 0.1, 0.1, 0.1, 0.1, 0.1],
  ],
  LT5: [
    COARSE,
    'read',
    [0.4, 0.5, 0.6, 0.7, 0.8, 1, 1.2, 1.4],
    [0.5, 0.6, 0.8, 0.9, 1.1, 1.3, 1.5, 1.9],
    [0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 1],
    'read to 3.15 in, memory above',
  ],
  LT6: [
    COARSE,
    'read',
    [0.4, 0.5, 0.6, 0.7, 0.8, 1, 1.2, 1.4],
    [0.65, 0.8, 1, 1.2, 1.4, 1.7, 2, 2.4],
    [0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 1],
    'read to 3.15 in, memory above',
  ],
  LN1: [
    COARSE,
    'read',
    [0.25, 0.3, 0.4, 0.4, 0.5, 0.6, 0.7, 0.9],
    [0.45, 0.5, 0.65, 0.8, 1, 1.1, 1.3, 1.6],
    [0.25, 0.3, 0.4, 0.4, 0.5, 0.6, 0.8, 1],
  ],
  LN2: [
    COARSE,
    'read',
    [0.4, 0.5, 0.6, 0.7, 0.8, 1, 1.2, 1.4],
    [0.65, 0.8, 1, 1.1, 1.3, 1.6, 2.1, 2.5],
    [0.4, 0.5, 0.6, 0.7, 0.8, 1, 1.4, 1.6],
  ],
  LN3: [
    COARSE,
    'read',
    [0.4, 0.5, 0.6, 0.7, 0.8, 1, 1.2, 1.4],
    [0.75, 0.9, 1.2, 1.4, 1.7, 2, 2.3, 2.9],
    [0.5, 0.6, 0.8, 1, 1.2, 1.4, 1.6, 2],
  ],
  FN1: [
    FINE,
    'read',
    [0.25, 0.3, 0.4, 0.4, 0.4, 0.5, 0.5, 0.6, 0.6, 0.7, 0.7, 0.9, 0.9],
    [0.5, 0.6, 0.75, 0.8, 0.9, 1.1, 1.2, 1.3, 1.4, 1.8, 1.9, 2.4, 2.6],
    [0.3, 0.4, 0.5, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.3, 1.4, 1.8, 2],
    'read to 3.94 in, memory for 3.94-4.73',
  ],
  FN2: [
    FINE,
    'read',
    [0.4, 0.5, 0.6, 0.7, 0.7, 0.8, 0.8, 1, 1, 1.2, 1.2, 1.4, 1.4],
    [0.85, 1, 1.4, 1.6, 1.6, 1.9, 1.9, 2.4, 2.4, 2.7, 2.9, 3.7, 3.9],
    [0.6, 0.7, 1, 1.2, 1.2, 1.4, 1.4, 1.8, 1.8, 2, 2.2, 2.8, 3],
    'read to 3.94 in, memory for 3.94-4.73',
  ],
  FN3: [
    FROM_INCH,
    'read',
    [0.8, 1, 1, 1.2, 1.2, 1.4, 1.4],
    [2.1, 2.6, 2.8, 3.2, 3.7, 4.4, 4.9],
    [1.6, 2, 2.2, 2.5, 3, 3.5, 4],
    'read to 3.94 in, memory for 3.94-4.73',
  ],
  FN4: [
    FINE,
    'read',
    [0.4, 0.5, 0.6, 0.7, 0.7, 0.8, 0.8, 1, 1, 1.2, 1.2, 1.4, 1.4],
    [0.95, 1.2, 1.6, 1.8, 1.8, 2.1, 2.3, 3.1, 3.4, 4.2, 4.7, 5.9, 6.9],
    [0.7, 0.9, 1.2, 1.4, 1.4, 1.6, 1.8, 2.5, 2.8, 3.5, 4, 5, 6],
    'read to 3.94 in, memory for 3.94-4.73',
  ],
  FN5: [
    FINE,
    'read',
    [0.6, 0.7, 0.9, 1, 1, 1.2, 1.2, 1.6, 1.6, 1.8, 1.8, 2.2, 2.2],
    [1.3, 1.7, 2, 2.3, 2.5, 3, 3.3, 4, 5, 6.2, 7.2, 8.4, 9.4],
    [0.9, 1.2, 1.4, 1.6, 1.8, 2.2, 2.5, 3, 4, 5, 6, 7, 8],
    'read to 3.94 in, memory for 3.94-4.73',
  ],
};

const SOURCE = 'ANSI/ASME B4.1';
type InchColumn = 'holeLower' | 'holeUpper' | 'shaftLower' | 'shaftUpper';

const rows = Object.entries(FITS).flatMap(([fit, [steps, how, hole, upper, lower, note]]) =>
  hole.map((holeUpper, n): [string, Row<InchColumn>] => [
    `${fit} ${steps[n]} to ${steps[n + 1]}`,
    {
      values: { holeLower: 0, holeUpper, shaftLower: lower[n] ?? Number.NaN, shaftUpper: upper[n] ?? Number.NaN },
      how,
      ...(note === undefined ? {} : { note }),
    },
  ]),
);

const column = (meaning: string) => ({ kind: 'length', unit: 'thou', meaning }) as const;

/** Inch fits on a basic hole: running RC, locating LC, LT, LN, and force fits FN. They are no conversions of the metric ones. */
export const INCH_FITS = defineTable<InchColumn>({
  id: 'inch-fits',
  title: 'Inch fits on a basic hole',
  edition: '1967',
  table: 'tables 8 to 12 of its reprint',
  range: 'RC1 to RC9, LC1 to LC11, LT1 to LT6, LN1 to LN3, FN1 to FN5, sizes up to 4.73 in; as "RC4 0.71 to 1.19"',
  how: 'read',
  source: SOURCE,
  columns: {
    holeLower: column('lower limit of the hole'),
    holeUpper: column('upper limit of the hole'),
    shaftLower: column('lower limit of the shaft'),
    shaftUpper: column('upper limit of the shaft'),
  },
  rows: Object.fromEntries(rows),
});

/**
 * Key of the row of an inch fit at a size.
 * @param fit "RC4"
 * @param inches nominal size
 * @returns null where the table has no such fit or size.
 */
export function inchFitKey(fit: string, inches: number): string | null {
  const steps = FITS[fit]?.[0];
  if (!steps) return null;
  const n = steps.findIndex((to, k) => k > 0 && inches > (steps[k - 1] ?? 0) && inches <= to);
  return n < 1 ? null : `${fit} ${steps[n - 1]} to ${steps[n]}`;
}
