import { defineTable } from './table.ts';

const ESTIMATES = 'Shigley’s Mechanical Engineering Design, 9th, table 7-1: first estimates of stress concentration';
const THREADS = 'Shigley’s Mechanical Engineering Design, 9th, table 8-16, cut threads';
const WELDS = 'Shigley’s Mechanical Engineering Design, 9th, table 9-5';

/** Notches of shafts. A row with a root radius gives the concentration by shape; one without gives the fatigue factor itself. */
export const SHAFT_NOTCHES = defineTable({
  id: 'shaft-notches',
  title: 'Notches of shafts',
  range: 'round steel shafts',
  how: 'memory',
  source: ESTIMATES,
  columns: {
    bending: { kind: 'number', unit: '', meaning: 'factor on the bending stress' },
    torsion: { kind: 'number', unit: '', meaning: 'factor on the torsion stress' },
    radius: { kind: 'number', unit: '', meaning: 'root radius where none is given, as a part of the diameter' },
    core: { kind: 'number', unit: '', meaning: 'part of the diameter that is left at the notch' },
  },
  rows: {
    shoulder: {
      values: { radius: 0.02, core: 1 },
      how: 'read',
      source: ESTIMATES,
      note: 'Only the radius: its shape follows from the two diameters. A sharp corner.',
    },
    'ring-groove': {
      values: { bending: 4.3, torsion: 2.65, radius: 0.006, core: 0.94 },
      how: 'memory',
      source:
        'Shigley’s Mechanical Engineering Design, 9th, example 7-2: ring groove 0.048 in deep with a root of 0.010 in, 1.625 in across; depth by DIN 471 for 20 to 50 mm',
    },
    'keyway-end-milled': {
      values: { bending: 2.14, torsion: 3, radius: 0.02, core: 1 },
      how: 'read',
      source: ESTIMATES,
    },
    'keyway-disc-milled': {
      values: { bending: 1.7, torsion: 3, radius: 0.02, core: 1 },
      how: 'memory',
      source: `${ESTIMATES}; torsion as end milled, with the key in it`,
    },
    'cross-hole': {
      values: { bending: 3, torsion: 2, radius: 0.05, core: 1 },
      how: 'derived',
      source: 'Kirsch 1898: a small hole in a wide sheet, three times the pull and twice the shear',
    },
    spline: {
      values: { bending: 2.14, torsion: 2.8, radius: 0.02, core: 1 },
      how: 'memory',
      source: 'Peterson’s Stress Concentration Factors, 3rd, chart for an eight-tooth spline; bending as a keyway',
    },
    'thread-mild': { values: { bending: 2.8, torsion: 2.8, core: 0.92 }, how: 'memory', source: THREADS },
    'thread-strong': { values: { bending: 3.8, torsion: 3.8, core: 0.92 }, how: 'memory', source: THREADS },
    'weld-toe': { values: { bending: 1.5, torsion: 1.5, core: 1 }, how: 'memory', source: WELDS },
  },
});
