import { defineTable } from './table.ts';

const TRIBOLOGY = 'The Tribology Handbook, section B2: factor f1 for engines that drive by gears, smooth load';

/** Factors and constants of the power ratings of roller chain. */
export const CHAIN_SERVICE = defineTable({
  id: 'chain-service',
  title: 'Constants and factors of the power ratings of roller chain',
  range: 'American and ISO chains, one to three strands',
  how: 'read',
  source: "Shigley's Mechanical Engineering Design, chapter 17",
  columns: {
    plates: { kind: 'number', unit: '', meaning: 'constant of the plates' },
    bushes: { kind: 'number', unit: '', meaning: 'constant of rollers and bushes' },
    factor: { kind: 'number', unit: '', meaning: 'factor' },
  },
  rows: {
    'size-25': { values: { plates: 0.004, bushes: 29 }, how: 'read' },
    'size-35': { values: { plates: 0.004, bushes: 29 }, how: 'read' },
    'size-41': { values: { plates: 0.0022, bushes: 3.4 }, how: 'read' },
    'other-sizes': { values: { plates: 0.004, bushes: 17 }, how: 'read' },
    'strands-1': { values: { factor: 1 }, how: 'read' },
    'strands-2': { values: { factor: 1.7 }, how: 'read' },
    'strands-3': { values: { factor: 2.5 }, how: 'read' },
    'engine-of-six': { values: { factor: 1.1 }, how: 'read', source: TRIBOLOGY, note: 'Six cylinders or more.' },
    'engine-of-fewer': { values: { factor: 1.3 }, how: 'read', source: TRIBOLOGY, note: 'Fewer than six cylinders.' },
  },
});
