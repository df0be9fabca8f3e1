import { div, mul, PI } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'chain.speed';

const inputs = {
  pitch: { form: 'value', kind: 'length', symbol: 'p', meaning: 'chain pitch', range: ABOVE_ZERO },
  teeth: { form: 'integer', symbol: 'N', meaning: 'teeth of the sprocket', range: { min: 6 } },
  angularSpeed: {
    form: 'value',
    kind: 'angularSpeed',
    symbol: 'ω',
    meaning: 'speed of the sprocket',
    range: { min: 0 },
  },
} as const satisfies Params;

/**
 * Mean speed of the chain.
 *
 * Errors: teeth that are no whole number of at least 6, pitch not above zero, speed below zero.
 */
export const chainSpeed = defineMethod({
  id,
  gives: 'Mean speed of a chain',
  inputs,
  outputs: { speed: { form: 'value', kind: 'speed', symbol: 'v', meaning: 'mean chain speed' } },
  results: ['speed'],
  steps: [
    {
      key: 'speed',
      is: div(mul('teeth', 'pitch', 'angularSpeed'), mul(2, PI)),
      says: 'One turn draws in as many pitches as the sprocket has teeth.',
    },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '9th',
      at: 'Eq. 17-29',
      how: 'memory',
    },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    return { speed: (input.teeth * input.pitch * input.angularSpeed) / (2 * Math.PI) };
  },
});
