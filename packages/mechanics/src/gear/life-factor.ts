import { branch, choose, mul, num, pow, when } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';
import { BEVEL_SOURCE, SPUR_SOURCE } from './parts.ts';

const id = 'gear.lifeFactor';

/** Two power laws that meet: below `knee` turns the first, above it the second. */
export interface LifeCurve {
  readonly low: readonly [factor: number, slope: number];
  readonly high: readonly [factor: number, slope: number];
  readonly knee: number;
}

export const LIFE_CURVES = {
  'bevel bending': { low: [6.1514, 0.1192], high: [1.6831, 0.0323], knee: 3e6 },
  'bevel contact': { low: [3.4822, 0.0602], high: [3.4822, 0.0602], knee: 1e7 },
  'spur bending': { low: [2.3194, 0.0538], high: [1.6831, 0.0323], knee: 3e6 },
  'spur contact': { low: [2.466, 0.056], high: [1.4488, 0.023], knee: 1e7 },
} as const satisfies Readonly<Record<string, LifeCurve>>;
const NAMES = ['bevel bending', 'bevel contact', 'spur bending', 'spur contact'] as const;

const inputs = {
  turns: { form: 'value', kind: 'number', symbol: 'N', meaning: 'turns of the gear', range: { min: 1e3, max: 1e10 } },
  curve: { form: 'choice', symbol: 'k', meaning: 'kind of the pair and of its stress', choices: NAMES },
} as const satisfies Params;

const law = ([factor, slope]: readonly [number, number]) => mul(num(factor), pow('turns', num(-slope)));

/**
 * How much more, or less, a gear bears over this many turns than over 10 million.
 *
 * Errors: turns outside a thousand to ten thousand million.
 */
export const gearLifeFactor = defineMethod({
  id,
  gives: 'What a gear bears over its turns, against what it bears over 10 million',
  inputs,
  outputs: {
    factor: { form: 'value', kind: 'number', symbol: 'K_L', meaning: 'life factor' },
    place: { form: 'value', kind: 'number', symbol: 'k_n', meaning: 'place of the curve in the list' },
  },
  results: ['factor'],
  steps: [
    {
      key: 'factor',
      is: choose(
        NAMES.slice(1).map((name, k) =>
          branch(
            when('place', '=', k + 2),
            choose(
              [branch(when('turns', '<', num(LIFE_CURVES[name].knee)), law(LIFE_CURVES[name].low))],
              law(LIFE_CURVES[name].high),
            ),
          ),
        ),
        choose(
          [branch(when('turns', '<', num(LIFE_CURVES['bevel bending'].knee)), law(LIFE_CURVES['bevel bending'].low))],
          law(LIFE_CURVES['bevel bending'].high),
        ),
      ),
      says: 'Few turns may be harder ones.',
    },
  ],
  sources: [BEVEL_SOURCE, SPUR_SOURCE],
  holds: ['The lower of the printed curves where several are printed.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { low, high, knee } = LIFE_CURVES[input.curve];
    const [factor, slope] = input.turns < knee ? low : high;
    return { factor: factor * input.turns ** -slope, place: NAMES.indexOf(input.curve) + 1 };
  },
});
