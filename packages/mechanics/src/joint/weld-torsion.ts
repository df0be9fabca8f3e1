import { div, mul, num, PI, pow } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'joint.weldTorsion';

const inputs = {
  torque: { form: 'value', kind: 'torque', symbol: 'T', meaning: 'torque through the weld', range: { min: 0 } },
  diameter: { form: 'value', kind: 'length', symbol: 'd', meaning: 'diameter of the weld circle', range: ABOVE_ZERO },
  leg: { form: 'value', kind: 'length', symbol: 'h', meaning: 'leg of the fillet', range: ABOVE_ZERO },
} as const satisfies Params;

const THROAT = Math.SQRT1_2;

/**
 * Shear in the throat of one fillet weld all round a shaft.
 *
 * Errors: a size not above zero, torque below zero.
 */
export const weldTorsion = defineMethod({
  id,
  gives: 'Shear in the throat of a fillet weld all round a shaft',
  inputs,
  outputs: {
    shear: { form: 'value', kind: 'pressure', symbol: 'τ', meaning: 'shear in the throat' },
    throat: { form: 'value', kind: 'length', symbol: 't', meaning: 'throat' },
    area: { form: 'value', kind: 'volume', symbol: 'W', meaning: 'throat area times radius' },
  },
  results: ['shear'],
  steps: [
    { key: 'throat', is: mul(num(THROAT, '√½'), 'leg'), says: 'Least thickness of an even fillet.' },
    {
      key: 'area',
      is: div(mul(PI, pow('diameter', 2), 'throat'), num(2)),
      says: 'The weld as a ring: circumference times throat times radius.',
    },
    { key: 'shear', is: div('torque', 'area'), says: 'Torque over it.' },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '9th',
      at: 'table 9-1, weld as a circle: J_u = 2 π r³',
      how: 'read',
    },
  ],
  holds: ['Torque alone; the weld is sound and goes all round.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const throat = THROAT * input.leg;
    const area = (Math.PI * input.diameter ** 2 * throat) / 2;
    return { shear: input.torque / area, throat, area };
  },
});
