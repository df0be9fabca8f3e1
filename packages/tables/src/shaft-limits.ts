import { defineTable } from './table.ts';

const SLOPES = 'Shigley’s Mechanical Engineering Design, 9th, table 7-2';

/** How far a shaft may tilt, twist and turn, and the factor of reliability of its endurance limit. */
export const SHAFT_LIMITS = defineTable({
  id: 'shaft-limits',
  title: 'Slope, twist and speed of shafts',
  range: 'steel shafts on rolling bearings',
  how: 'read',
  source: SLOPES,
  columns: {
    slopeLow: { kind: 'angle', unit: 'rad', meaning: 'slope where the bearing keeps its whole life' },
    slopeHigh: { kind: 'angle', unit: 'rad', meaning: 'greatest slope' },
    twist: { kind: 'angle', unit: 'deg', meaning: 'twist in twenty diameters' },
    apart: { kind: 'number', unit: '', meaning: 'critical speed over running speed, at least' },
  },
  rows: {
    'deep-groove': { values: { slopeLow: 0.001, slopeHigh: 0.003 }, how: 'read', source: SLOPES },
    tapered: { values: { slopeLow: 0.0005, slopeHigh: 0.0012 }, how: 'read', source: SLOPES },
    'angular-contact': {
      values: { slopeLow: 0.0003, slopeHigh: 0.0006 },
      how: 'memory',
      source: 'Bearing makers’ catalogues: one to two minutes of arc for single-row angular contact bearings',
    },
    'spur-gear': { values: { slopeLow: 0.0005, slopeHigh: 0.0005 }, how: 'read', source: SLOPES },
    'long-shaft': {
      values: { twist: 1 },
      how: 'memory',
      source: 'Machinery’s Handbook: one degree in twenty diameters',
    },
    'critical-speed': {
      values: { apart: 2 },
      how: 'memory',
      source:
        'Shigley’s Mechanical Engineering Design, 9th, section 7-6: first critical speed at least twice the speed',
    },
  },
});
