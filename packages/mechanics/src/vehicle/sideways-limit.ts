import { branch, choose, div, mul, when } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { GRAVITY_INPUT } from './load.ts';

const id = 'vehicle.sidewaysLimit';

const inputs = {
  wheels: {
    form: 'integer',
    symbol: 'z',
    meaning: 'wheels on the ground, three or four',
    range: { min: 3, max: 4 },
    default: 3,
  },
  wheelbase: {
    form: 'value',
    kind: 'length',
    symbol: 'L',
    meaning: 'distance between front and rear axle',
    range: ABOVE_ZERO,
  },
  track: {
    form: 'value',
    kind: 'length',
    symbol: 't',
    meaning: 'distance between the wheels of a pair',
    range: ABOVE_ZERO,
  },
  fromSingle: {
    form: 'value',
    kind: 'length',
    symbol: 'x',
    meaning: 'centre of mass from the axle of the single wheel, along the vehicle; of four wheels, from the front axle',
    range: ABOVE_ZERO,
  },
  height: {
    form: 'value',
    kind: 'length',
    symbol: 'h',
    meaning: 'height of the centre of mass above the ground',
    range: ABOVE_ZERO,
  },
  ...GRAVITY_INPUT,
} as const satisfies Params;

/**
 * Sideways acceleration at which a wheel lifts.
 *
 * Errors: lengths not above zero, centre of mass not between the axles, wheels other than three or four.
 */
export const sidewaysLimit = defineMethod({
  id,
  gives: 'Sideways acceleration at which a three- or four-wheeler lifts a wheel',
  inputs,
  outputs: {
    acceleration: {
      form: 'value',
      kind: 'acceleration',
      symbol: 'a_y',
      meaning: 'sideways acceleration that lifts a wheel',
    },
    parts: { form: 'value', kind: 'ratio', symbol: 'n', meaning: 'the same over free fall' },
    halfWidth: {
      form: 'value',
      kind: 'length',
      symbol: 'c',
      meaning: 'from the middle to the edge of the support, level with the centre of mass',
    },
  },
  results: ['acceleration', 'parts', 'halfWidth'],
  steps: [
    {
      key: 'halfWidth',
      is: choose(
        [branch(when('wheels', '=', 3), div(mul('track', 'fromSingle'), mul(2, 'wheelbase')))],
        div('track', 2),
      ),
      says: 'The support of three wheels is a triangle, narrow at the single wheel.',
    },
    {
      key: 'parts',
      is: div('halfWidth', 'height'),
      says: 'The load point leaves the support when it moves that far sideways.',
    },
    { key: 'acceleration', is: mul('parts', 'gravity'), says: 'In units of acceleration.' },
  ],
  sources: [
    {
      title: 'Three Wheeled Vehicle Dynamics (Huston, Graves, Johnson)',
      edition: 'SAE 820139, 1982',
      at: 'abstract; the formula is derived here',
      how: 'read',
    },
  ],
  holds: ['Rigid vehicle on level ground, neither braking nor speeding up: both make it worse, one for each layout.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { wheels, wheelbase, track, fromSingle, height, gravity } = input;
    if (!(fromSingle < wheelbase))
      throw new MethodError(
        id,
        'fromSingle',
        `Centre of mass from the axle: ${fromSingle} m read; less than the wheelbase, ${wheelbase} m, is accepted.`,
      );
    const halfWidth = wheels === 3 ? (track * fromSingle) / (2 * wheelbase) : track / 2;
    const parts = halfWidth / height;
    return { acceleration: parts * gravity, parts, halfWidth };
  },
});
