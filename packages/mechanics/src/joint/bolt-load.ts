import { add, div, mul, num, sub } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'joint.boltLoad';

const inputs = {
  preload: { form: 'value', kind: 'force', symbol: 'F_i', meaning: 'preload', range: { min: 0 } },
  load: { form: 'value', kind: 'force', symbol: 'P', meaning: 'pull on the joint for this bolt', range: { min: 0 } },
  boltStiffness: {
    form: 'value',
    kind: 'stiffness',
    symbol: 'k_b',
    meaning: 'stiffness of the bolt',
    range: ABOVE_ZERO,
  },
  partStiffness: {
    form: 'value',
    kind: 'stiffness',
    symbol: 'k_m',
    meaning: 'stiffness of what it clamps',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

/**
 * Force in a preloaded bolt under a pull, what is left of the clamping, and the pull at which the joint gapes.
 *
 * Errors: a stiffness not above zero, a force below zero.
 */
export const boltLoad = defineMethod({
  id,
  gives: 'Force in a preloaded bolt under a pull, and the pull at which it gapes',
  inputs,
  outputs: {
    bolt: { form: 'value', kind: 'force', symbol: 'F_b', meaning: 'force in the bolt' },
    clamp: { form: 'value', kind: 'force', symbol: 'F_m', meaning: 'clamping that is left; below zero it gapes' },
    gapes: { form: 'value', kind: 'force', symbol: 'P_0', meaning: 'pull at which it gapes' },
    share: { form: 'value', kind: 'fraction', symbol: 'C', meaning: 'part of the pull that the bolt feels' },
  },
  results: ['bolt', 'clamp', 'gapes'],
  steps: [
    {
      key: 'share',
      is: div('boltStiffness', add('boltStiffness', 'partStiffness')),
      says: 'Two springs side by side.',
    },
    { key: 'gapes', is: div('preload', sub(num(1), 'share')), says: 'All clamping used up.' },
    { key: 'clamp', is: sub('preload', mul(sub(num(1), 'share'), 'load')), says: 'The rest unloads the parts.' },
    { key: 'bolt', is: add('preload', mul('share', 'load')), says: 'Preload and its part.' },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '9th',
      at: 'equations 8-24, 8-25, 8-30',
      how: 'memory',
    },
  ],
  holds: ['Until it gapes.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { preload, load, boltStiffness, partStiffness } = input;
    const share = boltStiffness / (boltStiffness + partStiffness);
    return {
      bolt: preload + share * load,
      clamp: preload - (1 - share) * load,
      gapes: preload / (1 - share),
      share,
    };
  },
});
