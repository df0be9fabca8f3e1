import { div, mul } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'vehicle.gyroscopicMoment';

const inputs = {
  inertia: {
    form: 'value',
    kind: 'inertia',
    symbol: 'I',
    meaning: 'moment of inertia of the wheel about its axle',
    range: ABOVE_ZERO,
  },
  speed: { form: 'value', kind: 'speed', symbol: 'v', meaning: 'road speed', range: { min: 0 } },
  rollingRadius: {
    form: 'value',
    kind: 'length',
    symbol: 'r',
    meaning: 'rolling radius of the wheel',
    range: ABOVE_ZERO,
  },
  turnRate: {
    form: 'value',
    kind: 'angularSpeed',
    symbol: 'Ω',
    meaning: 'rate at which the axle is swung round, by steering, leaning or a turn',
    range: { min: 0 },
  },
} as const satisfies Params;

/**
 * Moment that a rolling wheel asks for while its axle is swung round; it acts square to both axes.
 *
 * Errors: moment of inertia or radius not above zero, speed or rate below zero.
 */
export const gyroscopicMoment = defineMethod({
  id,
  gives: 'Gyroscopic moment of a wheel whose axle is swung round',
  inputs,
  outputs: {
    moment: { form: 'value', kind: 'torque', symbol: 'M', meaning: 'gyroscopic moment' },
    angularSpeed: { form: 'value', kind: 'angularSpeed', symbol: 'ω', meaning: 'speed of the wheel' },
    angularMomentum: { form: 'value', kind: 'torqueSlope', symbol: 'H', meaning: 'angular momentum of the wheel' },
  },
  results: ['moment', 'angularSpeed', 'angularMomentum'],
  steps: [
    { key: 'angularSpeed', is: div('speed', 'rollingRadius'), says: 'The wheel rolls.' },
    { key: 'angularMomentum', is: mul('inertia', 'angularSpeed'), says: 'Moment of inertia times speed.' },
    {
      key: 'moment',
      is: mul('angularMomentum', 'turnRate'),
      says: 'Rate of change of the angular momentum as its axis swings.',
    },
  ],
  sources: [
    { title: 'Theory of Machines (Khurmi, Gupta)', at: 'chapter 14, gyroscopic couple C = I ω ω_P', how: 'memory' },
  ],
  holds: ['The axle swings about an axis square to itself; at an angle less.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const angularSpeed = input.speed / input.rollingRadius;
    const angularMomentum = input.inertia * angularSpeed;
    return { moment: angularMomentum * input.turnRate, angularSpeed, angularMomentum };
  },
});
