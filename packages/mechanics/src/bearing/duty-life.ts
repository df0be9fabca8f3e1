import { div, mul, sum, sym } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'bearing.dutyLife';

const inputs = {
  lives: {
    form: 'list',
    kind: 'number',
    symbol: 'L_k',
    meaning: 'life in turns that each step of the duty would give alone',
    range: ABOVE_ZERO,
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
  idle: {
    form: 'value',
    kind: 'number',
    symbol: 'u_0',
    meaning: 'turns in steps without load, in the same measure',
    range: { min: 0 },
    default: 0,
  },
  road: {
    form: 'value',
    kind: 'length',
    symbol: 's_1',
    meaning: 'road in one turn of the bearing',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

/**
 * Life of a bearing under a duty whose steps wear it differently: each step uses up its part. Turns are the weights, not time.
 *
 * Errors: lists of different length, no turns at all, a life or the road in a turn not above zero.
 */
export const dutyLife = defineMethod({
  id,
  gives: 'Life of a bearing over its duty, in turns and in road',
  inputs,
  outputs: {
    distance: { form: 'value', kind: 'length', symbol: 's', meaning: 'road until then' },
    life: { form: 'value', kind: 'number', symbol: 'L', meaning: 'life in turns' },
    whole: { form: 'value', kind: 'number', symbol: 'u', meaning: 'turns in all' },
    used: { form: 'list', kind: 'number', symbol: 'd_k', meaning: 'turns of each step over its life' },
  },
  results: ['life', 'distance'],
  steps: [
    { key: 'life', is: div('whole', sum('used')), says: 'All turns over the sum of what each step uses up.' },
    { key: 'distance', is: mul(sym('life'), 'road'), says: 'Turns times the road in one.' },
  ],
  sources: [
    { title: 'A maker’s catalogue of 2018', at: 'page 90, variable conditions', how: 'read' },
    { title: 'ISO 281:2007', at: 'clause 9, lives of steps added up', how: 'memory' },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { lives, turns, idle, road } = input;
    if (turns.length !== lives.length)
      throw new MethodError(
        id,
        'turns',
        `${turns.length} entries of turns for ${lives.length} lives; as many are accepted.`,
      );
    const loaded = turns.reduce((all, one) => all + one, 0);
    if (!(loaded > 0)) throw new MethodError(id, 'turns', 'The duty has no turns at all; at least one step must turn.');
    const whole = loaded + idle;
    const used = turns.map((one, k) => one / (lives[k] as number));
    const life = whole / used.reduce((all, one) => all + one, 0);
    return { distance: life * road, life, whole, used };
  },
});
