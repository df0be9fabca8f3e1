import { div, fn, mul, sum } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'shaft.criticalSpeed';

const inputs = {
  masses: {
    form: 'list',
    kind: 'mass',
    symbol: 'm_k',
    meaning: 'masses along the shaft, its own among them',
    range: { min: 0 },
    atLeast: 1,
  },
  stiffnesses: {
    form: 'list',
    kind: 'stiffness',
    symbol: 'k_k',
    meaning: 'push across the shaft at each mass over how far it moves there',
    range: ABOVE_ZERO,
    atLeast: 1,
  },
} as const satisfies Params;

/**
 * Lowest speed at which a shaft whirls, from below: each mass by itself, their inverse squares added.
 *
 * Errors: lists of different length, no mass at all, a stiffness not above zero.
 */
export const shaftCriticalSpeed = defineMethod({
  id,
  gives: 'Critical speed of a shaft in bending, a lower bound',
  inputs,
  outputs: {
    speed: { form: 'value', kind: 'angularSpeed', symbol: 'ω_1', meaning: 'critical speed' },
    shares: {
      form: 'list',
      kind: 'number',
      symbol: 'm_k/k_k',
      meaning: 'mass over stiffness at each mass, in seconds squared',
    },
    second: { form: 'value', kind: 'time', symbol: 'u_t', meaning: 'one second' },
  },
  results: ['speed'],
  steps: [
    {
      key: 'speed',
      is: div(1, mul('second', fn('sqrt', sum('shares')))),
      says: 'Each mass alone would whirl at the root of stiffness over mass; the inverse squares add up.',
    },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '9th',
      at: 'equation 7-32, Dunkerley',
      how: 'read',
    },
  ],
  holds: ['Lies some per cent below the true speed. Forces of chains and teeth do not enter, only masses.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { masses, stiffnesses } = input;
    if (masses.length !== stiffnesses.length)
      throw new MethodError(
        id,
        'stiffnesses',
        `${stiffnesses.length} stiffnesses read for ${masses.length} masses; as many are accepted.`,
      );
    const shares = masses.map((mass, k) => mass / (stiffnesses[k] as number));
    const all = shares.reduce((total, one) => total + one, 0);
    if (!(all > 0)) throw new MethodError(id, 'masses', 'No mass at all; at least one must be more than 0 kg.');
    return { speed: 1 / (1 * Math.sqrt(all)), shares, second: 1 };
  },
});
