import { add, div, fn } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'coupling.misalignment';

const inputs = {
  radial: { form: 'value', kind: 'length', symbol: 'Δ_r', meaning: 'offset of the two shafts, parallel' },
  angular: { form: 'value', kind: 'angle', symbol: 'Δ_w', meaning: 'angle between the two shafts' },
  axial: { form: 'value', kind: 'length', symbol: 'Δ_a', meaning: 'movement of the two shafts along their axis' },
  radialLimit: {
    form: 'value',
    kind: 'length',
    symbol: 'K_r',
    meaning: 'greatest parallel offset of the coupling, alone',
    range: ABOVE_ZERO,
  },
  angularLimit: {
    form: 'value',
    kind: 'angle',
    symbol: 'K_w',
    meaning: 'greatest angle of the coupling, alone',
    range: ABOVE_ZERO,
  },
  axialLimit: {
    form: 'value',
    kind: 'length',
    symbol: 'K_a',
    meaning: 'greatest axial movement of the coupling, alone',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

/**
 * Whether a coupling bears offset, angle and axial movement at once: the used parts of its limits add up.
 *
 * Errors: a limit not above zero, a movement that is not finite.
 */
export const couplingMisalignment = defineMethod({
  id,
  gives: 'Part of a coupling’s room for misalignment that offset, angle and axial movement use together',
  inputs,
  outputs: {
    used: { form: 'value', kind: 'fraction', symbol: 'q', meaning: 'part used of all room for misalignment' },
    verdict: { form: 'choice', symbol: 'w', meaning: 'whether it bears them together', choices: ['within', 'beyond'] },
    radialUsed: { form: 'value', kind: 'fraction', symbol: 'q_r', meaning: 'part used by the parallel offset' },
    angularUsed: { form: 'value', kind: 'fraction', symbol: 'q_w', meaning: 'part used by the angle' },
    axialUsed: { form: 'value', kind: 'fraction', symbol: 'q_a', meaning: 'part used by the axial movement' },
  },
  results: ['used', 'verdict', 'radialUsed', 'angularUsed', 'axialUsed'],
  steps: [
    { key: 'radialUsed', is: div(fn('abs', 'radial'), 'radialLimit'), says: 'Either way.' },
    { key: 'angularUsed', is: div(fn('abs', 'angular'), 'angularLimit'), says: 'Either way.' },
    { key: 'axialUsed', is: div(fn('abs', 'axial'), 'axialLimit'), says: 'Either way.' },
    {
      key: 'used',
      is: add('radialUsed', 'angularUsed', 'axialUsed'),
      says: 'Each limit holds only with nothing else out of line; together at most 1.',
    },
  ],
  sources: [{ title: 'Linear sum of used misalignment, as coupling makers give it', how: 'memory' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const radialUsed = Math.abs(input.radial) / input.radialLimit;
    const angularUsed = Math.abs(input.angular) / input.angularLimit;
    const axialUsed = Math.abs(input.axial) / input.axialLimit;
    const used = radialUsed + angularUsed + axialUsed;
    return { used, verdict: used <= 1 ? 'within' : 'beyond', radialUsed, angularUsed, axialUsed };
  },
});
