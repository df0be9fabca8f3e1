import { div, mul, PI } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'chain.articulation';

const inputs = {
  teeth: { form: 'integer', symbol: 'z', meaning: 'teeth of the smaller sprocket', range: { min: 6 } },
  links: { form: 'value', kind: 'number', symbol: 'X', meaning: 'links of the chain', range: ABOVE_ZERO },
  speed: { form: 'value', kind: 'angularSpeed', symbol: 'ω', meaning: 'speed of that sprocket', range: { min: 0 } },
} as const satisfies Params;

/**
 * How far a joint bends at a sprocket, and how often.
 *
 * Errors: fewer than 6 teeth, links not above zero, a speed below zero.
 */
export const chainArticulation = defineMethod({
  id,
  gives: 'Angle by which a joint of a chain bends at a sprocket, and how often it bends',
  inputs,
  outputs: {
    angle: {
      form: 'value',
      kind: 'angle',
      symbol: 'β',
      meaning: 'angle that a joint bends by, on and off the sprocket',
    },
    rounds: { form: 'value', kind: 'frequency', symbol: 'f_r', meaning: 'rounds of the chain' },
    bends: { form: 'value', kind: 'frequency', symbol: 'f_b', meaning: 'bends of each joint, on two sprockets' },
  },
  results: ['angle', 'bends', 'rounds'],
  steps: [
    { key: 'angle', is: div(mul(2, PI), 'teeth'), says: 'One tooth’s angle.' },
    {
      key: 'rounds',
      is: div(mul('teeth', 'speed'), mul(2, PI, 'links')),
      says: 'Teeth passed over links.',
    },
    { key: 'bends', is: mul(4, 'rounds'), says: 'On and off each of two sprockets.' },
  ],
  sources: [{ title: 'Geometry of a chain on two sprockets', how: 'derived' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const rounds = (input.teeth * input.speed) / (2 * Math.PI * input.links);
    return { angle: (2 * Math.PI) / input.teeth, rounds, bends: 4 * rounds };
  },
});
