import { defineTable, type Row } from './table.ts';

type Part = 'low' | 'high';
const pair = (low: number, high: number): Row<Part> => ({ values: { low, high }, how: 'memory' });

/** Friction of press fits: the low end holds, the high end presses on. */
export const FIT_FRICTION = defineTable<Part>({
  id: 'fit-friction',
  title: 'Friction of press fits',
  range: 'turned or ground seats; take the low end for what it holds, the high end for what the press must give',
  how: 'memory',
  source: 'DIN 7190, by order of size; textbook figures of 0.15 to 0.3 are too hopeful for oily pressing',
  columns: {
    low: { kind: 'number', unit: '', meaning: 'friction, from' },
    high: { kind: 'number', unit: '', meaning: 'friction, to' },
  },
  rows: {
    'pressed, oiled, steel on steel': pair(0.06, 0.08),
    'pressed, dry, steel on steel': pair(0.08, 0.11),
    'shrunk, oil film': pair(0.12, 0.12),
    'shrunk, degreased': pair(0.18, 0.2),
    'steel in cast iron': pair(0.1, 0.12),
    'steel in aluminium': pair(0.05, 0.1),
    'bearing ring, pressed on and drawn off': {
      values: { low: 0.12, high: 0.18 },
      how: 'read',
      source: 'Ball and Roller Bearings, catalogue 2203/E, section 17.5',
    },
  },
});
