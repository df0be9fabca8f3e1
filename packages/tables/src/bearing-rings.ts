import { stepKey } from './iso-grades.ts';
import { defineTable, type Row } from './table.ts';

/** Ends of the steps, millimetres, and how far a ring may be below its size, microns. */
const BORES = { ends: [2.5, 10, 18, 30, 50, 80, 120], below: [8, 8, 10, 12, 15, 20] } as const;
const OUTSIDES = { ends: [6, 18, 30, 50, 80, 120, 150, 180], below: [8, 9, 11, 13, 15, 18, 25] } as const;

const rowsOf = ({ ends, below }: { readonly ends: readonly number[]; readonly below: readonly number[] }, of: string) =>
  below.map((lower, n): [string, Row<'lower' | 'upper'>] => [
    `${of} ${stepKey(ends, n + 1)}`,
    { values: { lower: -lower, upper: 0 }, how: 'read' },
  ]);

/** Limits of the rings of ordinary bearings: both run from the size down. */
export const BEARING_RINGS = defineTable<'lower' | 'upper'>({
  id: 'bearing-rings',
  title: 'Limits of bores and outside diameters of ordinary bearings',
  range: 'radial bearings of the normal class, bores over 2.5 to 120 mm, outside diameters over 6 to 180 mm',
  how: 'read',
  source: 'ISO 492, as Ball and Roller Bearings catalogues restate it',
  columns: {
    lower: { kind: 'length', unit: 'um', meaning: 'lower limit' },
    upper: { kind: 'length', unit: 'um', meaning: 'upper limit' },
  },
  rows: Object.fromEntries([...rowsOf(BORES, 'bore'), ...rowsOf(OUTSIDES, 'outside')]),
});

const MM = 1e-3;

/**
 * Key of the row for a bore or an outside diameter; null outside the table.
 * @param size metres
 */
export function ringKey(of: 'bore' | 'outside', size: number): string | null {
  const { ends } = of === 'bore' ? BORES : OUTSIDES;
  const n = ends.findIndex((end) => size / MM <= end + 1e-9);
  return n < 1 ? null : `${of} ${stepKey(ends, n)}`;
}
