import type { ProofCase } from './case.ts';
import { constructed } from './sources.ts';

const SIDEWALL = {
  title: 'A tyre maker’s page on motorcycle sidewall markings',
  how: 'read',
  address: 'maxxis.com/uk/know-your-tyres/motorcycle-tyre-safety/tyre-sidewall-markings',
} as const;

const gillespie = (at: string) =>
  ({ title: 'Fundamentals of Vehicle Dynamics (T. D. Gillespie)', at, how: 'memory' }) as const;

const NREL = {
  title: 'NREL component data file FC_SI41_emis.M (T. Markel, 22 June 1998), test data of J. D. Murrell',
  at: 'full-load curve, 1.0 L petrol engine, 41 kW',
  how: 'read',
} as const;

const PETROL = {
  speeds: [104.5, 149.2, 220.9, 292.5, 364.1, 435.7, 507.4, 552.2, 596.9],
  torques: [61, 67.6, 73.7, 78.5, 80.9, 77.3, 76.2, 73.3, 68.7],
};

const DIESEL = {
  speeds: [750, 1000, 1250, 1500, 1750, 2000, 2250, 2500, 2750, 3000, 3250, 3500, 3750, 4000, 4250, 4500].map(
    (rpm) => `${rpm} rpm`,
  ),
  torques: [
    89.61, 119.48, 131.81, 148.48, 167.77, 177.48, 180.09, 178.35, 177.48, 177.48, 175.74, 174, 168.2, 159.5, 145,
    123.98,
  ],
};

/** Torque between the rows, N·m, as the interpolator of a general-purpose library gives it. */
const interpolated = (engine: 'petrol' | 'diesel', rpm: number, torque: number): ProofCase => ({
  method: 'vehicle.torqueCurve',
  id: `vehicle-curve-${engine}-${rpm}`,
  given: { ...(engine === 'petrol' ? PETROL : DIESEL), angularSpeed: `${rpm} rpm` },
  expect: { torque: { value: torque, within: { abs: 0.001 } } },
  source: {
    title: 'SciPy',
    edition: '1.17.1',
    at: 'scipy.interpolate.PchipInterpolator on the measured rows',
    how: 'read',
  },
  kind: 'reference-library',
});

export const VEHICLE_CASES: readonly ProofCase[] = [
  {
    method: 'vehicle.tyreDiameter',
    id: 'vehicle-tyre-120-100-18',
    given: { sectionWidth: '120 mm', aspect: '100 %', rimDiameter: '18 in' },
    expect: { outsideDiameter: { value: '697.2 mm', within: { abs: '0.05 mm' } } },
    source: { ...SIDEWALL, at: '120/100-18' },
    kind: 'published-example',
  },
  {
    method: 'vehicle.tyreDiameter',
    id: 'vehicle-tyre-120-90-18',
    given: { sectionWidth: '120 mm', aspect: '90 %', rimDiameter: '18 in' },
    expect: { outsideDiameter: { value: '673.2 mm', within: { abs: '0.05 mm' } } },
    source: { ...SIDEWALL, at: '120/90-18' },
    kind: 'published-example',
  },
  {
    method: 'vehicle.tyreDiameter',
    id: 'vehicle-tyre-3-50-18',
    given: { sectionWidth: '3.50 in', aspect: '100 %', rimDiameter: '18 in' },
    expect: {
      sectionHeight: { value: '3.50 in', within: { abs: '0.005 in' } },
      outsideDiameter: { value: '635.0 mm', within: { abs: '0.5 mm' } },
    },
    source: { ...SIDEWALL, at: '3.50-18: 3.50 in wide, 3.50 in tall, 18 in rim' },
    kind: 'published-example',
    note: 'Nominal; tyres of inch sizes are made about 2 % larger (from memory), so the roll-out is to be measured.',
  },
  {
    method: 'vehicle.tyreDiameter',
    id: 'vehicle-tyre-215-60-r15',
    given: { sectionWidth: '215 mm', aspect: '60 %', rimDiameter: '15 in' },
    expect: {
      sectionHeight: { value: '129 mm', within: { abs: '0.5 mm' } },
      outsideDiameter: { value: '639 mm', within: { abs: '0.5 mm' } },
    },
    source: {
      title: 'Vehicle Dynamics: Theory and Application (R. N. Jazar)',
      at: 'chapter 1, tyre size examples',
      how: 'memory',
    },
    kind: 'published-example',
  },
  {
    method: 'vehicle.rollingCircumference',
    id: 'vehicle-roll-205-55-r16',
    given: { outsideDiameter: '631.9 mm', construction: 'radial' },
    expect: {
      rollOut: { value: '1927 mm', within: { abs: '3 mm' } },
      rollingRadius: { value: '306.7 mm', within: { abs: '0.5 mm' } },
    },
    source: {
      title: 'ETRTO Standards Manual',
      at: 'rolling circumference, 205/55R16; WdK 107 lists 1928 mm',
      how: 'memory',
    },
    kind: 'table-spot',
  },
  {
    method: 'vehicle.shaftSpeed',
    id: 'vehicle-engine-speed-65-mph',
    given: { speed: '65 mph', overallRatio: 3.08, rollOut: '94.24778 in' },
    expect: { angularSpeed: { value: '2242 rpm', within: { rel: 0.001 } } },
    source: {
      title: 'A gear-ratio handout',
      at: 'rpm = mph × ratio × 336 / diameter: 65 mph, 3.08, 30 in',
      how: 'read',
      address: 'docslib.org/doc/13816045',
    },
    kind: 'published-example',
    note: 'The handout rounds 336.14 to 336 and rolls on the free diameter.',
  },
  {
    method: 'vehicle.tractiveForce',
    id: 'vehicle-pull-gillespie-first',
    given: { torque: '201 lbf.ft', overallRatio: 12.4976, efficiency: '95.634 %', rollOut: '79.1011 in' },
    expect: {
      force: { value: '2290 lbf', within: { rel: 0.005 } },
      rollingRadius: { value: '12.59 in', within: { abs: '0.01 in' } },
    },
    source: gillespie('chapter 2, example problem 1: first gear'),
    kind: 'published-example',
    note: '4.28 × 2.92, 96.6 % × 99 %; 801 turns to the mile.',
  },
  {
    method: 'vehicle.tractiveForce',
    id: 'vehicle-pull-gillespie-fifth',
    given: { torque: '201 lbf.ft', overallRatio: 2.92, efficiency: '96.03 %', rollOut: '79.1011 in' },
    expect: { force: { value: '537 lbf', within: { rel: 0.005 } } },
    source: gillespie('chapter 2, example problem 1: fifth gear'),
    kind: 'published-example',
    note: '97 % × 99 %; 801 turns to the mile.',
  },
  {
    method: 'vehicle.roadSpeed',
    id: 'vehicle-speed-gillespie-first',
    given: { angularSpeed: '4400 rpm', overallRatio: 12.4976, rollOut: '79.1011 in' },
    expect: { speed: { value: '26.4 mph', within: { rel: 0.005 } } },
    source: gillespie('chapter 2, example problem 1: first gear'),
    kind: 'published-example',
  },
  {
    method: 'vehicle.tractiveForce',
    id: 'vehicle-pull-wong-3-1',
    given: { torque: '325 N.m', overallRatio: 4.28, efficiency: '85 %', rollOut: '2.0734512 m' },
    expect: { force: { value: '3583 N', within: { abs: '2 N' } } },
    source: { title: 'Theory of Ground Vehicles (J. Y. Wong)', at: 'Example 3.1', how: 'memory' },
    kind: 'published-example',
    note: 'Rolling radius 0.33 m.',
  },
  {
    method: 'vehicle.roadSpeed',
    id: 'vehicle-speed-wong-3-1',
    given: { angularSpeed: '3500 rpm', overallRatio: 4.28, rollOut: '2.0112476 m' },
    expect: { speed: { value: '98.7 km/h', within: { abs: '0.3 km/h' } } },
    source: { title: 'Theory of Ground Vehicles (J. Y. Wong)', at: 'Example 3.1', how: 'memory' },
    kind: 'published-example',
    note: 'Rolling radius 0.33 m, less the 3 % slip of the book.',
  },
  {
    method: 'vehicle.torqueCurve',
    id: 'vehicle-curve-petrol-peaks',
    given: { ...PETROL, angularSpeed: '3000 rpm' },
    expect: {
      peakTorque: { value: '81 N.m', within: { abs: '0.5 N.m' } },
      peakTorqueAt: { value: '3477 rpm', within: { abs: '0.5 rpm' } },
      peakPower: { value: '41 kW', within: { abs: '0.5 kW' } },
    },
    source: NREL,
    kind: 'published-example',
    note: 'Peaks as the file states them; the curve is drawn through its nine rows.',
  },
  interpolated('petrol', 1200, 64.4628),
  interpolated('petrol', 3000, 79.4968),
  interpolated('petrol', 4000, 78.0341),
  interpolated('petrol', 5500, 71.09),
  interpolated('diesel', 900, 110.162),
  interpolated('diesel', 2300, 179.946),
  interpolated('diesel', 2875, 177.48),
  interpolated('diesel', 4400, 133.228),
  {
    method: 'vehicle.torqueCurve',
    id: 'vehicle-curve-petrol-peak-power',
    given: { ...PETROL, angularSpeed: '3000 rpm' },
    expect: {
      peakTorque: { value: '80.9 N.m', within: { rel: 0.0001 } },
      peakTorqueAt: { value: '3476.9 rpm', within: { abs: '30 rpm' } },
      peakPower: { value: '41.02 kW', within: { rel: 0.0005 } },
      peakPowerAt: { value: '5640 rpm', within: { abs: '30 rpm' } },
    },
    source: {
      title: 'SciPy',
      at: 'scipy.interpolate.PchipInterpolator, greatest product of torque and speed',
      how: 'read',
    },
    kind: 'reference-library',
  },
  {
    method: 'vehicle.tyreDiameter',
    id: 'vehicle-tyre-mt90b16',
    given: { sectionWidth: { row: 'tyre-alpha-widths/MT', field: 'width' }, aspect: '90 %', rimDiameter: '16 in' },
    expect: { outsideDiameter: { value: '640.4 mm', within: { abs: '0.05 mm' } } },
    source: constructed('Own computation; the code MT90B16 was read as 130/90-16'),
    kind: 'constructed',
  },
  {
    method: 'vehicle.tyreDiameter',
    id: 'vehicle-tyre-230-95-r32',
    given: { sectionWidth: '230 mm', aspect: '95 %', rimDiameter: '32 in' },
    expect: { outsideDiameter: { value: '1249.8 mm', within: { abs: '1 mm' } } },
    source: constructed('Own computation: metric size of UN Regulation No. 106 on a narrow row-crop tyre'),
    kind: 'constructed',
  },
  {
    method: 'vehicle.shaftSpeed',
    id: 'vehicle-engine-speed-donor',
    given: { speed: '80 km/h', overallRatio: 5.2, rollOut: '1920.9 mm' },
    expect: { angularSpeed: { value: '3609.4 rpm', within: { rel: 0.0005 } } },
    source: constructed('Own computation: same engine speed at the same road speed'),
    kind: 'constructed',
  },
  {
    method: 'vehicle.boundedCurve',
    id: 'vehicle-bounded-cubic-power',
    given: {
      peakTorque: '125 N.m',
      peakTorqueAt: '300 rad/s',
      peakPower: '60 kW',
      peakPowerAt: '600 rad/s',
      angularSpeed: '450 rad/s',
    },
    expect: {
      torque: { value: '118.75 N.m', within: { rel: 1e-9 } },
      upper: { value: '125 N.m', within: { rel: 1e-9 } },
      lower: { value: '100 N.m', within: { rel: 1e-9 } },
    },
    source: constructed('Own computation by Jazar, section 4.1, recalled: power as x + x² − x³ of its peak'),
    kind: 'constructed',
  },
];
