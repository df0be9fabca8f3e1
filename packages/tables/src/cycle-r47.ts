import { defineTable } from './table.ts';

/**
 * Moped cycle, run eight times. It is no fixed trace: in its second phase the throttle is open and the vehicle runs as fast as it can, so the
 * phase is simulated for the vehicle at hand.
 */
export const CYCLE_R47 = defineTable({
  id: 'cycle-r47',
  title: 'Moped cycle, elementary cycle by phases',
  range: '112 s, eight times',
  how: 'memory',
  source: 'UN Regulation No. 47, Annex 4, table of operations',
  columns: {
    duration: { kind: 'time', unit: 's', meaning: 'duration of the phase' },
    endSpeed: {
      kind: 'speed',
      unit: 'km/h',
      meaning: 'speed at the end; missing where it is the vehicle’s own top speed',
    },
    deceleration: { kind: 'acceleration', unit: 'm/s²', meaning: 'deceleration until that speed' },
  },
  rows: {
    idle: { values: { duration: 8, endSpeed: 0 }, how: 'memory' },
    'full-throttle': {
      values: { duration: 57 },
      how: 'memory',
      note: 'From rest to the vehicle’s own top speed, throttle open throughout.',
    },
    'slow-to-20': {
      values: { duration: 36, endSpeed: 20, deceleration: 0.56 },
      how: 'memory',
      note: 'Slowed to 20 km/h, then held.',
    },
    stop: { values: { duration: 6, endSpeed: 0, deceleration: 0.93 }, how: 'memory' },
    'idle-again': { values: { duration: 5, endSpeed: 0 }, how: 'memory' },
  },
});
