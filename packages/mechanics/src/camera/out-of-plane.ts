import { div, mul, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'camera.outOfPlane';

const inputs = {
  distance: {
    form: 'value',
    kind: 'length',
    symbol: 'H',
    meaning: 'distance of the camera from the plane that is to scale',
    range: ABOVE_ZERO,
  },
  nearer: {
    form: 'value',
    kind: 'length',
    symbol: 'h',
    meaning: 'how far a thing stands nearer to the camera than that plane, negative for farther',
  },
  aside: {
    form: 'value',
    kind: 'length',
    symbol: 'r',
    meaning: 'how far it is seen from the middle of the picture, at the scale of that plane',
    range: { min: 0 },
  },
} as const satisfies Params;

/**
 * How far out of place and how much too large a camera shows what does not stand in the plane that is to scale.
 *
 * Errors: a camera distance not above zero, a thing at or behind the camera, a place less than nothing from the middle.
 */
export const cameraOutOfPlane = defineMethod({
  id,
  gives: 'How far out of place a photo shows what stands out of its plane',
  inputs,
  outputs: {
    out: { form: 'value', kind: 'length', symbol: 'd', meaning: 'how far it is seen outward of where it is' },
    larger: { form: 'value', kind: 'ratio', symbol: 'm', meaning: 'how many times as large it is seen' },
  },
  results: ['out', 'larger'],
  steps: [
    {
      key: 'out',
      is: div(mul('aside', 'nearer'), 'distance'),
      says: 'The ray from the camera through the thing goes on to the plane: similar triangles.',
    },
    { key: 'larger', is: div('distance', sub('distance', 'nearer')), says: 'Sizes go as one over the distance.' },
  ],
  sources: [
    { title: 'Relief displacement on a vertical aerial photograph', at: 'd = r h / H', how: 'read' },
    { title: 'Similar triangles of the central projection, for the size', how: 'derived' },
  ],
  holds: ['The camera looks square at the plane, through a lens that keeps straight lines straight.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { distance, nearer, aside } = input;
    if (!(nearer < distance))
      throw new MethodError(
        id,
        'nearer',
        `How far a thing stands nearer: ${nearer} m is at or behind the camera; less than its distance, ${distance} m, is accepted.`,
      );
    return { out: (aside * nearer) / distance, larger: distance / (distance - nearer) };
  },
});
