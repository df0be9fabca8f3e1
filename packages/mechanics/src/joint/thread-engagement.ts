import { div, mul, num, PI } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'joint.threadEngagement';

const inputs = {
  diameter: { form: 'value', kind: 'length', symbol: 'd', meaning: 'thread diameter', range: ABOVE_ZERO },
  area: { form: 'value', kind: 'area', symbol: 'A_t', meaning: 'stress area of the thread', range: ABOVE_ZERO },
  boltTensile: {
    form: 'value',
    kind: 'pressure',
    symbol: 'R_b',
    meaning: 'tensile strength of the bolt',
    range: ABOVE_ZERO,
  },
  partTensile: {
    form: 'value',
    kind: 'pressure',
    symbol: 'R_n',
    meaning: 'tensile strength of the part with the thread',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

/** Part of the circumference that the thread of the part shears over: 1/2 + tan 30° (d − d₂)/p with d − d₂ = 0.6495 p. */
const SHEARED = 0.875;
const SHEAR = 0.577;

/**
 * Least length of thread in a part for the bolt to break before the thread strips.
 *
 * Errors: a size or strength not above zero.
 */
export const threadEngagement = defineMethod({
  id,
  gives: 'Length of thread for a bolt to break before its thread strips',
  inputs,
  outputs: {
    length: { form: 'value', kind: 'length', symbol: 'l_e', meaning: 'least length of thread' },
    perLength: { form: 'value', kind: 'length', symbol: 'a', meaning: 'sheared area per length of thread' },
  },
  results: ['length'],
  steps: [
    { key: 'perLength', is: mul(num(SHEARED), PI, 'diameter'), says: 'The part shears at the outside of the bolt.' },
    {
      key: 'length',
      is: div(mul('area', 'boltTensile'), mul('perLength', num(SHEAR), 'partTensile')),
      says: 'As strong as the bolt.',
    },
  ],
  sources: [
    {
      title: 'Machinery’s Handbook, Calculating Thread Tensile-Stress Area and Length of Engagement',
      at: 'shear area of internal threads, with basic sizes',
      how: 'memory',
    },
  ],
  holds: ['Basic sizes of a 60 degree thread; worn or oversize threads need more.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const perLength = SHEARED * Math.PI * input.diameter;
    return { length: (input.area * input.boltTensile) / (perLength * SHEAR * input.partTensile), perLength };
  },
});
