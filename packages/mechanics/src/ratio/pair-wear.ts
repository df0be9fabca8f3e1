import { div, mul, sym } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';

const id = 'ratio.pairWear';

const inputs = {
  teethDriver: { form: 'integer', symbol: 'z_1', meaning: 'teeth of the driver', range: { min: 1 } },
  teethDriven: { form: 'integer', symbol: 'z_2', meaning: 'teeth of the driven wheel', range: { min: 1 } },
} as const satisfies Params;

function greatestCommonFactor(a: number, b: number): number {
  let [high, low] = [a, b];
  while (low > 0) [high, low] = [low, high % low];
  return high;
}

/**
 * How well wear spreads over two wheels in mesh: how many different teeth each tooth meets, and when the same meeting comes again.
 *
 * Errors: teeth that are no whole number of at least 1.
 */
export const ratioPairWear = defineMethod({
  id,
  gives: 'How many different teeth each tooth of a pair meets, and when the same two meet again',
  inputs,
  outputs: {
    commonFactor: { form: 'integer', symbol: 'g', meaning: 'greatest common factor of both tooth counts' },
    drivenMet: { form: 'integer', symbol: 'n_1', meaning: 'different driven teeth that one driver tooth meets' },
    driverMet: { form: 'integer', symbol: 'n_2', meaning: 'different driver teeth that one driven tooth meets' },
    driverTurns: { form: 'integer', symbol: 'N_1', meaning: 'turns of the driver until the same two teeth meet again' },
    drivenTurns: {
      form: 'integer',
      symbol: 'N_2',
      meaning: 'turns of the driven wheel until the same two teeth meet again',
    },
  },
  results: ['commonFactor', 'drivenMet', 'driverMet', 'driverTurns', 'drivenTurns'],
  steps: [
    {
      key: 'commonFactor',
      left: sym('teethDriven'),
      right: mul('commonFactor', 'drivenMet'),
      says: 'The largest whole number that divides both; 1 lets every tooth meet every other.',
    },
    { key: 'drivenMet', is: div('teethDriven', 'commonFactor'), says: 'One driver tooth meets every so-many-th.' },
    { key: 'driverMet', is: div('teethDriver', 'commonFactor'), says: 'The same for a driven tooth.' },
    { key: 'driverTurns', is: div('teethDriven', 'commonFactor'), says: 'One driven tooth is met in each turn.' },
    { key: 'drivenTurns', is: div('teethDriver', 'commonFactor'), says: 'Fewer turns, as the ratio says.' },
  ],
  sources: [
    { title: 'Gear Frequencies Using the Euclidean Algorithm (W. C. Foiles)', how: 'read' },
    { title: 'Number theory: the least common multiple of both tooth counts', how: 'derived' },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { teethDriver, teethDriven } = input;
    const commonFactor = greatestCommonFactor(teethDriver, teethDriven);
    const [drivenMet, driverMet] = [teethDriven / commonFactor, teethDriver / commonFactor];
    return { commonFactor, drivenMet, driverMet, driverTurns: drivenMet, drivenTurns: driverMet };
  },
});
