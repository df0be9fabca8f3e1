import { defineTable } from './table.ts';

/** Section width behind the letters of alphanumeric motorcycle tyre codes, such as MT90B16. */
export const TYRE_ALPHA_WIDTHS = defineTable({
  id: 'tyre-alpha-widths',
  title: 'Width letters of alphanumeric motorcycle tyre codes',
  range: 'MH to MV',
  how: 'read',
  source: 'Tables of U.S. alphanumeric motorcycle tyre sizes on dealers’ pages; Cycle World, July 1982, for ML',
  columns: { width: { kind: 'length', unit: 'mm', meaning: 'section width of the metric equivalent' } },
  rows: {
    MH: { values: { width: 80 }, how: 'read' },
    MJ: { values: { width: 90 }, how: 'read' },
    ML: { values: { width: 110 }, how: 'read' },
    MM: { values: { width: 100 }, how: 'read' },
    MN: { values: { width: 110 }, how: 'read' },
    MP: { values: { width: 110 }, how: 'read' },
    MR: { values: { width: 120 }, how: 'read' },
    MT: { values: { width: 130 }, how: 'read' },
    MU: { values: { width: 140 }, how: 'read' },
    MV: { values: { width: 150 }, how: 'read' },
  },
});
