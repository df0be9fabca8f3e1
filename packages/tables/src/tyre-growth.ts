import { defineTable } from './table.ts';

/** How much longer the roll-out of a radial tyre gets with speed. */
export const TYRE_GROWTH = defineTable({
  id: 'tyre-growth',
  title: 'Growth of the roll-out of car radial tyres with speed',
  range: '60 to 210 km/h, against the roll-out at 60 km/h',
  how: 'memory',
  source: 'Reimpell, Stoll, Betzler: The Automotive Chassis, chapter 2',
  columns: {
    speed: { kind: 'speed', unit: 'km/h', meaning: 'road speed' },
    growth: { kind: 'fraction', unit: '%', meaning: 'growth of the roll-out' },
  },
  rows: {
    '60': { values: { speed: 60, growth: 0 }, how: 'memory' },
    '90': { values: { speed: 90, growth: 0.1 }, how: 'memory' },
    '120': { values: { speed: 120, growth: 0.1 }, how: 'memory' },
    '150': { values: { speed: 150, growth: 0.4 }, how: 'memory' },
    '180': { values: { speed: 180, growth: 0.7 }, how: 'memory' },
    '210': { values: { speed: 210, growth: 1.1 }, how: 'memory' },
  },
});
