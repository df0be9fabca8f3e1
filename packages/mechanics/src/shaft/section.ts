import { div, mul, num, PI, pow, sub } from '../method/expr.ts';
import type { Step } from '../method/method.ts';
import { MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO } from '../numerics/refuse.ts';

/** Round section, solid or bored. */
export const SECTION_INPUTS = {
  diameter: { form: 'value', kind: 'length', symbol: 'd', meaning: 'diameter of the section', range: ABOVE_ZERO },
  bore: {
    form: 'value',
    kind: 'length',
    symbol: 'd_i',
    meaning: 'bore through it',
    range: { min: 0 },
    default: 0,
  },
} as const satisfies Params;

export const MODULUS_OUTPUT = {
  modulus: {
    form: 'value',
    kind: 'volume',
    symbol: 'W',
    meaning: 'bending modulus of the section; twice that in torsion',
  },
} as const satisfies Params;

export const MODULUS_STEP: Step = {
  key: 'modulus',
  is: mul(div(mul(PI, pow('diameter', 3)), num(32)), sub(1, pow(div('bore', 'diameter'), 4))),
  says: 'Round section; a bore takes a little away.',
};

/**
 * Bending modulus of a round section, m³.
 * @throws MethodError when the bore leaves no wall
 */
export function modulusOf(method: string, diameter: number, bore: number): number {
  if (!(bore < diameter))
    throw new MethodError(method, 'bore', `A bore of ${bore} m leaves nothing of a diameter of ${diameter} m.`);
  return ((Math.PI * diameter ** 3) / 32) * (1 - (bore / diameter) ** 4);
}
