import { div, fn, product, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { searchTrains } from './search/search.ts';
import type { Choice, Found } from './search/types.ts';

const id = 'ratio.nearestTrain';

/** Most different tooth counts for one, two and three pairs, so that an answer takes no more than a second or so. */
const MOST = [1000, 300, 120];

const inputs = {
  wanted: { form: 'value', kind: 'ratio', symbol: 'i_0', meaning: 'ratio wanted', range: ABOVE_ZERO },
  pairs: { form: 'integer', symbol: 'n', meaning: 'pairs of wheels in a row', range: { min: 1, max: 3 }, default: 1 },
  leastTeeth: { form: 'integer', symbol: 'z_a', meaning: 'fewest teeth of a wheel', range: { min: 1 }, default: 12 },
  mostTeeth: { form: 'integer', symbol: 'z_b', meaning: 'most teeth of a wheel', range: { min: 1 }, default: 100 },
} as const satisfies Params;

function best(choices: readonly Choice[], pairs: number, wanted: number): Found {
  const space = {
    stages: Array.from({ length: pairs }, () => ({ choices })),
    terms: 0,
    band: { low: wanted, high: wanted },
    within: null,
    limits: [],
    atHand: null,
  };
  const steps = searchTrains(space, [{ ratio: 1, terms: [], step: 0 }], 1);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/**
 * The train of one to three pairs whose ratio comes nearest to the one wanted; of equal ones that with fewest teeth in the first pair.
 *
 * Errors: ratio not above zero, pairs outside 1 to 3, teeth below 1 or in the wrong order, more tooth counts than can be searched.
 */
export const ratioNearestTrain = defineMethod({
  id,
  gives: 'Teeth of the one, two or three pairs that come nearest to a ratio',
  inputs,
  outputs: {
    drivers: { form: 'list', kind: 'count', symbol: 'z_1', meaning: 'teeth of the driver of each pair' },
    drivens: { form: 'list', kind: 'count', symbol: 'z_2', meaning: 'teeth of the driven wheel of each pair' },
    ratio: { form: 'value', kind: 'ratio', symbol: 'i', meaning: 'ratio of the train' },
    error: { form: 'value', kind: 'fraction', symbol: 'e', meaning: 'part by which it misses the one wanted' },
  },
  results: ['drivers', 'drivens', 'ratio', 'error'],
  steps: [
    { key: 'ratio', is: div(product('drivens'), product('drivers')), says: 'Driven over drivers.' },
    {
      key: 'error',
      is: fn('abs', sub(div('ratio', 'wanted'), 1)),
      says: 'The least that any train of these teeth has.',
    },
  ],
  sources: [{ title: 'Every train weighed by bounds; compared with looking at each of them', how: 'derived' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { wanted, pairs, leastTeeth, mostTeeth } = input;
    const count = mostTeeth - leastTeeth + 1;
    const most = MOST[pairs - 1] as number;
    if (count < 1 || count > most)
      throw new MethodError(
        id,
        'mostTeeth',
        `Most teeth of a wheel: ${mostTeeth} read; from ${leastTeeth} to ${leastTeeth + most - 1} are accepted with ${pairs} pairs.`,
      );
    const teeth = Array.from({ length: count }, (_, k) => leastTeeth + k);
    const choices = teeth.flatMap((driver) =>
      teeth.map((driven): Choice => ({ driver, driven, ratio: null, costs: [], parts: [] })),
    );
    const found = best(choices, pairs, wanted).trains[0];
    if (!found) throw new MethodError(id, 'wanted', `Ratio wanted: no train of ${pairs} pairs was found.`);
    const chosen = found.choices.map((choice) => choices[choice] as Choice);
    return {
      drivers: chosen.map(({ driver }) => driver),
      drivens: chosen.map(({ driven }) => driven),
      ratio: found.ratio,
      error: Math.abs(found.ratio / wanted - 1),
    };
  },
});
