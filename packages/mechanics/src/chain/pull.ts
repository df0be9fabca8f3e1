import { div } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'chain.pull';

const inputs = {
  torque: { form: 'value', kind: 'torque', symbol: 'T', meaning: 'torque on the sprocket', range: { min: 0 } },
  pitchRadius: {
    form: 'value',
    kind: 'length',
    symbol: 'R',
    meaning: 'pitch radius of the sprocket',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

/**
 * Pull in the tight span, over that of the slack span.
 *
 * Errors: torque below zero, pitch radius not above zero.
 */
export const chainPull = defineMethod({
  id,
  gives: 'Pull of the tight span from the torque on a sprocket',
  inputs,
  outputs: { pull: { form: 'value', kind: 'force', symbol: 'F', meaning: 'pull of the tight span' } },
  results: ['pull'],
  steps: [{ key: 'pull', is: div('torque', 'pitchRadius'), says: 'The chain pulls at the pitch radius.' }],
  sources: [
    {
      title: 'Machine Elements in Mechanical Design (R. L. Mott)',
      edition: '4th',
      at: 'section 12-3',
      how: 'read',
    },
  ],
  holds: ['Pull of the slack span, weight and centrifugal tension are left out.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    return { pull: input.torque / input.pitchRadius };
  },
});
