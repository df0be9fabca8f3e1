import { branch, choose, div, mul, num, when } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'joint.setscrewHold';

const inputs = {
  hold: { form: 'value', kind: 'force', symbol: 'F', meaning: 'holding force of one screw', range: ABOVE_ZERO },
  diameter: { form: 'value', kind: 'length', symbol: 'd', meaning: 'diameter of the shaft', range: ABOVE_ZERO },
  screws: { form: 'integer', symbol: 'z', meaning: 'screws, 1 or 2', range: { min: 1, max: 2 } },
} as const satisfies Params;

/**
 * Torque at which setscrews let the hub turn on its shaft. A second screw at 90 to 120 degrees adds three tenths on a plain shaft.
 *
 * Errors: a size not above zero, more than two screws.
 */
export const setscrewHold = defineMethod({
  id,
  gives: 'Torque at which setscrews slip',
  inputs,
  outputs: {
    torque: { form: 'value', kind: 'torque', symbol: 'T', meaning: 'torque at which they slip' },
    carrying: { form: 'value', kind: 'number', symbol: 'k', meaning: 'screws that carry' },
  },
  results: ['torque'],
  steps: [
    {
      key: 'carrying',
      is: choose([branch(when('screws', '=', num(2)), num(1.3))], num(1)),
      says: 'A second screw presses the shaft against the same side of the bore.',
    },
    {
      key: 'torque',
      is: div(mul('hold', 'carrying', 'diameter'), num(2)),
      says: 'Holding force at the surface of the shaft.',
    },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '9th',
      at: 'table 7-4 and section 7-7',
      how: 'memory',
    },
  ],
  holds: ['Cup points, seated with their torque, in a screw harder than the shaft.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const carrying = input.screws === 2 ? 1.3 : 1;
    return { torque: (input.hold * carrying * input.diameter) / 2, carrying };
  },
});
