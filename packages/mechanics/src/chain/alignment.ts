import type { Vec3 } from '@oddwheel/quantity/quantity';
import {
  branch,
  choose,
  cross as crossTree,
  div,
  dot as dotTree,
  fn,
  mul,
  norm as normTree,
  num,
  sub,
  when,
} from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';
import { cross, dot, minus, norm, times } from '../numerics/vector.ts';

const id = 'chain.alignment';

/** Greatest departure from parallel: rise over run. */
const SLOPE = 1 / 300;
/** m; between these centre distances the greatest offset is a thousandth of it. */
const LIMIT_FROM = 1;
const LIMIT_TO = 10;

function unitOf(input: 'directionDriver' | 'directionDriven', direction: Vec3): Vec3 {
  const length = norm(direction);
  if (length > 0) return [direction[0] / length, direction[1] / length, direction[2] / length];
  throw new MethodError(id, input, `The ${inputs[input].meaning} must not be zero; read [${direction.join(', ')}].`);
}

const inputs = {
  seatDriver: { form: 'vector', kind: 'length', symbol: 'g_1', meaning: 'middle of the driver’s teeth on its axis' },
  directionDriver: { form: 'vector', kind: 'number', symbol: 'u_1', meaning: 'direction of the driver’s shaft' },
  seatDriven: {
    form: 'vector',
    kind: 'length',
    symbol: 'g_2',
    meaning: 'middle of the driven sprocket’s teeth on its axis',
  },
  directionDriven: { form: 'vector', kind: 'number', symbol: 'u_2', meaning: 'direction of the driven shaft' },
} as const satisfies Params;

/**
 * Whether two sprockets run in one plane: offset of their planes and angle of their shafts against the published limits.
 *
 * Errors: a direction of no length, sprockets on one axis line.
 */
export const chainAlignment = defineMethod({
  id,
  gives: 'Offset and angle of a chain run, against the published limits',
  inputs,
  outputs: {
    offset: {
      form: 'value',
      kind: 'length',
      symbol: 'o',
      meaning: 'how far the driven sprocket stands out of the driver’s plane, along the driver’s shaft',
    },
    offsetLimit: { form: 'value', kind: 'length', symbol: 'o_l', meaning: 'greatest offset, either way' },
    offsetUsed: { form: 'value', kind: 'fraction', symbol: 'o_u', meaning: 'part of the greatest offset that is used' },
    angle: { form: 'value', kind: 'angle', symbol: 'γ', meaning: 'angle between the two shafts' },
    angleLimit: { form: 'value', kind: 'angle', symbol: 'γ_l', meaning: 'greatest angle between the two shafts' },
    angleUsed: { form: 'value', kind: 'fraction', symbol: 'γ_u', meaning: 'part of the greatest angle that is used' },
    centreDistance: { form: 'value', kind: 'length', symbol: 'C', meaning: 'centre distance in the driver’s plane' },
    verdict: { form: 'choice', symbol: 'w', meaning: 'whether both limits are kept', choices: ['within', 'beyond'] },
    limitFrom: {
      form: 'value',
      kind: 'length',
      symbol: 'C_1',
      meaning: 'centre distance up to which the greatest offset stays the same',
    },
    limitTo: {
      form: 'value',
      kind: 'length',
      symbol: 'C_2',
      meaning: 'centre distance from which it stays the same again',
    },
    axisDriver: { form: 'vector', kind: 'number', symbol: 'a_1', meaning: 'unit direction of the driver’s shaft' },
    axisDriven: { form: 'vector', kind: 'number', symbol: 'a_2', meaning: 'unit direction of the driven shaft' },
  },
  results: ['offset', 'offsetLimit', 'offsetUsed', 'angle', 'angleLimit', 'angleUsed', 'centreDistance', 'verdict'],
  steps: [
    { key: 'axisDriver', is: div('directionDriver', normTree('directionDriver')), says: 'Direction of length one.' },
    { key: 'axisDriven', is: div('directionDriven', normTree('directionDriven')), says: 'Direction of length one.' },
    { key: 'offset', is: dotTree(sub('seatDriven', 'seatDriver'), 'axisDriver'), says: 'Along the driver’s shaft.' },
    {
      key: 'centreDistance',
      is: normTree(sub(sub('seatDriven', 'seatDriver'), mul('offset', 'axisDriver'))),
      says: 'Square to it.',
    },
    {
      key: 'offsetLimit',
      is: choose(
        [
          branch(when('centreDistance', '<=', 'limitFrom'), div('limitFrom', num(1000))),
          branch(when('centreDistance', '<=', 'limitTo'), div('centreDistance', num(1000))),
        ],
        div('limitTo', num(1000)),
      ),
      says: 'One millimetre up to one metre, then a thousandth of the centre distance, up to ten metres.',
    },
    { key: 'offsetUsed', is: div(fn('abs', 'offset'), 'offsetLimit'), says: 'Either way.' },
    {
      key: 'angle',
      is: fn('atan2', normTree(crossTree('axisDriver', 'axisDriven')), fn('abs', dotTree('axisDriver', 'axisDriven'))),
      says: 'The sense of a shaft does not matter here.',
    },
    { key: 'angleLimit', is: fn('atan', num(SLOPE, '1/300')), says: 'One in three hundred.' },
    { key: 'angleUsed', is: div('angle', 'angleLimit'), says: 'Out of parallel, or out of level.' },
  ],
  sources: [{ title: 'The Complete Guide to Chain', at: 'section 7.1.2.2', how: 'read' }],
  holds: ['The limits are for the drive under load: frame and shafts give way, so check with the chain pulling.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const axisDriver = unitOf('directionDriver', input.directionDriver);
    const axisDriven = unitOf('directionDriven', input.directionDriven);
    const line = minus(input.seatDriven, input.seatDriver);
    const offset = dot(line, axisDriver);
    const centreDistance = norm(minus(line, times(offset, axisDriver)));
    if (!(centreDistance > 0))
      throw new MethodError(
        id,
        'seatDriven',
        'Both sprockets stand on one axis; a chain run needs a centre distance above 0 m.',
      );
    const offsetLimit = Math.min(Math.max(centreDistance, LIMIT_FROM), LIMIT_TO) / 1000;
    const offsetUsed = Math.abs(offset) / offsetLimit;
    const angle = Math.atan2(norm(cross(axisDriver, axisDriven)), Math.abs(dot(axisDriver, axisDriven)));
    const angleLimit = Math.atan(SLOPE);
    const angleUsed = angle / angleLimit;
    return {
      offset,
      offsetLimit,
      offsetUsed,
      angle,
      angleLimit,
      angleUsed,
      centreDistance,
      verdict: offsetUsed <= 1 && angleUsed <= 1 ? 'within' : 'beyond',
      limitFrom: LIMIT_FROM,
      limitTo: LIMIT_TO,
      axisDriver,
      axisDriven,
    };
  },
});
