import { defineTable } from './table.ts';

const PRACTICE = 'stated default of this project';

/** What a blank input of the brief or path stands on. The first two columns of a row are its ends. */
export const BRIEF_DEFAULTS = defineTable({
  id: 'brief-defaults',
  title: 'Bounds taken where a brief leaves a field blank',
  range: 'small vehicles with one engine, up to about 1000 cm³',
  how: 'common practice',
  source: PRACTICE,
  columns: {
    idleLow: { kind: 'angularSpeed', unit: 'rpm', meaning: 'idle speed, from' },
    idleHigh: { kind: 'angularSpeed', unit: 'rpm', meaning: 'idle speed, to' },
    ratioLow: { kind: 'ratio', unit: '', meaning: 'primary ratio, from' },
    ratioHigh: { kind: 'ratio', unit: '', meaning: 'primary ratio, to' },
    strands: { kind: 'count', unit: '', meaning: 'strands of a chain' },
    massLow: { kind: 'mass', unit: 'kg', meaning: 'rider and load, from' },
    massHigh: { kind: 'mass', unit: 'kg', meaning: 'rider and load, to' },
    roadSpeed: { kind: 'speed', unit: 'km/h', meaning: 'road speed to compare at' },
  },
  rows: {
    'idle-speed': {
      values: { idleLow: 900, idleHigh: 1500 },
      how: 'common practice',
      source: `${PRACTICE}: idle of four-stroke motorcycle engines`,
    },
    'primary-ratio': {
      values: { ratioLow: 1.5, ratioHigh: 3.5 },
      how: 'common practice',
      source: `${PRACTICE}: primary ratios of motorcycle engines`,
    },
    strands: {
      values: { strands: 1 },
      how: 'common practice',
      source: `${PRACTICE}: a single chain unless said otherwise`,
    },
    payload: {
      values: { massLow: 75, massHigh: 200 },
      how: 'common practice',
      source: `${PRACTICE}: from one rider alone to a rider with a load`,
    },
    'compare-speed': { values: { roadSpeed: 50 }, how: 'common practice', source: PRACTICE },
  },
});
