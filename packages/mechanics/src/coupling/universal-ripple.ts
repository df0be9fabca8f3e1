import { add, div, fn, mul, pow, sub } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';

const id = 'coupling.universalRipple';

const inputs = {
  angle: {
    form: 'value',
    kind: 'angle',
    symbol: 'β',
    meaning: 'angle between the two shafts of the joint',
    range: { min: 0, max: (80 * Math.PI) / 180 },
  },
  angularSpeed: {
    form: 'value',
    kind: 'angularSpeed',
    symbol: 'ω',
    meaning: 'speed of the driving shaft, taken as even',
    range: { min: 0 },
  },
  inertia: {
    form: 'value',
    kind: 'inertia',
    symbol: 'J',
    meaning: 'moment of inertia that turns with the driven shaft',
    range: { min: 0 },
  },
} as const satisfies Params;

/**
 * Torque that a universal joint spends on speeding up and slowing down what hangs on its driven shaft, twice in every turn.
 *
 * Errors: angle outside 0..80 degrees, speed or inertia below zero.
 */
export const universalRipple = defineMethod({
  id,
  gives:
    'Greatest torque that the unevenness of a universal joint puts on its driven side, and the turn at which it comes',
  inputs,
  outputs: {
    ripple: {
      form: 'value',
      kind: 'torque',
      symbol: 'T_r',
      meaning: 'greatest torque from the unevenness, either way',
    },
    turnAtPeak: {
      form: 'value',
      kind: 'angle',
      symbol: 'θ_p',
      meaning: 'turn of the driving shaft, from its fork in the plane of both shafts, at which it comes first',
    },
    phaseLead: {
      form: 'value',
      kind: 'angle',
      symbol: 'ζ',
      meaning: 'how far the driven shaft runs ahead or behind at most',
    },
    square: { form: 'value', kind: 'number', symbol: 'k', meaning: 'square of the sine of the angle' },
    twice: { form: 'value', kind: 'number', symbol: 'c', meaning: 'cosine of twice the turn' },
  },
  results: ['ripple', 'turnAtPeak', 'phaseLead'],
  steps: [
    { key: 'square', is: pow(fn('sin', 'angle'), 2), says: 'Short for what follows.' },
    {
      key: 'twice',
      is: div(
        mul(4, 'square'),
        add(sub(2, 'square'), fn('sqrt', add(pow(sub(2, 'square'), 2), mul(8, pow('square', 2))))),
      ),
      says: 'Where the derivative of the acceleration is zero, exactly.',
    },
    { key: 'turnAtPeak', is: div(fn('acos', 'twice'), 2), says: 'A little before an eighth of a turn.' },
    {
      key: 'ripple',
      is: div(
        mul('inertia', pow('angularSpeed', 2), fn('cos', 'angle'), 'square', fn('sin', mul(2, 'turnAtPeak'))),
        pow(sub(1, mul('square', pow(fn('cos', 'turnAtPeak'), 2))), 2),
      ),
      says: 'Inertia times the acceleration there.',
    },
    {
      key: 'phaseLead',
      is: fn('asin', div(sub(1, fn('cos', 'angle')), add(1, fn('cos', 'angle')))),
      says: 'Greatest difference of the two turns.',
    },
  ],
  sources: [
    { title: 'Theory of machines, Hooke’s joint: angular acceleration of the driven shaft', how: 'memory' },
    { title: 'Derivative of the joint’s equation, its peak solved exactly', how: 'derived' },
  ],
  holds: ['The driving side keeps its speed: its inertia is much the larger, or else the ripple shows there.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { angle, angularSpeed, inertia } = input;
    const square = Math.sin(angle) ** 2;
    const twice = (4 * square) / (2 - square + Math.sqrt((2 - square) ** 2 + 8 * square ** 2));
    const turnAtPeak = Math.acos(twice) / 2;
    const acceleration =
      (angularSpeed ** 2 * Math.cos(angle) * square * Math.sin(2 * turnAtPeak)) /
      (1 - square * Math.cos(turnAtPeak) ** 2) ** 2;
    return {
      ripple: inertia * acceleration,
      turnAtPeak,
      phaseLead: Math.asin((1 - Math.cos(angle)) / (1 + Math.cos(angle))),
      square,
      twice,
    };
  },
});
