import { fn, mul } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'belt.toothLoad';
const MOST = 12;

const inputs = {
  perTooth: {
    form: 'value',
    kind: 'stiffness',
    symbol: 'f',
    meaning: 'pull that a tooth bears for each length of belt width, at this speed',
    range: ABOVE_ZERO,
  },
  meshed: { form: 'value', kind: 'number', symbol: 'z_e', meaning: 'teeth in mesh', range: ABOVE_ZERO },
  width: { form: 'value', kind: 'length', symbol: 'b', meaning: 'belt width', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Pull that a polyurethane toothed belt bears by the shear of its teeth; more than twelve teeth in mesh count as twelve.
 *
 * Errors: any input not above zero.
 */
export const beltToothLoad = defineMethod({
  id,
  gives: 'Pull that the teeth of a polyurethane toothed belt bear',
  inputs,
  outputs: {
    pull: { form: 'value', kind: 'force', symbol: 'F_U', meaning: 'pull that the teeth bear' },
    counted: { form: 'value', kind: 'number', symbol: 'z_c', meaning: 'teeth that count' },
  },
  results: ['pull', 'counted'],
  steps: [
    { key: 'counted', is: fn('min', 'meshed', MOST), says: 'More teeth do not share alike.' },
    { key: 'pull', is: mul('perTooth', 'counted', 'width'), says: 'Teeth times width.' },
  ],
  sources: [
    { title: 'A belt maker’s catalogue for polyurethane belts T and AT', at: 'load for each tooth', how: 'read' },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const counted = Math.min(input.meshed, MOST);
    return { pull: input.perTooth * counted * input.width, counted };
  },
});
