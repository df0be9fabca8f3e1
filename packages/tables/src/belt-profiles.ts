import { defineTable } from './table.ts';

const GB = 'GB/T 11362-2008, the numbers of ISO 5295';
const MAKER = 'A belt maker’s catalogue for polyurethane belts with steel cord; no standard';

/** What toothed belts of each profile pull. Belts with curved teeth have no open rating. */
export const BELT_PROFILES = defineTable({
  id: 'belt-profiles',
  title: 'Toothed belts: pull of trapezoidal and polyurethane profiles',
  range: 'XL to XXH; T5, T10, T20 and AT10 at a few speeds',
  how: 'memory',
  source: GB,
  columns: {
    pitch: { kind: 'length', unit: 'mm', meaning: 'pitch' },
    pull: { kind: 'force', unit: 'N', meaning: 'pull allowed at the base width' },
    mass: { kind: 'linearDensity', unit: 'kg/m', meaning: 'mass per length at the base width' },
    width: { kind: 'length', unit: 'mm', meaning: 'base width' },
    at0: { kind: 'stiffness', unit: 'N/mm', meaning: 'pull of a tooth for each length of width, standing' },
    at500: { kind: 'stiffness', unit: 'N/mm', meaning: 'the same at 500 turns a minute' },
    at1000: { kind: 'stiffness', unit: 'N/mm', meaning: 'the same at 1000 turns a minute' },
    at2000: { kind: 'stiffness', unit: 'N/mm', meaning: 'the same at 2000 turns a minute' },
    at4000: { kind: 'stiffness', unit: 'N/mm', meaning: 'the same at 4000 turns a minute' },
  },
  rows: {
    XL: { values: { pitch: 5.08, pull: 50.17, mass: 0.022, width: 9.5 }, how: 'memory' },
    L: { values: { pitch: 9.525, pull: 244.46, mass: 0.095, width: 25.4 }, how: 'memory' },
    H: { values: { pitch: 12.7, pull: 2100.85, mass: 0.448, width: 76.2 }, how: 'memory' },
    XH: { values: { pitch: 22.225, pull: 4048.9, mass: 1.484, width: 101.6 }, how: 'memory' },
    XXH: { values: { pitch: 31.75, pull: 6398.03, mass: 2.473, width: 127 }, how: 'memory' },
    T5: {
      values: { pitch: 5, at0: 2.4, at500: 1.741, at1000: 1.588, at2000: 1.369, at4000: 1.142 },
      how: 'read',
      source: MAKER,
    },
    T10: {
      values: { pitch: 10, at0: 5.05, at500: 3.44, at1000: 3.07, at2000: 2.54, at4000: 1.986 },
      how: 'read',
      source: MAKER,
    },
    T20: {
      values: { pitch: 20, at0: 10.15, at500: 6.56, at1000: 5.72, at2000: 4.53, at4000: 3.3 },
      how: 'read',
      source: MAKER,
    },
    AT10: {
      values: { pitch: 10, at0: 7.35, at500: 5.55, at1000: 4.95, at2000: 4.03, at4000: 3.03 },
      how: 'read',
      source: MAKER,
    },
  },
});
