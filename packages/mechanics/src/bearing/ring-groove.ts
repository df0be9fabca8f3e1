import { div, mul, num, PI, pow, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'bearing.ringGroove';

const inputs = {
  larger: {
    form: 'value',
    kind: 'length',
    symbol: 'd_1',
    meaning: 'larger diameter: of the shaft, or of the groove in a bore',
    range: ABOVE_ZERO,
  },
  smaller: {
    form: 'value',
    kind: 'length',
    symbol: 'd_2',
    meaning: 'smaller diameter: of the groove in a shaft, or of the bore',
    range: ABOVE_ZERO,
  },
  yieldStrength: {
    form: 'value',
    kind: 'pressure',
    symbol: 'R_e',
    meaning: 'yield strength of the grooved part',
    range: ABOVE_ZERO,
  },
  factor: {
    form: 'value',
    kind: 'number',
    symbol: 'q',
    meaning: 'factor of the wall behind the groove: 1.2 where it is three grooves deep wide',
    range: { min: 1, max: 10 },
    default: 1.2,
  },
} as const satisfies Params;

/**
 * Push that the groove of a retaining ring bears before its wall gives way. The ring itself bears more while what pushes it has a sharp corner;
 * a rounded one, as of a bearing, tips it: a supporting washer belongs between where the push comes near.
 *
 * Errors: lengths or strength not above zero, a groove that is no groove.
 */
export const ringGroove = defineMethod({
  id,
  gives: 'Push that the groove of a retaining ring bears',
  inputs,
  outputs: {
    force: { form: 'value', kind: 'force', symbol: 'F_N', meaning: 'push that the groove bears' },
    area: { form: 'value', kind: 'area', symbol: 'A_N', meaning: 'wall of the groove' },
  },
  results: ['force'],
  steps: [
    {
      key: 'area',
      is: mul(div(PI, num(4)), sub(pow('larger', 2), pow('smaller', 2))),
      says: 'The ring of metal that the retaining ring leans on.',
    },
    { key: 'force', is: div(mul('yieldStrength', 'area'), 'factor'), says: 'At its yield strength.' },
  ],
  sources: [{ title: 'DIN 471 and DIN 472', at: 'load capacity of the groove', how: 'memory' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { larger, smaller, yieldStrength, factor } = input;
    if (!(larger > smaller))
      throw new MethodError(id, 'larger', 'The larger diameter is not above the smaller one: there is no groove.');
    const area = (Math.PI / 4) * (larger ** 2 - smaller ** 2);
    return { force: (yieldStrength * area) / factor, area };
  },
});
