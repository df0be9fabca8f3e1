import { div, mul, num, PI, pow, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'joint.threadArea';

const inputs = {
  diameter: { form: 'value', kind: 'length', symbol: 'd', meaning: 'thread diameter', range: ABOVE_ZERO },
  pitch: { form: 'value', kind: 'length', symbol: 'p', meaning: 'pitch', range: ABOVE_ZERO },
} as const satisfies Params;

const STRESS = 0.9382;
const ROOT = 1.2269;

/**
 * Stress area and root diameter of a 60 degree thread.
 *
 * Errors: a size not above zero, a pitch too coarse for the diameter.
 */
export const threadArea = defineMethod({
  id,
  gives: 'Stress area and root diameter of a thread',
  inputs,
  outputs: {
    area: { form: 'value', kind: 'area', symbol: 'A_t', meaning: 'stress area' },
    root: { form: 'value', kind: 'length', symbol: 'd_3', meaning: 'root diameter' },
    rootArea: { form: 'value', kind: 'area', symbol: 'A_r', meaning: 'area of the root' },
  },
  results: ['area', 'root', 'rootArea'],
  steps: [
    {
      key: 'area',
      is: div(mul(PI, pow(sub('diameter', mul(num(STRESS), 'pitch')), 2)), num(4)),
      says: 'Mean of pitch diameter and root.',
    },
    { key: 'root', is: sub('diameter', mul(num(ROOT), 'pitch')), says: 'Root of the bolt.' },
    { key: 'rootArea', is: div(mul(PI, pow('root', 2)), num(4)), says: 'Section at the root.' },
  ],
  sources: [{ title: 'ISO 898-1', at: 'nominal stress area; ISO 724', how: 'read' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { diameter, pitch } = input;
    const root = diameter - ROOT * pitch;
    if (!(root > 0)) throw new MethodError(id, 'pitch', 'The thread is deeper than the bolt is thick.');
    return {
      area: (Math.PI * (diameter - STRESS * pitch) ** 2) / 4,
      root,
      rootArea: (Math.PI * root ** 2) / 4,
    };
  },
});
