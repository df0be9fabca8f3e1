import { add, div, mul, num, pow } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'joint.spigotPressure';

const inputs = {
  bending: { form: 'value', kind: 'torque', symbol: 'M', meaning: 'bending moment at its middle', range: { min: 0 } },
  shear: { form: 'value', kind: 'force', symbol: 'F', meaning: 'force across the shaft', range: { min: 0 } },
  diameter: { form: 'value', kind: 'length', symbol: 'd', meaning: 'diameter of the spigot', range: ABOVE_ZERO },
  length: { form: 'value', kind: 'length', symbol: 'l', meaning: 'length that it sits in', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Greatest pressure at the mouth of a spigot that carries bending and a force across.
 *
 * Errors: a size not above zero, a load below zero.
 */
export const spigotPressure = defineMethod({
  id,
  gives: 'Pressure at the mouth of a spigot under bending',
  inputs,
  outputs: {
    pressure: { form: 'value', kind: 'pressure', symbol: 'p', meaning: 'greatest pressure' },
    byBending: { form: 'value', kind: 'pressure', symbol: 'p_M', meaning: 'pressure from bending' },
    byForce: { form: 'value', kind: 'pressure', symbol: 'p_F', meaning: 'pressure from the force' },
  },
  results: ['pressure'],
  steps: [
    {
      key: 'byBending',
      is: div(mul(num(6), 'bending'), mul('diameter', pow('length', 2))),
      says: 'The moment presses at both mouths, falling straight to nothing in the middle.',
    },
    { key: 'byForce', is: div('shear', mul('diameter', 'length')), says: 'The force spreads over the whole length.' },
    { key: 'pressure', is: add('byBending', 'byForce'), says: 'Both at one mouth.' },
  ],
  sources: [{ title: 'Roloff/Matek, Machine Elements', at: 'pin pressed in as a cantilever', how: 'memory' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const byBending = (6 * input.bending) / (input.diameter * input.length ** 2);
    const byForce = input.shear / (input.diameter * input.length);
    return { pressure: byBending + byForce, byBending, byForce };
  },
});
