import { div, mul, pow } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'runout.warmBow';

const inputs = {
  difference: {
    form: 'value',
    kind: 'temperatureDifference',
    symbol: 'ΔT',
    meaning: 'how much warmer one side is than the other',
    range: { min: 0 },
  },
  expansion: {
    form: 'value',
    kind: 'number',
    symbol: 'α',
    meaning: 'growth per kelvin as a plain number: 12e-6 for steel',
    range: ABOVE_ZERO,
  },
  length: { form: 'value', kind: 'length', symbol: 'L', meaning: 'length between the seats', range: ABOVE_ZERO },
  diameter: { form: 'value', kind: 'length', symbol: 'd', meaning: 'diameter or depth', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Run-out that a bar warmer on one side shows, and that goes away when it has cooled.
 *
 * Errors: a negative difference, another input not above zero.
 */
export const warmBow = defineMethod({
  id,
  gives: 'TIR that is not there: bow of a bar that is warmer on one side',
  inputs,
  outputs: {
    offset: { form: 'value', kind: 'length', symbol: 'f', meaning: 'bow in the middle, towards the warm side' },
    tir: { form: 'value', kind: 'length', symbol: 'T', meaning: 'TIR that it shows there' },
    oneKelvin: {
      form: 'value',
      kind: 'temperatureDifference',
      symbol: 'K_1',
      meaning: 'one kelvin, that the growth is for',
    },
  },
  results: ['tir', 'offset'],
  steps: [
    {
      key: 'offset',
      is: div(mul('expansion', div('difference', 'oneKelvin'), pow('length', 2)), mul(8, 'diameter')),
      says: 'The warm side is longer; the bar lies on a circle of that curvature.',
    },
    { key: 'tir', is: mul(2, 'offset'), says: 'Twice the offset.' },
  ],
  sources: [{ title: 'Thermal curvature of a bar, even gradient across it', how: 'derived' }],
  holds: ['The same difference all along the bar: a local warm place bends less.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const offset = (input.expansion * input.difference * input.length ** 2) / (8 * input.diameter);
    return { offset, tir: 2 * offset, oneKelvin: 1 };
  },
});
