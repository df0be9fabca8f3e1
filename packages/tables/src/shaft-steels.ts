import { defineTable } from './table.ts';

const A20 = 'Shigley’s Mechanical Engineering Design, 9th, table A-20: least values for bars of 18 to 32 mm';
const A21 = 'Shigley’s Mechanical Engineering Design, 9th, table A-21: mean values, bars of 25 mm';

/** Steels of shafts and tubes. Within 25 mm of a weld cold-drawn strength is lost: take the hot-rolled row there. */
export const SHAFT_STEELS = defineTable({
  id: 'shaft-steels',
  title: 'Steels of shafts and tubes',
  range: 'carbon and low-alloy steels by condition and size',
  how: 'read',
  source: 'Shigley’s Mechanical Engineering Design, 9th; EN 10083, EN 10025, ASTM',
  columns: {
    tensile: { kind: 'pressure', unit: 'MPa', meaning: 'tensile strength' },
    yield: { kind: 'pressure', unit: 'MPa', meaning: 'yield strength' },
    youngs: { kind: 'pressure', unit: 'GPa', meaning: 'Young’s modulus' },
    shear: { kind: 'pressure', unit: 'GPa', meaning: 'shear modulus' },
    density: { kind: 'density', unit: 'kg/m3', meaning: 'density' },
  },
  rows: {
    '1010-hot-rolled': {
      values: { tensile: 320, yield: 180, youngs: 207, shear: 79.3, density: 7800 },
      how: 'read',
      source: A20,
    },
    '1010-cold-drawn': {
      values: { tensile: 370, yield: 300, youngs: 207, shear: 79.3, density: 7800 },
      how: 'read',
      source: A20,
    },
    '1015-hot-rolled': {
      values: { tensile: 340, yield: 190, youngs: 207, shear: 79.3, density: 7800 },
      how: 'read',
      source: A20,
    },
    '1015-cold-drawn': {
      values: { tensile: 390, yield: 320, youngs: 207, shear: 79.3, density: 7800 },
      how: 'read',
      source: A20,
    },
    '1018-hot-rolled': {
      values: { tensile: 400, yield: 220, youngs: 207, shear: 79.3, density: 7800 },
      how: 'read',
      source: A20,
    },
    '1018-cold-drawn': {
      values: { tensile: 440, yield: 370, youngs: 207, shear: 79.3, density: 7800 },
      how: 'read',
      source: A20,
    },
    '1020-hot-rolled': {
      values: { tensile: 380, yield: 210, youngs: 207, shear: 79.3, density: 7800 },
      how: 'read',
      source: A20,
    },
    '1020-cold-drawn': {
      values: { tensile: 470, yield: 390, youngs: 207, shear: 79.3, density: 7800 },
      how: 'read',
      source: A20,
    },
    '1030-hot-rolled': {
      values: { tensile: 470, yield: 260, youngs: 207, shear: 79.3, density: 7800 },
      how: 'read',
      source: A20,
    },
    '1030-cold-drawn': {
      values: { tensile: 520, yield: 440, youngs: 207, shear: 79.3, density: 7800 },
      how: 'read',
      source: A20,
    },
    '1035-hot-rolled': {
      values: { tensile: 500, yield: 270, youngs: 207, shear: 79.3, density: 7800 },
      how: 'read',
      source: A20,
    },
    '1035-cold-drawn': {
      values: { tensile: 550, yield: 460, youngs: 207, shear: 79.3, density: 7800 },
      how: 'read',
      source: A20,
    },
    '1040-hot-rolled': {
      values: { tensile: 520, yield: 290, youngs: 207, shear: 79.3, density: 7800 },
      how: 'read',
      source: A20,
    },
    '1040-cold-drawn': {
      values: { tensile: 590, yield: 490, youngs: 207, shear: 79.3, density: 7800 },
      how: 'read',
      source: A20,
    },
    '1045-hot-rolled': {
      values: { tensile: 570, yield: 310, youngs: 207, shear: 79.3, density: 7800 },
      how: 'read',
      source: A20,
    },
    '1045-cold-drawn': {
      values: { tensile: 630, yield: 530, youngs: 207, shear: 79.3, density: 7800 },
      how: 'read',
      source: A20,
    },
    '1050-hot-rolled': {
      values: { tensile: 620, yield: 340, youngs: 207, shear: 79.3, density: 7800 },
      how: 'read',
      source: A20,
    },
    '1050-cold-drawn': {
      values: { tensile: 690, yield: 580, youngs: 207, shear: 79.3, density: 7800 },
      how: 'read',
      source: A20,
    },
    '1060-hot-rolled': {
      values: { tensile: 680, yield: 370, youngs: 207, shear: 79.3, density: 7800 },
      how: 'read',
      source: A20,
    },
    '1095-hot-rolled': {
      values: { tensile: 830, yield: 460, youngs: 207, shear: 79.3, density: 7800 },
      how: 'read',
      source: A20,
    },
    '4130-normalized': {
      values: { tensile: 670, yield: 436, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: A21,
    },
    '4130-tempered-540': {
      values: { tensile: 1030, yield: 910, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: A21,
    },
    '4130-tempered-650': {
      values: { tensile: 814, yield: 703, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: A21,
    },
    '4140-annealed': {
      values: { tensile: 655, yield: 417, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: A21,
    },
    '4140-normalized': {
      values: { tensile: 1020, yield: 655, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: A21,
    },
    '4140-tempered-425': {
      values: { tensile: 1250, yield: 1140, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: A21,
    },
    '4140-tempered-540': {
      values: { tensile: 951, yield: 834, youngs: 207, shear: 79.3, density: 7850 },
      how: 'read',
      source: A21,
    },
    '4140-tempered-650': {
      values: { tensile: 758, yield: 655, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: A21,
    },
    '4340-tempered-540': {
      values: { tensile: 1170, yield: 1080, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: A21,
    },
    '4340-tempered-650': {
      values: { tensile: 965, yield: 855, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: A21,
    },
    'C45E-normalized-to-16': {
      values: { tensile: 620, yield: 340, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: 'EN 10083-2',
    },
    'C45E-normalized-to-100': {
      values: { tensile: 580, yield: 305, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: 'EN 10083-2',
    },
    'C45E-tempered-to-16': {
      values: { tensile: 700, yield: 490, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: 'EN 10083-2',
    },
    'C45E-tempered-to-40': {
      values: { tensile: 650, yield: 430, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: 'EN 10083-2',
    },
    'C45E-tempered-to-100': {
      values: { tensile: 630, yield: 370, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: 'EN 10083-2',
    },
    '42CrMo4-tempered-to-16': {
      values: { tensile: 1100, yield: 900, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: 'EN 10083-3',
    },
    '42CrMo4-tempered-to-40': {
      values: { tensile: 1000, yield: 750, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: 'EN 10083-3',
    },
    '42CrMo4-tempered-to-100': {
      values: { tensile: 900, yield: 650, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: 'EN 10083-3',
    },
    S235JR: {
      values: { tensile: 360, yield: 235, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: 'EN 10025-2',
    },
    S275JR: {
      values: { tensile: 410, yield: 275, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: 'EN 10025-2',
    },
    S355J2: {
      values: { tensile: 470, yield: 355, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: 'EN 10025-2',
    },
    'S235JRH-tube': {
      values: { tensile: 360, yield: 235, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: 'EN 10219-1',
    },
    'S355J2H-tube': {
      values: { tensile: 470, yield: 355, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: 'EN 10219-1',
    },
    'ASTM-A500-Gr-B': {
      values: { tensile: 400, yield: 317, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: 'ASTM A500',
    },
    'ASTM-A500-Gr-C': {
      values: { tensile: 427, yield: 345, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: 'ASTM A500',
    },
    'ASTM-A36': {
      values: { tensile: 400, yield: 250, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: 'ASTM A36',
    },
    '1020-DOM-tube': {
      values: { tensile: 483, yield: 414, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: 'ASTM A513 typical min',
    },
    '1026-DOM-tube': {
      values: { tensile: 552, yield: 483, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: 'ASTM A513 typical min',
    },
    '4130N-tube-thin': {
      values: { tensile: 655, yield: 517, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: 'MIL-HDBK-5 / AMS 6360',
    },
    '4130N-tube-thick': {
      values: { tensile: 621, yield: 483, youngs: 207, shear: 79.3, density: 7850 },
      how: 'memory',
      source: 'MIL-HDBK-5 / AMS 6360',
    },
  },
});
