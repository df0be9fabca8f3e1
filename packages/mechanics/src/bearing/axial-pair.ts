import { add, branch, choose, div, mul, num, sub, when } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'bearing.axialPair';

const inputs = {
  radial1: {
    form: 'value',
    kind: 'force',
    symbol: 'F_r1',
    meaning: 'radial load on the first bearing',
    range: { min: 0 },
  },
  radial2: {
    form: 'value',
    kind: 'force',
    symbol: 'F_r2',
    meaning: 'radial load on the second bearing',
    range: { min: 0 },
  },
  y1: { form: 'value', kind: 'number', symbol: 'Y_1', meaning: 'axial factor of the first bearing', range: ABOVE_ZERO },
  y2: {
    form: 'value',
    kind: 'number',
    symbol: 'Y_2',
    meaning: 'axial factor of the second bearing',
    range: ABOVE_ZERO,
  },
  thrust: {
    form: 'value',
    kind: 'force',
    symbol: 'K_a',
    meaning: 'axial force on the shaft toward the first bearing; below zero toward the second',
  },
} as const satisfies Params;

/**
 * Axial loads of two tapered or angular contact bearings set against each other without preload: each also pushes the other.
 *
 * Errors: loads below zero, factors not above zero.
 */
export const axialPair = defineMethod({
  id,
  gives: 'Axial load of each of two tapered or angular contact bearings set against each other',
  inputs,
  outputs: {
    axial1: { form: 'value', kind: 'force', symbol: 'F_a1', meaning: 'axial load on the first bearing' },
    axial2: { form: 'value', kind: 'force', symbol: 'F_a2', meaning: 'axial load on the second bearing' },
    own1: { form: 'value', kind: 'force', symbol: 'S_1', meaning: 'axial push that the first makes itself' },
    own2: { form: 'value', kind: 'force', symbol: 'S_2', meaning: 'axial push that the second makes itself' },
  },
  results: ['axial1', 'axial2'],
  steps: [
    { key: 'own1', is: div(mul(num(0.5), 'radial1'), 'y1'), says: 'Its slope turns radial load into a push.' },
    { key: 'own2', is: div(mul(num(0.5), 'radial2'), 'y2'), says: 'The same at the other.' },
    {
      key: 'axial1',
      is: choose([branch(when('own1', '<=', add('own2', 'thrust')), add('own2', 'thrust'))], 'own1'),
      says: 'The first takes what the second and the thrust push, if that is more than its own.',
    },
    {
      key: 'axial2',
      is: choose([branch(when('own1', '<=', add('own2', 'thrust')), 'own2')], sub('own1', 'thrust')),
      says: 'Else the second takes the first’s push less the thrust.',
    },
  ],
  sources: [{ title: 'Ball and Roller Bearings, a maker’s catalogue', at: 'section 4.3, table 4.7', how: 'memory' }],
  holds: ['No preload and no play.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const own1 = (0.5 * input.radial1) / input.y1;
    const own2 = (0.5 * input.radial2) / input.y2;
    const first = own1 <= own2 + input.thrust;
    return {
      axial1: first ? own2 + input.thrust : own1,
      axial2: first ? own2 : own1 - input.thrust,
      own1,
      own2,
    };
  },
});
