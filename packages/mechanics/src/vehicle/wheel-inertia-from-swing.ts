import { div, fn, mul, PI, pow, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { SWING_INPUTS } from './swing.ts';

const id = 'vehicle.wheelInertiaFromSwing';

const inputs = {
  ...SWING_INPUTS,
  arm: {
    form: 'value',
    kind: 'length',
    symbol: 'a',
    meaning: 'from the edge that the wheel hangs on to its centre',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

/**
 * Moment of inertia of a wheel about its axle, from hanging it with its bore or rim on an edge and timing small swings in its own plane.
 *
 * Errors: values not above zero, fewer than one swing, a time too short for any wheel.
 */
export const wheelInertiaFromSwing = defineMethod({
  id,
  gives: 'Moment of inertia of a wheel from timed swings on an edge',
  inputs,
  outputs: {
    inertia: { form: 'value', kind: 'inertia', symbol: 'I', meaning: 'moment of inertia about the axle' },
    spread: { form: 'value', kind: 'inertia', symbol: 'δI', meaning: 'how far the timing may put it off, either way' },
    period: { form: 'value', kind: 'time', symbol: 'T', meaning: 'time of one swing, there and back' },
    gyration: { form: 'value', kind: 'length', symbol: 'k', meaning: 'radius of gyration' },
    aboutEdge: { form: 'value', kind: 'inertia', symbol: 'I_a', meaning: 'moment of inertia about the edge' },
  },
  results: ['inertia', 'spread', 'period', 'gyration'],
  steps: [
    { key: 'period', is: div('time', 'swings'), says: 'Many swings share the error of the hand.' },
    {
      key: 'aboutEdge',
      is: div(mul('mass', 'gravity', 'arm', pow('period', 2)), mul(4, pow(PI, 2))),
      says: 'Period of a body that hangs from an edge.',
    },
    { key: 'inertia', is: sub('aboutEdge', mul('mass', pow('arm', 2))), says: 'From the edge to the centre.' },
    {
      key: 'spread',
      is: div(mul(2, 'aboutEdge', 'timing'), 'time'),
      says: 'The period enters squared; the subtraction makes the error weigh more, so a short arm is better.',
    },
    {
      key: 'gyration',
      is: fn('sqrt', div('inertia', 'mass')),
      says: 'All mass on a ring of this radius would turn as heavily.',
    },
  ],
  sources: [{ title: 'Theory of Machines (Khurmi, Gupta)', at: 'chapter 4, compound pendulum', how: 'memory' }],
  holds: ['Swings of a few degrees only, about 10° at most; a sharp edge; no rubbing.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { mass, time, swings, timing, arm, gravity } = input;
    const period = time / swings;
    const aboutEdge = (mass * gravity * arm * period ** 2) / (4 * Math.PI ** 2);
    const inertia = aboutEdge - mass * arm ** 2;
    if (!(inertia > 0))
      throw new MethodError(
        id,
        'time',
        `Time of all swings: ${time} s read; ${swings} swings on an arm of ${arm} m take more than ${swings * 2 * Math.PI * Math.sqrt(arm / gravity)} s.`,
      );
    return { inertia, spread: (2 * aboutEdge * timing) / time, period, gyration: Math.sqrt(inertia / mass), aboutEdge };
  },
});
