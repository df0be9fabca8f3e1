import { add, div, mul, PI } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'vehicle.rollingCircumference';

const RADIAL = 3.05;
const CROSS_PLY = 2.99;

const inputs = {
  outsideDiameter: {
    form: 'value',
    kind: 'length',
    symbol: 'D',
    meaning: 'outside diameter of the tyre',
    range: ABOVE_ZERO,
  },
  construction: {
    form: 'choice',
    choices: ['radial', 'cross-ply', 'unknown'],
    symbol: 'k',
    meaning: 'construction of the tyre; bias-belted counts as unknown',
    default: 'unknown',
  },
} as const satisfies Params;

const FACTORS = {
  radial: [RADIAL, RADIAL],
  'cross-ply': [CROSS_PLY, CROSS_PLY],
  unknown: [CROSS_PLY, RADIAL],
} as const;

/**
 * Roll-out of one turn under the rated load: less than π times the outside diameter, because a loaded tyre flattens.
 *
 * Errors: a diameter not above zero, an unknown word for the construction.
 */
export const rollingCircumference = defineMethod({
  id,
  gives: 'Roll-out of one turn of a loaded tyre, with its range when the construction is not known',
  inputs,
  outputs: {
    rollOut: { form: 'value', kind: 'length', symbol: 'U', meaning: 'roll-out of one turn, middle of the range' },
    rollOutLow: { form: 'value', kind: 'length', symbol: 'U_l', meaning: 'least roll-out' },
    rollOutHigh: { form: 'value', kind: 'length', symbol: 'U_h', meaning: 'greatest roll-out' },
    rollingRadius: { form: 'value', kind: 'length', symbol: 'r', meaning: 'rolling radius' },
    factorLow: { form: 'value', kind: 'ratio', symbol: 'k_l', meaning: 'least roll-out over outside diameter' },
    factorHigh: { form: 'value', kind: 'ratio', symbol: 'k_h', meaning: 'greatest roll-out over outside diameter' },
  },
  results: ['rollOut', 'rollOutLow', 'rollOutHigh', 'rollingRadius'],
  steps: [
    {
      key: 'rollOutLow',
      is: mul('factorLow', 'outsideDiameter'),
      says: 'A loaded tyre flattens: 3.05 diameters for radial, 2.99 for cross-ply tyres, not π.',
    },
    {
      key: 'rollOutHigh',
      is: mul('factorHigh', 'outsideDiameter'),
      says: 'The other end, where the construction is not known.',
    },
    { key: 'rollOut', is: div(add('rollOutLow', 'rollOutHigh'), 2), says: 'Middle of the two.' },
    { key: 'rollingRadius', is: div('rollOut', mul(2, PI)), says: 'Radius of the circle that would roll as far.' },
  ],
  sources: [
    {
      title: 'ETRTO Standards Manual',
      at: 'rolling circumference at 60 km/h and rated load: 3.05 D radial, 2.99 D cross-ply',
      how: 'memory',
    },
  ],
  holds: ['Rated load and pressure, 60 km/h. A roll-out measured on the ground is better.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { outsideDiameter } = input;
    const [factorLow, factorHigh] = FACTORS[input.construction];
    const rollOutLow = factorLow * outsideDiameter;
    const rollOutHigh = factorHigh * outsideDiameter;
    const rollOut = (rollOutLow + rollOutHigh) / 2;
    return { rollOut, rollOutLow, rollOutHigh, rollingRadius: rollOut / (2 * Math.PI), factorLow, factorHigh };
  },
});
