import { add, branch, choose, div, fn, mul, num, PI, sub, when } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { INCH, INCH_OUTPUT } from './printed-units.ts';

const id = 'chain.sprocketHub';
const PLAY = 0.00076;

const inputs = {
  pitch: { form: 'value', kind: 'length', symbol: 'p', meaning: 'pitch of the chain', range: ABOVE_ZERO },
  teeth: { form: 'integer', symbol: 'z', meaning: 'teeth of the sprocket', range: { min: 6 } },
} as const satisfies Params;

/**
 * Largest hub that the chain’s plates clear, and the largest bore with a keyway that leaves such a hub enough wall.
 *
 * Errors: a pitch not above zero, fewer than 6 teeth.
 */
export const sprocketHub = defineMethod({
  id,
  gives: 'Largest hub and largest bore of a sprocket',
  inputs,
  outputs: {
    bore: { form: 'value', kind: 'length', symbol: 'd', meaning: 'largest bore' },
    hub: { form: 'value', kind: 'length', symbol: 'd_h', meaning: 'largest hub' },
    pitchDiameter: { form: 'value', kind: 'length', symbol: 'D', meaning: 'pitch diameter' },
    base: { form: 'value', kind: 'length', symbol: 'z_h', meaning: 'part of the wall that goes by size' },
    play: { form: 'value', kind: 'length', symbol: 'c', meaning: 'play between plates and hub' },
    inch: INCH_OUTPUT,
  },
  results: ['bore', 'hub'],
  steps: [
    {
      key: 'pitchDiameter',
      is: div('pitch', fn('sin', div(PI, 'teeth'))),
      says: 'Pitch over the sine of half a tooth.',
    },
    {
      key: 'hub',
      is: sub(mul('pitch', sub(div(1, fn('tan', div(PI, 'teeth'))), 1)), 'play'),
      says: 'Inside the plates, with a little play.',
    },
    {
      key: 'base',
      is: mul(
        'inch',
        choose(
          [
            branch(when(div('pitchDiameter', 'inch'), '<=', 2), num(0.125)),
            branch(when(div('pitchDiameter', 'inch'), '<=', 4), num(0.187)),
            branch(when(div('pitchDiameter', 'inch'), '<=', 6), num(0.25)),
          ],
          num(0.375),
        ),
      ),
      says: 'By the size of the sprocket.',
    },
    {
      key: 'bore',
      is: fn('max', 0, div(sub('hub', add(mul(2, 'base'), mul(num(0.02), 'pitchDiameter'))), num(4 / 3, '4/3'))),
      says: 'Bore and two walls of that base, a sixth of the bore and a hundredth of the pitch diameter fill the hub.',
    },
  ],
  sources: [
    { title: 'A chain maker’s engineering page', at: 'greatest hub diameter', how: 'read' },
    { title: "Machinery's Handbook", at: 'proportions of roller chain sprockets, hub wall', how: 'memory' },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { pitch, teeth } = input;
    const pitchDiameter = pitch / Math.sin(Math.PI / teeth);
    const hub = pitch * (1 / Math.tan(Math.PI / teeth) - 1) - PLAY;
    const inches = pitchDiameter / INCH;
    const base = INCH * (inches <= 2 ? 0.125 : inches <= 4 ? 0.187 : inches <= 6 ? 0.25 : 0.375);
    const bore = Math.max(0, (hub - (2 * base + 0.02 * pitchDiameter)) / (4 / 3));
    return { bore, hub, pitchDiameter, base, play: PLAY, inch: INCH };
  },
});
