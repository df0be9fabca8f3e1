import type { ProofCase } from './case.ts';
import { constructed } from './sources.ts';

const ISO_606: ProofCase['source'] = { title: 'ISO 606:2015', at: 'clauses 5.7 and 5.8', how: 'memory' };
const numpy = (at: string): ProofCase['source'] => ({ title: `NumPy, ${at}`, edition: '2.4.6', at, how: 'read' });

const sprocket = (root: number, radial: number, axial: number): ProofCase => ({
  method: 'runout.sprocketLimits',
  id: `sprocket-runout-${root}`,
  given: { rootDiameter: `${root} mm` },
  expect: {
    radial: { value: `${radial} mm`, within: { abs: '0.0001 mm' } },
    axial: { value: `${axial} mm`, within: { abs: '0.0001 mm' } },
  },
  source: ISO_606,
  kind: 'table-spot',
  note: 'Clause numbers were read in a list of contents; the values are recalled.',
});

const ROTOR = { radius: '1 m', toA: '1500 mm', toB: '900 mm' } as const;
const grade = (id: string, G: string, speed: string, micrometres: number): ProofCase => ({
  method: 'runout.balance',
  id,
  given: { ...ROTOR, grade: G, speed, mass: '1 kg' },
  expect: { offsetAllowed: { value: `${micrometres / 1000} mm`, within: { rel: 0.02 } } },
  source: { title: 'ISO 1940-1:2003', at: 'chart of allowed offset by speed and grade', how: 'memory' },
  kind: 'table-spot',
});

/** Limits of run-out, balance, and what corrects it. */
export const RUNOUT_LIMIT_CASES: readonly ProofCase[] = [
  {
    method: 'runout.influence',
    id: 'trial-5-at-120-8-at-30',
    given: {
      ...{ before: '5 mil', beforeAngle: '120 deg', after: '8 mil', afterAngle: '30 deg' },
      trial: 10,
      trialAngle: '0 deg',
    },
    expect: {
      effect: { value: '9.43 mil', within: { rel: 0.005 } },
      correction: { value: 5.3, within: { rel: 0.005 } },
      correctionAngle: { value: '-58 deg', within: { abs: '0.5 deg' } },
    },
    source: {
      title: 'Field balancing by vectors, textbook example much reprinted: 5 mils at 120°, 8 mils at 30°, 10 g',
      at: 'worked example',
      how: 'memory',
    },
    kind: 'published-example',
    note: 'Printed with 9.4 mils, 5.3 g and 58°.',
  },
  {
    method: 'runout.influence',
    id: 'trial-complex-numbers',
    given: {
      ...{ before: '4.2 mm', beforeAngle: '200 deg', after: '3.1 mm', afterAngle: '140 deg' },
      trial: 6,
      trialAngle: '45 deg',
    },
    expect: {
      perUnit: { value: '0.6287112 mm', within: { rel: 1e-6 } },
      lag: { value: '20.3724532 deg', within: { abs: '0.0001 deg' } },
      correction: { value: 6.68033268, within: { rel: 1e-6 } },
      correctionAngle: { value: '-0.3724532 deg', within: { abs: '0.0001 deg' } },
      more: { value: 4.93072174, within: { rel: 1e-6 } },
      moreAngle: { value: '-60.3724532 deg', within: { abs: '0.0001 deg' } },
    },
    source: numpy('complex arithmetic'),
    kind: 'reference-library',
  },
  {
    method: 'runout.influence',
    id: 'trial-bead-stays',
    given: {
      ...{ before: '0.42 mm', beforeAngle: '70 deg', after: '0.3 mm', afterAngle: '95 deg' },
      trial: 1,
      trialAngle: '250 deg',
    },
    expect: {
      correction: { value: 2.1543, within: { rel: 0.005 } },
      more: { value: 1.5388, within: { rel: 0.005 } },
      moreAngle: { value: '-44.44 deg', within: { abs: '0.1 deg' } },
    },
    source: constructed('a bead of one unit, with the algebra of balancing'),
    kind: 'constructed',
  },
  {
    method: 'runout.balance',
    id: 'balance-turbine',
    given: { ...ROTOR, grade: '2.5 mm/s', speed: '3000 rpm', mass: '3600 kg' },
    expect: {
      offsetAllowed: { value: '0.007958 mm', within: { rel: 0.005 } },
      massAllowed: { value: '28.6 g', within: { rel: 0.005 } },
      massA: { value: '10.7 g', within: { rel: 0.005 } },
      massB: { value: '17.9 g', within: { rel: 0.005 } },
    },
    source: { title: 'ISO 1940-1:2003', at: 'annex, turbine rotor', how: 'memory' },
    kind: 'published-example',
    note: 'Printed in g·mm; here as grams at 1 m.',
  },
  grade('balance-chart-6.3-3000', '6.3 mm/s', '3000 rpm', 20),
  grade('balance-chart-2.5-3000', '2.5 mm/s', '3000 rpm', 8),
  {
    method: 'runout.balance',
    id: 'balance-inch-rule',
    given: { ...{ grade: '6.3 mm/s', speed: '1800 rpm', mass: '100 lb', radius: '1 in' }, toA: '1 in', toB: '1 in' },
    expect: { massAllowed: { value: `${(2.10525 * 28.349523125).toFixed(4)} g`, within: { rel: 0.003 } } },
    source: {
      title: 'Energy-Tech magazine, balance standards compared: U = 6.015 G W / N, ounce-inches, pounds and rpm',
      at: 'rule for ISO 1940-1',
      how: 'read',
      address: 'www.energy-tech.com/article.cfm?id=18389&PageNum=3',
    },
    kind: 'table-spot',
  },
  {
    method: 'runout.balance',
    id: 'balance-of-an-offset',
    given: { ...ROTOR, grade: '6.3 mm/s', speed: '1800 rpm', mass: '6 kg', offset: '0.05 mm' },
    expect: {
      gradeNow: { value: '9.4248 mm/s', within: { rel: 1e-4 } },
      force: { value: '10.659 N', within: { rel: 1e-4 } },
      massNow: { value: '0.3 g', within: { rel: 1e-9 } },
    },
    source: constructed('0.05 mm at 1800 rpm and 6 kg'),
    kind: 'constructed',
  },
  sprocket(60, 0.15, 0.134),
  sprocket(150, 0.2, 0.215),
  sprocket(400, 0.4, 0.44),
  {
    method: 'runout.gearLimits',
    id: 'gear-runout-class-8',
    given: { bevel: 0, diameter: '100 mm', module: '3 mm', grade: 8 },
    expect: { runout: { value: '0.0504 mm', within: { rel: 0.01 } } },
    source: { title: 'ISO 1328-1:2013', at: 'formula for run-out', how: 'memory' },
    kind: 'table-spot',
  },
  {
    method: 'runout.gearLimits',
    id: 'bevel-runout-class-8',
    given: { bevel: 1, diameter: '120 mm', module: '3 mm', grade: 8 },
    expect: { runout: { value: '0.07328 mm', within: { rel: 0.01 } } },
    source: { title: 'ISO 17485:2006', at: 'formula for run-out', how: 'memory' },
    kind: 'table-spot',
  },
  {
    method: 'runout.face',
    id: 'face-slope',
    given: { tir: '0.2 mm', diameter: '100 mm', shimDiameter: '80 mm', reach: '250 mm' },
    expect: { shim: { value: '0.16 mm', within: { rel: 1e-9 } }, tirAtReach: { value: '1 mm', within: { rel: 1e-5 } } },
    source: constructed('similar triangles'),
    kind: 'constructed',
  },
  {
    method: 'runout.press',
    id: 'press-middle-of-span',
    given: {
      ...{ span: '500 mm', at: '250 mm', diameter: '30 mm', yieldStress: '350 MPa' },
      modulus: '205 GPa',
      wanted: '0.3 mm',
    },
    expect: {
      firstYield: { value: '2.371274 mm', within: { rel: 1e-6 } },
      force: { value: '7422 N', within: { rel: 1e-3 } },
    },
    source: constructed('σ L² / (12 E c) and 4 M / L for a ram in the middle'),
    kind: 'constructed',
  },
  {
    method: 'runout.warmBow',
    id: 'warm-10-kelvin',
    given: { difference: '10 K', expansion: 12e-6, length: '600 mm', diameter: '30 mm' },
    expect: { tir: { value: '0.36 mm', within: { rel: 1e-9 } } },
    source: constructed('α ΔT L² / (8 d), twice'),
    kind: 'constructed',
  },
];
