import { add, mul, pow, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'vehicle.wheelInertiaBounds';

const inputs = {
  mass: { form: 'value', kind: 'mass', symbol: 'm', meaning: 'mass of wheel and tyre together', range: ABOVE_ZERO },
  tyreMass: {
    form: 'value',
    kind: 'mass',
    symbol: 'm_t',
    meaning: 'mass of the tyre, with tube and water if any',
    range: { min: 0 },
  },
  rimRadius: {
    form: 'value',
    kind: 'length',
    symbol: 'r_f',
    meaning: 'radius where the tyre sits on the rim',
    range: ABOVE_ZERO,
  },
  outsideRadius: {
    form: 'value',
    kind: 'length',
    symbol: 'r_o',
    meaning: 'outside radius of the tyre',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

/**
 * Least and greatest moment of inertia that a wheel of these masses and radii can have, for use until it has been timed.
 *
 * Errors: values out of range, a tyre heavier than the whole, a rim larger than the tyre.
 */
export const wheelInertiaBounds = defineMethod({
  id,
  gives: 'Least and greatest moment of inertia that a wheel can have by its masses and radii',
  inputs,
  outputs: {
    low: { form: 'value', kind: 'inertia', symbol: 'I_l', meaning: 'least moment of inertia' },
    high: { form: 'value', kind: 'inertia', symbol: 'I_h', meaning: 'greatest moment of inertia' },
  },
  results: ['low', 'high'],
  steps: [
    {
      key: 'low',
      is: mul('tyreMass', pow('rimRadius', 2)),
      says: 'All of the tyre at its bead, all of the wheel at the hub.',
    },
    {
      key: 'high',
      is: add(mul('tyreMass', pow('outsideRadius', 2)), mul(sub('mass', 'tyreMass'), pow('rimRadius', 2))),
      says: 'All of the tyre at its tread, all of the wheel at the bead.',
    },
  ],
  sources: [{ title: 'Definition of the moment of inertia', how: 'derived' }],
  holds: ['No part of the wheel itself reaches further out than the bead.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { mass, tyreMass, rimRadius, outsideRadius } = input;
    if (tyreMass > mass)
      throw new MethodError(
        id,
        'tyreMass',
        `Mass of the tyre: ${tyreMass} kg read; at most the whole, ${mass} kg, is accepted.`,
      );
    if (rimRadius >= outsideRadius)
      throw new MethodError(
        id,
        'rimRadius',
        `Radius where the tyre sits on the rim: ${rimRadius} m read; less than the outside radius, ${outsideRadius} m, is accepted.`,
      );
    return {
      low: tyreMass * rimRadius ** 2,
      high: tyreMass * outsideRadius ** 2 + (mass - tyreMass) * rimRadius ** 2,
    };
  },
});
