import { div, mul, PI } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'ratio.forSpeed';

const inputs = {
  engineSpeed: { form: 'value', kind: 'angularSpeed', symbol: 'ω', meaning: 'engine speed wanted', range: ABOVE_ZERO },
  roadSpeed: { form: 'value', kind: 'speed', symbol: 'v', meaning: 'road speed there', range: ABOVE_ZERO },
  rollOut: { form: 'value', kind: 'length', symbol: 'U', meaning: 'roll-out of the driven wheel', range: ABOVE_ZERO },
  box: {
    form: 'value',
    kind: 'ratio',
    symbol: 'i_b',
    meaning: 'ratio from engine to gearbox output in that gear; 1 gives the overall ratio',
    range: ABOVE_ZERO,
    default: 1,
  },
} as const satisfies Params;

/**
 * Ratio from gearbox output to wheel that turns the engine at a speed wanted on the road.
 *
 * Errors: speeds, roll-out or box ratio not above zero.
 */
export const ratioForSpeed = defineMethod({
  id,
  gives: 'Ratio after the gearbox for an engine speed at a road speed',
  inputs,
  outputs: {
    path: { form: 'value', kind: 'ratio', symbol: 'i', meaning: 'ratio from gearbox output to wheel' },
    overall: { form: 'value', kind: 'ratio', symbol: 'i_t', meaning: 'engine speed over wheel speed' },
    wheelSpeed: { form: 'value', kind: 'angularSpeed', symbol: 'ω_w', meaning: 'speed of the wheel' },
  },
  results: ['path', 'overall', 'wheelSpeed'],
  steps: [
    { key: 'wheelSpeed', is: div(mul(2, PI, 'roadSpeed'), 'rollOut'), says: 'One turn for each roll-out.' },
    { key: 'overall', is: div('engineSpeed', 'wheelSpeed'), says: 'Engine over wheel.' },
    { key: 'path', is: div('overall', 'box'), says: 'The gearbox does its part.' },
  ],
  sources: [
    { title: 'Theory of Ground Vehicles (J. Y. Wong)', at: 'speed of a vehicle from engine speed', how: 'memory' },
    { title: 'Rolling without slip', how: 'derived' },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const wheelSpeed = (2 * Math.PI * input.roadSpeed) / input.rollOut;
    const overall = input.engineSpeed / wheelSpeed;
    return { path: overall / input.box, overall, wheelSpeed };
  },
});
