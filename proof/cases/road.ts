import { cycleTrace } from '@oddwheel/tables/cycle';
import { CYCLE_HWFET } from '@oddwheel/tables/cycle-hwfet';
import { CYCLE_UDC } from '@oddwheel/tables/cycle-nedc';
import { CYCLE_UDDS } from '@oddwheel/tables/cycle-udds';
import type { ProofCase } from './case.ts';
import { constructed, khurmi } from './sources.ts';

const GRAVITY = '9.81 m/s2';
const gillespie = (at: string) =>
  ({ title: 'Fundamentals of Vehicle Dynamics (T. D. Gillespie)', at, how: 'memory' }) as const;

/** The engine of an open data set (NREL FC_SI41_emis.M): measured full-load rows. */
const PETROL = {
  speeds: [104.5, 149.2, 220.9, 292.5, 364.1, 435.7, 507.4, 552.2, 596.9],
  torques: [61, 67.6, 73.7, 78.5, 80.9, 77.3, 76.2, 73.3, 68.7],
};
const CAR = {
  ...PETROL,
  efficiency: 0.9,
  rollingRadius: 0.29,
  mass: 550,
  rollingCoefficient: 0.015,
  dragArea: 0.7,
  gravity: GRAVITY,
};
const scipy = (at: string) => ({ title: 'SciPy', edition: '1.17.1', at, how: 'read' }) as const;

/**
 * Road load of the regulation, F = A + C V² with V in km/h, at 65 km/h. A stands for rolling; C is put as a drag area, 2 C · 3.6² / 1.2.
 */
const cfr = (inertia: number, a: number, c: number, force: number): ProofCase => ({
  method: 'vehicle.roadLoad',
  id: `vehicle-road-load-cfr-${inertia}`,
  given: {
    mass: inertia,
    rollingCoefficient: a / (inertia * 9.80665),
    dragArea: (2 * c * 3.6 ** 2) / 1.2,
    speed: '65 km/h',
  },
  expect: { force: { value: force, within: { abs: '0.3 N' } } },
  source: {
    title: '40 CFR 86.529-98, road load force and inertia determination',
    at: `Figure F98-9, row of ${inertia} kg`,
    how: 'read',
    address: 'law.cornell.edu/cfr/text/40/86.529-98',
  },
  kind: 'table-spot',
});

/** A cycle driven by a vehicle that can follow it: its length and duration do not depend on the vehicle. */
const cycle = (trace: readonly number[]) => ({
  ...CAR,
  ratios: [14, 8, 5.2, 3.9, 3.1],
  trace: [...trace],
  turningMass: 22,
  idleSpeed: 104.5,
  upSpeeds: [5, 9, 13, 17],
  downSpeeds: [3, 5, 9, 13],
});

export const ROAD_CASES: readonly ProofCase[] = [
  cfr(100, 0, 0.0224, 94.8),
  cfr(150, 4.32, 0.0238, 104.9),
  cfr(200, 8.69, 0.0252, 115.1),
  cfr(300, 17.43, 0.0279, 135.4),
  {
    method: 'vehicle.massFactor',
    id: 'vehicle-mass-khurmi-3-15',
    given: {
      mass: '1500 kg',
      wheelInertias: [8],
      wheelRadii: [0.3],
      drivenRadius: '300 mm',
      partInertias: [1],
      partRatios: [22],
      partEfficiencies: [0.85],
    },
    expect: { equivalentMass: { value: 1590 + 9.44 * 22 ** 2, within: { rel: 0.002 } } },
    source: khurmi('Example 3.15: equivalent mass 1590 + 9.44 G², best ratio 22', 'ch3'),
    kind: 'published-example',
    note: 'The efficiency stands at the engine’s part, as the book has it.',
  },
  ...(
    [
      [1, 0.231],
      [0.9, 0.216],
    ] as const
  ).map(
    ([efficiency, acceleration]): ProofCase => ({
      method: 'vehicle.massFactor',
      id: `vehicle-mass-khurmi-3-13-${efficiency * 100}`,
      given: {
        mass: '75 kg',
        wheelInertias: [100],
        wheelRadii: [0.3],
        drivenRadius: '300 mm',
        partInertias: [5],
        partRatios: [6],
        partEfficiencies: [efficiency],
        driver: 'load',
      },
      expect: { equivalentMass: { value: (75 * 9.81) / acceleration, within: { rel: 0.003 } } },
      source: khurmi(`Example 3.13: a load of 75 kg falls with ${acceleration} m/s²`, 'ch3'),
      kind: 'published-example',
      note: 'The load drives the gears, so the geared part is divided by the efficiency.',
    }),
  ),
  {
    method: 'vehicle.massFactor',
    id: 'vehicle-mass-wong-3-1',
    given: {
      mass: 21240 / 9.81,
      wheelInertias: [(4 * 244.6 * 0.254 ** 2) / 9.81],
      wheelRadii: [0.33],
      drivenRadius: '330 mm',
      partInertias: [0.733],
      partRatios: [4.28],
      partEfficiencies: [1],
    },
    expect: { massFactor: { value: 1.084, within: { abs: 0.002 } } },
    source: { title: 'Theory of Ground Vehicles (J. Y. Wong)', at: 'Example 3.1', how: 'memory' },
    kind: 'published-example',
    note: 'The book leaves the efficiency out of the engine’s part.',
  },
  {
    method: 'vehicle.clutchSlipEnergy',
    id: 'vehicle-clutch-khurmi-10-34',
    given: {
      engineSpeed: '1000 rpm',
      torque: '7.8 N.m',
      efficiency: 1,
      ratio: 1,
      rollingRadius: '1 m',
      mass: 13.5 * 0.15 ** 2,
      load: 0,
      referenceRatio: 1,
      referenceRadius: '1 m',
      referenceMass: 13.5 * 0.15 ** 2,
      referenceLoad: 0,
    },
    expect: {
      time: { value: '4.1 s', within: { abs: '0.05 s' } },
      energy: { value: '1674 J', within: { rel: 0.006 } },
      energyRatio: { value: 1, within: { rel: 1e-12 } },
    },
    source: khurmi('Example 10.34: a motor brings a flywheel of 13.5 kg to 1000 rpm', 'ch10'),
    kind: 'published-example',
    note: 'The flywheel is put as a mass rolling at 1 m; the book rounds the time to 4.1 s before the energy.',
  },
  {
    method: 'vehicle.gyroscopicMoment',
    id: 'vehicle-gyro-khurmi-14-14',
    given: {
      inertia: '180 kg.m2',
      speed: '95 km/h',
      rollingRadius: '900 mm',
      turnRate: ((2 * Math.PI) / 0.1) * (0.003 / 1.5),
    },
    expect: { moment: { value: '663.2 N.m', within: { abs: '0.05 N.m' } } },
    source: khurmi('Example 14.14: a pair of locomotive wheels over a dip of the rail', 'ch14'),
    kind: 'published-example',
  },
  {
    method: 'vehicle.gyroscopicMoment',
    id: 'vehicle-gyro-khurmi-14-3',
    given: {
      inertia: 400 * 0.3 ** 2,
      speed: (2400 * 2 * Math.PI) / 60,
      rollingRadius: '1 m',
      turnRate: 200 / 3.6 / 50,
    },
    expect: { moment: { value: 10_053, within: { abs: 1 } } },
    source: khurmi('Example 14.3: engine and propeller at 2400 rpm in a turn', 'ch14'),
    kind: 'published-example',
    note: 'Put as a wheel that rolls at a radius of 1 m.',
  },
  {
    method: 'vehicle.gripLimit',
    id: 'vehicle-grip-gillespie-2',
    given: {
      mass: '3950 lb',
      wheelbase: '108 in',
      aheadOfRear: (2100 / 3950) * 108 * 0.0254,
      height: '21 in',
      friction: '62 %',
    },
    expect: { force: { value: '1304 lbf', within: { rel: 0.002 } } },
    source: gillespie('chapter 2, example problem 2: rear drive with a locking differential'),
    kind: 'published-example',
  },
  {
    method: 'vehicle.frontLift',
    id: 'vehicle-lift-two-wheels',
    given: { mass: '180 kg', wheelbase: '1.25 m', aheadOfRear: '520 mm', height: '680 mm', gravity: GRAVITY },
    expect: {
      liftAcceleration: { value: 7.5018, within: { rel: 5e-4 } },
      liftForce: { value: 1350.3, within: { rel: 5e-4 } },
    },
    source: constructed('Own computation: a = g b/h, as Cossalter, Motorcycle Dynamics, chapter 3, recalled'),
    kind: 'constructed',
  },
  {
    method: 'vehicle.sidewaysLimit',
    id: 'vehicle-sideways-three-wheels',
    given: {
      wheels: 3,
      wheelbase: '2.2 m',
      track: '1.3 m',
      fromSingle: '1.45 m',
      height: '450 mm',
      gravity: GRAVITY,
    },
    expect: { parts: { value: 0.95202, within: { rel: 5e-4 } } },
    source: constructed('Own computation: support triangle of SAE 820139, of which the abstract was read'),
    kind: 'constructed',
  },
  {
    method: 'vehicle.topSpeed',
    id: 'vehicle-top-power',
    given: { ...CAR, ratios: [3.9] },
    expect: {
      speed: { value: '154.8 km/h', within: { rel: 5e-4 } },
      angularSpeed: { value: '5522 rpm', within: { rel: 5e-4 } },
      limit: { value: 'power' },
    },
    source: scipy('scipy.optimize.brentq on pull less road load, PchipInterpolator curve'),
    kind: 'reference-library',
  },
  {
    method: 'vehicle.topSpeed',
    id: 'vehicle-top-engine-speed',
    given: { ...CAR, dragArea: 0.55, ratios: [5.6] },
    expect: { speed: { value: '111.28 km/h', within: { rel: 5e-4 } }, limit: { value: 'engine speed' } },
    source: scipy('scipy.optimize.brentq on pull less road load: none below 5700 rpm'),
    kind: 'reference-library',
  },
  {
    method: 'vehicle.acceleration',
    id: 'vehicle-sprint-80',
    given: {
      ...CAR,
      ratios: [3.42, 1.95, 1.28, 0.95, 0.76].map((ratio) => ratio * 4.1),
      wheelInertia: 2,
      engineInertia: 0.1,
      shiftSpeed: '5500 rpm',
      shiftTime: 0,
      slipSpeed: 104.5,
      gripForce: 1e6,
      fromSpeed: 0,
      toSpeed: '80 km/h',
    },
    expect: { time: { value: '7.0557 s', within: { rel: 0.003 } } },
    source: scipy('scipy.integrate.quad of mass over surplus pull, gear by gear'),
    kind: 'reference-library',
  },
  {
    method: 'vehicle.gradeability',
    id: 'vehicle-grade-1500-n',
    given: { force: '1500 N', mass: '450 kg', rollingCoefficient: 0.015, gravity: GRAVITY },
    expect: { grade: { value: 0.34437, within: { rel: 2e-4 } } },
    source: constructed('Own computation: W sin θ + f W cos θ = F solved exactly'),
    kind: 'constructed',
  },
  {
    method: 'vehicle.shiftSpeeds',
    id: 'vehicle-shift-gtr2',
    given: {
      ratedPower: '72 kW',
      kerbMass: '199 kg',
      ratedSpeed: '11800 rpm',
      idleSpeed: '1150 rpm',
      // Engine speed over road speed, rpm by km/h, on a wheel of radius 1 m.
      ratios: [133.66, 94.91, 76.16, 65.69, 58.85, 54.04].map((perKmh) => (perKmh * 3.6 * 2 * Math.PI) / 60),
      rollingRadius: '1 m',
    },
    expect: {
      firstEngineSpeed: { value: '3804 rpm', within: { abs: '1 rpm' } },
      engineSpeed: { value: '4869 rpm', within: { abs: '1 rpm' } },
      upSpeeds: {
        value: ['28.5 km/h', '51.3 km/h', '63.9 km/h', '74.1 km/h', '82.7 km/h'],
        within: { abs: '0.06 km/h' },
      },
    },
    source: { title: 'UN Global Technical Regulation No. 2', at: 'Annex 13, example of gear use', how: 'memory' },
    kind: 'published-example',
  },
  {
    method: 'vehicle.cycleRun',
    id: 'vehicle-cycle-urban',
    given: cycle(cycleTrace(CYCLE_UDC)),
    expect: {
      duration: { value: '195 s', within: { abs: 1e-9 } },
      distance: { value: '1.013 km', within: { rel: 0.002 } },
    },
    source: {
      title: 'UN Regulation No. 83, Annex 4',
      at: 'elementary urban cycle: 195 s, 1.013 km',
      how: 'read',
      address: 'lawinsider.com/clause/test-cycle/_1',
    },
    kind: 'table-spot',
  },
  {
    method: 'vehicle.cycleRun',
    id: 'vehicle-cycle-udds',
    given: cycle(cycleTrace(CYCLE_UDDS)),
    expect: {
      duration: { value: '1369 s', within: { abs: 1e-9 } },
      distance: { value: '7.45 mi', within: { abs: '0.005 mi' } },
    },
    source: { title: '40 CFR 86', at: 'Appendix I(a), totals', how: 'memory' },
    kind: 'table-spot',
  },
  {
    method: 'vehicle.cycleRun',
    id: 'vehicle-cycle-hwfet',
    given: cycle(cycleTrace(CYCLE_HWFET)),
    expect: {
      duration: { value: '765 s', within: { abs: 1e-9 } },
      distance: { value: '10.26 mi', within: { abs: '0.005 mi' } },
    },
    source: { title: '40 CFR 600', at: 'Appendix I, totals', how: 'memory' },
    kind: 'table-spot',
  },
  {
    method: 'vehicle.speedometerCorrection',
    id: 'vehicle-speedometer-larger-wheel',
    given: { indicated: '50 km/h', designRatio: 1, designRollOut: '1.96 m', ratio: 1, rollOut: '2.058 m' },
    expect: {
      speed: { value: '52.5 km/h', within: { rel: 1e-9 } },
      mostIndicated: { value: '61.75 km/h', within: { rel: 1e-9 } },
      verdict: { value: 'shows too little' },
    },
    source: constructed('Own computation: a wheel one twentieth larger; UN Regulation No. 39 recalled'),
    kind: 'constructed',
  },
];
