import { defineTable } from './table.ts';

/** Grip of a rubber tyre on the ground. */
export const TYRE_FRICTION = defineTable({
  id: 'tyre-friction',
  title: 'Coefficients of friction between tyre and ground',
  range: 'rubber tyres, by surface',
  how: 'memory',
  source: 'Handbooks of vehicle dynamics, usual values',
  columns: {
    low: { kind: 'fraction', unit: '', meaning: 'coefficient, from' },
    high: { kind: 'fraction', unit: '', meaning: 'coefficient, to' },
  },
  rows: {
    'asphalt-dry': { values: { low: 0.8, high: 1 }, how: 'memory' },
    'asphalt-dry-soft-tyre': { values: { low: 0.8, high: 1.2 }, how: 'memory' },
    'asphalt-wet': { values: { low: 0.4, high: 0.6 }, how: 'memory' },
    gravel: { values: { low: 0.6, high: 0.6 }, how: 'memory' },
    grass: { values: { low: 0.3, high: 0.4 }, how: 'memory' },
    ice: { values: { low: 0.1, high: 0.1 }, how: 'memory' },
  },
});
