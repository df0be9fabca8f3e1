import type { Vec3 } from '@oddwheel/quantity/quantity';
import { add, type Expr, fn, mul, neg, pow, sub, sym, type Term } from '../method/expr.ts';
import type { Params, Source, Step } from '../method/method.ts';
import { ABOVE_ZERO } from '../numerics/refuse.ts';

/**
 * A swinging arm seen from its left side, in vehicle axes: x forward, z up. The arm angle counts from the arm lying level behind its
 * pivot, positive with the axle above the pivot; an arm that leads stands near half a turn.
 */
export const ARM_INPUTS = {
  pivot: { form: 'vector', kind: 'length', symbol: 'o', meaning: 'pivot of the arm; only x and z count' },
  sprocket: {
    form: 'vector',
    kind: 'length',
    symbol: 'f',
    meaning: 'centre of the sprocket that does not move with the arm; only x and z count',
  },
  armLength: { form: 'value', kind: 'length', symbol: 'S', meaning: 'arm length, pivot to axle', range: ABOVE_ZERO },
} as const satisfies Params;

export const ARM_ANGLE_RANGE = { min: -Math.PI, max: Math.PI } as const;

export const IN_LINE_OUTPUTS = {
  offset: { form: 'value', kind: 'length', symbol: 'e', meaning: 'distance from the pivot to the fixed sprocket' },
  inLineAngle: {
    form: 'value',
    kind: 'angle',
    symbol: 'α_m',
    meaning: 'arm angle at which sprocket, pivot and axle lie in line, the pivot between the others',
  },
} as const satisfies Params;

const ahead = sub(sym('sprocket', 0), sym('pivot', 0));
const above = sub(sym('sprocket', 2), sym('pivot', 2));

export const IN_LINE_STEPS: readonly Step[] = [
  {
    key: 'offset',
    is: fn('sqrt', add(pow(ahead, 2), pow(above, 2))),
    says: 'How far the sprocket sits off the pivot.',
  },
  {
    key: 'inLineAngle',
    is: fn('atan2', neg(above), ahead),
    says: 'The axle points straight away from the sprocket; at a sprocket on the pivot every angle will do.',
  },
];

/** Centre distance by the law of cosines, the angle counted from the in-line place. */
export function centreTree(armLength: Term, angle: Term): Expr {
  return fn(
    'sqrt',
    add(pow('offset', 2), pow(armLength, 2), mul(2, 'offset', armLength, fn('cos', sub(angle, 'inLineAngle')))),
  );
}

export const ARM_SOURCES: readonly Source[] = [
  {
    title: 'Chain on a swinging arm: the centres are farthest apart with sprocket, pivot and axle in line',
    at: 'motorcycle chain adjustment, article on final drives',
    how: 'read',
  },
  { title: 'Law of cosines in the triangle of sprocket, pivot and axle', how: 'derived' },
];

/** Place of the sprocket as seen from the pivot. */
export interface InLine {
  /** m */
  readonly offset: number;
  /** rad */
  readonly inLineAngle: number;
}

/** Offset of the sprocket from the pivot, and the arm angle at which the centres are farthest apart. */
export function inLine(pivot: Vec3, sprocket: Vec3): InLine {
  const [dx, dz] = [sprocket[0] - pivot[0], sprocket[2] - pivot[2]];
  // Adding zero turns −0 into 0, which would put the angle of a level sprocket half a turn off.
  return { offset: Math.sqrt(dx * dx + dz * dz), inLineAngle: Math.atan2(-dz + 0, dx) };
}

/** Centre distance at an arm angle, m. */
export function centreAt({ offset, inLineAngle }: InLine, armLength: number, angle: number): number {
  // Rounding may leave a little less than nothing where the axle lies on the sprocket.
  return Math.sqrt(Math.max(0, offset ** 2 + armLength ** 2 + 2 * offset * armLength * Math.cos(angle - inLineAngle)));
}

/** An angle brought into −180..180 degrees, rad. */
export function wrapped(angle: number): number {
  return Math.atan2(Math.sin(angle), Math.cos(angle));
}
