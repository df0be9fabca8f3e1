import { add, div, fn, mul, PI, pow, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { APPROXIMATE_HOLDS, APPROXIMATE_SOURCES } from './approximate.ts';
import { DRIVE_INPUTS } from './parts.ts';

const id = 'chain.centreDistanceApprox';

const inputs = {
  ...DRIVE_INPUTS,
  links: { form: 'value', kind: 'count', symbol: 'L', meaning: 'links of the chain', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Centre distance by the handbook rule, for comparison with books.
 *
 * Errors: teeth that are no whole number of at least 6, pitch or links not above zero, too few links for the rule to have an answer.
 */
export const chainCentreDistanceApprox = defineMethod({
  id,
  gives: 'Centre distance by the handbook rule',
  inputs,
  outputs: {
    centreDistance: { form: 'value', kind: 'length', symbol: 'C', meaning: 'centre distance by the handbook rule' },
    straightLinks: { form: 'value', kind: 'count', symbol: 'A', meaning: 'links less half of all teeth' },
  },
  results: ['centreDistance'],
  steps: [
    {
      key: 'straightLinks',
      is: sub('links', div(add('teethDriver', 'teethDriven'), 2)),
      says: 'Links left for the two spans.',
    },
    {
      key: 'centreDistance',
      is: mul(
        div('pitch', 4),
        add(
          'straightLinks',
          fn('sqrt', sub(pow('straightLinks', 2), mul(8, pow(div(sub('teethDriven', 'teethDriver'), mul(2, PI)), 2)))),
        ),
      ),
      says: 'The handbook rule for the links, solved for the centre distance.',
    },
  ],
  sources: APPROXIMATE_SOURCES,
  holds: APPROXIMATE_HOLDS,
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { pitch, teethDriver, teethDriven, links } = input;
    const straightLinks = links - (teethDriver + teethDriven) / 2;
    const underRoot = straightLinks ** 2 - 8 * ((teethDriven - teethDriver) / (2 * Math.PI)) ** 2;
    if (!(straightLinks > 0 && underRoot >= 0)) {
      throw new MethodError(
        id,
        'links',
        `Links of the chain are too few to reach round ${teethDriver} and ${teethDriven} teeth; read ${links}.`,
      );
    }
    return { centreDistance: (pitch / 4) * (straightLinks + Math.sqrt(underRoot)), straightLinks };
  },
});
