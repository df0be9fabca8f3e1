import { div, fn, mul, PI, pow } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { SWING_INPUTS } from './swing.ts';

const id = 'vehicle.wheelInertiaFromWires';

const inputs = {
  ...SWING_INPUTS,
  wireLength: {
    form: 'value',
    kind: 'length',
    symbol: 'l',
    meaning: 'length of the wires, all alike and upright',
    range: ABOVE_ZERO,
  },
  wireRadius: {
    form: 'value',
    kind: 'length',
    symbol: 'a',
    meaning: 'from each wire to the middle of the wheel',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

/**
 * Moment of inertia of a wheel about its axle, from hanging it flat on two or more equal upright wires and timing small twists about its
 * middle.
 *
 * Errors: values not above zero, fewer than one swing.
 */
export const wheelInertiaFromWires = defineMethod({
  id,
  gives: 'Moment of inertia of a wheel from timed twists on two or three wires',
  inputs,
  outputs: {
    inertia: { form: 'value', kind: 'inertia', symbol: 'I', meaning: 'moment of inertia about the axle' },
    spread: { form: 'value', kind: 'inertia', symbol: 'δI', meaning: 'how far the timing may put it off, either way' },
    period: { form: 'value', kind: 'time', symbol: 'T', meaning: 'time of one twist, there and back' },
    gyration: { form: 'value', kind: 'length', symbol: 'k', meaning: 'radius of gyration' },
  },
  results: ['inertia', 'spread', 'period', 'gyration'],
  steps: [
    { key: 'period', is: div('time', 'swings'), says: 'Many twists share the error of the hand.' },
    {
      key: 'inertia',
      is: div(mul('mass', 'gravity', pow('wireRadius', 2), pow('period', 2)), mul(4, pow(PI, 2), 'wireLength')),
      says: 'Each wire leans a little as the wheel twists, and pulls it back.',
    },
    { key: 'spread', is: div(mul(2, 'inertia', 'timing'), 'time'), says: 'The period enters squared.' },
    {
      key: 'gyration',
      is: fn('sqrt', div('inertia', 'mass')),
      says: 'All mass on a ring of this radius would turn as heavily.',
    },
  ],
  sources: [
    { title: 'Theory of Machines (Khurmi, Gupta)', at: 'chapter 4, bifilar and trifilar suspension', how: 'memory' },
  ],
  holds: [
    'Twists of a few degrees only; wires much longer than the twist moves their ends; the wheel’s middle hangs still.',
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { mass, time, swings, timing, wireLength, wireRadius, gravity } = input;
    const period = time / swings;
    const inertia = (mass * gravity * wireRadius ** 2 * period ** 2) / (4 * Math.PI ** 2 * wireLength);
    return { inertia, spread: (2 * inertia * timing) / time, period, gyration: Math.sqrt(inertia / mass) };
  },
});
