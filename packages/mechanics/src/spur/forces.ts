import { div, fn, mul } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'spur.forces';

const inputs = {
  torque: { form: 'value', kind: 'torque', symbol: 'T', meaning: 'torque on the gear', range: { min: 0 } },
  pitchDiameter: {
    form: 'value',
    kind: 'length',
    symbol: 'd',
    meaning: 'pitch diameter of the gear',
    range: ABOVE_ZERO,
  },
  pressureAngle: {
    form: 'value',
    kind: 'angle',
    symbol: 'α',
    meaning: 'pressure angle',
    range: { min: 0, max: Math.PI / 4 },
    default: Math.PI / 9,
  },
} as const satisfies Params;

/**
 * Tooth forces of a straight spur gear.
 *
 * Errors: torque below zero, pitch diameter not above zero, pressure angle outside 0..45 degrees.
 */
export const spurForces = defineMethod({
  id,
  gives: 'Tangential, radial and whole tooth force of a spur gear',
  inputs,
  outputs: {
    tangential: { form: 'value', kind: 'force', symbol: 'W_t', meaning: 'tangential tooth force' },
    radial: { form: 'value', kind: 'force', symbol: 'W_r', meaning: 'radial tooth force, toward the own axis' },
    whole: { form: 'value', kind: 'force', symbol: 'W', meaning: 'whole tooth force' },
  },
  results: ['tangential', 'radial', 'whole'],
  steps: [
    { key: 'tangential', is: div(mul(2, 'torque'), 'pitchDiameter'), says: 'The torque acts at the pitch radius.' },
    { key: 'radial', is: mul('tangential', fn('tan', 'pressureAngle')), says: 'The flanks wedge the gears apart.' },
    {
      key: 'whole',
      is: div('tangential', fn('cos', 'pressureAngle')),
      says: 'Both together, along the line of action.',
    },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '8th',
      at: 'section 13-14; Problem 13-31',
      how: 'read',
    },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const tangential = (2 * input.torque) / input.pitchDiameter;
    return {
      tangential,
      radial: tangential * Math.tan(input.pressureAngle),
      whole: tangential / Math.cos(input.pressureAngle),
    };
  },
});
