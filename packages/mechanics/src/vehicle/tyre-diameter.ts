import { add, mul } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'vehicle.tyreDiameter';

const inputs = {
  sectionWidth: { form: 'value', kind: 'length', symbol: 'W', meaning: 'nominal section width', range: ABOVE_ZERO },
  aspect: {
    form: 'value',
    kind: 'fraction',
    symbol: 'A',
    meaning: 'aspect ratio, section height over section width',
    range: ABOVE_ZERO,
  },
  rimDiameter: { form: 'value', kind: 'length', symbol: 'd', meaning: 'nominal rim diameter', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Outside diameter that a tyre's size stands for.
 *
 * Errors: a width, aspect ratio or rim diameter not above zero.
 */
export const tyreDiameter = defineMethod({
  id,
  gives: 'Outside diameter of a new tyre from its size',
  inputs,
  outputs: {
    outsideDiameter: { form: 'value', kind: 'length', symbol: 'D', meaning: 'nominal outside diameter' },
    sectionHeight: { form: 'value', kind: 'length', symbol: 'H', meaning: 'nominal section height' },
  },
  results: ['outsideDiameter', 'sectionHeight'],
  steps: [
    { key: 'sectionHeight', is: mul('aspect', 'sectionWidth'), says: 'Aspect ratio times width.' },
    {
      key: 'outsideDiameter',
      is: add('rimDiameter', mul(2, 'sectionHeight')),
      says: 'The rim, and a section above and below it.',
    },
  ],
  sources: [
    { title: 'A tyre maker’s page on motorcycle sidewall markings', at: 'D = 2 W A + 25.4 d', how: 'read' },
    { title: 'UN Regulations No. 30, No. 75, No. 106', at: 'definitions of size', how: 'memory' },
  ],
  holds: ['Nominal size. New tyres measure up to 3 % of the section height less and up to 7 % more.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const sectionHeight = input.aspect * input.sectionWidth;
    return { outsideDiameter: input.rimDiameter + 2 * sectionHeight, sectionHeight };
  },
});
