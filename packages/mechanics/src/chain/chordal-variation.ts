import { div, fn, mul, PI, sub } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { pitchRadius } from './drive.ts';
import { radiusTree } from './parts.ts';

const id = 'chain.chordalVariation';

const inputs = {
  pitch: { form: 'value', kind: 'length', symbol: 'p', meaning: 'chain pitch', range: ABOVE_ZERO },
  teeth: { form: 'integer', symbol: 'N', meaning: 'teeth of the sprocket', range: { min: 6 } },
  angularSpeed: {
    form: 'value',
    kind: 'angularSpeed',
    symbol: 'ω',
    meaning: 'speed of the sprocket',
    range: { min: 0 },
  },
} as const satisfies Params;

/**
 * How a sprocket, being a polygon, makes the chain surge and rise.
 *
 * Errors: teeth that are no whole number of at least 6, pitch not above zero, speed below zero.
 */
export const chordalVariation = defineMethod({
  id,
  gives: 'Surge of the chain speed, rise of the chain, and how often, because a sprocket is a polygon',
  inputs,
  outputs: {
    variation: {
      form: 'value',
      kind: 'fraction',
      symbol: 'v_r',
      meaning: 'highest less lowest chain speed, over the mean',
    },
    lowestOverHighest: { form: 'value', kind: 'ratio', symbol: 'v_q', meaning: 'lowest over highest chain speed' },
    rise: { form: 'value', kind: 'length', symbol: 'h', meaning: 'rise and fall of the chain on the sprocket' },
    frequency: { form: 'value', kind: 'frequency', symbol: 'f', meaning: 'tooth engagements per second' },
    pitchRadius: { form: 'value', kind: 'length', symbol: 'R', meaning: 'pitch radius' },
  },
  results: ['variation', 'lowestOverHighest', 'rise', 'frequency'],
  steps: [
    {
      key: 'variation',
      is: mul(div(PI, 'teeth'), sub(div(1, fn('sin', div(PI, 'teeth'))), div(1, fn('tan', div(PI, 'teeth'))))),
      says: 'The lever of the chain swings between the corner and the flat of the polygon.',
    },
    { key: 'lowestOverHighest', is: fn('cos', div(PI, 'teeth')), says: 'Flat over corner.' },
    { key: 'pitchRadius', is: radiusTree('teeth'), says: 'Radius to a corner.' },
    { key: 'rise', is: mul('pitchRadius', sub(1, 'lowestOverHighest')), says: 'Corner less flat.' },
    { key: 'frequency', is: div(mul('teeth', 'angularSpeed'), mul(2, PI)), says: 'Once for each tooth.' },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '9th',
      at: 'Eqs. 17-30, 17-31',
      how: 'memory',
    },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { pitch, teeth, angularSpeed } = input;
    const half = Math.PI / teeth;
    const radius = pitchRadius(pitch, teeth);
    const lowestOverHighest = Math.cos(half);
    return {
      variation: half * (1 / Math.sin(half) - 1 / Math.tan(half)),
      lowestOverHighest,
      rise: radius * (1 - lowestOverHighest),
      frequency: (teeth * angularSpeed) / (2 * Math.PI),
      pitchRadius: radius,
    };
  },
});
