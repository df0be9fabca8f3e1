import { defineTable } from './table.ts';

/** How far the gears of a pair may move under load. */
export const MESH_LIMITS = defineTable({
  id: 'mesh-limits',
  title: 'Movement of gears under load',
  range: 'bevel gears of 150 to 380 mm diameter; taken for smaller ones too',
  how: 'memory',
  source: 'ANSI/AGMA 2005, design manual for bevel gears: deflections at full load',
  columns: {
    movement: { kind: 'length', unit: 'mm', meaning: 'greatest movement of either gear, along its shaft or across it' },
  },
  rows: {
    bevel: {
      values: { movement: 0.076 },
      how: 'memory',
      source: 'ANSI/AGMA 2005, design manual for bevel gears: deflections at full load',
    },
  },
});
