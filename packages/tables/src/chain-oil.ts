import { defineTable } from './table.ts';

const BASIS =
  'Worked out in this project from the basis of the ratings (3 %, 15 000 h); the real spread is five times either way';

/** What rubs off the joints of a chain, pin and bush together, by how it is oiled. */
export const CHAIN_WEAR = defineTable({
  id: 'chain-wear',
  title: 'Wear of the joints of a roller chain by how it is oiled',
  range: 'roller chains of steel',
  how: 'derived',
  source: BASIS,
  columns: {
    low: { kind: 'number', unit: '', meaning: 'mm³ for each newton and metre, from' },
    high: { kind: 'number', unit: '', meaning: 'mm³ for each newton and metre, to' },
  },
  rows: {
    'oil bath or stream': { values: { low: 1e-7, high: 5e-7 }, how: 'derived' },
    'drip or brush': {
      values: { low: 1.7e-7, high: 1.7e-6 },
      how: 'memory',
      source: 'DIN 8195: ratings cut to 0.6 or 0.3 with poor but clean oiling, on the row of a good oil',
    },
    'dirty or seldom': {
      values: { low: 5e-7, high: 3e-6 },
      how: 'memory',
      source: 'DIN 8195: ratings cut to 0.3 or 0.15 in dirt, on the row of a good oil',
    },
    dry: {
      values: { low: 1e-5, high: 1e-4 },
      how: 'memory',
      source: 'Usual range of steel on steel, dry',
    },
  },
});

const DISTRIBUTOR = 'ANSI B29.1 and the American Chain Association, as a distributor’s page gives them';

/** Chain speed up to which each way of oiling does, by size. */
export const CHAIN_OILING = defineTable({
  id: 'chain-oiling',
  title: 'Speed of a roller chain up to which each way of oiling does',
  range: 'American sizes 40 to 160; smaller ones as 40',
  how: 'read',
  source: DISTRIBUTOR,
  columns: {
    pitch: { kind: 'length', unit: 'mm', meaning: 'pitch' },
    hand: { kind: 'speed', unit: 'ft/min', meaning: 'by hand or drip, up to' },
    bath: { kind: 'speed', unit: 'ft/min', meaning: 'in an oil bath, up to; a pumped stream above' },
  },
  rows: {
    '40': { values: { pitch: 12.7, hand: 300, bath: 2300 }, how: 'read' },
    '50': { values: { pitch: 15.875, hand: 250, bath: 2000 }, how: 'read' },
    '60': { values: { pitch: 19.05, hand: 220, bath: 1800 }, how: 'read' },
    '80': { values: { pitch: 25.4, hand: 170, bath: 1500 }, how: 'read' },
    '100': { values: { pitch: 31.75, hand: 150, bath: 1300 }, how: 'read' },
    '120': { values: { pitch: 38.1, hand: 130, bath: 1200 }, how: 'read' },
    '140': { values: { pitch: 44.45, hand: 115, bath: 1100 }, how: 'read' },
    '160': { values: { pitch: 50.8, hand: 100, bath: 1000 }, how: 'read' },
  },
});
