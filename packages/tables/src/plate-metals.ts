import { defineTable } from './table.ts';

/** Plates whose grade the build does not name: the weakest that is commonly bought. */
export const PLATE_METALS = defineTable({
  id: 'plate-metals',
  title: 'Strength of plates of unknown grade',
  range: 'plates up to 16 mm thick, each',
  how: 'memory',
  source: 'EN 10025-2 and EN 485-2',
  columns: {
    yield: { kind: 'pressure', unit: 'MPa', meaning: 'yield strength' },
    tensile: { kind: 'pressure', unit: 'MPa', meaning: 'tensile strength' },
  },
  rows: {
    steel: { values: { yield: 235, tensile: 360 }, how: 'memory', source: 'EN 10025-2, S235' },
    aluminium: { values: { yield: 110, tensile: 270 }, how: 'memory', source: 'EN 485-2, 5083 as rolled' },
  },
});
