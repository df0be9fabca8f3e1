import { div, fn, mul, PI, sum } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { trainModes } from './train-modes.ts';

const id = 'torsion.naturalFrequency';

const inputs = {
  inertias: {
    form: 'list',
    kind: 'inertia',
    symbol: 'J_k',
    meaning: 'moment of inertia of each mass, brought to one speed',
    range: ABOVE_ZERO,
    atLeast: 2,
  },
  stiffnesses: {
    form: 'list',
    kind: 'turningStiffness',
    symbol: 'k_k',
    meaning: 'stiffness from each mass to the next, brought to the same speed',
    range: ABOVE_ZERO,
    atLeast: 1,
  },
} as const satisfies Params;

/**
 * Slowest natural frequency at which a train of turning masses swings against itself, both ends free.
 *
 * Errors: not one spring fewer than masses, or a number not above zero.
 */
export const naturalFrequency = defineMethod({
  id,
  gives: 'Slowest swing of a drive against itself',
  inputs,
  outputs: {
    frequency: { form: 'value', kind: 'frequency', symbol: 'f_1', meaning: 'slowest natural frequency' },
    shape: {
      form: 'list',
      kind: 'number',
      symbol: 'φ_k',
      meaning: 'how far each mass swings, the farthest one',
    },
    inSprings: {
      form: 'list',
      kind: 'turningStiffness',
      symbol: 'k_kδ_k^2',
      meaning: 'stiffness times the square of the twist in each spring',
    },
    inMasses: {
      form: 'list',
      kind: 'inertia',
      symbol: 'J_kφ_k^2',
      meaning: 'moment of inertia times the square of the swing of each mass',
    },
  },
  results: ['frequency', 'shape'],
  steps: [
    {
      key: 'frequency',
      is: div(fn('sqrt', div(sum('inSprings'), sum('inMasses'))), mul(2, PI)),
      says: 'In a natural swing the springs hold at its ends what the masses hold in its middle; the shape comes from the eigenvalues of the row of masses.',
    },
  ],
  sources: [{ title: 'S. S. Rao, Mechanical Vibrations', edition: '5th', at: 'Rayleigh’s quotient', how: 'memory' }],
  holds: ['No damping; play and the stiffness of what is left out make the real swing slower.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { inertias, stiffnesses } = input;
    if (stiffnesses.length !== inertias.length - 1)
      throw new MethodError(
        id,
        'stiffnesses',
        `${stiffnesses.length} springs read for ${inertias.length} masses; one fewer than the masses is accepted.`,
      );
    const first = trainModes(inertias, stiffnesses)[0];
    if (!first) throw new MethodError(id, 'inertias', 'two masses at least are accepted.');
    const { shape } = first;
    const inSprings = stiffnesses.map((k, i) => k * ((shape[i + 1] as number) - (shape[i] as number)) ** 2);
    const inMasses = inertias.map((j, i) => j * (shape[i] as number) ** 2);
    const total = (list: readonly number[]): number => list.reduce((all, one) => all + one, 0);
    return {
      frequency: Math.sqrt(total(inSprings) / total(inMasses)) / (2 * Math.PI),
      shape,
      inSprings,
      inMasses,
    };
  },
});
