import { add, div, mul, num, sub } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'joint.boltPreload';

const inputs = {
  torque: { form: 'value', kind: 'torque', symbol: 'T', meaning: 'tightening torque', range: { min: 0 } },
  diameter: { form: 'value', kind: 'length', symbol: 'd', meaning: 'thread diameter', range: ABOVE_ZERO },
  factor: {
    form: 'value',
    kind: 'number',
    symbol: 'K',
    meaning: 'torque factor: 0.3 dry and black, 0.2 as delivered, 0.18 oiled, 0.12 with paste',
    range: { min: 0.05, max: 0.5 },
    default: 0.2,
  },
  scatter: {
    form: 'value',
    kind: 'fraction',
    symbol: 'e',
    meaning: 'scatter of the preload, each way',
    range: { min: 0, max: 0.6 },
    default: 0.3,
  },
} as const satisfies Params;

/**
 * Preload that a tightening torque gives a bolt, and its ends with the scatter of a torque wrench.
 *
 * Errors: a size not above zero, torque below zero.
 */
export const boltPreload = defineMethod({
  id,
  gives: 'Preload of a bolt from its tightening torque',
  inputs,
  outputs: {
    preload: { form: 'value', kind: 'force', symbol: 'F', meaning: 'preload' },
    least: { form: 'value', kind: 'force', symbol: 'F_min', meaning: 'least preload' },
    most: { form: 'value', kind: 'force', symbol: 'F_max', meaning: 'greatest preload' },
  },
  results: ['preload', 'least', 'most'],
  steps: [
    { key: 'preload', is: div('torque', mul('factor', 'diameter')), says: 'Most of the torque goes into friction.' },
    { key: 'least', is: mul('preload', sub(num(1), 'scatter')), says: 'What a joint may count on.' },
    { key: 'most', is: mul('preload', add(num(1), 'scatter')), says: 'What the bolt must stand.' },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '9th',
      at: 'equation 8-27, table 8-15; scatter of torque control',
      how: 'memory',
    },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const preload = input.torque / (input.factor * input.diameter);
    return { preload, least: preload * (1 - input.scatter), most: preload * (1 + input.scatter) };
  },
});
