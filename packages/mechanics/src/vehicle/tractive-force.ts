import { div, mul, PI } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'vehicle.tractiveForce';

const inputs = {
  torque: { form: 'value', kind: 'torque', symbol: 'T', meaning: 'engine torque', range: { min: 0 } },
  overallRatio: {
    form: 'value',
    kind: 'ratio',
    symbol: 'i',
    meaning: 'engine speed over wheel speed',
    range: ABOVE_ZERO,
  },
  efficiency: {
    form: 'value',
    kind: 'fraction',
    symbol: 'η',
    meaning: 'efficiency from engine to wheel',
    range: { min: 0, max: 1 },
  },
  rollOut: {
    form: 'value',
    kind: 'length',
    symbol: 'U',
    meaning: 'roll-out of one turn of the wheel',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

/**
 * Pull at the ground of a driven wheel that neither slips nor accelerates.
 *
 * Errors: torque below zero, ratio or roll-out not above zero, efficiency outside 0..1.
 */
export const tractiveForce = defineMethod({
  id,
  gives: 'Pull at the ground from engine torque',
  inputs,
  outputs: {
    force: { form: 'value', kind: 'force', symbol: 'F', meaning: 'pull at the ground' },
    wheelTorque: { form: 'value', kind: 'torque', symbol: 'T_w', meaning: 'torque on the wheel' },
    rollingRadius: { form: 'value', kind: 'length', symbol: 'r', meaning: 'rolling radius' },
  },
  results: ['force', 'wheelTorque', 'rollingRadius'],
  steps: [
    {
      key: 'wheelTorque',
      is: mul('torque', 'overallRatio', 'efficiency'),
      says: 'Multiplied by the ratio, less the losses.',
    },
    { key: 'rollingRadius', is: div('rollOut', mul(2, PI)), says: 'Radius of the circle that rolls as far.' },
    { key: 'force', is: div('wheelTorque', 'rollingRadius'), says: 'Torque over radius.' },
  ],
  sources: [
    { title: 'Fundamentals of Vehicle Dynamics (T. D. Gillespie)', at: 'chapter 2, example problem 1', how: 'memory' },
  ],
  holds: ['Steady speed: the inertia of the drive takes no torque. The tyre’s grip may allow less.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const wheelTorque = input.torque * input.overallRatio * input.efficiency;
    const rollingRadius = input.rollOut / (2 * Math.PI);
    return { force: wheelTorque / rollingRadius, wheelTorque, rollingRadius };
  },
});
