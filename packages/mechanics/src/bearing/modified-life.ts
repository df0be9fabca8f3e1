import { branch, choose, div, fn, mul, num, pow, sub, when } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'bearing.conditionFactor';

const inputs = {
  viscosityRatio: {
    form: 'value',
    kind: 'number',
    symbol: 'κ',
    meaning: 'viscosity ratio',
    range: { min: 0.1 },
  },
  contamination: {
    form: 'value',
    kind: 'number',
    symbol: 'e_C',
    meaning: 'factor of dirt: 1 for clean, toward 0 for dirt from outside',
    range: { min: 0, max: 1 },
  },
  fatigueLimit: { form: 'value', kind: 'force', symbol: 'C_u', meaning: 'fatigue load limit', range: ABOVE_ZERO },
  load: { form: 'value', kind: 'force', symbol: 'P', meaning: 'equivalent dynamic load', range: ABOVE_ZERO },
  element: {
    form: 'choice',
    symbol: 'b',
    meaning: 'rolling element',
    choices: ['ball', 'roller'],
    default: 'ball',
  },
} as const satisfies Params;

/** First figure, exponent of the load term and outer exponent; then figure and exponent of κ in its three ranges. */
const FIGURES = {
  ball: {
    whole: 2.5671,
    root: 0.83,
    load: 1 / 3,
    outer: -9.3,
    ranges: [
      [2.2649, 0.054381],
      [1.9987, 0.19087],
      [1.9987, 0.071739],
    ],
  },
  roller: {
    whole: 1.5859,
    root: 1,
    load: 0.4,
    outer: -9.185,
    ranges: [
      [1.3993, 0.054381],
      [1.2348, 0.19087],
      [1.2348, 0.071739],
    ],
  },
} as const;
const MOST = 50;
const MOST_RATIO = 4;

/**
 * Life factor of lubrication, dirt and fatigue limit for radial bearings; at most 50.
 *
 * Errors: viscosity ratio below 0.1, where the method does not apply; loads not above zero.
 */
export const conditionFactor = defineMethod({
  id,
  gives: 'Life factor of a radial bearing from lubrication, dirt and load',
  inputs,
  outputs: {
    factor: { form: 'value', kind: 'number', symbol: 'a_ISO', meaning: 'life factor of the conditions' },
    ratioUsed: { form: 'value', kind: 'number', symbol: 'κ_u', meaning: 'viscosity ratio used, at most 4' },
    stressRatio: { form: 'value', kind: 'number', symbol: 'x', meaning: 'dirt factor times fatigue limit over load' },
    figure: { form: 'value', kind: 'number', symbol: 'A', meaning: 'figure of the range of the viscosity ratio' },
    slope: { form: 'value', kind: 'number', symbol: 'm', meaning: 'exponent of that range' },
    whole: { form: 'value', kind: 'number', symbol: 'B', meaning: 'first figure of the rolling element' },
    root: { form: 'value', kind: 'number', symbol: 'r', meaning: 'exponent of the bracket' },
    loadExponent: { form: 'value', kind: 'number', symbol: 's', meaning: 'exponent of the load term' },
    outer: { form: 'value', kind: 'number', symbol: 't', meaning: 'outer exponent' },
    bracket: { form: 'value', kind: 'number', symbol: 'y', meaning: 'bracket' },
  },
  results: ['factor'],
  steps: [
    { key: 'ratioUsed', is: fn('min', 'viscosityRatio', num(MOST_RATIO)), says: 'A ratio over 4 counts as 4.' },
    {
      key: 'stressRatio',
      is: div(mul('contamination', 'fatigueLimit'), 'load'),
      says: 'How far the load is from fatigue, with dirt.',
    },
    {
      key: 'bracket',
      is: sub(
        1,
        mul(pow(sub('whole', div('figure', pow('ratioUsed', 'slope'))), 'root'), pow('stressRatio', 'loadExponent')),
      ),
      says: 'With the figures of the standard for this rolling element and range.',
    },
    {
      key: 'factor',
      is: choose(
        [branch(when('bracket', '<=', num(0)), num(MOST))],
        fn('min', num(MOST), mul(0.1, pow(fn('max', 'bracket', num(1e-6)), 'outer'))),
      ),
      says: 'At most 50.',
    },
  ],
  sources: [
    { title: 'ISO 281:2007', at: 'clause 9.3.3, equations for radial ball and roller bearings', how: 'memory' },
    { title: 'A maker’s catalogue of 2018', at: 'two worked values of the factor', how: 'read' },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { whole, root, load: loadExponent, outer, ranges } = FIGURES[input.element];
    const ratioUsed = Math.min(input.viscosityRatio, MOST_RATIO);
    const [figure, slope] = ratioUsed < 0.4 ? ranges[0] : ratioUsed < 1 ? ranges[1] : ranges[2];
    const stressRatio = (input.contamination * input.fatigueLimit) / input.load;
    const bracket = 1 - (whole - figure / ratioUsed ** slope) ** root * stressRatio ** loadExponent;
    const factor = bracket <= 0 ? MOST : Math.min(MOST, 0.1 * Math.max(bracket, 1e-6) ** outer);
    return { factor, ratioUsed, stressRatio, figure, slope, whole, root, loadExponent, outer, bracket };
  },
});
