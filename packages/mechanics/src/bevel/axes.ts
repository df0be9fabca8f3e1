import type { Vec3 } from '@oddwheel/quantity/quantity';
import { div, norm as normTree } from '../method/expr.ts';
import { MethodError, type Params, type Step } from '../method/method.ts';
import { norm } from '../numerics/vector.ts';

/** Below this sine of the angle between them two axes count as parallel. */
const LEAST_SINE = 1e-6;

export const DIRECTION_INPUTS = {
  directionDriver: {
    form: 'vector',
    kind: 'number',
    symbol: 'u_1',
    meaning: 'positive direction of the driver’s shaft',
  },
  directionDriven: { form: 'vector', kind: 'number', symbol: 'u_2', meaning: 'positive direction of the driven shaft' },
} as const satisfies Params;

export const AXIS_OUTPUTS = {
  axisDriver: { form: 'vector', kind: 'number', symbol: 'a_1', meaning: 'unit direction of the driver’s shaft' },
  axisDriven: { form: 'vector', kind: 'number', symbol: 'a_2', meaning: 'unit direction of the driven shaft' },
  normal: { form: 'vector', kind: 'number', symbol: 'n', meaning: 'vector square to both axes' },
} as const satisfies Params;

export const AXIS_STEPS: readonly Step[] = [
  { key: 'axisDriver', is: div('directionDriver', normTree('directionDriver')), says: 'Direction of length one.' },
  { key: 'axisDriven', is: div('directionDriven', normTree('directionDriven')), says: 'Direction of length one.' },
];

/**
 * Unit vector of a shaft's direction.
 * @throws MethodError when the direction has no length.
 */
export function axisOf(method: string, input: keyof typeof DIRECTION_INPUTS, direction: Vec3): Vec3 {
  const length = norm(direction);
  if (length > 0) return [direction[0] / length, direction[1] / length, direction[2] / length];
  const { meaning } = DIRECTION_INPUTS[input];
  throw new MethodError(method, input, `The ${meaning} must not be zero; read [${direction.join(', ')}].`);
}

/**
 * @throws MethodError when two shafts are parallel, so that their axes have no apex.
 */
export function refuseParallel(method: string, normal: Vec3): void {
  if (norm(normal) > LEAST_SINE) return;
  throw new MethodError(
    method,
    'directionDriven',
    'The two shafts are parallel: a bevel pair needs axes that meet at an angle.',
  );
}
