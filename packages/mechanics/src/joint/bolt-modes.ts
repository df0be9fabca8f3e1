import { div, mul, num, PI, pow } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'joint.boltModes';

const length = (symbol: string, meaning: string) =>
  ({ form: 'value', kind: 'length', symbol, meaning, range: ABOVE_ZERO }) as const;
const strength = (symbol: string, meaning: string) =>
  ({ form: 'value', kind: 'pressure', symbol, meaning, range: ABOVE_ZERO }) as const;

const inputs = {
  diameter: length('d', 'bolt diameter'),
  sheared: length('d_s', 'diameter that is sheared: the root of the thread where it lies in the joint'),
  thickness: length('t', 'thickness of the plate'),
  edge: length('a', 'from the centre of the hole to the edge, in the direction of the push'),
  bolts: { form: 'integer', symbol: 'n', meaning: 'bolts that share', range: { min: 1, max: 100 }, default: 1 },
  planes: {
    form: 'integer',
    symbol: 'i',
    meaning: 'planes that are sheared on each',
    range: { min: 1, max: 2 },
    default: 1,
  },
  proof: strength('S_p', 'proof strength of the bolt'),
  plateYield: strength('S_y', 'yield strength of the plate'),
} as const satisfies Params;

/** Shear strength over strength in tension, distortion energy. */
const SHEAR = 0.577;

/**
 * Push that a group of equal bolts in holes passes before each way of failing: bolts sheared, bolts crushed, plate crushed, plate torn out to its edge.
 *
 * Errors: a size or strength not above zero.
 */
export const boltModes = defineMethod({
  id,
  gives: 'Push that bolts in holes pass: shear, bearing, tear-out',
  inputs,
  outputs: {
    shear: { form: 'value', kind: 'force', symbol: 'F_s', meaning: 'bolts shear off' },
    boltCrush: { form: 'value', kind: 'force', symbol: 'F_b', meaning: 'bolts are crushed' },
    plateCrush: { form: 'value', kind: 'force', symbol: 'F_c', meaning: 'holes draw long' },
    tearOut: { form: 'value', kind: 'force', symbol: 'F_t', meaning: 'holes tear out to the edge' },
  },
  results: ['shear', 'boltCrush', 'plateCrush', 'tearOut'],
  steps: [
    {
      key: 'shear',
      is: div(mul('bolts', 'planes', num(SHEAR), 'proof', PI, pow('sheared', 2)), num(4)),
      says: 'Section of the bolt.',
    },
    { key: 'boltCrush', is: mul('bolts', 'diameter', 'thickness', 'proof'), says: 'Side of the bolt.' },
    { key: 'plateCrush', is: mul('bolts', 'diameter', 'thickness', 'plateYield'), says: 'Side of the hole.' },
    {
      key: 'tearOut',
      is: mul(num(2), 'bolts', 'edge', 'thickness', num(SHEAR), 'plateYield'),
      says: 'Two planes from the hole to the edge.',
    },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '9th',
      at: 'section 8-12, example 8-6',
      how: 'read',
    },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { diameter, sheared, thickness, edge, bolts, planes, proof, plateYield } = input;
    return {
      shear: (bolts * planes * SHEAR * proof * Math.PI * sheared ** 2) / 4,
      boltCrush: bolts * diameter * thickness * proof,
      plateCrush: bolts * diameter * thickness * plateYield,
      tearOut: 2 * bolts * edge * thickness * SHEAR * plateYield,
    };
  },
});
