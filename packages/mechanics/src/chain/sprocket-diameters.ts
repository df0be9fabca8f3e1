import { add, branch, choose, div, fn, mul, num, PI, sub, when } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { pitchRadius, tipRadius } from './drive.ts';

const id = 'chain.sprocketDiameters';

/** Gap between chain plates and hub, m. */
const HUB_GAP = 0.00076;

const inputs = {
  pitch: { form: 'value', kind: 'length', symbol: 'p', meaning: 'chain pitch', range: ABOVE_ZERO },
  teeth: { form: 'integer', symbol: 'N', meaning: 'teeth of the sprocket', range: { min: 6 } },
  rollerDiameter: {
    form: 'value',
    kind: 'length',
    symbol: 'D_r',
    meaning: 'roller diameter (bush diameter where there is no roller)',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

const cotangent = div(1, fn('tan', div(PI, 'teeth')));

/**
 * Diameters of a sprocket by ASME B29.1.
 *
 * Errors: teeth that are no whole number of at least 6, pitch or roller diameter not above zero.
 */
export const sprocketDiameters = defineMethod({
  id,
  gives: 'Pitch, outside, bottom and caliper diameter of a sprocket, and the largest hub that clears the chain',
  inputs,
  outputs: {
    pitchDiameter: { form: 'value', kind: 'length', symbol: 'PD', meaning: 'pitch diameter' },
    outsideDiameter: { form: 'value', kind: 'length', symbol: 'OD', meaning: 'outside diameter' },
    rootDiameter: { form: 'value', kind: 'length', symbol: 'BD', meaning: 'bottom (root) diameter' },
    caliperDiameter: { form: 'value', kind: 'length', symbol: 'CD', meaning: 'caliper diameter' },
    greatestHubDiameter: { form: 'value', kind: 'length', symbol: 'MHD', meaning: 'greatest hub or groove diameter' },
    oddTooth: {
      form: 'value',
      kind: 'number',
      symbol: 'o',
      meaning: '1 for an odd number of teeth, 0 for an even one',
    },
    hubGap: { form: 'value', kind: 'length', symbol: 'g', meaning: 'gap between chain plates and hub' },
  },
  results: ['pitchDiameter', 'outsideDiameter', 'rootDiameter', 'caliperDiameter', 'greatestHubDiameter'],
  steps: [
    { key: 'pitchDiameter', is: div('pitch', fn('sin', div(PI, 'teeth'))), says: 'The pins lie on this circle.' },
    { key: 'outsideDiameter', is: mul('pitch', add(num(0.6), cotangent)), says: 'Over the tooth tips.' },
    { key: 'rootDiameter', is: sub('pitchDiameter', 'rollerDiameter'), says: 'Between opposite tooth gaps.' },
    {
      key: 'oddTooth',
      is: sub('teeth', mul(2, fn('floor', div('teeth', 2)))),
      says: 'With odd teeth no two gaps lie opposite.',
    },
    {
      key: 'caliperDiameter',
      is: choose(
        [branch(when('oddTooth', '=', 0), 'rootDiameter')],
        sub(mul('pitchDiameter', fn('cos', div(PI, mul(2, 'teeth')))), 'rollerDiameter'),
      ),
      says: 'What a caliper reads across the most nearly opposite tooth gaps.',
    },
    {
      key: 'greatestHubDiameter',
      is: sub(mul('pitch', sub(cotangent, 1)), 'hubGap'),
      says: 'A larger hub or groove would touch the link plates.',
    },
  ],
  sources: [
    {
      title: 'ASME B29.1, sprocket diameters, as a maker’s engineering page restates them',
      at: 'pitch, outside, bottom, caliper diameter; greatest hub diameter',
      how: 'read',
    },
  ],
  holds: ['The gap between chain plates and hub is 0.76 mm.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { pitch, teeth, rollerDiameter } = input;
    const pitchDiameter = 2 * pitchRadius(pitch, teeth);
    const rootDiameter = pitchDiameter - rollerDiameter;
    const oddTooth = teeth % 2;
    return {
      pitchDiameter,
      outsideDiameter: 2 * tipRadius(pitch, teeth),
      rootDiameter,
      caliperDiameter: oddTooth === 0 ? rootDiameter : pitchDiameter * Math.cos(Math.PI / (2 * teeth)) - rollerDiameter,
      greatestHubDiameter: pitch * (1 / Math.tan(Math.PI / teeth) - 1) - HUB_GAP,
      oddTooth,
      hubGap: HUB_GAP,
    };
  },
});
