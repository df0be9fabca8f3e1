import { branch, choose, div, mul, num, pow, when } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';

const id = 'shaft.pressFit';

const inputs = {
  tensile: {
    form: 'value',
    kind: 'pressure',
    symbol: 'S_ut',
    meaning: 'tensile strength',
    range: { min: 200e6, max: 1800e6 },
  },
  load: { form: 'choice', symbol: 'w', meaning: 'what loads it', choices: ['bending', 'torsion'], default: 'bending' },
} as const satisfies Params;

const REFERENCE = 1000e6;
const FIGURE = 2.7;
const EXPONENT = 0.43;
const TORSION = 0.65;

/**
 * Fatigue factor of a shaft at the edge of a part pressed on it.
 *
 * Errors: a strength outside 200 to 1800 MPa.
 */
export const shaftPressFit = defineMethod({
  id,
  gives: 'Fatigue factor of a shaft at the edge of a part pressed on it',
  inputs,
  outputs: {
    factor: { form: 'value', kind: 'number', symbol: 'β', meaning: 'fatigue factor' },
    inBending: { form: 'value', kind: 'number', symbol: 'β_b', meaning: 'fatigue factor in bending' },
    reference: { form: 'value', kind: 'pressure', symbol: 'S_0', meaning: '1000 MPa, the unit of the fit' },
    torsion: { form: 'value', kind: 'number', symbol: 'k', meaning: '1 for torsion, 0 for bending' },
  },
  results: ['factor'],
  steps: [
    {
      key: 'inBending',
      is: mul(FIGURE, pow(div('tensile', 'reference'), EXPONENT)),
      says: 'The edge rubs and presses; strong steel feels it more.',
    },
    {
      key: 'factor',
      is: choose([branch(when('torsion', '=', num(1)), mul(TORSION, 'inBending'))], mul(1, 'inBending')),
      says: 'Torsion feels less of it.',
    },
  ],
  sources: [{ title: 'DIN 743-2', edition: '2000', at: 'table 1, at 40 mm', how: 'memory' }],
  holds: ['It is the fatigue factor itself: no notch sensitivity on top.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const inBending = FIGURE * (input.tensile / REFERENCE) ** EXPONENT;
    const torsion = input.load === 'torsion' ? 1 : 0;
    return { factor: torsion === 1 ? TORSION * inBending : 1 * inBending, inBending, reference: REFERENCE, torsion };
  },
});
