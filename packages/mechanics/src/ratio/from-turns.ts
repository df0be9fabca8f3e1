import { div, mul } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'ratio.fromTurns';

const inputs = {
  inputTurns: {
    form: 'value',
    kind: 'number',
    symbol: 'N_1',
    meaning: 'turns counted at the input side, with parts of a turn',
    range: ABOVE_ZERO,
  },
  outputTurns: {
    form: 'value',
    kind: 'number',
    symbol: 'N_2',
    meaning: 'turns of the output side in that time, mark to mark',
    range: ABOVE_ZERO,
  },
  known: {
    form: 'value',
    kind: 'ratio',
    symbol: 'i_k',
    meaning: 'ratio between them that is known already; 1 for none',
    range: ABOVE_ZERO,
    default: 1,
  },
  reading: {
    form: 'value',
    kind: 'number',
    symbol: 'δN',
    meaning: 'how far the turns counted at the input side may be off, either way',
    range: { min: 0 },
    default: 0.1,
  },
} as const satisfies Params;

/**
 * Ratio of a closed gearbox, or of one pair in it, from counting turns by hand.
 *
 * Errors: turns or a known ratio not above zero.
 */
export const ratioFromTurns = defineMethod({
  id,
  gives: 'Ratio from counting turns at both ends of a gearbox',
  inputs,
  outputs: {
    ratio: { form: 'value', kind: 'ratio', symbol: 'i', meaning: 'ratio looked for, input speed over output speed' },
    spread: { form: 'value', kind: 'ratio', symbol: 'δi', meaning: 'how far the reading may put it off, either way' },
    overall: { form: 'value', kind: 'ratio', symbol: 'i_t', meaning: 'ratio from the one end to the other' },
  },
  results: ['ratio', 'spread'],
  steps: [
    { key: 'overall', is: div('inputTurns', 'outputTurns'), says: 'Turns in over turns out, in the same time.' },
    { key: 'ratio', is: div('overall', 'known'), says: 'What is known already is taken out.' },
    {
      key: 'spread',
      is: div('reading', mul('outputTurns', 'known')),
      says: 'More turns share the error of the reading.',
    },
  ],
  sources: [{ title: 'Theory of Machines (Khurmi, Gupta)', at: 'chapter 13, train value', how: 'read' }],
  holds: ['Turned one way only, so that play is taken up the same at the first and the last mark; no slip between.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { inputTurns, outputTurns, known, reading } = input;
    const overall = inputTurns / outputTurns;
    return { ratio: overall / known, spread: reading / (outputTurns * known), overall };
  },
});
