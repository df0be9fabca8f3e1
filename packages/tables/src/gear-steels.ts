import { defineTable } from './table.ts';

const AGMA = 'ANSI/AGMA 2003-B97 and 2001-D04, grade 1';
const FILE = 'Common practice of the file test, with the numbers of ANSI/AGMA 2003-B97 and 2001-D04, grade 1';

/**
 * Stress numbers that teeth bear, as far as they are known. A file bites steel up to about 40 HRC and skates from about 58 HRC on. The low end of a
 * hard tooth is a skin so thin that its root and its core bear as soft steel does.
 */
export const GEAR_STEELS = defineTable({
  id: 'gear-steels',
  title: 'What the teeth of gears bear, by what is known of their steel',
  range: 'steel gears, plain grade, 10 million turns, one of a hundred may break',
  how: 'memory',
  source: AGMA,
  columns: {
    bevelBendingLow: { kind: 'pressure', unit: 'psi', meaning: 'bevel, bending, from' },
    bevelBendingHigh: { kind: 'pressure', unit: 'psi', meaning: 'bevel, bending, to' },
    bevelContactLow: { kind: 'pressure', unit: 'psi', meaning: 'bevel, contact, from' },
    bevelContactHigh: { kind: 'pressure', unit: 'psi', meaning: 'bevel, contact, to' },
    spurBendingLow: { kind: 'pressure', unit: 'psi', meaning: 'spur, bending, from' },
    spurBendingHigh: { kind: 'pressure', unit: 'psi', meaning: 'spur, bending, to' },
    spurContactLow: { kind: 'pressure', unit: 'psi', meaning: 'spur, contact, from' },
    spurContactHigh: { kind: 'pressure', unit: 'psi', meaning: 'spur, contact, to' },
  },
  rows: {
    'case hardened': {
      values: {
        bevelBendingLow: 30000,
        bevelBendingHigh: 30000,
        bevelContactLow: 200000,
        bevelContactHigh: 200000,
        spurBendingLow: 55000,
        spurBendingHigh: 55000,
        spurContactLow: 180000,
        spurContactHigh: 180000,
      },
      how: 'memory',
      note: 'Carburized and hardened, with a case of the right depth.',
    },
    'file bites': {
      values: {
        bevelBendingLow: 10020,
        bevelBendingHigh: 17500,
        bevelContactLow: 85000,
        bevelContactHigh: 142970,
        spurBendingLow: 26714,
        spurBendingHigh: 39855,
        spurContactLow: 87060,
        spurContactHigh: 141800,
      },
      how: 'common practice',
      source: FILE,
      note: '180 to 350 HB, hardened through or soft.',
    },
    'file hardly bites': {
      values: {
        bevelBendingLow: 12500,
        bevelBendingHigh: 19700,
        bevelContactLow: 142970,
        bevelContactHigh: 175000,
        spurBendingLow: 22000,
        spurBendingHigh: 43720,
        spurContactLow: 141800,
        spurContactHigh: 170000,
      },
      how: 'common practice',
      source: FILE,
      note: '350 to 400 HB hardened through, or a flame-hardened skin over a soft root.',
    },
    'file skates': {
      values: {
        bevelBendingLow: 12500,
        bevelBendingHigh: 30000,
        bevelContactLow: 108870,
        bevelContactHigh: 200000,
        spurBendingLow: 22000,
        spurBendingHigh: 55000,
        spurContactLow: 109600,
        spurContactHigh: 180000,
      },
      how: 'common practice',
      source: FILE,
      note: 'A hard skin of unknown depth: from one over a root left soft and a core of 250 HB to a full case.',
    },
    'not tested': {
      values: {
        bevelBendingLow: 10020,
        bevelBendingHigh: 30000,
        bevelContactLow: 85000,
        bevelContactHigh: 200000,
        spurBendingLow: 22000,
        spurBendingHigh: 55000,
        spurContactLow: 87060,
        spurContactHigh: 180000,
      },
      how: 'common practice',
      source: FILE,
      note: 'Any steel that gears are made of.',
    },
  },
});
