import { sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';

const id = 'fit.clearance';

const limit = (symbol: string, meaning: string) => ({ form: 'value', kind: 'length', symbol, meaning }) as const;

const inputs = {
  holeUpper: limit('E_S', 'upper limit of the hole, from the nominal size'),
  holeLower: limit('E_I', 'lower limit of the hole'),
  shaftUpper: limit('e_s', 'upper limit of the shaft, from the same nominal size'),
  shaftLower: limit('e_i', 'lower limit of the shaft'),
} as const satisfies Params;

/**
 * Greatest and least play of a fit; below zero it is tight by that much.
 *
 * Errors: an upper limit below its lower limit.
 */
export const fitClearance = defineMethod({
  id,
  gives: 'Greatest and least play of a shaft in a hole; below zero it is tight',
  inputs,
  outputs: {
    greatest: { form: 'value', kind: 'length', symbol: 's_max', meaning: 'greatest play' },
    least: { form: 'value', kind: 'length', symbol: 's_min', meaning: 'least play' },
  },
  results: ['greatest', 'least'],
  steps: [
    { key: 'greatest', is: sub('holeUpper', 'shaftLower'), says: 'Largest hole and smallest shaft.' },
    { key: 'least', is: sub('holeLower', 'shaftUpper'), says: 'Smallest hole and largest shaft.' },
  ],
  sources: [{ title: 'ISO 286-1', edition: '2010', at: 'clause 3.3', how: 'memory' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { holeUpper, holeLower, shaftUpper, shaftLower } = input;
    if (holeUpper < holeLower)
      throw new MethodError(id, 'holeUpper', 'The upper limit of the hole lies below its lower limit; exchange them.');
    if (shaftUpper < shaftLower)
      throw new MethodError(
        id,
        'shaftUpper',
        'The upper limit of the shaft lies below its lower limit; exchange them.',
      );
    return { greatest: holeUpper - shaftLower, least: holeLower - shaftUpper };
  },
});
