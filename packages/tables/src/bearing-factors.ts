import { defineTable } from './table.ts';

const FACTORS = 'ISO 281:2007, table 3, as restated in Rolling bearings, catalogue 17000/1 EN, 2018, table 9';

/** Row: f0 Fa / C0; then e and Y for normal clearance, C3 and C4. */
const row = (
  relative: number,
  [e, y]: readonly [number, number],
  [eC3, yC3]: readonly [number, number],
  [eC4, yC4]: readonly [number, number],
) => ({ values: { relative, e, y, eC3, yC3, eC4, yC4 }, how: 'read' }) as const;

/** Factors of deep groove bearings by their axial load; the rows rise. */
export const BEARING_FACTORS = defineTable({
  id: 'bearing-factors',
  title: 'Factors e and Y of deep groove ball bearings',
  range: 'f0 Fa / C0 of 0.172 to 6.89; X is 0.56 for normal clearance, 0.46 for C3, 0.44 for C4',
  how: 'read',
  source: FACTORS,
  columns: {
    relative: { kind: 'number', unit: '', meaning: 'f0 times axial load over static rating' },
    e: { kind: 'number', unit: '', meaning: 'limit e, normal clearance' },
    y: { kind: 'number', unit: '', meaning: 'factor Y, normal clearance' },
    eC3: { kind: 'number', unit: '', meaning: 'limit e, clearance C3' },
    yC3: { kind: 'number', unit: '', meaning: 'factor Y, clearance C3' },
    eC4: { kind: 'number', unit: '', meaning: 'limit e, clearance C4' },
    yC4: { kind: 'number', unit: '', meaning: 'factor Y, clearance C4' },
  },
  rows: {
    'row 1': row(0.172, [0.19, 2.3], [0.29, 1.88], [0.38, 1.47]),
    'row 2': row(0.345, [0.22, 1.99], [0.32, 1.71], [0.4, 1.4]),
    'row 3': row(0.689, [0.26, 1.71], [0.36, 1.52], [0.43, 1.3]),
    'row 4': row(1.03, [0.28, 1.55], [0.38, 1.41], [0.46, 1.23]),
    'row 5': row(1.38, [0.3, 1.45], [0.4, 1.34], [0.47, 1.19]),
    'row 6': row(2.07, [0.34, 1.31], [0.44, 1.23], [0.5, 1.12]),
    'row 7': row(3.45, [0.38, 1.15], [0.49, 1.1], [0.55, 1.02]),
    'row 8': row(5.17, [0.42, 1.04], [0.54, 1.01], [0.56, 1]),
    'row 9': row(6.89, [0.44, 1], [0.54, 1], [0.56, 1]),
  },
});
