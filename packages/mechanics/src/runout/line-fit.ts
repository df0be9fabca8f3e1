import { add, div, fn, mul, sub, sum } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { leastSquares } from '../numerics/least-squares.ts';
import { refuseOutside } from '../numerics/refuse.ts';

const id = 'runout.lineFit';

const inputs = {
  stations: { form: 'list', kind: 'length', symbol: 'z_i', meaning: 'station of each section', atLeast: 2 },
  offsets: { form: 'list', kind: 'length', symbol: 'e_i', meaning: 'offset there, in one direction', atLeast: 2 },
  at: { form: 'value', kind: 'length', symbol: 'z', meaning: 'station that the line is wanted at' },
} as const satisfies Params;

/**
 * The axis through measured sections as the straight line of least squares, in one direction.
 *
 * Errors: lists of different lengths, all sections at one station.
 */
export const lineFit = defineMethod({
  id,
  gives: 'Axis line through measured sections, in one direction, and its offset at any station',
  inputs,
  outputs: {
    offset: { form: 'value', kind: 'length', symbol: 'e', meaning: 'offset of the line at the wanted station' },
    tilt: { form: 'value', kind: 'angle', symbol: 'τ', meaning: 'slope of the line' },
    left: {
      form: 'value',
      kind: 'length',
      symbol: 's',
      meaning: 'root mean square distance of the sections: bend or noise',
    },
    middle: { form: 'value', kind: 'length', symbol: 'z_m', meaning: 'mean station' },
    height: { form: 'value', kind: 'length', symbol: 'e_m', meaning: 'mean offset' },
    moments: { form: 'list', kind: 'area', symbol: 'p_i', meaning: 'station from the mean times offset from the mean' },
    squares: { form: 'list', kind: 'area', symbol: 'q_i', meaning: 'square of station from the mean' },
    rests: { form: 'list', kind: 'area', symbol: 'f_i^2', meaning: 'square of each section’s distance from the line' },
    count: { form: 'integer', symbol: 'N', meaning: 'number of sections' },
  },
  results: ['offset', 'tilt', 'left'],
  steps: [
    { key: 'middle', is: div(sum('stations'), 'count'), says: 'The line passes through the middle of the sections.' },
    { key: 'height', is: div(sum('offsets'), 'count'), says: 'Likewise.' },
    { key: 'tilt', is: div(sum('moments'), sum('squares')), says: 'Slope of least squares.' },
    { key: 'offset', is: add('height', mul('tilt', sub('at', 'middle'))), says: 'Along the line from its middle.' },
    { key: 'left', is: fn('sqrt', div(sum('rests'), 'count')), says: 'What no straight line can follow.' },
  ],
  sources: [{ title: 'Straight line of least squares', how: 'derived' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { stations, offsets, at } = input;
    if (stations.length !== offsets.length)
      throw new MethodError(
        id,
        'offsets',
        `${offsets.length} read for ${stations.length} stations; one for each is accepted.`,
      );
    const count = stations.length;
    const middle = stations.reduce((total, z) => total + z, 0) / count;
    const height = offsets.reduce((total, e) => total + e, 0) / count;
    const fit = leastSquares(
      stations.map((z) => [1, z - middle]),
      offsets.map((e) => e - height),
    );
    if (!fit)
      throw new MethodError(id, 'stations', 'all sections stand at one station; two stations at least are accepted.');
    const moments = stations.map((z, i) => (z - middle) * ((offsets[i] as number) - height));
    const squares = stations.map((z) => (z - middle) ** 2);
    const rests = fit.residuals.map((r) => r * r);
    const tilt = fit.values[1] as number;
    return {
      offset: height + tilt * (at - middle),
      tilt,
      left: Math.sqrt(rests.reduce((total, r) => total + r, 0) / count),
      middle,
      height,
      moments,
      squares,
      rests,
      count,
    };
  },
});
