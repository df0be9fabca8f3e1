import { defineTable } from './table.ts';

/** What joints of built-up shafts bear. */
export const JOINT_LIMITS = defineTable({
  id: 'joint-limits',
  title: 'Joints of built-up shafts',
  range: 'steel parts',
  how: 'memory',
  source: 'AWS D1.1, as restated in Shigley’s Mechanical Engineering Design, tables 9-3 and 9-4',
  columns: {
    shear: { kind: 'pressure', unit: 'MPa', meaning: 'shear in the throat of a weld' },
    share: { kind: 'number', unit: '', meaning: 'part of the teeth that carry' },
  },
  rows: {
    'weld-throat': {
      values: { shear: 124 },
      how: 'memory',
      source:
        'AWS D1.1, as restated in Shigley’s Mechanical Engineering Design, table 9-4: 0.30 of the strength of an E60 electrode',
    },
    spline: {
      values: { share: 0.75 },
      how: 'memory',
      source: 'Texts of machine design: three quarters of the teeth carry',
    },
    key: { values: { share: 1 }, how: 'derived', source: 'A single key carries the whole' },
  },
});
