import { add, div, mul, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'runout.press';

const inputs = {
  span: { form: 'value', kind: 'length', symbol: 'L', meaning: 'distance of the two rests', range: ABOVE_ZERO },
  at: { form: 'value', kind: 'length', symbol: 'a', meaning: 'from the first rest to the ram', range: ABOVE_ZERO },
  diameter: { form: 'value', kind: 'length', symbol: 'd', meaning: 'diameter of the round part', range: ABOVE_ZERO },
  yieldStress: {
    form: 'value',
    kind: 'pressure',
    symbol: 'σ_y',
    meaning: 'yield strength of the steel as it is',
    range: ABOVE_ZERO,
  },
  modulus: { form: 'value', kind: 'pressure', symbol: 'E', meaning: 'modulus of elasticity', range: ABOVE_ZERO },
  wanted: {
    form: 'value',
    kind: 'length',
    symbol: 'δ_w',
    meaning: 'movement at the ram that must stay: the offset there',
    range: { min: 0 },
  },
} as const satisfies Params;

/**
 * Straightening a round part in a press: where yielding begins, and how far to push for a wanted set.
 *
 * Errors: ram outside the rests, an input not above zero.
 */
export const pressSet = defineMethod({
  id,
  gives: 'Press movement at first yield, force there, and how far to push so that a wanted set stays',
  inputs,
  outputs: {
    firstYield: { form: 'value', kind: 'length', symbol: 'δ_y', meaning: 'movement at the ram when yielding begins' },
    force: { form: 'value', kind: 'force', symbol: 'F_y', meaning: 'force of the ram then' },
    pushFirst: { form: 'value', kind: 'length', symbol: 'δ_1', meaning: 'movement to begin with' },
    pushMost: { form: 'value', kind: 'length', symbol: 'δ_2', meaning: 'movement not to go beyond at once' },
    forceMost: { form: 'value', kind: 'force', symbol: 'F_p', meaning: 'force at which the whole section yields' },
    other: { form: 'value', kind: 'length', symbol: 'b', meaning: 'from the ram to the second rest' },
  },
  results: ['firstYield', 'force', 'pushFirst', 'pushMost', 'forceMost'],
  steps: [
    { key: 'other', is: sub('span', 'at'), says: 'The rest of the span.' },
    {
      key: 'firstYield',
      is: div(mul(2, 'yieldStress', 'at', 'other'), mul(3, 'modulus', 'diameter')),
      says: 'A beam on two rests, its outer fibre just at the yield strength: σ a b / (3 E c), c half the diameter.',
    },
    {
      key: 'force',
      is: div(
        mul('yieldStress', { op: 'num', value: Math.PI, as: 'π' }, 'diameter', 'diameter', 'diameter', 'span'),
        mul(32, 'at', 'other'),
      ),
      says: 'Bending moment F a b / L against the section’s π d³ / 32.',
    },
    {
      key: 'pushFirst',
      is: add('firstYield', 'wanted'),
      says: 'It springs back by at least the movement of first yield.',
    },
    {
      key: 'pushMost',
      is: add(mul(div(16, { op: 'num', value: 3 * Math.PI, as: '3π' }), 'firstYield'), 'wanted'),
      says: 'And by at most that of the fully yielded round section, 16/(3π) times as much.',
    },
    {
      key: 'forceMost',
      is: mul(div(16, { op: 'num', value: 3 * Math.PI, as: '3π' }), 'force'),
      says: 'The moment cannot rise further; hardening aside.',
    },
  ],
  sources: [
    { title: 'Bending of a beam on two rests; plastic section of a circle', how: 'derived' },
    { title: 'Straightening in small steps past the spring-back', how: 'common practice' },
  ],
  holds: ['Round, uniform and free of hard skin. Hardened steel cracks instead: do not press it.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { span, at, diameter, yieldStress, modulus, wanted } = input;
    const other = span - at;
    if (other <= 0) throw new MethodError(id, 'at', `${at} m read; less than the span, ${span} m, is accepted.`);
    const firstYield = (2 * yieldStress * at * other) / (3 * modulus * diameter);
    const force = (yieldStress * Math.PI * diameter ** 3 * span) / (32 * at * other);
    const full = 16 / (3 * Math.PI);
    return {
      firstYield,
      force,
      pushFirst: firstYield + wanted,
      pushMost: full * firstYield + wanted,
      forceMost: full * force,
      other,
    };
  },
});
