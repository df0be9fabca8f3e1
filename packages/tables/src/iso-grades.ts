import { type Column, defineTable, type Row } from './table.ts';

const NAMES = [
  'IT01',
  'IT0',
  'IT1',
  'IT2',
  'IT3',
  'IT4',
  'IT5',
  'IT6',
  'IT7',
  'IT8',
  'IT9',
  'IT10',
  'IT11',
  'IT12',
  'IT13',
  'IT14',
  'IT15',
  'IT16',
  'IT17',
  'IT18',
] as const;
export type GradeName = (typeof NAMES)[number];

/** Microns, IT01 to IT18, by the end of the step of sizes in millimetres; a step begins above the one before and includes its end. */
const WIDTHS: readonly (readonly [to: number, widths: readonly number[]])[] = [
  [3, [0.3, 0.5, 0.8, 1.2, 2, 3, 4, 6, 10, 14, 25, 40, 60, 100, 140, 250, 400, 600, 1000, 1400]],
  [6, [0.4, 0.6, 1, 1.5, 2.5, 4, 5, 8, 12, 18, 30, 48, 75, 120, 180, 300, 480, 750, 1200, 1800]],
  [10, [0.4, 0.6, 1, 1.5, 2.5, 4, 6, 9, 15, 22, 36, 58, 90, 150, 220, 360, 580, 900, 1500, 2200]],
  [18, [0.5, 0.8, 1.2, 2, 3, 5, 8, 11, 18, 27, 43, 70, 110, 180, 270, 430, 700, 1100, 1800, 2700]],
  [30, [0.6, 1, 1.5, 2.5, 4, 6, 9, 13, 21, 33, 52, 84, 130, 210, 330, 520, 840, 1300, 2100, 3300]],
  [50, [0.6, 1, 1.5, 2.5, 4, 7, 11, 16, 25, 39, 62, 100, 160, 250, 390, 620, 1000, 1600, 2500, 3900]],
  [80, [0.8, 1.2, 2, 3, 5, 8, 13, 19, 30, 46, 74, 120, 190, 300, 460, 740, 1200, 1900, 3000, 4600]],
  [120, [1, 1.5, 2.5, 4, 6, 10, 15, 22, 35, 54, 87, 140, 220, 350, 540, 870, 1400, 2200, 3500, 5400]],
  [180, [1.2, 2, 3.5, 5, 8, 12, 18, 25, 40, 63, 100, 160, 250, 400, 630, 1000, 1600, 2500, 4000, 6300]],
  [250, [2, 3, 4.5, 7, 10, 14, 20, 29, 46, 72, 115, 185, 290, 460, 720, 1150, 1850, 2900, 4600, 7200]],
  [315, [2.5, 4, 6, 8, 12, 16, 23, 32, 52, 81, 130, 210, 320, 520, 810, 1300, 2100, 3200, 5200, 8100]],
  [400, [3, 5, 7, 9, 13, 18, 25, 36, 57, 89, 140, 230, 360, 570, 890, 1400, 2300, 3600, 5700, 8900]],
  [500, [4, 6, 8, 10, 15, 20, 27, 40, 63, 97, 155, 250, 400, 630, 970, 1550, 2500, 4000, 6300, 9700]],
];

/** Ends of the steps of sizes, millimetres. */
export const GRADE_STEPS = WIDTHS.map(([to]) => to);

/** Key of the row of a step: "30 to 50". */
export const stepKey = (ends: readonly number[], n: number): string => `${ends[n - 1] ?? 0} to ${ends[n]}`;

const column = (name: string): readonly [string, Column] => [
  name,
  { kind: 'length', unit: 'um', meaning: `width of grade ${name}` },
];

/** Widths of the standard tolerance grades. */
export const ISO_GRADES = defineTable<GradeName>({
  id: 'iso-grades',
  title: 'Widths of the standard tolerance grades',
  edition: '2010',
  table: 'table 1',
  range: 'sizes up to 500 mm',
  how: 'read',
  source: 'ISO 286-1',
  columns: Object.fromEntries(NAMES.map(column)) as Readonly<Record<GradeName, Column>>,
  rows: Object.fromEntries(
    WIDTHS.map(([, widths], n): [string, Row<GradeName>] => [
      stepKey(GRADE_STEPS, n),
      {
        values: Object.fromEntries(NAMES.map((name, k) => [name, widths[k]])) as Readonly<Record<GradeName, number>>,
        how: 'read',
      },
    ]),
  ),
});
