import { add, div, mul, pow, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'shaft.shoulder';

const inputs = {
  large: { form: 'value', kind: 'length', symbol: 'D', meaning: 'larger diameter', range: ABOVE_ZERO },
  small: { form: 'value', kind: 'length', symbol: 'd', meaning: 'smaller diameter', range: ABOVE_ZERO },
  radius: { form: 'value', kind: 'length', symbol: 'r', meaning: 'radius of the fillet', range: ABOVE_ZERO },
  load: { form: 'choice', symbol: 'w', meaning: 'what loads it', choices: ['bending', 'torsion'], default: 'bending' },
} as const satisfies Params;

/** Larger over smaller diameter, figure, exponent: rising. */
const FITS = {
  bending: [
    [1.01, 0.91938, -0.17032],
    [1.02, 0.96048, -0.17711],
    [1.03, 0.98061, -0.18381],
    [1.05, 0.98137, -0.19653],
    [1.07, 0.97527, -0.20958],
    [1.1, 0.9512, -0.23757],
    [1.2, 0.97098, -0.21796],
    [1.5, 0.93836, -0.25759],
    [2, 0.90879, -0.28598],
    [3, 0.89334, -0.3086],
    [6, 0.87868, -0.33243],
  ],
  torsion: [
    [1.09, 0.90337, -0.12692],
    [1.2, 0.83425, -0.21649],
    [1.33, 0.84897, -0.23161],
    [2, 0.86331, -0.23865],
  ],
} as const;
const LEAST = 0.01;
const MOST = 0.3;

/**
 * Stress concentration of a shoulder with a fillet, on the stress in the smaller diameter. Between the printed ratios of diameters the fits are taken straight;
 * outside them the end row counts.
 *
 * Errors: a larger diameter that is not larger, a radius outside 0.01 to 0.3 of the smaller diameter: the fits do not reach there.
 */
export const shaftShoulder = defineMethod({
  id,
  gives: 'Stress concentration of a shoulder with a fillet',
  inputs,
  outputs: {
    factor: { form: 'value', kind: 'number', symbol: 'K_t', meaning: 'stress concentration by shape' },
    part: { form: 'value', kind: 'number', symbol: 'x', meaning: 'part of the way between two rows' },
    lowerFigure: { form: 'value', kind: 'number', symbol: 'A_a', meaning: 'figure of the row below' },
    upperFigure: { form: 'value', kind: 'number', symbol: 'A_b', meaning: 'figure of the row above' },
    lowerExponent: { form: 'value', kind: 'number', symbol: 'b_a', meaning: 'exponent of the row below' },
    upperExponent: { form: 'value', kind: 'number', symbol: 'b_b', meaning: 'exponent of the row above' },
    figure: { form: 'value', kind: 'number', symbol: 'A', meaning: 'figure' },
    exponent: { form: 'value', kind: 'number', symbol: 'b', meaning: 'exponent' },
  },
  results: ['factor'],
  steps: [
    {
      key: 'figure',
      is: add('lowerFigure', mul('part', sub('upperFigure', 'lowerFigure'))),
      says: 'Straight between the two ratios of diameters next to this one.',
    },
    {
      key: 'exponent',
      is: add('lowerExponent', mul('part', sub('upperExponent', 'lowerExponent'))),
      says: 'The same.',
    },
    {
      key: 'factor',
      is: mul('figure', pow(div('radius', 'small'), 'exponent')),
      says: 'A sharp fillet concentrates stress.',
    },
  ],
  sources: [
    {
      title: 'Machine Design (R. L. Norton)',
      at: 'appendix C, fits of Peterson’s charts for shouldered shafts',
      how: 'memory',
    },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const ratio = input.large / input.small;
    if (!(ratio > 1))
      throw new MethodError(id, 'large', `A larger diameter of ${input.large} m is not larger than ${input.small} m.`);
    const sharp = input.radius / input.small;
    if (!(sharp >= LEAST && sharp <= MOST))
      throw new MethodError(
        id,
        'radius',
        `A fillet of ${sharp.toPrecision(3)} times the diameter lies outside the fits, which hold from ${LEAST} to ${MOST}.`,
      );
    const rows = FITS[input.load];
    const above = rows.findIndex(([row]) => row >= ratio);
    const k = above < 0 ? rows.length - 2 : Math.max(0, above - 1);
    const [low, lowerFigure, lowerExponent] = rows[k] as (typeof rows)[number];
    const [high, upperFigure, upperExponent] = rows[k + 1] as (typeof rows)[number];
    const part = Math.min(1, Math.max(0, (ratio - low) / (high - low)));
    const figure = lowerFigure + part * (upperFigure - lowerFigure);
    const exponent = lowerExponent + part * (upperExponent - lowerExponent);
    return {
      factor: figure * sharp ** exponent,
      part,
      lowerFigure,
      upperFigure,
      lowerExponent,
      upperExponent,
      figure,
      exponent,
    };
  },
});
