import { defineTable } from './table.ts';

const HANDBOOK = 'Machinery’s Handbook, proportions of roller-chain sprockets';

/** What to look at when a sprocket is bought as a blank and bored. */
export const SPROCKET_PRACTICE = defineTable({
  id: 'sprocket-practice',
  title: 'Hubs, bores and hardened teeth of roller-chain sprockets',
  range: 'steel sprockets for one strand, bored and keyed by the builder',
  how: 'memory',
  source: HANDBOOK,
  columns: {
    wall: {
      kind: 'length',
      unit: 'in',
      meaning: 'least wall of the hub, before what the bore and the pitch diameter add',
    },
    upTo: { kind: 'length', unit: 'in', meaning: 'pitch diameter, up to' },
    ofBore: { kind: 'number', unit: '', meaning: 'wall for each unit of the bore' },
    ofPitchDiameter: { kind: 'number', unit: '', meaning: 'wall for each unit of the pitch diameter' },
    teeth: { kind: 'count', unit: '', meaning: 'teeth, fewer than' },
    turns: { kind: 'angularSpeed', unit: 'rpm', meaning: 'speed above' },
    hubs: { kind: 'count', unit: '', meaning: 'sides of the plate with a hub' },
    cut: { kind: 'length', unit: 'mm', meaning: 'least to bore out, on the diameter' },
  },
  rows: {
    'wall-small': { values: { wall: 0.125, upTo: 2 }, how: 'memory' },
    'wall-medium': { values: { wall: 0.187, upTo: 4 }, how: 'memory' },
    'wall-large': { values: { wall: 0.25, upTo: 6 }, how: 'memory' },
    'wall-largest': { values: { wall: 0.375 }, how: 'memory' },
    'wall-grows': { values: { ofBore: 1 / 6, ofPitchDiameter: 0.01 }, how: 'memory' },
    hardened: {
      values: { teeth: 25, turns: 600 },
      how: 'memory',
      note: 'Sprockets with fewer teeth that turn faster should have hardened teeth.',
    },
    plate: {
      values: { hubs: 0 },
      how: 'read',
      source: 'ASME B29.1, kinds of hub, as sellers restate them',
      note: 'Type A: a plate without a hub.',
    },
    'one-hub': {
      values: { hubs: 1 },
      how: 'read',
      source: 'ASME B29.1, kinds of hub, as sellers restate them',
      note: 'Type B: a hub on one side.',
    },
    'two-hubs': {
      values: { hubs: 2 },
      how: 'read',
      source: 'ASME B29.1, kinds of hub, as sellers restate them',
      note: 'Type C: hubs on both sides.',
    },
    pilot: {
      values: { cut: 2 },
      how: 'common practice',
      source: 'stated default of this project: a bored hole runs true where the tool cuts all round',
      note: 'A pilot hole must be smaller than the shaft by so much.',
    },
  },
});
