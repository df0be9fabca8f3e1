import { add, div, type Expr, fn, mul, num, pow, sub } from '../method/expr.ts';
import { MethodError, type Params, type Source } from '../method/method.ts';
import { ABOVE_ZERO } from '../numerics/refuse.ts';

const youngs = (symbol: string, meaning: string) =>
  ({ form: 'value', kind: 'pressure', symbol, meaning, range: ABOVE_ZERO }) as const;
const poisson = (symbol: string, meaning: string) =>
  ({ form: 'value', kind: 'number', symbol, meaning, range: { min: 0, max: 0.5 }, default: 0.3 }) as const;

/** Sizes of a hub on a shaft, either of them of its own metal. */
export const SIZES = {
  diameter: { form: 'value', kind: 'length', symbol: 'd', meaning: 'diameter of the joint', range: ABOVE_ZERO },
  outside: { form: 'value', kind: 'length', symbol: 'd_o', meaning: 'outside diameter of the hub', range: ABOVE_ZERO },
  bore: {
    form: 'value',
    kind: 'length',
    symbol: 'd_i',
    meaning: 'bore of the shaft, 0 where it is solid',
    range: { min: 0 },
    default: 0,
  },
} as const satisfies Params;

/** Interference and metals of a hub on a shaft. */
export const JOINED = {
  interference: { form: 'value', kind: 'length', symbol: 'δ_w', meaning: 'interference that presses, on the diameter' },
  ...SIZES,
  hubYoungs: youngs('E_o', 'modulus of elasticity of the hub'),
  shaftYoungs: youngs('E_i', 'modulus of elasticity of the shaft'),
  hubPoisson: poisson('ν_o', 'Poisson’s ratio of the hub'),
  shaftPoisson: poisson('ν_i', 'Poisson’s ratio of the shaft'),
} as const satisfies Params;

interface Sizes {
  readonly diameter: number;
  readonly outside: number;
  readonly bore: number;
}

interface Joint extends Sizes {
  readonly interference: number;
  readonly hubYoungs: number;
  readonly shaftYoungs: number;
  readonly hubPoisson: number;
  readonly shaftPoisson: number;
}

/** @throws MethodError where the hub has no wall, or the shaft none. */
export function refuseSizes(id: string, { diameter, outside, bore }: Sizes): void {
  if (!(outside > diameter))
    throw new MethodError(id, 'outside', 'The hub is no larger than the joint; its outside diameter must be larger.');
  if (!(bore < diameter))
    throw new MethodError(id, 'bore', 'The bore is as large as the shaft; it must be smaller than the joint.');
}

const stretch = (large: string, small: string): Expr =>
  div(add(pow(large, 2), pow(small, 2)), sub(pow(large, 2), pow(small, 2)));

/** What hub and shaft give, named by the steps. */
export const GIVES = {
  hubGives: { form: 'value', kind: 'number', symbol: 'c_o', meaning: 'how much the hub gives' },
  shaftGives: { form: 'value', kind: 'number', symbol: 'c_i', meaning: 'how much the shaft gives' },
} as const satisfies Params;

/** Steps from interference to pressure, Lamé’s thick cylinders. */
export const PRESSURE_STEPS = [
  {
    key: 'hubGives',
    is: add(stretch('outside', 'diameter'), 'hubPoisson'),
    says: 'How much the hub opens under the pressure; a thick one opens less.',
  },
  {
    key: 'shaftGives',
    is: sub(stretch('diameter', 'bore'), 'shaftPoisson'),
    says: 'How much the shaft closes; a hollow one closes more.',
  },
  {
    key: 'pressure',
    is: div(
      fn('max', 'interference', num(0)),
      mul('diameter', add(div('hubGives', 'hubYoungs'), div('shaftGives', 'shaftYoungs'))),
    ),
    says: 'Both together take up the interference; a loose joint does not press.',
  },
];

export const LAME: readonly Source[] = [
  {
    title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
    edition: '9th',
    at: 'equations 7-39 to 7-49; Lamé’s thick cylinders',
    how: 'read',
  },
];

/** Pressure between hub and shaft, and what each gives. */
export function pressed(joint: Joint): { pressure: number; hubGives: number; shaftGives: number } {
  const { diameter: d, outside, bore } = joint;
  const ratio = (large: number, small: number): number => (large ** 2 + small ** 2) / (large ** 2 - small ** 2);
  const hubGives = ratio(outside, d) + joint.hubPoisson;
  const shaftGives = ratio(d, bore) - joint.shaftPoisson;
  const gives = hubGives / joint.hubYoungs + shaftGives / joint.shaftYoungs;
  return { pressure: Math.max(joint.interference, 0) / (d * gives), hubGives, shaftGives };
}
