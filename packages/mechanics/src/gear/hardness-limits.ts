import { add, branch, choose, mul, num, when } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';
import { BEVEL_SOURCE, PSI, SPUR_SOURCE } from './parts.ts';

const id = 'gear.hardnessLimits';

const inputs = {
  hardness: {
    form: 'value',
    kind: 'hardness',
    symbol: 'H_B',
    meaning: 'Brinell hardness of a gear hardened through',
    range: { min: 120, max: 400 },
  },
  pair: { form: 'choice', symbol: 'g', meaning: 'kind of the pair', choices: ['bevel', 'spur'] },
} as const satisfies Params;

const LIMITS = {
  bevel: { bending: [44, 2100], contact: [341, 23620] },
  spur: { bending: [77.3, 12800], contact: [322, 29100] },
} as const;

const tree = (key: 'bending' | 'contact') => {
  const of = (kind: 'bevel' | 'spur') => {
    const [slope, start] = LIMITS[kind][key];
    return mul('psi', add(mul(num(slope), 'hardness'), start));
  };
  return choose([branch(when('spur', '=', 1), of('spur'))], of('bevel'));
};

/**
 * Stress numbers that steel hardened through bears, from its hardness, plain grade. Those of bevel and of spur gears are different scales.
 *
 * Errors: a hardness outside 120 to 400 HB.
 */
export const gearHardnessLimits = defineMethod({
  id,
  gives: 'Stress numbers that a gear of steel hardened through bears',
  inputs,
  outputs: {
    bending: { form: 'value', kind: 'pressure', symbol: 's_at', meaning: 'bending number allowed' },
    contact: { form: 'value', kind: 'pressure', symbol: 's_ac', meaning: 'contact number allowed' },
    spur: { form: 'value', kind: 'number', symbol: 's', meaning: '1 for a spur pair, 0 for a bevel pair' },
    psi: { form: 'value', kind: 'pressure', symbol: 'u_p', meaning: 'one pound-force on a square inch' },
  },
  results: ['bending', 'contact'],
  steps: [
    { key: 'bending', is: tree('bending'), says: 'Grows with hardness.' },
    { key: 'contact', is: tree('contact'), says: 'Grows with hardness.' },
  ],
  sources: [BEVEL_SOURCE, SPUR_SOURCE],
  holds: ['Grade 1, 10 million turns, one of a hundred may break.', 'The formulas were made for 180 to 400 HB.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { bending, contact } = LIMITS[input.pair];
    return {
      bending: PSI * (bending[0] * input.hardness + bending[1]),
      contact: PSI * (contact[0] * input.hardness + contact[1]),
      spur: input.pair === 'spur' ? 1 : 0,
      psi: PSI,
    };
  },
});
