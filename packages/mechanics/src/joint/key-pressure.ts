import { branch, choose, div, mul, num, sub, when } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'joint.keyPressure';

const inputs = {
  torque: { form: 'value', kind: 'torque', symbol: 'T', meaning: 'torque through the key', range: { min: 0 } },
  diameter: { form: 'value', kind: 'length', symbol: 'd', meaning: 'diameter of the shaft', range: ABOVE_ZERO },
  width: { form: 'value', kind: 'length', symbol: 'b', meaning: 'width of the key', range: ABOVE_ZERO },
  height: { form: 'value', kind: 'length', symbol: 'h', meaning: 'height of the key', range: ABOVE_ZERO },
  depth: { form: 'value', kind: 'length', symbol: 't_1', meaning: 'depth of the slot in the shaft', range: ABOVE_ZERO },
  length: { form: 'value', kind: 'length', symbol: 'l', meaning: 'length of the key in the hub', range: ABOVE_ZERO },
  roundEnds: {
    form: 'integer',
    symbol: 'n_r',
    meaning: 'round ends of the key, 0 to 2',
    range: { min: 0, max: 2 },
    default: 2,
  },
  keys: { form: 'integer', symbol: 'z', meaning: 'keys, 1 or 2', range: { min: 1, max: 2 }, default: 1 },
} as const satisfies Params;

/**
 * Pressure on the sides of a parallel key in shaft and hub, and shear through it. Two keys carry as one and a half.
 *
 * Errors: a size not above zero, torque below zero, a slot as deep as the key is high, a key shorter than its round ends.
 */
export const keyPressure = defineMethod({
  id,
  gives: 'Pressure on a parallel key in shaft and hub, and shear through it',
  inputs,
  outputs: {
    hub: { form: 'value', kind: 'pressure', symbol: 'p_h', meaning: 'pressure on the hub' },
    shaft: { form: 'value', kind: 'pressure', symbol: 'p_s', meaning: 'pressure on the shaft' },
    shear: { form: 'value', kind: 'pressure', symbol: 'τ', meaning: 'shear through the key' },
    push: { form: 'value', kind: 'force', symbol: 'F', meaning: 'push at the surface of the shaft' },
    straight: { form: 'value', kind: 'length', symbol: 'l_e', meaning: 'length of straight side' },
    carrying: { form: 'value', kind: 'number', symbol: 'k', meaning: 'keys that carry' },
  },
  results: ['hub', 'shaft', 'shear'],
  steps: [
    { key: 'push', is: div(mul(num(2), 'torque'), 'diameter'), says: 'Torque over the radius of the shaft.' },
    {
      key: 'straight',
      is: sub('length', div(mul('roundEnds', 'width'), num(2))),
      says: 'A round end presses on nothing.',
    },
    {
      key: 'carrying',
      is: choose([branch(when('keys', '=', num(2)), num(1.5))], num(1)),
      says: 'Two keys never share evenly.',
    },
    {
      key: 'hub',
      is: div('push', mul('carrying', 'straight', sub('height', 'depth'))),
      says: 'Over what stands in the hub.',
    },
    {
      key: 'shaft',
      is: div('push', mul('carrying', 'straight', 'depth')),
      says: 'Over what lies in the shaft.',
    },
    { key: 'shear', is: div('push', mul('carrying', 'straight', 'width')), says: 'Over the section between them.' },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '9th',
      at: 'section 7-7',
      how: 'memory',
    },
    { title: 'DIN 6885-1', edition: '1968', at: 'form A, round ends; depth in shaft and hub', how: 'read' },
    { title: 'Two keys count as one and a half', how: 'common practice' },
  ],
  holds: ['The push is taken at the surface of the shaft, and spreads evenly along the key.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { torque, diameter, width, height, depth, length, roundEnds, keys } = input;
    if (depth >= height)
      throw new MethodError(
        id,
        'depth',
        'The slot in the shaft is as deep as the key is high; nothing stands in the hub.',
      );
    const straight = length - (roundEnds * width) / 2;
    if (!(straight > 0))
      throw new MethodError(id, 'length', 'The key is shorter than its round ends; no straight side is left.');
    const push = (2 * torque) / diameter;
    const carrying = keys === 2 ? 1.5 : 1;
    return {
      hub: push / (carrying * straight * (height - depth)),
      shaft: push / (carrying * straight * depth),
      shear: push / (carrying * straight * width),
      push,
      straight,
      carrying,
    };
  },
});
