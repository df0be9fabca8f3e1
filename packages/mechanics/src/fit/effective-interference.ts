import { add, mul, sub } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';

const id = 'fit.effectiveInterference';

const roughness = (symbol: string, meaning: string) =>
  ({ form: 'value', kind: 'length', symbol, meaning, range: { min: 0, max: 1e-3 } }) as const;

const inputs = {
  interference: {
    form: 'value',
    kind: 'length',
    symbol: 'δ',
    meaning: 'interference as measured: shaft less hole, on the diameter',
  },
  shaftRoughness: roughness('R_zs', 'roughness Rz of the shaft'),
  holeRoughness: roughness('R_zh', 'roughness Rz of the hole'),
  factor: {
    form: 'value',
    kind: 'number',
    symbol: 'k',
    meaning: 'part of both roughnesses that is pressed flat',
    range: { min: 0, max: 1 },
    default: 0.8,
  },
} as const satisfies Params;

/**
 * Interference that is left when the peaks of both surfaces are pressed flat. Below zero the joint is loose.
 *
 * Errors: a roughness outside 0 to 1 mm, a factor outside 0 to 1.
 */
export const effectiveInterference = defineMethod({
  id,
  gives: 'Interference that is left when the peaks of both surfaces are pressed flat',
  inputs,
  outputs: {
    effective: { form: 'value', kind: 'length', symbol: 'δ_w', meaning: 'interference that presses' },
    smoothing: { form: 'value', kind: 'length', symbol: 'G', meaning: 'what the peaks lose' },
  },
  results: ['effective', 'smoothing'],
  steps: [
    {
      key: 'smoothing',
      is: mul('factor', add('shaftRoughness', 'holeRoughness')),
      says: 'The peaks are pressed flat.',
    },
    { key: 'effective', is: sub('interference', 'smoothing'), says: 'The rest presses.' },
  ],
  sources: [{ title: 'DIN 7190', edition: '2001', at: 'smoothing, 0.8 of the sum of both Rz', how: 'memory' }],
  holds: ['Parts joined hot or cold lose less than parts pressed together; the same is taken off, on the safe side.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const smoothing = input.factor * (input.shaftRoughness + input.holeRoughness);
    return { effective: input.interference - smoothing, smoothing };
  },
});
