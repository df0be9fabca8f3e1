import { add, div, type Expr, fn, mul, PI, sub, type Term } from '../method/expr.ts';
import type { Params, Source, Step } from '../method/method.ts';
import { ABOVE_ZERO } from '../numerics/refuse.ts';

/** Inputs that every method of a two-sprocket drive shares. */
export const DRIVE_INPUTS = {
  pitch: { form: 'value', kind: 'length', symbol: 'p', meaning: 'chain pitch', range: ABOVE_ZERO },
  teethDriver: { form: 'integer', symbol: 'N_1', meaning: 'teeth of the driver', range: { min: 6 } },
  teethDriven: { form: 'integer', symbol: 'N_2', meaning: 'teeth of the driven sprocket', range: { min: 6 } },
} as const satisfies Params;

/** Shape of an open two-sprocket drive, the same for a given centre distance and for given links. */
export const DRIVE_OUTPUTS = {
  span: { form: 'value', kind: 'length', symbol: 's', meaning: 'length of each straight span' },
  tangentAngle: {
    form: 'value',
    kind: 'angle',
    symbol: 'a',
    meaning: 'angle between a straight span and the line of centres',
  },
  wrapDriver: { form: 'value', kind: 'angle', symbol: 'θ_1', meaning: 'wrap of the chain on the driver' },
  wrapDriven: { form: 'value', kind: 'angle', symbol: 'θ_2', meaning: 'wrap of the chain on the driven sprocket' },
  pitchRadiusDriver: { form: 'value', kind: 'length', symbol: 'R_1', meaning: 'pitch radius of the driver' },
  pitchRadiusDriven: { form: 'value', kind: 'length', symbol: 'R_2', meaning: 'pitch radius of the driven sprocket' },
} as const satisfies Params;

/** Radius through the pins of a sprocket. */
export const radiusTree = (teeth: Term): Expr => div('pitch', mul(2, fn('sin', div(PI, teeth))));

export const RADIUS_STEPS: readonly Step[] = [
  { key: 'pitchRadiusDriver', is: radiusTree('teethDriver'), says: 'The pins of the driver lie on this radius.' },
  {
    key: 'pitchRadiusDriven',
    is: radiusTree('teethDriven'),
    says: 'The pins of the driven sprocket lie on this radius.',
  },
];

export const TANGENT_STEP: Step = {
  key: 'tangentAngle',
  is: fn('asin', div(sub('pitchRadiusDriven', 'pitchRadiusDriver'), 'centreDistance')),
  says: 'A straight span leans this much toward the line of centres.',
};

export const SHAPE_STEPS: readonly Step[] = [
  {
    key: 'span',
    is: mul('centreDistance', fn('cos', 'tangentAngle')),
    says: 'Straight part between the two sprockets.',
  },
  { key: 'wrapDriver', is: sub(PI, mul(2, 'tangentAngle')), says: 'Wrap on the driver.' },
  { key: 'wrapDriven', is: add(PI, mul(2, 'tangentAngle')), says: 'Wrap on the driven sprocket.' },
];

/** Links over both spans and both arcs; an arc counts as its share of the teeth. */
export const LINKS_TREE: Expr = add(
  div(mul(2, 'centreDistance', fn('cos', 'tangentAngle')), 'pitch'),
  div(mul('teethDriver', sub(PI, mul(2, 'tangentAngle'))), mul(2, PI)),
  div(mul('teethDriven', add(PI, mul(2, 'tangentAngle'))), mul(2, PI)),
);

export const EXACT_SOURCES: readonly Source[] = [
  {
    title:
      'Geometry of an open drive; a taut chain of rigid links over two polygons, solved over all positions, needs this centre distance on average',
    how: 'derived',
  },
  {
    title: 'Machine Elements in Mechanical Design (R. L. Mott)',
    edition: '4th',
    at: 'Example Problem 7-3, for comparison',
    how: 'read',
  },
];

export const DRIVE_HOLDS: readonly string[] = [
  'Open drive on two sprockets in one plane; both spans are straight and taut.',
  'As the links climb the teeth the need swings by a few thousandths of a pitch about this value.',
  'Tooth tips are taken by ASME B29.1; sprockets whose tips would touch are refused.',
];
