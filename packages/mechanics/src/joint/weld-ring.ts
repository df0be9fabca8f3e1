import { add, div, fn, mul, num, PI, pow } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'joint.weldRing';

const inputs = {
  torque: { form: 'value', kind: 'torque', symbol: 'T', meaning: 'torque through the weld', range: { min: 0 } },
  bending: { form: 'value', kind: 'torque', symbol: 'M', meaning: 'bending moment', range: { min: 0 }, default: 0 },
  shear: { form: 'value', kind: 'force', symbol: 'V', meaning: 'force across', range: { min: 0 }, default: 0 },
  diameter: { form: 'value', kind: 'length', symbol: 'd', meaning: 'diameter of the weld circle', range: ABOVE_ZERO },
  leg: { form: 'value', kind: 'length', symbol: 'h', meaning: 'leg of the fillet', range: ABOVE_ZERO },
  welds: {
    form: 'integer',
    symbol: 'n',
    meaning: 'welds that share: 2 when both faces of the hub are welded',
    range: { min: 1, max: 2 },
    default: 1,
  },
} as const satisfies Params;

const THROAT = Math.SQRT1_2;

/**
 * Stress in the throat of a fillet weld all round a shaft under torque, bending and a force across, the force taken where torque points the same way.
 *
 * Errors: a size not above zero, a load below zero.
 */
export const weldRing = defineMethod({
  id,
  gives: 'Stress in a weld all round a shaft: torque, bending, force',
  inputs,
  outputs: {
    stress: { form: 'value', kind: 'pressure', symbol: 'τ', meaning: 'stress in the throat' },
    byTorque: { form: 'value', kind: 'pressure', symbol: 'τ_T', meaning: 'by torque' },
    byBending: { form: 'value', kind: 'pressure', symbol: 'τ_M', meaning: 'by bending' },
    byShear: { form: 'value', kind: 'pressure', symbol: 'τ_V', meaning: 'by the force, mean' },
    throat: { form: 'value', kind: 'length', symbol: 't', meaning: 'throat, all welds' },
  },
  results: ['stress'],
  steps: [
    { key: 'throat', is: mul(num(THROAT, '√½'), 'leg', 'welds'), says: 'Least thickness of an even fillet.' },
    { key: 'byTorque', is: div(mul(num(2), 'torque'), mul(PI, pow('diameter', 2), 'throat')), says: 'Weld as a ring.' },
    {
      key: 'byBending',
      is: div(mul(num(4), 'bending'), mul(PI, pow('diameter', 2), 'throat')),
      says: 'Weld as a ring.',
    },
    { key: 'byShear', is: div('shear', mul(PI, 'diameter', 'throat')), says: 'Over the whole ring.' },
    {
      key: 'stress',
      is: fn('sqrt', add(pow(add('byTorque', 'byShear'), 2), pow('byBending', 2))),
      says: 'As arrows.',
    },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '9th',
      at: 'tables 9-1 and 9-2, weld as a circle: J_u = 2 π r³, I_u = π r³',
      how: 'read',
    },
  ],
  holds: ['The weld is sound and goes all round.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { torque, bending, shear, diameter, leg, welds } = input;
    const throat = THROAT * leg * welds;
    const byTorque = (2 * torque) / (Math.PI * diameter ** 2 * throat);
    const byBending = (4 * bending) / (Math.PI * diameter ** 2 * throat);
    const byShear = shear / (Math.PI * diameter * throat);
    return { stress: Math.sqrt((byTorque + byShear) ** 2 + byBending ** 2), byTorque, byBending, byShear, throat };
  },
});
