import { add, div, mul, num, PI, pow, sub } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { APPROXIMATE_HOLDS, APPROXIMATE_SOURCES } from './approximate.ts';
import { refuseOverlap } from './drive.ts';
import { DRIVE_INPUTS } from './parts.ts';

const id = 'chain.lengthApprox';

const inputs = {
  ...DRIVE_INPUTS,
  centreDistance: { form: 'value', kind: 'length', symbol: 'C', meaning: 'centre distance', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Links by the handbook rule, for comparison with books.
 *
 * Errors: teeth that are no whole number of at least 6, pitch or centre distance not above zero, sprockets that overlap.
 */
export const chainLengthApprox = defineMethod({
  id,
  gives: 'Links by the handbook rule',
  inputs,
  outputs: {
    links: { form: 'value', kind: 'count', symbol: 'L', meaning: 'links by the handbook rule, not rounded' },
    centrePitches: { form: 'value', kind: 'number', symbol: 'c', meaning: 'centre distance in pitches' },
  },
  results: ['links', 'centrePitches'],
  steps: [
    { key: 'centrePitches', is: div('centreDistance', 'pitch'), says: 'Centre distance in pitches.' },
    {
      key: 'links',
      is: add(
        mul(2, 'centrePitches'),
        div(add('teethDriver', 'teethDriven'), 2),
        div(pow(sub('teethDriven', 'teethDriver'), 2), mul(4, pow(PI, num(2)), 'centrePitches')),
      ),
      says: 'Two spans, half of all teeth, and a small term for unequal sprockets.',
    },
  ],
  sources: APPROXIMATE_SOURCES,
  holds: APPROXIMATE_HOLDS,
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { pitch, teethDriver, teethDriven, centreDistance } = input;
    refuseOverlap(id, pitch, teethDriver, teethDriven, centreDistance);
    const centrePitches = centreDistance / pitch;
    const links =
      2 * centrePitches +
      (teethDriver + teethDriven) / 2 +
      (teethDriven - teethDriver) ** 2 / (4 * Math.PI ** 2 * centrePitches);
    return { links, centrePitches };
  },
});
