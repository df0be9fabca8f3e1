import { defineTable } from './table.ts';

/** Factor on the endurance limit for the part of shafts that shall last. */
export const SHAFT_RELIABILITY = defineTable({
  id: 'shaft-reliability',
  title: 'Factor of reliability of the endurance limit',
  range: 'steel, standard deviation of 8 % of the endurance limit',
  how: 'read',
  source: 'Shigley’s Mechanical Engineering Design, 9th, table 6-5',
  columns: { factor: { kind: 'number', unit: '', meaning: 'factor on the endurance limit' } },
  rows: {
    '50': { values: { factor: 1 }, how: 'read' },
    '90': { values: { factor: 0.897 }, how: 'read' },
    '95': { values: { factor: 0.868 }, how: 'read' },
    '99': { values: { factor: 0.814 }, how: 'read' },
    '99.9': { values: { factor: 0.753 }, how: 'read' },
  },
});
