import { div, mul, num, pow, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'bearing.plateThrust';

const length = (symbol: string, meaning: string) =>
  ({ form: 'value', kind: 'length', symbol, meaning, range: ABOVE_ZERO }) as const;

const HINGED = 48;
const BUILT_IN = 192;

const inputs = {
  span: length('l', 'free span between the tubes that tie it'),
  width: length('b', 'width across the bearing'),
  hole: length('D', 'hole for the bearing'),
  thickness: length('t', 'thickness'),
  yieldStrength: { form: 'value', kind: 'pressure', symbol: 'R_e', meaning: 'yield strength', range: ABOVE_ZERO },
  ends: {
    form: 'value',
    kind: 'number',
    symbol: 'k',
    meaning: 'stiffness number of its ends: 48 hinged, 192 built in',
    range: { min: HINGED, max: BUILT_IN },
    default: HINGED,
  },
} as const satisfies Params;

/**
 * Push square to a bearing plate that makes it yield: a strip between its ties with the load in its middle, weakened by the hole.
 *
 * Errors: lengths or strength not above zero, a hole that leaves no width.
 */
export const plateThrust = defineMethod({
  id,
  gives: 'Push along the shaft that a bearing plate bears before it bends for good',
  inputs,
  outputs: {
    force: { form: 'value', kind: 'force', symbol: 'F', meaning: 'push that the plate bears' },
    arm: { form: 'value', kind: 'length', symbol: 'a', meaning: 'bending moment over the push' },
    modulus: { form: 'value', kind: 'volume', symbol: 'Z', meaning: 'section modulus beside the hole' },
  },
  results: ['force'],
  steps: [
    {
      key: 'arm',
      is: mul('span', sub(div(1, 4), div(sub('ends', num(HINGED)), num(8 * (BUILT_IN - HINGED))))),
      says: 'A quarter of the span with hinged ends, an eighth with ends built in.',
    },
    {
      key: 'modulus',
      is: div(mul(sub('width', 'hole'), pow('thickness', 2)), num(6)),
      says: 'What the hole leaves of the width.',
    },
    { key: 'force', is: div(mul('yieldStrength', 'modulus'), 'arm'), says: 'At the yield strength.' },
  ],
  sources: [
    { title: 'Beam tables', at: 'load in the middle: F l / 4 hinged, F l / 8 built in', how: 'common practice' },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { span, width, hole, thickness, yieldStrength, ends } = input;
    if (!(width > hole))
      throw new MethodError(id, 'hole', 'The hole is as wide as the plate; some width must be left.');
    const arm = span * (1 / 4 - (ends - HINGED) / (8 * (BUILT_IN - HINGED)));
    const modulus = ((width - hole) * thickness ** 2) / 6;
    return { force: (yieldStrength * modulus) / arm, arm, modulus };
  },
});
