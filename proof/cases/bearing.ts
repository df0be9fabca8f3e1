import type { ProofCase } from './case.ts';
import { mott, shigley } from './sources.ts';

const STORE = 'github.com/ArtemFilin1990/Mar, commit 7b871a5';
const ball = (at: string) =>
  ({ title: 'Ball and Roller Bearings, catalogue 2203/E', at, how: 'read', address: STORE }) as const;
const rolling = (at: string) =>
  ({ title: 'Rolling bearings, catalogue 17000/1 EN', edition: '2018', at, how: 'read', address: STORE }) as const;

/** ISO 281:2007, table 3, normal clearance, as both catalogues restate it. */
const ROWS = {
  rowLoads: [0.172, 0.345, 0.689, 1.03, 1.38, 2.07, 3.45, 5.17, 6.89],
  rowE: [0.19, 0.22, 0.26, 0.28, 0.3, 0.34, 0.38, 0.42, 0.44],
  rowY: [2.3, 1.99, 1.71, 1.55, 1.45, 1.31, 1.15, 1.04, 1],
  x: 0.56,
};
const HOURS = 3600;

export const BEARING_CASES: readonly ProofCase[] = [
  {
    method: 'bearing.ratingLife',
    id: 'bearing-life-6208-radial',
    given: { rating: '32.5 kN', load: '3.2 kN', speed: '650 rpm' },
    expect: { time: { value: 27000 * HOURS, within: { rel: 0.02 } } },
    source: ball('section 4.5, example 1'),
    kind: 'published-example',
    note: 'The source reads about 27 000 h off a chart.',
  },
  {
    method: 'bearing.equivalentLoad',
    id: 'bearing-load-6208-radial-and-axial',
    given: { radial: '3.2 kN', axial: '1.8 kN', staticRating: '17.8 kN', f0: 14, ...ROWS },
    expect: {
      relative: { value: 1.42, within: { rel: 0.005 } },
      e: { value: 0.3, within: { abs: 0.005 } },
      y: { value: 1.44, within: { abs: 0.01 } },
      load: { value: '4.38 kN', within: { rel: 0.005 } },
    },
    source: ball('section 4.5, example 2'),
    kind: 'published-example',
  },
  {
    method: 'bearing.ratingLife',
    id: 'bearing-life-6208-radial-and-axial',
    given: { rating: '32.5 kN', load: '4.38 kN', speed: '650 rpm' },
    expect: { time: { value: 10500 * HOURS, within: { rel: 0.02 } } },
    source: ball('section 4.5, example 2'),
    kind: 'published-example',
    note: 'The source rounds its speed and life factors.',
  },
  {
    method: 'bearing.ratingLife',
    id: 'bearing-life-6208-second-maker',
    given: { rating: '29.1 kN', load: '2.5 kN', speed: '900 rpm' },
    expect: { time: { value: 29000 * HOURS, within: { rel: 0.02 } } },
    source: {
      title: 'A maker’s catalogue of rolling bearings',
      at: 'section 5.7, example 1',
      how: 'read',
      address: STORE,
    },
    kind: 'published-example',
  },
  {
    method: 'bearing.ratingLife',
    id: 'bearing-life-rope-sheave',
    given: { rating: '27 kN', load: '0.55 kN', speed: '2450 rpm' },
    expect: { time: { value: 804800 * HOURS, within: { rel: 0.005 } } },
    source: rolling('worked case of a rope sheave'),
    kind: 'published-example',
  },
  {
    method: 'bearing.ratingLife',
    id: 'bearing-rating-shigley-11-1',
    given: { rating: '16.1 kN', load: '2 kN', speed: '1725 rpm' },
    expect: { time: { value: 5000 * HOURS, within: { rel: 0.01 } } },
    source: shigley('memory', '9th', 'Example 11-1'),
    kind: 'published-example',
    note: 'The source asks for the rating that lasts 5000 h and finds 16.1 kN.',
  },
  {
    method: 'bearing.ratingLife',
    id: 'bearing-life-three-steps-mott-14-6',
    given: { rating: '7050 lbf', load: '597 lbf', speed: '600 rpm' },
    expect: { turns: { value: 1.647e9, within: { rel: 0.005 } } },
    source: mott('Example Problem 14-6'),
    kind: 'published-example',
    note: 'The mean load is printed; the life was computed anew.',
  },
  {
    method: 'bearing.ratingLife',
    id: 'bearing-life-chart-1000-rpm',
    given: { rating: '58 kN', load: '5 kN', speed: '1000 rpm' },
    expect: { time: { value: 25000 * HOURS, within: { rel: 0.05 } } },
    source: {
      title: 'General technical catalogue 011',
      at: 'rating life, chart example 1',
      how: 'read',
      address: STORE,
    },
    kind: 'published-example',
    note: 'The source reads 58 kN off a chart.',
  },
  {
    method: 'bearing.viscosityRatio',
    id: 'bearing-viscosity-rope-sheave',
    given: { speed: '2450 rpm', bore: '35 mm', outside: '72 mm', viscosity: '12 mm2/s' },
    expect: { wanted: { value: '12 mm2/s', within: { rel: 0.05 } }, ratio: { value: 1, within: { abs: 0.05 } } },
    source: rolling('worked case of a rope sheave'),
    kind: 'published-example',
    note: 'The source reads both off a diagram.',
  },
  {
    method: 'bearing.conditionFactor',
    id: 'bearing-conditions-rope-sheave',
    given: { viscosityRatio: 1, contamination: 0.6, fatigueLimit: '0.655 kN', load: '0.55 kN' },
    expect: { factor: { value: 50, within: { rel: 1e-12 } } },
    source: rolling('worked case of a rope sheave'),
    kind: 'published-example',
  },
  {
    method: 'bearing.conditionFactor',
    id: 'bearing-conditions-second-case',
    given: { viscosityRatio: 1.8, contamination: 0.2, fatigueLimit: '6.4 kN', load: '11.52 kN' },
    expect: { factor: { value: 5, within: { rel: 0.12 } } },
    source: rolling('worked case C.3'),
    kind: 'published-example',
    note: 'The source reads 5 off its own diagram; the standard’s equation gives 4.55.',
  },
  {
    method: 'bearing.dutyLoad',
    id: 'bearing-duty-five-steps',
    given: {
      loads: ['18.32 kN', '31.28 kN', '48.26 kN', '57.42 kN', '78.2 kN'],
      turns: [5 * 1200, 10 * 1000, 60 * 800, 15 * 600, 10 * 400],
      exponent: 10 / 3,
    },
    expect: { load: { value: '50 kN', within: { rel: 0.005 } } },
    source: ball('section 4.5, example 5'),
    kind: 'published-example',
  },
  {
    method: 'bearing.dutyLoad',
    id: 'bearing-duty-three-steps-mott-14-6',
    given: { loads: ['650 lbf', '750 lbf', '250 lbf'], turns: [30, 10, 20] },
    expect: { load: { value: '597 lbf', within: { rel: 0.001 } } },
    source: mott('Example Problem 14-6'),
    kind: 'published-example',
  },
  {
    method: 'bearing.dutyLoad',
    id: 'bearing-duty-two-steps',
    given: { loads: ['45 kN', '18.7125 kN'], turns: [120, 480] },
    expect: { load: { value: '28.63 kN', within: { rel: 0.002 } } },
    source: { title: 'Design of Machine Elements (V. B. Bhandari)', at: 'chapter 15, a work cycle', how: 'memory' },
    kind: 'published-example',
    note: 'Data recalled; the answer was computed anew.',
  },
  {
    method: 'bearing.axialPair',
    id: 'bearing-pair-gear-shaft',
    given: { radial1: '5.98 kN', radial2: '4.18 kN', y1: 2.06, y2: 2.07, thrust: 0 },
    expect: {
      own1: { value: '1.45 kN', within: { rel: 0.005 } },
      own2: { value: '1.01 kN', within: { rel: 0.005 } },
      axial2: { value: '1.45 kN', within: { rel: 0.005 } },
    },
    source: ball('section 4.5, example 4'),
    kind: 'published-example',
  },
  {
    method: 'bearing.staticSafety',
    id: 'bearing-static-mostly-radial',
    given: { radial: '3.2 kN', axial: '1.8 kN', staticRating: '19 kN' },
    expect: { load: { value: '3.2 kN', within: { rel: 1e-9 } }, reserve: { value: 5.94, within: { rel: 0.005 } } },
    source: rolling('p. 254, formula'),
    kind: 'constructed',
  },
  {
    method: 'bearing.staticSafety',
    id: 'bearing-static-mostly-axial',
    given: { radial: '1 kN', axial: '3 kN', staticRating: '7.8 kN' },
    expect: { load: { value: '2.1 kN', within: { rel: 1e-9 } }, reserve: { value: 3.71, within: { rel: 0.005 } } },
    source: rolling('p. 254, formula'),
    kind: 'constructed',
  },
  {
    method: 'bearing.minimumLoad',
    id: 'bearing-minimum-6205',
    given: { factor: 0.025, viscosity: '50 mm2/s', speed: '3000 rpm', bore: '25 mm', outside: '52 mm' },
    expect: { load: { value: '0.105 kN', within: { rel: 0.005 } } },
    source: rolling('p. 254, formula'),
    kind: 'constructed',
  },
];
