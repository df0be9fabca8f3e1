import type { ProofCase } from './case.ts';
import { bhandari, constructed, shigley } from './sources.ts';

const NSK = {
  title: 'A maker’s catalogue of rolling bearings, restating ISO 286',
  at: 'appendix tables 9 to 11',
  how: 'read',
  address: 'github.com/ArtemFilin1990/Mar, commit 7b871a5',
} as const;

const um = (value: number) => ({ value: `${value} um`, within: { abs: '0.001 um' } });

/** A class at a size, from the rows of its grade and its letter. */
const iso = (
  code: string,
  size: number,
  step: string,
  grade: string,
  letter: string | null,
  from: string,
  upper: number,
  lower: number,
): ProofCase => {
  const [key = '', field = ''] = letter?.split('/') ?? [];
  return {
    method: 'fit.limits',
    id: `fit-limits-${code}`,
    given: {
      size: `${size} mm`,
      grade: { row: `iso-grades/${step}`, field: grade },
      ...(letter === null ? {} : { deviation: { row: `iso-deviations/${key}`, field } }),
      from,
    },
    expect: { upper: um(upper), lower: um(lower) },
    source: NSK,
    kind: 'table-spot',
  };
};

const inch = (fit: string, key: string, table: string, least: number, greatest: number): ProofCase => {
  const of = (field: string) => ({ row: `inch-fits/${fit} ${key}`, field });
  return {
    method: 'fit.clearance',
    id: `fit-inch-${fit}`,
    given: {
      holeUpper: of('holeUpper'),
      holeLower: of('holeLower'),
      shaftUpper: of('shaftUpper'),
      shaftLower: of('shaftLower'),
    },
    expect: {
      least: { value: `${least} thou`, within: { abs: '0.001 thou' } },
      greatest: { value: `${greatest} thou`, within: { abs: '0.001 thou' } },
    },
    source: {
      title: 'Machinery’s Handbook, reprinting ANSI/ASME B4.1-1967',
      at: table,
      how: 'read',
      address: 'online.flippingbook.com/view/954192180',
    },
    kind: 'table-spot',
  };
};

const STEEL = { hubYoungs: '30000000 psi', shaftYoungs: '30000000 psi' };
const METRIC = { hubYoungs: '206 GPa', shaftYoungs: '206 GPa' };
const psi = (value: number, rel: number) => ({ value: `${value} psi`, within: { rel } });
const SOLUTION = shigley(
  'read',
  '8th',
  'solution of problem 7-24, 1.5 in H7/s6',
  'coursehero.com/file/6628937, chapter 7',
);
const OWN = constructed('Lamé’s thick cylinders, worked out apart');

export const FIT_CASES: readonly ProofCase[] = [
  iso('20f6', 20, '18 to 30', 'IT6', '18 to 24/f', 'upper', -20, -33),
  iso('20g6', 20, '18 to 30', 'IT6', '18 to 24/g', 'upper', -7, -20),
  iso('25h6', 25, '18 to 30', 'IT6', '24 to 30/h', 'upper', 0, -13),
  iso('30h9', 30, '18 to 30', 'IT9', '24 to 30/h', 'upper', 0, -52),
  iso('25k6', 25, '18 to 30', 'IT6', '24 to 30/k', 'lower', 15, 2),
  iso('30k5', 30, '18 to 30', 'IT5', '24 to 30/k', 'lower', 11, 2),
  iso('35m5', 35, '30 to 50', 'IT5', '30 to 40/m', 'lower', 20, 9),
  iso('40n6', 40, '30 to 50', 'IT6', '30 to 40/n', 'lower', 33, 17),
  iso('45p6', 45, '30 to 50', 'IT6', '40 to 50/p', 'lower', 42, 26),
  iso('60r6', 60, '50 to 80', 'IT6', '50 to 65/r', 'lower', 60, 41),
  iso('25j5', 25, '18 to 30', 'IT5', '24 to 30/j5', 'lower', 5, -4),
  iso('50js6', 50, '30 to 50', 'IT6', null, 'both', 8, -8),
  iso('15d6', 15, '10 to 18', 'IT6', '14 to 18/d', 'upper', -50, -61),
  iso('40e6', 40, '30 to 50', 'IT6', '30 to 40/e', 'upper', -50, -66),
  iso('25H7', 25, '18 to 30', 'IT7', null, 'lower', 21, 0),
  iso('40s6', 40, '30 to 50', 'IT6', '30 to 40/s', 'lower', 59, 43),
  iso('40t6', 40, '30 to 50', 'IT6', '30 to 40/t', 'lower', 64, 48),
  iso('30u6', 30, '18 to 30', 'IT6', '24 to 30/u', 'lower', 61, 48),
  {
    method: 'fit.clearance',
    id: 'fit-range-20-H6-e7',
    given: { holeUpper: '13 um', holeLower: '0 um', shaftUpper: '-40 um', shaftLower: '-61 um' },
    expect: { greatest: um(74), least: um(40) },
    source: { ...bhandari('chapter 3, example 3.1', ''), address: 'FOSSEE/Scilab-TBC-Uploads: 764/CH3/EX3.1.b' },
    kind: 'published-example',
  },
  {
    method: 'fit.clearance',
    id: 'fit-range-50-H7-s6',
    given: { holeUpper: '25 um', holeLower: '0 um', shaftUpper: '59 um', shaftLower: '43 um' },
    expect: { greatest: um(-18), least: um(-59) },
    source: { ...bhandari('chapter 3, example 3.3', ''), address: 'FOSSEE/Scilab-TBC-Uploads: 764/CH3/EX3.3.b' },
    kind: 'published-example',
  },
  {
    method: 'fit.limits',
    id: 'fit-range-34-c11',
    given: {
      size: '34 mm',
      grade: { row: 'iso-grades/30 to 50', field: 'IT11' },
      deviation: { row: 'iso-deviations/30 to 40', field: 'c' },
      from: 'upper',
    },
    expect: {
      largest: { value: '33.88 mm', within: { abs: '0.001 um' } },
      smallest: { value: '33.72 mm', within: { abs: '0.001 um' } },
    },
    source: shigley('read', '9th', 'example 7-7', 'digilib.universitaspertamina.ac.id, page 423'),
    kind: 'published-example',
  },
  inch('RC4', '0.71 to 1.19', 'table 8a', 0.8, 2.8),
  inch('RC7', '1.19 to 1.97', 'table 8b', 3, 7.1),
  inch('LT3', '1.19 to 1.97', 'table 10', -0.7, 0.9),
  inch('LN2', '1.97 to 3.15', 'table 11', -2.1, -0.2),
  inch('FN2', '1.97 to 2.56', '27th edition, table 11', -2.7, -0.8),
  inch('FN4', '0.95 to 1.19', '27th edition, table 11', -2.3, -1),
  {
    method: 'fit.pressStress',
    id: 'fit-press-largest-1-5-in',
    given: {
      interference: '0.0023 in',
      diameter: '1.5 in',
      outside: '2.5 in',
      ...STEEL,
      hubYield: '57000 psi',
      shaftYield: '57000 psi',
    },
    expect: {
      pressure: psi(14720, 0.005),
      shaftAround: psi(-14720, 0.005),
      shaftReserve: { value: 3.87, within: { rel: 0.005 } },
    },
    source: SOLUTION,
    kind: 'published-example',
  },
  {
    method: 'fit.pressFitHold',
    id: 'fit-press-least-1-5-in',
    given: {
      interference: '0.0007 in',
      diameter: '1.5 in',
      outside: '2.5 in',
      ...STEEL,
      length: '2 in',
      friction: 0.1,
    },
    expect: { pressure: psi(4480, 0.005) },
    source: SOLUTION,
    kind: 'published-example',
  },
  {
    method: 'fit.pressStress',
    id: 'fit-press-two-cylinders',
    given: {
      interference: '0.01 in',
      diameter: '12 in',
      outside: '16 in',
      bore: '8 in',
      ...STEEL,
      hubYield: '40000 psi',
      shaftYield: '40000 psi',
    },
    expect: { pressure: psi(4050, 0.01), hubAround: psi(14500, 0.01), shaftStress: psi(14600, 0.01) },
    source: {
      title: 'Strength of Materials, part II (S. Timoshenko)',
      at: 'problem on shrunk thick cylinders, 8, 12 and 16 in',
      how: 'memory',
    },
    kind: 'published-example',
    note: 'The source gives the interference on the radius.',
  },
  {
    method: 'fit.pressForce',
    id: 'fit-press-hollow-shaft',
    given: {
      interference: '30 um',
      diameter: '30 mm',
      outside: '60 mm',
      bore: '20 mm',
      hubYoungs: '210 GPa',
      shaftYoungs: '210 GPa',
      length: '40 mm',
      friction: 0.1,
    },
    expect: {
      pressure: { value: '49.22 MPa', within: { rel: 0.001 } },
      force: { value: '18555 N', within: { rel: 0.001 } },
    },
    source: OWN,
    kind: 'constructed',
  },
  {
    method: 'fit.effectiveInterference',
    id: 'fit-smoothing-40',
    given: { interference: '35 um', shaftRoughness: '4 um', holeRoughness: '6.3 um' },
    expect: { smoothing: um(8.24), effective: um(26.76) },
    source: constructed('DIN 7190, 0.8 of both roughnesses'),
    kind: 'constructed',
  },
  {
    method: 'fit.pressFitHold',
    id: 'fit-press-smoothed-40',
    given: {
      interference: '26.76 um',
      diameter: '40 mm',
      outside: '70 mm',
      ...METRIC,
      length: '30 mm',
      friction: 0.12,
    },
    expect: {
      pressure: { value: '46.41 MPa', within: { rel: 0.001 } },
      force: { value: '20990 N', within: { rel: 0.001 } },
      torque: { value: '419.9 N.m', within: { rel: 0.001 } },
    },
    source: OWN,
    kind: 'constructed',
  },
  {
    method: 'fit.joiningTemperature',
    id: 'fit-warm-hub-40',
    given: {
      interference: '59 um',
      room: '40 um',
      diameter: '40 mm',
      hubGrowth: 1.15e-5,
      shaftGrowth: 8.5e-6,
      shop: '20 degC',
      most: '350 degC',
    },
    expect: {
      hub: { value: '235.2 degC', within: { abs: '0.1 K' } },
      shaft: { value: '20 degC', within: { abs: '0.1 K' } },
    },
    source: constructed('Linear growth of the hub'),
    kind: 'constructed',
  },
  {
    method: 'fit.joiningTemperature',
    id: 'fit-warm-ring-chilled-shaft',
    given: {
      interference: '59 um',
      room: '40 um',
      diameter: '40 mm',
      hubGrowth: 1.15e-5,
      shaftGrowth: 8.5e-6,
      shop: '20 degC',
      most: '120 degC',
    },
    expect: {
      hub: { value: '120 degC', within: { abs: '0.1 K' } },
      shaft: { value: '-135.9 degC', within: { abs: '0.1 K' } },
    },
    source: constructed('The ring opens by 46 µm at 120 °C, and 53 µm are left for the shaft'),
    kind: 'constructed',
  },
  {
    method: 'fit.seatWarm',
    id: 'fit-aluminium-seat-62-warm',
    given: { play: '0 um', diameter: '62 mm', outerGrowth: 2.35e-5, innerGrowth: 1.25e-5, at: '80 degC' },
    expect: { change: um(40.92), warm: um(40.92) },
    source: constructed('Linear growth of seat and ring'),
    kind: 'constructed',
  },
  {
    method: 'fit.seatWarm',
    id: 'fit-pressed-aluminium-hub-40-hot',
    given: { play: '-60 um', diameter: '40 mm', outerGrowth: 2.35e-5, innerGrowth: 1.15e-5, at: '80 degC' },
    expect: { change: um(28.8), warm: um(-31.2) },
    source: constructed('Linear growth of hub and shaft: 12 parts in a million, 40 mm, 60 degrees'),
    kind: 'constructed',
  },
  {
    method: 'fit.seatWarm',
    id: 'fit-pressed-hub-of-one-metal-hot',
    given: { play: '-60 um', diameter: '40 mm', outerGrowth: 1.15e-5, innerGrowth: 1.15e-5, at: '80 degC' },
    expect: { change: um(0), warm: um(-60) },
    source: constructed('Parts of one metal grow alike'),
    kind: 'constructed',
  },
  {
    method: 'fit.pressFitHold',
    id: 'fit-pressed-aluminium-hub-40-hot-holds',
    given: {
      interference: '31.2 um',
      diameter: '40 mm',
      outside: '80 mm',
      hubYoungs: '70 GPa',
      shaftYoungs: '206 GPa',
      hubPoisson: 0.33,
      shaftPoisson: 0.3,
      length: '40 mm',
      friction: 0.05,
    },
    expect: {
      pressure: { value: '24.435 MPa', within: { rel: 0.0001 } },
      force: { value: '6141 N', within: { rel: 0.0001 } },
      torque: { value: '122.82 N.m', within: { rel: 0.0001 } },
    },
    source: constructed('Way of both walls under the pressure, worked out by hand: 60 µm less 28.8 µm of growth'),
    kind: 'constructed',
  },
];
