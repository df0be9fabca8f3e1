import { add, branch, choose, div, fn, mul, num, PI, sub, sym, when } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'joint.splineOverPins';

const inputs = {
  teeth: { form: 'integer', symbol: 'z', meaning: 'teeth', range: { min: 4, max: 300 } },
  module: { form: 'value', kind: 'length', symbol: 'm', meaning: 'module', range: ABOVE_ZERO },
  angle: {
    form: 'value',
    kind: 'angle',
    symbol: 'α',
    meaning: 'pressure angle',
    range: { min: 0.17, max: 0.9 },
  },
  pin: { form: 'value', kind: 'length', symbol: 'd_p', meaning: 'diameter of the pins', range: ABOVE_ZERO },
  thickness: {
    form: 'value',
    kind: 'length',
    symbol: 's',
    meaning: 'thickness of a tooth at the pitch diameter',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

const involute = (angle: number): number => Math.tan(angle) - angle;

/** Angle whose involute function is this; Newton on tan x − x. */
function angleOfInvolute(value: number): number {
  let x = Math.cbrt(3 * value);
  for (let k = 0; k < 40; k += 1) {
    const tangent = Math.tan(x);
    const next = x - (tangent - x - value) / (tangent * tangent);
    const settled = Math.abs(next - x) < 1e-15;
    x = next;
    if (settled) break;
  }
  return x;
}

/**
 * Size over two pins laid into opposite gaps of an external involute spline or gear.
 *
 * Errors: a size not above zero; a pin so small that it falls below the base circle.
 */
export const splineOverPins = defineMethod({
  id,
  gives: 'Size over two pins of an external involute spline',
  inputs,
  outputs: {
    over: { form: 'value', kind: 'length', symbol: 'M', meaning: 'size over the pins' },
    pitch: { form: 'value', kind: 'length', symbol: 'd', meaning: 'pitch diameter' },
    base: { form: 'value', kind: 'length', symbol: 'd_g', meaning: 'base diameter' },
    involute: { form: 'value', kind: 'number', symbol: 'inv', meaning: 'involute function at the centre of the pin' },
    pinAngle: { form: 'value', kind: 'angle', symbol: 'α_p', meaning: 'pressure angle at the centre of the pin' },
    span: { form: 'value', kind: 'length', symbol: 'e', meaning: 'distance of the two pin centres' },
  },
  results: ['over'],
  steps: [
    { key: 'pitch', is: mul('module', 'teeth'), says: 'Module times teeth.' },
    { key: 'base', is: mul('pitch', fn('cos', 'angle')), says: 'Where the involute begins.' },
    {
      key: 'involute',
      is: add(div('thickness', 'pitch'), sub(fn('tan', 'angle'), 'angle'), sub(div('pin', 'base'), div(PI, 'teeth'))),
      says: 'Half the gap is closed by the pin.',
    },
    {
      key: 'pinAngle',
      left: sub(fn('tan', 'pinAngle'), 'pinAngle'),
      right: sym('involute'),
      says: 'The angle that has this involute function.',
    },
    {
      key: 'span',
      is: choose(
        [
          branch(
            when(mul(num(2), fn('floor', div('teeth', num(2)))), '=', 'teeth'),
            div('base', fn('cos', 'pinAngle')),
          ),
        ],
        div(mul('base', fn('cos', div(PI, mul(num(2), 'teeth')))), fn('cos', 'pinAngle')),
      ),
      says: 'With an odd count no two gaps lie opposite.',
    },
    { key: 'over', is: add('span', 'pin'), says: 'One pin more.' },
  ],
  sources: [
    { title: 'Machinery’s Handbook, Checking Spur Gear Size by Measurement Over Wires', how: 'memory' },
    { title: 'ANSI B92.1, Involute Splines and Inspection', at: 'measurements over pins', how: 'memory' },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { teeth, module, angle, pin, thickness } = input;
    const pitch = module * teeth;
    const base = pitch * Math.cos(angle);
    const value = thickness / pitch + involute(angle) + pin / base - Math.PI / teeth;
    if (!(value > 0))
      throw new MethodError(
        id,
        'pin',
        'The pins are too small: they fall to the bottom of the gap and do not touch the flanks.',
      );
    const pinAngle = angleOfInvolute(value);
    const even = 2 * Math.floor(teeth / 2) === teeth;
    const span = ((even ? 1 : Math.cos(Math.PI / (2 * teeth))) * base) / Math.cos(pinAngle);
    return { over: span + pin, pitch, base, involute: value, pinAngle, span };
  },
});
