import { num, sum } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { findRoot } from '../numerics/root.ts';
import { LIFE_CURVES, type LifeCurve } from './life-factor.ts';
import { BEVEL_SOURCE, SPUR_SOURCE } from './parts.ts';

const id = 'gear.dutyReserve';

const inputs = {
  stresses: {
    form: 'list',
    kind: 'pressure',
    symbol: 's_k',
    meaning: 'stress number in each step of the duty',
    range: { min: 0 },
    atLeast: 1,
  },
  turns: {
    form: 'list',
    kind: 'number',
    symbol: 'N_k',
    meaning: 'turns of the gear in each step',
    range: { min: 0 },
    atLeast: 1,
  },
  allowed: {
    form: 'value',
    kind: 'pressure',
    symbol: 's_a',
    meaning: 'stress number allowed at 10 million turns',
    range: ABOVE_ZERO,
  },
  curve: {
    form: 'choice',
    symbol: 'k',
    meaning: 'kind of the pair and of its stress',
    choices: ['bevel bending', 'bevel contact', 'spur bending', 'spur contact'],
  },
} as const satisfies Params;

/** Natural logarithm of the greatest factor on the loads that is looked at. */
const FARTHEST = 30;

/** Turns that a stress over the allowed one may come. */
function turnsBorne({ low, high, knee }: LifeCurve, part: number): number {
  const [factor, slope] = part > high[0] * knee ** -high[1] ? low : high;
  return (factor / part) ** (1 / slope);
}

/**
 * By how much the loads of a whole duty could grow until the gear’s teeth are used up: each step uses up its turns over the turns borne.
 *
 * Errors: lists of different length, no step with load and turns, an allowed number not above zero, loads so far from the teeth's strength that no factor compares them.
 */
export const gearDutyReserve = defineMethod({
  id,
  gives: 'How much all loads of a duty could grow until the teeth are used up',
  inputs,
  outputs: {
    reserve: { form: 'value', kind: 'number', symbol: 'n', meaning: 'factor on all loads' },
    used: {
      form: 'list',
      kind: 'number',
      symbol: 'd_k',
      meaning: 'part that each step uses up with its load grown so',
    },
    whole: { form: 'value', kind: 'number', symbol: 'd', meaning: 'parts in all' },
  },
  results: ['reserve'],
  steps: [
    { key: 'whole', is: sum('used'), says: 'Turns over the turns that such a load may come, summed up.' },
    { key: 'reserve', left: sum('used'), right: num(1), says: 'The loads grow until all is used up.' },
  ],
  sources: [BEVEL_SOURCE, SPUR_SOURCE, { title: 'Sum of damage by Miner’s rule', how: 'common practice' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { stresses, turns, allowed } = input;
    if (turns.length !== stresses.length)
      throw new MethodError(
        id,
        'turns',
        `${turns.length} entries of turns for ${stresses.length} stresses; as many are accepted.`,
      );
    if (!stresses.some((stress, k) => stress > 0 && (turns[k] ?? 0) > 0))
      throw new MethodError(id, 'stresses', 'No step has both a load and turns; at least one must.');
    const curve = LIFE_CURVES[input.curve];
    // Contact stress grows with the root of the load.
    const power = input.curve.endsWith('contact') ? 0.5 : 1;
    const usedAt = (factor: number): number[] =>
      stresses.map((stress, k) =>
        stress > 0 ? (turns[k] ?? 0) / turnsBorne(curve, (stress * factor ** power) / allowed) : 0,
      );
    const whole = (factor: number): number => usedAt(factor).reduce((all, one) => all + one, 0);
    if (!(whole(Math.exp(-FARTHEST)) < 1 && whole(Math.exp(FARTHEST)) > 1))
      throw new MethodError(
        id,
        'stresses',
        'The load that would use the teeth up is over ten million million times away from the one given.',
      );
    const found = findRoot((x) => Math.log(whole(Math.exp(x))), -FARTHEST, FARTHEST, 1e-13);
    const used = usedAt(Math.exp(found));
    return { reserve: Math.exp(found), used, whole: used.reduce((all, one) => all + one, 0) };
  },
});
