import { add, mul, norm as normTree, sub } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';
import { minus, norm, plus, times } from '../numerics/vector.ts';
import { segmentParts } from './segment-distance.ts';

const id = 'clearance.capsules';

const inputs = {
  fromA: { form: 'vector', kind: 'length', symbol: 'a_1', meaning: 'one end of the first line' },
  toA: { form: 'vector', kind: 'length', symbol: 'a_2', meaning: 'other end of the first line' },
  radiusA: { form: 'value', kind: 'length', symbol: 'r_a', meaning: 'radius about the first line', range: { min: 0 } },
  fromB: { form: 'vector', kind: 'length', symbol: 'b_1', meaning: 'one end of the second line' },
  toB: { form: 'vector', kind: 'length', symbol: 'b_2', meaning: 'other end of the second line' },
  radiusB: { form: 'value', kind: 'length', symbol: 'r_b', meaning: 'radius about the second line', range: { min: 0 } },
} as const satisfies Params;

/**
 * Room between two round-ended bars: tubes, shafts, chain spans as thick lines. A ball has both ends in one point.
 *
 * Errors: radius below zero, coordinates that are not finite.
 */
export const clearanceCapsules = defineMethod({
  id,
  gives: 'Room between two round-ended bars, and where they come nearest',
  inputs,
  outputs: {
    clearance: {
      form: 'value',
      kind: 'length',
      symbol: 'g',
      meaning: 'room between the two; negative when they overlap',
    },
    pointA: { form: 'vector', kind: 'length', symbol: 'p_a', meaning: 'nearest point on the first line' },
    pointB: { form: 'vector', kind: 'length', symbol: 'p_b', meaning: 'nearest point on the second line' },
    distance: { form: 'value', kind: 'length', symbol: 'd', meaning: 'distance between the two lines' },
    partA: { form: 'value', kind: 'fraction', symbol: 's', meaning: 'part of the first line from its first end' },
    partB: { form: 'value', kind: 'fraction', symbol: 't', meaning: 'part of the second line from its first end' },
  },
  results: ['clearance', 'pointA', 'pointB', 'distance'],
  steps: [
    {
      key: 'pointA',
      is: add('fromA', mul('partA', sub('toA', 'fromA'))),
      says: 'The parts make the distance least; where a foot would fall past an end, it is that end.',
    },
    { key: 'pointB', is: add('fromB', mul('partB', sub('toB', 'fromB'))), says: 'On the second line.' },
    { key: 'distance', is: normTree(sub('pointB', 'pointA')), says: 'Between the two points.' },
    { key: 'clearance', is: sub(sub('distance', 'radiusA'), 'radiusB'), says: 'Less both radii.' },
  ],
  sources: [{ title: 'Least distance of two straight pieces, a quadratic of two parts held in 0..1', how: 'derived' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { fromA, toA, fromB, toB } = input;
    const { partA, partB } = segmentParts(fromA, toA, fromB, toB);
    const pointA = plus(fromA, times(partA, minus(toA, fromA)));
    const pointB = plus(fromB, times(partB, minus(toB, fromB)));
    const distance = norm(minus(pointB, pointA));
    return { clearance: distance - input.radiusA - input.radiusB, pointA, pointB, distance, partA, partB };
  },
});
