import { add, branch, choose, div, fn, mul, pow, sub, when } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'chain.slack';

const inputs = {
  pitch: { form: 'value', kind: 'length', symbol: 'p', meaning: 'chain pitch', range: ABOVE_ZERO },
  linksFitted: { form: 'integer', symbol: 'L', meaning: 'links of the chain as fitted', range: { min: 1 } },
  linksNeeded: {
    form: 'value',
    kind: 'count',
    symbol: 'L_n',
    meaning: 'links needed by the centre distance, not rounded',
    range: ABOVE_ZERO,
  },
  span: { form: 'value', kind: 'length', symbol: 's', meaning: 'length of a straight span', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Slack of a fitted chain, as the hand feels it at the middle of the slack span with the other span taut.
 *
 * The whole excess is drawn into one span. Pulled aside by hand at its middle the span makes a V of two straight legs,
 * (span + excess)/2 each; half the span and the deflection are the sides of the triangle under a leg. The hand moves the
 * chain by the deflection to either side, so the total movement is twice that.
 *
 * Errors: links fitted below one, pitch, links needed or span not above zero. A chain too short is no error: the excess is negative.
 */
export const chainSlack = defineMethod({
  id,
  gives: 'Excess length of a fitted chain, and how far the hand moves it at mid-span',
  inputs,
  outputs: {
    excess: {
      form: 'value',
      kind: 'length',
      symbol: 'e',
      meaning: 'length of the chain beyond what is needed; negative when it is too short',
    },
    handMovement: {
      form: 'value',
      kind: 'length',
      symbol: 'm',
      meaning: 'total hand movement at mid-span, from one side to the other',
    },
    movementOverSpan: {
      form: 'value',
      kind: 'fraction',
      symbol: 'm_s',
      meaning: 'total hand movement over the span',
    },
    deflection: { form: 'value', kind: 'length', symbol: 'd', meaning: 'deflection of the pulled span to one side' },
  },
  results: ['excess', 'handMovement', 'movementOverSpan'],
  steps: [
    {
      key: 'excess',
      is: mul(sub('linksFitted', 'linksNeeded'), 'pitch'),
      says: 'Chain fitted less chain needed.',
    },
    {
      key: 'deflection',
      is: choose(
        [branch(when('excess', '<=', 0), 0)],
        div(fn('sqrt', sub(pow(add('span', 'excess'), 2), pow('span', 2))), 2),
      ),
      says: 'All of it in one span, pulled at the middle into a V of two straight legs; a chain too short does not move.',
    },
    { key: 'handMovement', is: mul(2, 'deflection'), says: 'From one side to the other.' },
    { key: 'movementOverSpan', is: div('handMovement', 'span'), says: 'Limits are quoted as part of the span.' },
  ],
  sources: [
    { title: 'Geometry of the triangle under half the pulled span', how: 'derived' },
    {
      title: 'A chain maker’s installation data',
      at: 'slack: total movement at mid-span, 4 % of the span',
      how: 'read',
    },
  ],
  holds: ['The other span is taut.', 'The chain is new and does not stretch.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { pitch, linksFitted, linksNeeded, span } = input;
    const excess = (linksFitted - linksNeeded) * pitch;
    const deflection = excess <= 0 ? 0 : Math.sqrt((span + excess) ** 2 - span ** 2) / 2;
    const handMovement = 2 * deflection;
    return { excess, handMovement, movementOverSpan: handMovement / span, deflection };
  },
});
