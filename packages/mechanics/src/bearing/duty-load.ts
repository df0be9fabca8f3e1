import { div, mul, pow, sum, sym } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';

const id = 'bearing.dutyLoad';

const inputs = {
  loads: {
    form: 'list',
    kind: 'force',
    symbol: 'P_k',
    meaning: 'equivalent dynamic load in each step of the duty',
    range: { min: 0 },
    atLeast: 1,
  },
  turns: {
    form: 'list',
    kind: 'number',
    symbol: 'u_k',
    meaning: 'turns in each step, or any number that goes with them',
    range: { min: 0 },
    atLeast: 1,
  },
  exponent: {
    form: 'value',
    kind: 'number',
    symbol: 'p',
    meaning: 'exponent: 3 for balls, 10/3 for rollers',
    range: { min: 1, max: 10 },
    default: 3,
  },
} as const satisfies Params;

/**
 * Steady load that wears as much as a duty of steps does. Turns are the weights, not time: a bearing at rest does not wear.
 *
 * Errors: lists of different length, no turns at all.
 */
export const dutyLoad = defineMethod({
  id,
  gives: 'Mean equivalent load of a bearing over its duty',
  inputs,
  outputs: {
    load: { form: 'value', kind: 'force', symbol: 'P_m', meaning: 'mean equivalent load' },
    whole: { form: 'value', kind: 'number', symbol: 'u', meaning: 'turns in all' },
    weighted: {
      form: 'list',
      kind: 'number',
      symbol: 'w_k',
      meaning: 'turns times the load over the greatest load, to the exponent',
    },
    greatest: { form: 'value', kind: 'force', symbol: 'P_x', meaning: 'greatest load of the duty' },
  },
  results: ['load'],
  steps: [
    { key: 'whole', is: sum('turns'), says: 'All turns.' },
    {
      key: 'load',
      is: mul('greatest', pow(div(sum('weighted'), sym('whole')), div(1, 'exponent'))),
      says: 'Each load counts by its turns and by its power.',
    },
  ],
  sources: [{ title: 'Ball and Roller Bearings, a maker’s catalogue', at: 'equation 4.23', how: 'read' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { loads, turns, exponent } = input;
    if (turns.length !== loads.length)
      throw new MethodError(
        id,
        'turns',
        `${turns.length} entries of turns for ${loads.length} loads; as many are accepted.`,
      );
    const whole = turns.reduce((all, one) => all + one, 0);
    if (!(whole > 0)) throw new MethodError(id, 'turns', 'The duty has no turns at all; at least one step must turn.');
    const greatest = Math.max(...loads);
    const weighted = loads.map((load, k) => (greatest > 0 ? (turns[k] as number) * (load / greatest) ** exponent : 0));
    const load = greatest * (weighted.reduce((all, one) => all + one, 0) / whole) ** (1 / exponent);
    return { load, whole, weighted, greatest };
  },
});
