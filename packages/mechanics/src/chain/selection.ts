import { div, mul, pow } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'chain.selection';

const inputs = {
  power: { form: 'value', kind: 'power', symbol: 'P', meaning: 'power to carry', range: ABOVE_ZERO },
  service: {
    form: 'value',
    kind: 'number',
    symbol: 'f_1',
    meaning: 'factor of the engine and what it drives',
    range: { min: 1 },
  },
  teeth: { form: 'integer', symbol: 'z_1', meaning: 'teeth of the smaller sprocket', range: { min: 6, max: 150 } },
  strandFactor: {
    form: 'value',
    kind: 'number',
    symbol: 'K_s',
    meaning: 'factor of the strands: 1, 1.7, 2.5 for one to three',
    range: { min: 1 },
    default: 1,
  },
} as const satisfies Params;

/**
 * Power to look up in a chart of chains with 19 teeth: the power carried, made worse by a rough engine and by few teeth.
 *
 * Errors: power not above zero, factors below 1, fewer than 6 teeth.
 */
export const chainSelection = defineMethod({
  id,
  gives: 'Power by which a chain is chosen from a chart for 19 teeth',
  inputs,
  outputs: {
    selectionPower: { form: 'value', kind: 'power', symbol: 'P_c', meaning: 'power to look up' },
    toothFactor: { form: 'value', kind: 'number', symbol: 'f_2', meaning: 'factor of the teeth' },
  },
  results: ['selectionPower', 'toothFactor'],
  steps: [
    { key: 'toothFactor', is: pow(div(19, 'teeth'), 1.08), says: 'Charts stand on 19 teeth.' },
    {
      key: 'selectionPower',
      is: div(mul('power', 'service', 'toothFactor'), 'strandFactor'),
      says: 'Factors on the power that is carried.',
    },
  ],
  sources: [
    { title: 'The Tribology Handbook', at: 'section B2, factors f1 and f2', how: 'read' },
    { title: 'ISO 10823:2004', at: 'P_c = P f_1 f_2, exponent of f_2', how: 'memory' },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const toothFactor = (19 / input.teeth) ** 1.08;
    return { selectionPower: (input.power * input.service * toothFactor) / input.strandFactor, toothFactor };
  },
});
