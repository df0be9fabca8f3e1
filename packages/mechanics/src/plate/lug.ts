import { add, div, fn, mul, num } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'plate.lug';

const length = (symbol: string, meaning: string) =>
  ({ form: 'value', kind: 'length', symbol, meaning, range: ABOVE_ZERO }) as const;
const strength = (symbol: string, meaning: string) =>
  ({ form: 'value', kind: 'pressure', symbol, meaning, range: ABOVE_ZERO }) as const;
const force = (symbol: string, meaning: string) => ({ form: 'value', kind: 'force', symbol, meaning }) as const;

const inputs = {
  thickness: length('t', 'thickness'),
  pin: length('d', 'diameter that bears in the hole: pin, or outer ring of the bearing'),
  ahead: length('a', 'metal ahead of the hole, in the direction of the load'),
  beside: length('b', 'metal on each side of the hole, square to the load'),
  tensile: strength('F_u', 'tensile strength of the plate'),
  yieldStrength: strength('F_y', 'yield strength of the plate'),
} as const satisfies Params;

/** 5/8 in of the standard, to two figures as it prints it: 0.63 in. */
const MORE = 0.63 * 0.0254;
/** Metal ahead of the hole over what counts beside it, at least. */
const AHEAD = 1.33;
const SHEAR = 0.6;
const BEARING = 1.8;

/**
 * Load that the plate around a pin or bearing bears in its own plane.
 *
 * Errors: a size or strength not above zero.
 */
export const plateLug = defineMethod({
  id,
  gives: 'Load in its own plane that the plate around a pin or a bearing bears',
  inputs,
  outputs: {
    force: force('P', 'load that it bears'),
    tearsBeside: force('P_t', 'load that pulls the metal beside the hole apart'),
    tearsAhead: force('P_s', 'load that shears out the metal ahead of the hole'),
    crushes: force('P_b', 'load that crushes the edge of the hole'),
    counted: { form: 'value', kind: 'length', symbol: 'b_e', meaning: 'metal beside the hole that counts' },
    more: { form: 'value', kind: 'length', symbol: 'u', meaning: '0.63 in' },
  },
  results: ['force', 'tearsBeside', 'tearsAhead', 'crushes'],
  steps: [
    {
      key: 'counted',
      is: fn('min', add(mul(2, 'thickness'), 'more'), 'beside', div('ahead', num(AHEAD))),
      says: 'Metal further off does not carry its part, nor what is not backed by metal ahead.',
    },
    { key: 'tearsBeside', is: mul(2, 'tensile', 'thickness', 'counted'), says: 'Both sides pull.' },
    {
      key: 'tearsAhead',
      is: mul(2 * SHEAR, 'tensile', 'thickness', add('ahead', div('pin', 2))),
      says: 'Two planes shear, from the middle of the hole to the edge.',
    },
    { key: 'crushes', is: mul(BEARING, 'yieldStrength', 'thickness', 'pin'), says: 'On the whole diameter.' },
    {
      key: 'force',
      is: fn('min', 'tearsBeside', 'tearsAhead', mul(num(1), 'crushes')),
      says: 'The weakest of the three.',
    },
  ],
  sources: [{ title: 'ANSI/AISC 360-16', at: 'D5.1, equations D5-1 and D5-2; D5.2(b); J7-1', how: 'read' }],
  holds: ['The plate is held all about, and the load lies in its plane.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { thickness, pin, ahead, beside, tensile, yieldStrength } = input;
    const counted = Math.min(2 * thickness + MORE, beside, ahead / AHEAD);
    const tearsBeside = 2 * tensile * thickness * counted;
    const tearsAhead = 2 * SHEAR * tensile * thickness * (ahead + pin / 2);
    const crushes = BEARING * yieldStrength * thickness * pin;
    return { force: Math.min(tearsBeside, tearsAhead, crushes), tearsBeside, tearsAhead, crushes, counted, more: MORE };
  },
});
