import { defineTable } from './table.ts';

const CARVILL = 'Carvill: Mechanical Engineer’s Data Handbook, 1993, by way of a restating page';
const MOYER = 'Moyer, in Marks’ Standard Handbook, by way of a restating page';
const BOSCH = 'Bosch Automotive Handbook, table of rolling resistance';

/** Rolling resistance as a part of the load on the wheels. */
export const ROLLING_RESISTANCE = defineTable({
  id: 'rolling-resistance',
  title: 'Coefficients of rolling resistance',
  range: 'pneumatic tyres at moderate speed, by surface',
  how: 'read',
  source: 'Several handbooks, named at each row',
  columns: {
    low: { kind: 'fraction', unit: '', meaning: 'coefficient, from' },
    high: { kind: 'fraction', unit: '', meaning: 'coefficient, to' },
  },
  rows: {
    'car-tyre-paved': { values: { low: 0.011, high: 0.015 }, how: 'memory', source: BOSCH },
    'tyre-normal': {
      values: { low: 0.01, high: 0.02 },
      how: 'read',
      source: 'Walter, Conant: Energy Losses in Tires, Tire Science and Technology 2 (1974)',
    },
    'hard-road': { values: { low: 0.008, high: 0.008 }, how: 'read', source: MOYER, note: 'Properly inflated.' },
    'paved-new': { values: { low: 0.01, high: 0.01 }, how: 'read', source: CARVILL },
    'paved-worn': { values: { low: 0.02, high: 0.02 }, how: 'read', source: CARVILL },
    'gravel-packed': { values: { low: 0.012, high: 0.012 }, how: 'read', source: MOYER },
    'gravel-rolled': {
      values: { low: 0.01, high: 0.02 },
      how: 'memory',
      source: `${CARVILL} (0.01, read); ${BOSCH} (0.02)`,
    },
    tarmacadam: { values: { low: 0.025, high: 0.025 }, how: 'memory', source: BOSCH },
    'gravel-loose': {
      values: { low: 0.04, high: 0.06 },
      how: 'read',
      source: `${CARVILL} (0.04); ${MOYER} (wet, 0.06)`,
    },
    earth: { values: { low: 0.05, high: 0.05 }, how: 'memory', source: BOSCH },
    'soil-medium': { values: { low: 0.08, high: 0.08 }, how: 'read', source: CARVILL },
    sand: { values: { low: 0.1, high: 0.2 }, how: 'read', source: CARVILL },
    field: { values: { low: 0.1, high: 0.35 }, how: 'memory', source: BOSCH },
    'truck-tyre-paved': { values: { low: 0.006, high: 0.01 }, how: 'memory', source: BOSCH },
  },
});
