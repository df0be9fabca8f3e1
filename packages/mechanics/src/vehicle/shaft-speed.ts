import { div, mul, PI } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';
import { ROLL_INPUTS, ROLL_SOURCES } from './roll.ts';

const id = 'vehicle.shaftSpeed';

const inputs = {
  speed: { form: 'value', kind: 'speed', symbol: 'v', meaning: 'road speed', range: { min: 0 } },
  ...ROLL_INPUTS,
} as const satisfies Params;

/**
 * Speed of the wheel, or of a shaft before it, at a road speed.
 *
 * Errors: speed below zero, ratio or roll-out not above zero.
 */
export const shaftSpeed = defineMethod({
  id,
  gives: 'Speed of a shaft at a road speed',
  inputs,
  outputs: { angularSpeed: { form: 'value', kind: 'angularSpeed', symbol: 'ω', meaning: 'speed of the shaft' } },
  results: ['angularSpeed'],
  steps: [
    {
      key: 'angularSpeed',
      is: div(mul(2, PI, 'overallRatio', 'speed'), 'rollOut'),
      says: 'The wheel turns once for each roll-out, and the shaft as many times more as the ratio says.',
    },
  ],
  sources: ROLL_SOURCES,
  holds: ['The tyre does not slip; under drive it slips by 1 to 4 %.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    return { angularSpeed: (2 * Math.PI * input.overallRatio * input.speed) / input.rollOut };
  },
});
