import { stepKey } from './iso-grades.ts';
import { type Column, defineTable, type Row } from './table.ts';

/** Ends of the finer steps that the letters go by, millimetres. */
export const LETTER_STEPS = [
  3, 6, 10, 14, 18, 24, 30, 40, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250, 280, 315, 355, 400, 450, 500,
] as const;

/** Microns by step: the limit of a shaft that is nearer the nominal size. a to h the upper one, j to x the lower one; k for IT4 to IT7. */
const SHAFTS = {
  a: [
    -270, -270, -280, -290, -290, -300, -300, -310, -320, -340, -360, -380, -410, -460, -520, -580, -660, -740, -820,
    -920, -1050, -1200, -1350, -1500, -1650,
  ],
  b: [
    -140, -140, -150, -150, -150, -160, -160, -170, -180, -190, -200, -220, -240, -260, -280, -310, -340, -380, -420,
    -480, -540, -600, -680, -760, -840,
  ],
  c: [
    -60, -70, -80, -95, -95, -110, -110, -120, -130, -140, -150, -170, -180, -200, -210, -230, -240, -260, -280, -300,
    -330, -360, -400, -440, -480,
  ],
  d: [
    -20, -30, -40, -50, -50, -65, -65, -80, -80, -100, -100, -120, -120, -145, -145, -145, -170, -170, -170, -190, -190,
    -210, -210, -230, -230,
  ],
  e: [
    -14, -20, -25, -32, -32, -40, -40, -50, -50, -60, -60, -72, -72, -85, -85, -85, -100, -100, -100, -110, -110, -125,
    -125, -135, -135,
  ],
  f: [
    -6, -10, -13, -16, -16, -20, -20, -25, -25, -30, -30, -36, -36, -43, -43, -43, -50, -50, -50, -56, -56, -62, -62,
    -68, -68,
  ],
  g: [
    -2, -4, -5, -6, -6, -7, -7, -9, -9, -10, -10, -12, -12, -14, -14, -14, -15, -15, -15, -17, -17, -18, -18, -20, -20,
  ],
  h: [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
  j5: [-2, -2, -2, -3, -3, -4, -4, -5, -5, -7, -7, -9, -9, -11, -11, -11, -13, -13, -13, -16, -16, -18, -18, -20, -20],
  j6: [-2, -2, -2, -3, -3, -4, -4, -5, -5, -7, -7, -9, -9, -11, -11, -11, -13, -13, -13, -16, -16, -18, -18, -20, -20],
  j7: [
    -4, -4, -5, -6, -6, -8, -8, -10, -10, -12, -12, -15, -15, -18, -18, -18, -21, -21, -21, -26, -26, -28, -28, -32,
    -32,
  ],
  j8: [
    -6,
    null,
    null,
    null,
    null,
    null,
    null,
    null,
    null,
    null,
    null,
    null,
    null,
    null,
    null,
    null,
    null,
    null,
    null,
    null,
    null,
    null,
    null,
    null,
    null,
  ],
  k: [0, 1, 1, 1, 1, 2, 2, 2, 2, 2, 2, 3, 3, 3, 3, 3, 4, 4, 4, 4, 4, 4, 4, 5, 5],
  m: [2, 4, 6, 7, 7, 8, 8, 9, 9, 11, 11, 13, 13, 15, 15, 15, 17, 17, 17, 20, 20, 21, 21, 23, 23],
  n: [4, 8, 10, 12, 12, 15, 15, 17, 17, 20, 20, 23, 23, 27, 27, 27, 31, 31, 31, 34, 34, 37, 37, 40, 40],
  p: [6, 12, 15, 18, 18, 22, 22, 26, 26, 32, 32, 37, 37, 43, 43, 43, 50, 50, 50, 56, 56, 62, 62, 68, 68],
  r: [10, 15, 19, 23, 23, 28, 28, 34, 34, 41, 43, 51, 54, 63, 65, 68, 77, 80, 84, 94, 98, 108, 114, 126, 132],
  s: [14, 19, 23, 28, 28, 35, 35, 43, 43, 53, 59, 71, 79, 92, 100, 108, 122, 130, 140, 158, 170, 190, 208, 232, 252],
  t: [
    null,
    null,
    null,
    null,
    null,
    null,
    41,
    48,
    54,
    66,
    75,
    91,
    104,
    122,
    134,
    146,
    166,
    180,
    196,
    218,
    240,
    268,
    294,
    330,
    360,
  ],
  u: [
    18, 23, 28, 33, 33, 41, 48, 60, 70, 87, 102, 124, 144, 170, 190, 210, 236, 258, 284, 315, 350, 390, 435, 490, 540,
  ],
  x: [
    20, 28, 34, 40, 45, 54, 64, 80, 97, 122, 146, 178, 210, 248, 280, 310, 350, 385, 425, 475, 525, 590, 660, 740, 820,
  ],
} as const;

/** Microns by step: the upper limit of a hole J. The other holes mirror the shafts. */
const HOLES = {
  J6: [2, 5, 5, 6, 6, 8, 8, 10, 10, 13, 13, 16, 16, 18, 18, 18, 22, 22, 22, 25, 25, 29, 29, 33, 33],
  J7: [4, 6, 8, 10, 10, 12, 12, 14, 14, 18, 18, 22, 22, 26, 26, 26, 30, 30, 30, 36, 36, 39, 39, 43, 43],
  J8: [6, 10, 12, 15, 15, 20, 20, 24, 24, 28, 28, 34, 34, 41, 41, 41, 47, 47, 47, 55, 55, 60, 60, 66, 66],
} as const;

export type Letter = keyof typeof SHAFTS | keyof typeof HOLES;
const ALL: Readonly<Record<Letter, readonly (number | null)[]>> = { ...SHAFTS, ...HOLES };
const NAMES = Object.keys(ALL) as Letter[];

/** Distance of the nearer limit from the nominal size, by letter. */
export const ISO_DEVIATIONS = defineTable<Letter>({
  id: 'iso-deviations',
  title: 'Limits nearest the nominal size, by letter',
  edition: '2010',
  table: 'tables 2 to 5',
  range: 'sizes up to 500 mm; shafts a to x, holes J6 to J8',
  how: 'read',
  source: 'ISO 286-1',
  columns: Object.fromEntries(
    NAMES.map((name) => [name, { kind: 'length', unit: 'um', meaning: `limit nearest the nominal size, ${name}` }]),
  ) as Readonly<Record<Letter, Column>>,
  rows: Object.fromEntries(
    LETTER_STEPS.map((_, n): [string, Row<Letter>] => [
      stepKey(LETTER_STEPS, n),
      {
        values: Object.fromEntries(
          NAMES.flatMap((name) => {
            const own = ALL[name][n];
            return own == null ? [] : [[name, own]];
          }),
        ) as Readonly<Partial<Record<Letter, number>>>,
        how: 'read',
      },
    ]),
  ),
});
