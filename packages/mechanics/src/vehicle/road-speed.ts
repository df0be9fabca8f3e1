import { div, mul, PI } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';
import { ROLL_INPUTS, ROLL_SOURCES } from './roll.ts';

const id = 'vehicle.roadSpeed';

const inputs = {
  angularSpeed: { form: 'value', kind: 'angularSpeed', symbol: 'ω', meaning: 'speed of the shaft', range: { min: 0 } },
  ...ROLL_INPUTS,
} as const satisfies Params;

/**
 * Road speed at a speed of the wheel, or of a shaft before it.
 *
 * Errors: speed below zero, ratio or roll-out not above zero.
 */
export const roadSpeed = defineMethod({
  id,
  gives: 'Road speed at the speed of a shaft',
  inputs,
  outputs: { speed: { form: 'value', kind: 'speed', symbol: 'v', meaning: 'road speed' } },
  results: ['speed'],
  steps: [
    {
      key: 'speed',
      is: div(mul('angularSpeed', 'rollOut'), mul(2, PI, 'overallRatio')),
      says: 'Each turn of the wheel moves the vehicle by one roll-out.',
    },
  ],
  sources: ROLL_SOURCES,
  holds: ['The tyre does not slip; under drive it slips by 1 to 4 %.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    return { speed: (input.angularSpeed * input.rollOut) / (2 * Math.PI * input.overallRatio) };
  },
});
