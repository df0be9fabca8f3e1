import { div, mul, PI } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'torsion.firingFrequency';

const inputs = {
  speed: { form: 'value', kind: 'angularSpeed', symbol: 'ω', meaning: 'speed of the crank', range: ABOVE_ZERO },
  cylinders: { form: 'value', kind: 'count', symbol: 'z', meaning: 'cylinders', range: { min: 1, max: 16 } },
  turns: {
    form: 'value',
    kind: 'count',
    symbol: 'c',
    meaning: 'turns of the crank in a working cycle: 2 for a four-stroke, 1 for a two-stroke',
    range: { min: 1, max: 2 },
  },
} as const satisfies Params;

/**
 * How often an engine fires: z/2 times a turn for a four-stroke, z times for a two-stroke.
 *
 * Errors: a number outside its range.
 */
export const firingFrequency = defineMethod({
  id,
  gives: 'How often the engine fires',
  inputs,
  outputs: {
    frequency: { form: 'value', kind: 'frequency', symbol: 'f_z', meaning: 'firing frequency' },
  },
  results: ['frequency'],
  steps: [
    {
      key: 'frequency',
      is: div(mul('speed', 'cylinders'), mul(2, PI, 'turns')),
      says: 'Each cylinder fires once in a working cycle.',
    },
  ],
  sources: [
    {
      title: 'Elastic coupling catalogues: order of a four-stroke engine, half its cylinders for each turn',
      at: 'torsional vibration',
      how: 'read',
    },
  ],
  holds: ['Evenly fired; an uneven firing order adds slower orders, down to half a turn.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    return { frequency: (input.speed * input.cylinders) / (2 * Math.PI * input.turns) };
  },
});
