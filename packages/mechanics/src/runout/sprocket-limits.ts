import { add, fn, mul } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'runout.sprocketLimits';

const inputs = {
  rootDiameter: {
    form: 'value',
    kind: 'length',
    symbol: 'd_f',
    meaning: 'root diameter of the sprocket',
    range: ABOVE_ZERO,
  },
  made: {
    form: 'choice',
    symbol: 'w',
    meaning: 'how the sprocket is made',
    choices: ['turned', 'welded'],
    default: 'turned',
  },
} as const satisfies Params;

/**
 * Greatest run-out of a sprocket between bore and teeth.
 *
 * Errors: root diameter not above zero.
 */
export const sprocketLimits = defineMethod({
  id,
  gives: 'Greatest radial and axial TIR of a sprocket',
  inputs,
  outputs: {
    radial: { form: 'value', kind: 'length', symbol: 'T_r', meaning: 'greatest radial TIR, bore to tooth bottoms' },
    axial: { form: 'value', kind: 'length', symbol: 'T_a', meaning: 'greatest axial TIR beside the teeth' },
    floor: {
      form: 'value',
      kind: 'length',
      symbol: 'T_0',
      meaning: 'axial TIR that is always allowed, by how it is made',
    },
    millimetre: { form: 'value', kind: 'length', symbol: 'mm', meaning: 'one millimetre, the unit of the limits' },
  },
  results: ['radial', 'axial'],
  steps: [
    {
      key: 'radial',
      is: fn(
        'min',
        mul(0.76, 'millimetre'),
        fn('max', mul(0.15, 'millimetre'), add(mul(0.0008, 'rootDiameter'), mul(0.08, 'millimetre'))),
      ),
      says: '0.0008 of the root diameter and 0.08 mm; at least 0.15 mm, at most 0.76 mm.',
    },
    {
      key: 'axial',
      is: fn(
        'min',
        mul(1.14, 'millimetre'),
        fn('max', 'floor', add(mul(0.0009, 'rootDiameter'), mul(0.08, 'millimetre'))),
      ),
      says: '0.0009 of the root diameter and 0.08 mm, at most 1.14 mm; a welded sprocket may have 0.25 mm.',
    },
  ],
  sources: [{ title: 'ISO 606', edition: '2015', at: 'clauses 5.7 and 5.8', how: 'memory' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const floor = input.made === 'welded' ? 0.25e-3 : 0;
    return {
      radial: Math.min(0.76e-3, Math.max(0.15e-3, 0.0008 * input.rootDiameter + 0.08e-3)),
      axial: Math.min(1.14e-3, Math.max(floor, 0.0009 * input.rootDiameter + 0.08e-3)),
      floor,
      millimetre: 1e-3,
    };
  },
});
