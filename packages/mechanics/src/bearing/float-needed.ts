import { add, mul } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'bearing.floatNeeded';

const inputs = {
  spacing: {
    form: 'value',
    kind: 'length',
    symbol: 'l',
    meaning: 'length between the two bearings',
    range: ABOVE_ZERO,
  },
  expansion: {
    form: 'value',
    kind: 'number',
    symbol: 'α',
    meaning: 'growth per degree of the faster of the two',
    range: { min: 0, max: 1e-4 },
  },
  warmer: {
    form: 'value',
    kind: 'number',
    symbol: 'ΔT',
    meaning: 'degrees that one may be warmer than the other',
    range: { min: 0, max: 500 },
  },
  stack: {
    form: 'value',
    kind: 'length',
    symbol: 's',
    meaning: 'tolerances of shaft, plates and rings in all',
    range: { min: 0 },
  },
} as const satisfies Params;

/**
 * Way along the shaft that the free bearing needs: what the shaft grows against its frame, and what the parts may be off.
 *
 * Errors: a length not above zero, the rest below zero.
 */
export const floatNeeded = defineMethod({
  id,
  gives: 'Way along the shaft that the free one of two bearings needs',
  inputs,
  outputs: {
    float: { form: 'value', kind: 'length', symbol: 'f', meaning: 'way that it needs' },
    growth: { form: 'value', kind: 'length', symbol: 'Δl', meaning: 'growth of the shaft against its frame' },
  },
  results: ['float', 'growth'],
  steps: [
    { key: 'growth', is: mul('expansion', 'spacing', 'warmer'), says: 'Length, growth per degree, and degrees.' },
    { key: 'float', is: add('growth', 'stack'), says: 'And what the parts may be off.' },
  ],
  sources: [{ title: 'Linear thermal expansion', how: 'common practice' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const growth = input.expansion * input.spacing * input.warmer;
    return { float: growth + input.stack, growth };
  },
});
