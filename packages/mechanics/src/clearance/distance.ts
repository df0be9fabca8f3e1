import type { Vec3 } from '@oddwheel/quantity/quantity';
import { norm as normTree, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';
import { convexDistance } from './convex-distance.ts';
import type { Solid } from './solid.ts';

const id = 'clearance.distance';

const SHAPES = ['capsule', 'cylinder', 'frustum', 'box', 'bar'] as const;
type Shape = (typeof SHAPES)[number];

const NOT_BELOW = { range: { min: 0 }, default: 0 } as const;

/** One solid written out as numbers; sizes that its shape does not use stay 0. */
const solidInputs = <L extends 'A' | 'B'>(letter: L, which: 'first' | 'second') => {
  const s = letter.toLowerCase();
  const param = (symbol: string, meaning: string) =>
    ({
      form: 'value',
      kind: 'length',
      symbol: `${symbol}_${s}`,
      meaning: `${meaning} of the ${which} solid`,
      ...NOT_BELOW,
    }) as const;
  const inputs = {
    shape: { form: 'choice', symbol: `S_${s}`, meaning: `shape of the ${which} solid`, choices: SHAPES },
    from: {
      form: 'vector',
      kind: 'length',
      symbol: `${s}_1`,
      meaning: `one end of the axis of the ${which} solid, or the low corner of a box`,
    },
    to: {
      form: 'vector',
      kind: 'length',
      symbol: `${s}_2`,
      meaning: `other end of the axis of the ${which} solid, or the high corner of a box`,
    },
    across: {
      form: 'vector',
      kind: 'number',
      symbol: `n_${s}`,
      meaning: `direction of the height of the ${which} solid, a bar; nothing for other shapes`,
    },
    radius: param('r', 'radius'),
    radiusTo: param('R', 'radius at the other end of a cone'),
    rounding: param('q', 'rounding of the edges of a cylinder'),
    halfHeight: param('h', 'half the height of a bar'),
    halfWidth: param('w', 'half the width of a bar'),
    sag: param('f', 'swing of the middle of a bar to either side'),
  } as const satisfies Params;
  type Named = { readonly [K in keyof typeof inputs as `${K}${L}`]: (typeof inputs)[K] };
  return Object.fromEntries(Object.entries(inputs).map(([key, one]) => [`${key}${letter}`, one])) as unknown as Named;
};

const inputs = {
  ...solidInputs('A', 'first'),
  ...solidInputs('B', 'second'),
  growth: {
    form: 'value',
    kind: 'length',
    symbol: 'g',
    meaning: 'what a tyre grows at speed, along its radius',
    ...NOT_BELOW,
  },
  movement: {
    form: 'value',
    kind: 'length',
    symbol: 'm',
    meaning: 'how far what carries the two may move against each other',
    ...NOT_BELOW,
  },
} as const satisfies Params;

/** The numbers of one solid. */
export interface FlatSolid {
  readonly shape: Shape;
  readonly from: Vec3;
  readonly to: Vec3;
  readonly across: Vec3;
  readonly radius: number;
  readonly radiusTo: number;
  readonly rounding: number;
  readonly halfHeight: number;
  readonly halfWidth: number;
  readonly sag: number;
}

function solidOf(flat: FlatSolid): Solid {
  const { shape, from, to, across, radius, radiusTo, rounding, halfHeight, halfWidth, sag } = flat;
  switch (shape) {
    case 'capsule':
      return { shape, from, to, radius };
    case 'cylinder':
      return { shape, from, to, radius, rounding };
    case 'frustum':
      return { shape, from, to, radiusFrom: radius, radiusTo };
    case 'box':
      return { shape, low: from, high: to };
    case 'bar':
      return { shape, from, to, across, halfHeight, halfWidth, sag };
  }
}

/** A solid written out as the numbers that the method takes. */
export function flatSolid(solid: Solid): FlatSolid {
  const none = { across: [0, 0, 0] as Vec3, radius: 0, radiusTo: 0, rounding: 0, halfHeight: 0, halfWidth: 0, sag: 0 };
  switch (solid.shape) {
    case 'box':
      return { ...none, shape: 'box', from: solid.low, to: solid.high };
    case 'frustum':
      return {
        ...none,
        shape: 'frustum',
        from: solid.from,
        to: solid.to,
        radius: solid.radiusFrom,
        radiusTo: solid.radiusTo,
      };
    default:
      return { ...none, ...solid };
  }
}

/**
 * Clearance that is left between two parts, each kept within a convex solid, after a tyre's growth and the movement of what carries them.
 *
 * Errors: sizes below zero, coordinates that are not finite, ends of an axis in one point, a rounding over the radius or half the width.
 */
export const clearanceDistance = defineMethod({
  id,
  gives: 'Clearance left between two solids after growth and movement, and where they come nearest',
  inputs,
  outputs: {
    free: {
      form: 'value',
      kind: 'length',
      symbol: 'c',
      meaning: 'clearance that is left; negative where the two come to touch',
    },
    distance: { form: 'value', kind: 'length', symbol: 'd', meaning: 'distance of the two as they stand' },
    pointA: { form: 'vector', kind: 'length', symbol: 'p_a', meaning: 'nearest point of the first solid' },
    pointB: { form: 'vector', kind: 'length', symbol: 'p_b', meaning: 'nearest point of the second solid' },
  },
  results: ['free', 'distance', 'pointA', 'pointB'],
  steps: [
    {
      key: 'distance',
      is: normTree(sub('pointB', 'pointA')),
      says: 'The two nearest points, found by search; one point where the solids overlap.',
    },
    { key: 'free', is: sub(sub('distance', 'growth'), 'movement'), says: 'Less growth and movement.' },
  ],
  sources: [
    {
      title:
        'A fast procedure for computing the distance between complex objects in three-dimensional space (Gilbert, Johnson, Keerthi)',
      at: 'IEEE Journal of Robotics and Automation 4 (1988), 193',
      how: 'memory',
    },
  ],
  holds: ['Growth and movement are taken as straight toward each other, which leaves least.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { growth, movement } = input;
    const first = solidOf({
      ...{ shape: input.shapeA, from: input.fromA, to: input.toA, across: input.acrossA, radius: input.radiusA },
      ...{ radiusTo: input.radiusToA, rounding: input.roundingA },
      ...{ halfHeight: input.halfHeightA, halfWidth: input.halfWidthA, sag: input.sagA },
    });
    const second = solidOf({
      ...{ shape: input.shapeB, from: input.fromB, to: input.toB, across: input.acrossB, radius: input.radiusB },
      ...{ radiusTo: input.radiusToB, rounding: input.roundingB },
      ...{ halfHeight: input.halfHeightB, halfWidth: input.halfWidthB, sag: input.sagB },
    });
    try {
      const { pointA, pointB } = convexDistance(first, second);
      const distance = Math.hypot(pointB[0] - pointA[0], pointB[1] - pointA[1], pointB[2] - pointA[2]);
      return { free: distance - growth - movement, distance, pointA, pointB };
    } catch (error) {
      if (error instanceof RangeError) throw new MethodError(id, 'shapeA', error.message);
      throw error;
    }
  },
});
