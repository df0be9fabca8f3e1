import { add, branch, choose, div, num, sub, when } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';

const id = 'fit.limits';

const inputs = {
  size: {
    form: 'value',
    kind: 'length',
    symbol: 'D',
    meaning: 'nominal size',
    range: { min: 0, max: 0.5, open: true },
  },
  grade: { form: 'value', kind: 'length', symbol: 'IT', meaning: 'width of the grade', range: { min: 0 } },
  deviation: {
    form: 'value',
    kind: 'length',
    symbol: 'δ',
    meaning: 'limit nearest the nominal size, with its sign',
    default: 0,
  },
  delta: {
    form: 'value',
    kind: 'length',
    symbol: 'Δ',
    meaning: 'step of the grade that a tight hole adds: IT n less IT n − 1',
    range: { min: 0 },
    default: 0,
  },
  from: {
    form: 'choice',
    symbol: 'w',
    meaning: 'which limit the deviation is: lower, upper, or both alike for js and JS',
    choices: ['lower', 'upper', 'both'],
  },
} as const satisfies Params;

const NUMBER = { lower: -1, upper: 1, both: 0 } as const;

/**
 * Limits of a shaft or a hole from the width of its grade and the deviation of its letter.
 *
 * Errors: a size outside 0 to 500 mm, a grade below zero.
 */
export const fitLimits = defineMethod({
  id,
  gives: 'Upper and lower limit of a shaft or a hole of a standard class',
  inputs,
  outputs: {
    upper: { form: 'value', kind: 'length', symbol: 'E_s', meaning: 'upper limit, from the nominal size' },
    lower: { form: 'value', kind: 'length', symbol: 'E_i', meaning: 'lower limit, from the nominal size' },
    largest: { form: 'value', kind: 'length', symbol: 'D_max', meaning: 'largest size' },
    smallest: { form: 'value', kind: 'length', symbol: 'D_min', meaning: 'smallest size' },
    which: { form: 'value', kind: 'number', symbol: 's', meaning: '−1 lower, 1 upper, 0 both alike' },
  },
  results: ['upper', 'lower', 'largest', 'smallest'],
  steps: [
    {
      key: 'upper',
      is: choose(
        [
          branch(when('which', '=', num(-1)), add('deviation', 'grade')),
          branch(when('which', '=', num(1)), add('deviation', 'delta')),
        ],
        div('grade', 2),
      ),
      says: 'The limit nearest the nominal size comes from the letter, the other from the grade.',
    },
    { key: 'lower', is: sub('upper', 'grade'), says: 'A grade is as wide as its limits are apart.' },
    { key: 'largest', is: add('size', 'upper'), says: 'On the nominal size.' },
    { key: 'smallest', is: add('size', 'lower'), says: 'On the nominal size.' },
  ],
  sources: [{ title: 'ISO 286-1', edition: '2010', at: 'clause 4 and tables 1 to 5', how: 'memory' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { size, grade, deviation, delta, from } = input;
    const which = NUMBER[from];
    const upper = which === -1 ? deviation + grade : which === 1 ? deviation + delta : grade / 2;
    const lower = upper - grade;
    return { upper, lower, largest: size + upper, smallest: size + lower, which };
  },
});
