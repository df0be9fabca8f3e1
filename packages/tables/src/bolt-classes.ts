import { defineTable } from './table.ts';

/** Strength classes and grades of bolts. */
export const BOLT_CLASSES = defineTable({
  id: 'bolt-classes',
  title: 'Strength of bolts',
  range: 'classes 4.6 to 12.9 and grades 2 to 8',
  how: 'read',
  source: 'ISO 898-1:2013; SAE J429',
  columns: {
    proof: { kind: 'pressure', unit: 'MPa', meaning: 'proof strength' },
    tensile: { kind: 'pressure', unit: 'MPa', meaning: 'tensile strength' },
    yield: { kind: 'pressure', unit: 'MPa', meaning: 'yield strength' },
  },
  rows: {
    'class-4.6': { values: { proof: 225, tensile: 400, yield: 240 }, how: 'read', source: 'ISO 898-1:2013' },
    'class-4.8': { values: { proof: 310, tensile: 420, yield: 340 }, how: 'read', source: 'ISO 898-1:2013' },
    'class-5.6': { values: { proof: 280, tensile: 500, yield: 300 }, how: 'memory', source: 'ISO 898-1:2013' },
    'class-5.8': { values: { proof: 380, tensile: 520, yield: 420 }, how: 'read', source: 'ISO 898-1:2013' },
    'class-6.8': { values: { proof: 440, tensile: 600, yield: 480 }, how: 'memory', source: 'ISO 898-1:2013' },
    'class-8.8': {
      values: { proof: 580, tensile: 800, yield: 640 },
      how: 'read',
      source: 'ISO 898-1:2013',
      note: 'Up to M16; larger ones have 600 MPa proof strength.',
    },
    'class-9.8': { values: { proof: 650, tensile: 900, yield: 720 }, how: 'read', source: 'ISO 898-1:2013' },
    'class-10.9': { values: { proof: 830, tensile: 1040, yield: 940 }, how: 'read', source: 'ISO 898-1:2013' },
    'class-12.9': { values: { proof: 970, tensile: 1220, yield: 1100 }, how: 'read', source: 'ISO 898-1:2013' },
    'grade-2': {
      values: { proof: 228, tensile: 414, yield: 248 },
      how: 'read',
      source: 'SAE J429, as in Shigley’s Mechanical Engineering Design, table 8-9',
    },
    'grade-5': {
      values: { proof: 586, tensile: 827, yield: 634 },
      how: 'read',
      source: 'SAE J429, as in Shigley’s Mechanical Engineering Design, table 8-9',
    },
    'grade-8': {
      values: { proof: 827, tensile: 1034, yield: 896 },
      how: 'read',
      source: 'SAE J429, as in Shigley’s Mechanical Engineering Design, table 8-9',
    },
  },
});
