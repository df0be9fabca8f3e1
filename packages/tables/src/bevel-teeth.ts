import { defineTable } from './table.ts';

/** Fewest teeth of the mate for straight bevel pairs of 20° that are cut without undercut. Keys are the teeth of the pinion. */
export const BEVEL_TEETH = defineTable({
  id: 'bevel-teeth',
  title: 'Straight bevel pairs without undercut, 20° pressure angle',
  range: 'pinions of 13 to 16 teeth; from 16 teeth on any mate will do, below 13 none is listed',
  how: 'memory',
  source: 'Gleason system for straight bevel gears, as gear handbooks print it',
  columns: { mate: { kind: 'count', unit: '', meaning: 'fewest teeth of the mate' } },
  rows: {
    '13': { values: { mate: 30 }, how: 'memory' },
    '14': { values: { mate: 20 }, how: 'memory' },
    '15': { values: { mate: 17 }, how: 'memory' },
    '16': { values: { mate: 16 }, how: 'memory' },
  },
});
