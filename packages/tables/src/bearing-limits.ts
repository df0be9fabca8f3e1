import { defineTable } from './table.ts';

const MAKER = 'Rolling bearings, catalogue 17000/1 EN, 2018';
const PRACTICE = 'stated default of this project';

/** Reliability, dirt, static reserve, speed and seats of rolling bearings. */
export const BEARING_LIMITS = defineTable({
  id: 'bearing-limits',
  title: 'Reliability, dirt and limits of rolling bearings',
  range: 'ball and roller bearings of 10 to 60 mm bore in small vehicles',
  how: 'read',
  source: MAKER,
  columns: {
    reliability: { kind: 'number', unit: '', meaning: 'factor a1 on the life' },
    open: { kind: 'number', unit: '', meaning: 'factor of dirt, open bearing' },
    shields: { kind: 'number', unit: '', meaning: 'factor of dirt, with shields' },
    rubbing: { kind: 'number', unit: '', meaning: 'factor of dirt, with rubbing seals' },
    reserve: { kind: 'number', unit: '', meaning: 'static rating over load' },
    part: { kind: 'number', unit: '', meaning: 'part of a rating, or of a speed' },
    expansion: { kind: 'number', unit: '', meaning: 'growth per degree' },
    degrees: { kind: 'number', unit: '', meaning: 'degrees that a shaft may be warmer than its frame' },
    stack: { kind: 'length', unit: 'mm', meaning: 'tolerances of shaft, plates and rings in all' },
  },
  rows: {
    '50': {
      values: { reliability: 1 },
      how: 'common practice',
      source: `${PRACTICE}: the standard gives no factor below 90 of a hundred, so 90 counts`,
    },
    '90': { values: { reliability: 1 }, how: 'read', source: 'ISO 281:2007, table 12' },
    '95': { values: { reliability: 0.64 }, how: 'read', source: 'ISO 281:2007, table 12' },
    '99': { values: { reliability: 0.25 }, how: 'read', source: 'ISO 281:2007, table 12' },
    '99.9': { values: { reliability: 0.093 }, how: 'read', source: 'ISO 281:2007, table 12' },
    clean: {
      values: { open: 0.5, shields: 0.6, rubbing: 0.8 },
      how: 'read',
      source: `${MAKER}, table 6, upper ends`,
    },
    normal: {
      values: { open: 0.3, shields: 0.5, rubbing: 0.6 },
      how: 'read',
      source: `${MAKER}, table 6, lower ends`,
    },
    'dirt from outside': {
      values: { open: 0.1, shields: 0.1, rubbing: 0.3 },
      how: 'read',
      source: `${MAKER}, table 6: 0.3 to 0.1; rubbing seals the upper end, else the lower`,
    },
    severe: {
      values: { open: 0, shields: 0, rubbing: 0.1 },
      how: 'read',
      source: `${MAKER}, table 6: 0.1 to 0; rubbing seals the upper end, else the lower`,
    },
    'peaks not known well': {
      values: { reserve: 1.5 },
      how: 'read',
      source: `${MAKER}, table 7: shocks and peaks that are not known well`,
    },
    'spoiled by a peak': {
      values: { reserve: 0.4 },
      how: 'read',
      source: `${MAKER}, table 7: least where a bearing moves now and then and dents are accepted; production motorcycles go down to 0.5 in a hard start (memory)`,
    },
    'axial load': { values: { part: 0.5 }, how: 'read', source: `${MAKER}, page 254: axial load at most half of C0` },
    'axial load, light series': {
      values: { part: 0.25 },
      how: 'read',
      source: `${MAKER}, page 254: axial load at most a quarter of C0 for bores up to 12 mm and light series`,
    },
    'speed with rubbing seals': {
      values: { part: 0.47 },
      how: 'read',
      source: `${MAKER}: a 6205 of 18 000 rpm open is held to 8 500 rpm with rubbing seals`,
    },
    'least load, balls': { values: { part: 0.01 }, how: 'read', source: `${MAKER}, page 106: a hundredth of C` },
    'least load, rollers': { values: { part: 0.02 }, how: 'read', source: `${MAKER}, page 106: a fiftieth of C` },
    growth: {
      values: { expansion: 12e-6, degrees: 30, stack: 0.2 },
      how: 'common practice',
      source: `${PRACTICE}: steel 12 µm/m per degree; a shaft 30 degrees warmer than its frame; 0.2 mm of tolerances in all`,
    },
  },
});
