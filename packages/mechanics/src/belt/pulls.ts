import { add, div, mul, num } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'belt.pulls';

const inputs = {
  power: {
    form: 'value',
    kind: 'power',
    symbol: 'P_d',
    meaning: 'power carried, with its service factor',
    range: ABOVE_ZERO,
  },
  speed: { form: 'value', kind: 'speed', symbol: 'v', meaning: 'speed of the belt', range: ABOVE_ZERO },
  wrap: {
    form: 'value',
    kind: 'number',
    symbol: 'K_F',
    meaning: 'factor of the wrap, about 1 where it is a half turn',
    range: { min: 0.3, max: 1.1 },
    default: 1,
  },
} as const satisfies Params;

/**
 * Pulls of both spans of a tensioned toothed belt, and what both shafts bear.
 *
 * Errors: power or speed not above zero.
 */
export const beltPulls = defineMethod({
  id,
  gives: 'Pulls of a toothed belt and the load on its shafts',
  inputs,
  outputs: {
    tight: { form: 'value', kind: 'force', symbol: 'F_1', meaning: 'pull of the tight span' },
    slack: { form: 'value', kind: 'force', symbol: 'F_2', meaning: 'pull of the slack span' },
    shaft: { form: 'value', kind: 'force', symbol: 'F_Q', meaning: 'load on each shaft' },
    standing: { form: 'value', kind: 'force', symbol: 'F_0', meaning: 'pull of each span at rest' },
  },
  results: ['tight', 'slack', 'shaft', 'standing'],
  steps: [
    { key: 'tight', is: div(mul(num(1.25), 'power'), 'speed'), says: 'Five parts.' },
    { key: 'slack', is: div(mul(num(0.25), 'power'), 'speed'), says: 'One part, so that the teeth do not ride out.' },
    { key: 'shaft', is: mul('wrap', add('tight', 'slack')), says: 'Both spans pull on the shaft.' },
    { key: 'standing', is: div(add('tight', 'slack'), 2), says: 'At rest both spans pull alike.' },
  ],
  sources: [
    { title: 'A calculation sheet that cites the Chinese mechanical design handbook, family of ISO 5295', how: 'read' },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const tight = (1.25 * input.power) / input.speed;
    const slack = (0.25 * input.power) / input.speed;
    return { tight, slack, shaft: input.wrap * (tight + slack), standing: (tight + slack) / 2 };
  },
});
