import { add, div, type Expr, fn, mul, PI, sub } from '../method/expr.ts';
import type { Params, Source, Step } from '../method/method.ts';
import { ABOVE_ZERO } from '../numerics/refuse.ts';

export const BELT_INPUTS = {
  pitch: { form: 'value', kind: 'length', symbol: 'p', meaning: 'belt pitch', range: ABOVE_ZERO },
  teethDriver: { form: 'integer', symbol: 'z_1', meaning: 'teeth of the driver pulley', range: { min: 8 } },
  teethDriven: { form: 'integer', symbol: 'z_2', meaning: 'teeth of the driven pulley', range: { min: 8 } },
} as const satisfies Params;

/** Shape of an open toothed-belt drive. */
export const BELT_OUTPUTS = {
  span: { form: 'value', kind: 'length', symbol: 's', meaning: 'length of each straight span' },
  tangentAngle: {
    form: 'value',
    kind: 'angle',
    symbol: 'a',
    meaning: 'angle between a straight span and the line of centres',
  },
  wrapDriver: { form: 'value', kind: 'angle', symbol: 'θ_1', meaning: 'wrap of the belt on the driver' },
  wrapDriven: { form: 'value', kind: 'angle', symbol: 'θ_2', meaning: 'wrap of the belt on the driven pulley' },
  pitchRadiusDriver: { form: 'value', kind: 'length', symbol: 'R_1', meaning: 'pitch radius of the driver' },
  pitchRadiusDriven: { form: 'value', kind: 'length', symbol: 'R_2', meaning: 'pitch radius of the driven pulley' },
} as const satisfies Params;

export const RADIUS_STEPS: readonly Step[] = [
  {
    key: 'pitchRadiusDriver',
    is: div(mul('pitch', 'teethDriver'), mul(2, PI)),
    says: 'A belt bends on a circle: its pitch line goes round in as many pitches as there are teeth.',
  },
  {
    key: 'pitchRadiusDriven',
    is: div(mul('pitch', 'teethDriven'), mul(2, PI)),
    says: 'The same for the driven pulley.',
  },
];

export const TANGENT_STEP: Step = {
  key: 'tangentAngle',
  is: fn('asin', div(sub('pitchRadiusDriven', 'pitchRadiusDriver'), 'centreDistance')),
  says: 'A straight span leans this much toward the line of centres.',
};

export const SHAPE_STEPS: readonly Step[] = [
  { key: 'span', is: mul('centreDistance', fn('cos', 'tangentAngle')), says: 'Straight part between the two pulleys.' },
  { key: 'wrapDriver', is: sub(PI, mul(2, 'tangentAngle')), says: 'Wrap on the driver.' },
  { key: 'wrapDriven', is: add(PI, mul(2, 'tangentAngle')), says: 'Wrap on the driven pulley.' },
];

/** Both spans, and each arc as radius times angle. */
export const LENGTH_TREE: Expr = add(
  mul(2, 'centreDistance', fn('cos', 'tangentAngle')),
  mul('pitchRadiusDriver', sub(PI, mul(2, 'tangentAngle'))),
  mul('pitchRadiusDriven', add(PI, mul(2, 'tangentAngle'))),
);

export const BELT_SOURCES: readonly Source[] = [
  { title: 'Geometry of an open belt on two circles; pitches of ISO 5296 and ISO 13050', how: 'memory' },
];

export const BELT_HOLDS: readonly string[] = [
  'Open drive on two pulleys in one plane; both spans are straight and taut.',
  'Pulleys whose pitch circles would touch are refused.',
];
