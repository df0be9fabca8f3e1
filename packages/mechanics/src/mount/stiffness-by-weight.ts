import { div, fn, mul, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { GRAVITY_INPUT } from '../vehicle/load.ts';

const id = 'mount.stiffnessByWeight';

const inputs = {
  mass: { form: 'value', kind: 'mass', symbol: 'm', meaning: 'mass hung on or set down', range: ABOVE_ZERO },
  before: { form: 'value', kind: 'length', symbol: 'x_1', meaning: 'dial gauge before' },
  after: { form: 'value', kind: 'length', symbol: 'x_2', meaning: 'dial gauge after' },
  elsewhere: {
    form: 'value',
    kind: 'length',
    symbol: 'x_0',
    meaning: 'how far what the mount is bolted to gave way',
    range: { min: 0 },
    default: 0,
  },
  mounts: {
    form: 'integer',
    symbol: 'n',
    meaning: 'equal mounts that share the weight evenly',
    range: { min: 1 },
    default: 1,
  },
  gauge: {
    form: 'value',
    kind: 'length',
    symbol: 'δx',
    meaning: 'how far each reading may be off, either way',
    range: { min: 0 },
    default: 0.00002,
  },
  ...GRAVITY_INPUT,
} as const satisfies Params;

/**
 * Stiffness of a mount in one direction, from a known weight and a dial gauge.
 *
 * Errors: a mass not above zero, no mounts, a reading that does not move further than what the mount is bolted to.
 */
export const mountStiffnessByWeight = defineMethod({
  id,
  gives: 'Stiffness of a mount from a weight and a dial gauge',
  inputs,
  outputs: {
    stiffness: { form: 'value', kind: 'stiffness', symbol: 'k', meaning: 'stiffness of one mount' },
    spread: { form: 'value', kind: 'stiffness', symbol: 'δk', meaning: 'how far the gauge may put it off, either way' },
    deflection: { form: 'value', kind: 'length', symbol: 'x', meaning: 'how far the mount itself gave way' },
  },
  results: ['stiffness', 'spread', 'deflection'],
  steps: [
    {
      key: 'deflection',
      is: sub(fn('abs', sub('after', 'before')), 'elsewhere'),
      says: 'What the gauge moved, without what the frame gave way.',
    },
    {
      key: 'stiffness',
      is: div(mul('mass', 'gravity'), mul('mounts', 'deflection')),
      says: 'Weight over the way that it pushes, shared by the mounts.',
    },
    {
      key: 'spread',
      is: div(mul(2, 'stiffness', 'gauge'), 'deflection'),
      says: 'Two readings, each a little off; a heavier weight makes them matter less.',
    },
  ],
  sources: [
    { title: 'Theory of Machines (Khurmi, Gupta)', at: 'chapter 4, stiffness of a spring from a load', how: 'read' },
  ],
  holds: [
    'Pushed in the direction asked about, near the load that it carries; read at once, because rubber goes on giving way.',
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { mass, before, after, elsewhere, mounts, gauge, gravity } = input;
    const deflection = Math.abs(after - before) - elsewhere;
    if (!(deflection > 0))
      throw new MethodError(
        id,
        'after',
        `Dial gauge after: it moved ${Math.abs(after - before)} m; more than what the mount is bolted to, ${elsewhere} m, is accepted.`,
      );
    const stiffness = (mass * gravity) / (mounts * deflection);
    return { stiffness, spread: (2 * stiffness * gauge) / deflection, deflection };
  },
});
