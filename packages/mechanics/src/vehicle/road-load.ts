import { add, div, fn, mul } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';
import { airLoad, LOAD_INPUTS } from './load.ts';

const id = 'vehicle.roadLoad';

const inputs = {
  ...LOAD_INPUTS,
  speed: { form: 'value', kind: 'speed', symbol: 'v', meaning: 'road speed', range: { min: 0 } },
  acceleration: { form: 'value', kind: 'acceleration', symbol: 'a', meaning: 'acceleration', default: 0 },
  massFactor: {
    form: 'value',
    kind: 'ratio',
    symbol: 'γ',
    meaning: 'mass with the turning parts over mass',
    range: { min: 1 },
    default: 1,
  },
} as const satisfies Params;

/**
 * Pull at the ground that a rolling vehicle asks for, part by part. Negative when the vehicle pushes.
 *
 * Errors: mass not above zero, rolling coefficient outside 0..1, drag area, density or speed below zero, mass factor below 1, slope beyond 1.5 rad.
 */
export const roadLoad = defineMethod({
  id,
  gives: 'Pull and power that speed, slope and acceleration ask for at the ground',
  inputs,
  outputs: {
    force: { form: 'value', kind: 'force', symbol: 'F', meaning: 'pull at the ground' },
    power: { form: 'value', kind: 'power', symbol: 'P', meaning: 'power at the ground' },
    rolling: { form: 'value', kind: 'force', symbol: 'F_r', meaning: 'part of rolling' },
    air: { form: 'value', kind: 'force', symbol: 'F_a', meaning: 'part of the air' },
    grade: { form: 'value', kind: 'force', symbol: 'F_g', meaning: 'part of the slope' },
    inertia: { form: 'value', kind: 'force', symbol: 'F_i', meaning: 'part of the acceleration' },
    weight: { form: 'value', kind: 'force', symbol: 'W', meaning: 'weight' },
    against: { form: 'value', kind: 'speed', symbol: 'u', meaning: 'speed against the air' },
  },
  results: ['force', 'power', 'rolling', 'air', 'grade', 'inertia'],
  steps: [
    { key: 'weight', is: mul('mass', 'gravity'), says: 'Weight of the loaded vehicle.' },
    {
      key: 'rolling',
      is: mul('weight', 'rollingCoefficient', fn('cos', 'slope')),
      says: 'A part of the load on the wheels.',
    },
    { key: 'against', is: add('speed', 'headWind'), says: 'Road speed and wind from ahead.' },
    {
      key: 'air',
      is: div(mul('airDensity', 'dragArea', 'against', fn('abs', 'against')), 2),
      says: 'Grows with the square of the speed against the air; pushes when the wind overtakes.',
    },
    { key: 'grade', is: mul('weight', fn('sin', 'slope')), says: 'The part of the weight along the road.' },
    {
      key: 'inertia',
      is: mul('massFactor', 'mass', 'acceleration'),
      says: 'Mass and turning parts resist acceleration.',
    },
    { key: 'force', is: add('rolling', 'air', 'grade', 'inertia'), says: 'All parts.' },
    { key: 'power', is: mul('force', 'speed'), says: 'Pull times speed.' },
  ],
  sources: [
    { title: 'Theory of Ground Vehicles (J. Y. Wong)', at: 'chapter 3, resistances and mass factor', how: 'memory' },
    { title: 'Fundamentals of Vehicle Dynamics (T. D. Gillespie)', at: 'chapter 4, road loads', how: 'memory' },
  ],
  holds: ['The vehicle rolls; standing still, the road holds it. The coefficient does not change with speed.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { mass, gravity, rollingCoefficient, slope, speed, headWind, massFactor, acceleration } = input;
    const weight = mass * gravity;
    const rolling = weight * rollingCoefficient * Math.cos(slope);
    const air = airLoad(input, speed);
    const grade = weight * Math.sin(slope);
    const inertia = massFactor * mass * acceleration;
    const force = rolling + air + grade + inertia;
    return { force, power: force * speed, rolling, air, grade, inertia, weight, against: speed + headWind };
  },
});
