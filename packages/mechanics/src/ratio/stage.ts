import { div } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';

const id = 'ratio.stage';

const inputs = {
  teethDriver: { form: 'integer', symbol: 'z_1', meaning: 'teeth of the driver', range: { min: 1 } },
  teethDriven: { form: 'integer', symbol: 'z_2', meaning: 'teeth of the driven wheel', range: { min: 1 } },
} as const satisfies Params;

/**
 * Ratio of one stage of toothed wheels: input speed over output speed.
 *
 * Errors: teeth that are no whole number of at least 1.
 */
export const ratioStage = defineMethod({
  id,
  gives: 'Ratio of a chain, belt or gear stage from its teeth',
  inputs,
  outputs: {
    ratio: { form: 'value', kind: 'ratio', symbol: 'i', meaning: 'input speed over output speed; above 1 it reduces' },
  },
  results: ['ratio'],
  steps: [
    { key: 'ratio', is: div('teethDriven', 'teethDriver'), says: 'As many teeth pass on one wheel as on the other.' },
  ],
  sources: [{ title: 'Theory of Machines (Khurmi, Gupta)', at: 'chapter 13, train value of a pair', how: 'read' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    return { ratio: input.teethDriven / input.teethDriver };
  },
});
