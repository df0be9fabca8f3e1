import { div, fn, mul, num, PI, pow, sub } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { GIVES, JOINED, LAME, PRESSURE_STEPS, pressed, refuseSizes } from './cylinders.ts';

const id = 'fit.pressFitHold';

const inputs = {
  ...JOINED,
  length: { form: 'value', kind: 'length', symbol: 'l', meaning: 'length of the joint', range: ABOVE_ZERO },
  friction: {
    form: 'value',
    kind: 'number',
    symbol: 'μ',
    meaning: 'friction against slipping',
    range: { min: 0, max: 1 },
  },
  axial: {
    form: 'value',
    kind: 'force',
    symbol: 'F_a',
    meaning: 'push along the shaft that it holds at the same time',
    range: { min: 0 },
    default: 0,
  },
} as const satisfies Params;

/**
 * Torque and push along the shaft that a press fit holds by friction. Give it the least interference that is left after smoothing.
 *
 * Errors: a size, modulus or length not above zero; a hub or a shaft without a wall.
 */
export const pressFitHold = defineMethod({
  id,
  gives: 'Torque and push along the shaft that a press fit holds by friction',
  inputs,
  outputs: {
    torque: { form: 'value', kind: 'torque', symbol: 'T', meaning: 'torque that it holds beside the push' },
    force: { form: 'value', kind: 'force', symbol: 'F', meaning: 'push along the shaft that it holds without torque' },
    pressure: { form: 'value', kind: 'pressure', symbol: 'p', meaning: 'pressure between hub and shaft' },
    ...GIVES,
  },
  results: ['torque', 'force', 'pressure'],
  steps: [
    ...PRESSURE_STEPS,
    { key: 'force', is: mul(PI, 'friction', 'pressure', 'diameter', 'length'), says: 'Friction on the whole seat.' },
    {
      key: 'torque',
      is: mul(div('diameter', 2), fn('sqrt', fn('max', sub(pow('force', 2), pow('axial', 2)), num(0)))),
      says: 'What the push leaves of it turns at the radius: both slide as one.',
    },
  ],
  sources: LAME,
  holds: ['The hub is as long as the joint and round all about; a keyway or a thin side holds less.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    refuseSizes(id, input);
    const joint = pressed(input);
    const force = Math.PI * input.friction * joint.pressure * input.diameter * input.length;
    const torque = (input.diameter / 2) * Math.sqrt(Math.max(force ** 2 - input.axial ** 2, 0));
    return { torque, force, ...joint };
  },
});
