import { defineTable } from './table.ts';

const row = (opening: number, slot: number, square: number, round: number) =>
  ({ values: { opening, slot, square, round }, how: 'read' }) as const;

/** Distances that keep an arm from a danger behind regular openings. */
export const REACH_DISTANCES = defineTable({
  id: 'reach-distances',
  title: 'Reach through regular openings, persons of 14 years and older',
  edition: '2019',
  table: 'table 4',
  range: 'openings up to 120 mm',
  how: 'read',
  source: 'ISO 13857, as restated on an engineer’s page',
  columns: {
    opening: { kind: 'length', unit: 'mm', meaning: 'greatest opening: width of a slot, side of a square, diameter' },
    slot: { kind: 'length', unit: 'mm', meaning: 'least distance behind slots' },
    square: { kind: 'length', unit: 'mm', meaning: 'least distance behind squares' },
    round: { kind: 'length', unit: 'mm', meaning: 'least distance behind round holes' },
    arm: { kind: 'length', unit: 'mm', meaning: 'reach of an arm past an edge that stops the shoulder' },
  },
  rows: {
    '4': row(4, 2, 2, 2),
    '6': row(6, 10, 5, 5),
    '8': row(8, 20, 15, 5),
    '10': row(10, 80, 25, 20),
    '12': row(12, 100, 80, 80),
    '20': row(20, 120, 120, 120),
    '30': row(30, 850, 120, 120),
    '40': row(40, 850, 200, 120),
    '120': row(120, 850, 850, 850),
    'short-slot': {
      values: { opening: 30, slot: 200 },
      how: 'read',
      note: 'a slot no longer than 65 mm: the thumb stops the hand',
    },
    arm: {
      values: { arm: 850 },
      how: 'read',
      source:
        'ISO 13857, 2019, table 3 (an arm whose shoulder an edge stops), its 850 mm as restated on an engineer’s page',
      note: 'a person who can lean past the edge reaches further',
    },
  },
});
