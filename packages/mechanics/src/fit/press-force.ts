import { mul, PI } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { GIVES, JOINED, LAME, PRESSURE_STEPS, pressed, refuseSizes } from './cylinders.ts';

const id = 'fit.pressForce';

const inputs = {
  ...JOINED,
  length: { form: 'value', kind: 'length', symbol: 'l', meaning: 'length of the joint', range: ABOVE_ZERO },
  friction: {
    form: 'value',
    kind: 'number',
    symbol: 'μ',
    meaning: 'friction while it is pressed on',
    range: { min: 0, max: 1 },
  },
} as const satisfies Params;

/**
 * Force that presses a hub onto its shaft, at the end of the way. Give it the greatest interference.
 *
 * Errors: a size, modulus or length not above zero; a hub or a shaft without a wall.
 */
export const pressForce = defineMethod({
  id,
  gives: 'Force that presses a hub onto its shaft',
  inputs,
  outputs: {
    force: { form: 'value', kind: 'force', symbol: 'F', meaning: 'force at the end of the way' },
    pressure: { form: 'value', kind: 'pressure', symbol: 'p', meaning: 'pressure between hub and shaft' },
    ...GIVES,
  },
  results: ['force', 'pressure'],
  steps: [
    ...PRESSURE_STEPS,
    { key: 'force', is: mul(PI, 'friction', 'pressure', 'diameter', 'length'), says: 'Friction on the whole seat.' },
  ],
  sources: LAME,
  holds: ['A press can throw a part that slips or bursts: guard it, and stand aside.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    refuseSizes(id, input);
    const joint = pressed(input);
    return { force: Math.PI * input.friction * joint.pressure * input.diameter * input.length, ...joint };
  },
});
