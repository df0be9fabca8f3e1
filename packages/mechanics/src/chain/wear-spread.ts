import { div, mul, sym } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';

const id = 'chain.wearSpread';

const inputs = {
  links: { form: 'integer', symbol: 'L', meaning: 'links of the chain', range: { min: 1 } },
  teeth: { form: 'integer', symbol: 'N', meaning: 'teeth of the sprocket', range: { min: 6 } },
} as const satisfies Params;

function greatestCommonDivisor(a: number, b: number): number {
  let [high, low] = [a, b];
  while (low > 0) [high, low] = [low, high % low];
  return high;
}

/**
 * How well wear spreads: how many different links each tooth meets.
 *
 * Errors: links or teeth that are no whole number, links below 1, teeth below 6.
 */
export const chainWearSpread = defineMethod({
  id,
  gives: 'How many different links each tooth meets, and when the same meeting comes again',
  inputs,
  outputs: {
    commonFactor: { form: 'integer', symbol: 'g', meaning: 'greatest common factor of links and teeth' },
    linksMet: { form: 'integer', symbol: 'L_m', meaning: 'different links that one tooth meets' },
    turnsToRepeat: {
      form: 'integer',
      symbol: 'n_s',
      meaning: 'turns of the sprocket until a tooth meets the same link again',
    },
    passesToRepeat: {
      form: 'integer',
      symbol: 'n_c',
      meaning: 'rounds of the chain until a tooth meets the same link again',
    },
  },
  results: ['commonFactor', 'linksMet', 'turnsToRepeat', 'passesToRepeat'],
  steps: [
    {
      key: 'commonFactor',
      left: sym('links'),
      right: mul('commonFactor', 'linksMet'),
      says: 'The largest whole number that divides both links and teeth; 1 spreads wear best.',
    },
    { key: 'linksMet', is: div('links', 'commonFactor'), says: 'Each tooth meets every so-many-th link.' },
    { key: 'turnsToRepeat', is: div('links', 'commonFactor'), says: 'One link is met in each turn of the sprocket.' },
    { key: 'passesToRepeat', is: div('teeth', 'commonFactor'), says: 'The chain goes round as often.' },
  ],
  sources: [
    { title: 'Number theory: the least common multiple of links and teeth', how: 'derived' },
    { title: 'Odd teeth with even links, as chain makers advise', how: 'common practice' },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { links, teeth } = input;
    const commonFactor = greatestCommonDivisor(links, teeth);
    return {
      commonFactor,
      linksMet: links / commonFactor,
      turnsToRepeat: links / commonFactor,
      passesToRepeat: teeth / commonFactor,
    };
  },
});
