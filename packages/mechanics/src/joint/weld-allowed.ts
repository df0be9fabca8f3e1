import { fn, mul, num } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'joint.weldAllowed';

const strength = (symbol: string, meaning: string) =>
  ({ form: 'value', kind: 'pressure', symbol, meaning, range: ABOVE_ZERO }) as const;

const inputs = {
  electrode: strength('E', 'tensile strength of the electrode'),
  tensile: strength('R_m', 'tensile strength of the weaker part, hot rolled'),
  yielding: strength('R_e', 'yield strength of the weaker part, hot rolled'),
} as const satisfies Params;

/**
 * Shear allowed in the throat of a fillet weld: the lesser of weld metal and base metal, which usually governs for mild steel.
 *
 * Errors: a strength not above zero.
 */
export const weldAllowed = defineMethod({
  id,
  gives: 'Shear allowed in a fillet weld, weld or base metal',
  inputs,
  outputs: {
    allowed: { form: 'value', kind: 'pressure', symbol: 'τ', meaning: 'shear allowed' },
    weld: { form: 'value', kind: 'pressure', symbol: 'τ_w', meaning: 'allowed by the weld metal' },
    base: { form: 'value', kind: 'pressure', symbol: 'τ_b', meaning: 'allowed by the base metal' },
  },
  results: ['allowed'],
  steps: [
    { key: 'weld', is: mul(num(0.3), 'electrode'), says: 'Weld metal.' },
    { key: 'base', is: fn('min', mul(num(0.3), 'tensile'), mul(num(0.4), 'yielding')), says: 'Base metal.' },
    { key: 'allowed', is: fn('min', 'weld', 'base'), says: 'The lesser governs.' },
  ],
  sources: [
    {
      title: 'AWS D1.1 and AISC, as restated in Shigley’s Mechanical Engineering Design',
      at: 'tables 9-4 and 9-5',
      how: 'read',
    },
  ],
  holds: ['Steady load; the heat of welding undoes hardening and cold drawing.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const weld = 0.3 * input.electrode;
    const base = Math.min(0.3 * input.tensile, 0.4 * input.yielding);
    return { allowed: Math.min(weld, base), weld, base };
  },
});
