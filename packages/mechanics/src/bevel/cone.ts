import { add, div, type Expr, fn } from '../method/expr.ts';
import { MethodError, type Params, type Source, type Step } from '../method/method.ts';

const RIGHT_ANGLE = Math.PI / 2;
/** Rounding of the arc tangent, far below any angle that can be measured. */
const ROUNDING = 1e-9;

export const PAIR_INPUTS = {
  teethDriver: { form: 'integer', symbol: 'z_1', meaning: 'teeth of the driver', range: { min: 5 } },
  teethDriven: { form: 'integer', symbol: 'z_2', meaning: 'teeth of the driven gear', range: { min: 5 } },
  shaftAngle: {
    form: 'value',
    kind: 'angle',
    symbol: 'Σ',
    meaning: 'shaft angle, between the two axes on the sides where the gears stand',
    range: { min: 0, max: Math.PI, open: true },
  },
} as const satisfies Params;

export const ANGLE_OUTPUTS = {
  pitchAngleDriver: { form: 'value', kind: 'angle', symbol: 'δ_1', meaning: 'pitch angle of the driver' },
  pitchAngleDriven: { form: 'value', kind: 'angle', symbol: 'δ_2', meaning: 'pitch angle of the driven gear' },
} as const satisfies Params;

const angleTree = (mate: string, own: string): Expr =>
  fn('atan2', fn('sin', 'shaftAngle'), add(div(mate, own), fn('cos', 'shaftAngle')));

export const ANGLE_STEPS: readonly Step[] = [
  {
    key: 'pitchAngleDriver',
    is: angleTree('teethDriven', 'teethDriver'),
    says: 'The two pitch cones roll on each other without slip and share the shaft angle.',
  },
  { key: 'pitchAngleDriven', is: angleTree('teethDriver', 'teethDriven'), says: 'The rest of the shaft angle.' },
];

export const CONE_SOURCES: readonly Source[] = [
  { title: "Machinery's Handbook", at: 'bevel gearing, any shaft angle', how: 'memory' },
  {
    title: 'Machine Elements in Mechanical Design (R. L. Mott)',
    edition: '4th',
    at: 'Example Problem 8-6',
    how: 'read',
  },
];

/**
 * Pitch angle of one gear of a bevel pair, rad.
 *
 * @throws MethodError when the pitch cone opens beyond a flat disc: such a gear would have to be an internal bevel.
 */
export function pitchAngle(
  method: string,
  who: 'driver' | 'driven gear',
  teethOwn: number,
  teethMate: number,
  shaftAngle: number,
): number {
  const angle = Math.atan2(Math.sin(shaftAngle), teethMate / teethOwn + Math.cos(shaftAngle));
  if (angle <= RIGHT_ANGLE + ROUNDING) return angle;
  throw new MethodError(
    method,
    'shaftAngle',
    `At a shaft angle of ${shaftAngle} rad the ${who} with ${teethOwn} teeth against ${teethMate} would be an internal bevel gear, ` +
      `pitch angle ${angle} rad; a pitch angle of at most ${RIGHT_ANGLE} rad is accepted.`,
  );
}
