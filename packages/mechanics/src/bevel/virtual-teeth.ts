import { div, fn } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';

const id = 'bevel.virtualTeeth';

const inputs = {
  teeth: { form: 'integer', symbol: 'z', meaning: 'teeth of the gear', range: { min: 5 } },
  pitchAngle: {
    form: 'value',
    kind: 'angle',
    symbol: 'δ',
    meaning: 'pitch angle of the same gear, less than that of a crown gear',
    range: { min: 0, max: Math.PI / 2 - 1e-9, open: true },
  },
} as const satisfies Params;

/**
 * Teeth of the spur gear that has the same tooth shape as a straight bevel gear (Tredgold).
 *
 * Errors: teeth that are no whole number of at least 5, pitch angle outside 0..90 degrees (a crown gear is a rack, without number).
 */
export const bevelVirtualTeeth = defineMethod({
  id,
  gives: 'Teeth of the spur gear with the tooth shape of a straight bevel gear',
  inputs,
  outputs: { virtualTeeth: { form: 'value', kind: 'number', symbol: 'z_v', meaning: 'virtual teeth' } },
  results: ['virtualTeeth'],
  steps: [
    {
      key: 'virtualTeeth',
      is: div('teeth', fn('cos', 'pitchAngle')),
      says: 'The back cone, unrolled, is a spur gear of this many teeth.',
    },
  ],
  sources: [{ title: "Machinery's Handbook", at: 'bevel gearing, Tredgold’s approximation', how: 'memory' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    return { virtualTeeth: input.teeth / Math.cos(input.pitchAngle) };
  },
});
