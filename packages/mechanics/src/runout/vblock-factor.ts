import { add, div, fn, mul, PI } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';

const id = 'runout.vblockFactor';

const inputs = {
  angle: {
    form: 'value',
    kind: 'angle',
    symbol: 'θ',
    meaning: 'opening of the V',
    range: { min: (20 * Math.PI) / 180, max: (160 * Math.PI) / 180 },
  },
  lobes: { form: 'integer', symbol: 'n', meaning: 'number of lobes', range: { min: 1, max: 100 } },
} as const satisfies Params;

/**
 * How much of a lobed section's form an indicator opposite a V-block shows.
 *
 * Errors: opening outside 20..160 degrees, lobes not a whole number from 1 to 100.
 */
export const vblockFactor = defineMethod({
  id,
  gives: 'Part of a section’s lobes that shows in a V-block, indicator opposite the V',
  inputs,
  outputs: {
    factor: {
      form: 'value',
      kind: 'number',
      symbol: 'F',
      meaning: 'reading over true form; negative: high shows as low',
    },
  },
  results: ['factor'],
  steps: [
    {
      key: 'factor',
      is: add(1, div(fn('cos', mul('lobes', add(div(PI, 2), div('angle', 2)))), fn('sin', div('angle', 2)))),
      says: 'The indicator sees the lobe itself and the part’s rise in the V.',
    },
  ],
  sources: [
    { title: 'Journal of the Japan Society of Precision Engineering 43 (1977) 1167', how: 'read' },
    { title: 'ISO 4292 (withdrawn), three-point method', how: 'memory' },
  ],
  holds: ['Both sides of the V touch; the lobes are small beside the diameter.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const half = input.angle / 2;
    return { factor: 1 + Math.cos(input.lobes * (Math.PI / 2 + half)) / Math.sin(half) };
  },
});
