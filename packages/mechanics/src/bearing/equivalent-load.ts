import { add, branch, choose, div, fn, mul, when } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { between } from './rows.ts';

const id = 'bearing.equivalentLoad';

const inputs = {
  radial: { form: 'value', kind: 'force', symbol: 'F_r', meaning: 'radial load', range: { min: 0 } },
  axial: { form: 'value', kind: 'force', symbol: 'F_a', meaning: 'axial load', range: { min: 0 } },
  staticRating: { form: 'value', kind: 'force', symbol: 'C_0', meaning: 'static load rating', range: ABOVE_ZERO },
  f0: { form: 'value', kind: 'number', symbol: 'f_0', meaning: 'factor of the bearing', range: { min: 1, max: 30 } },
  rowLoads: {
    form: 'list',
    kind: 'number',
    symbol: 'q_k',
    meaning: 'relative axial loads of the table, rising',
    range: { min: 0 },
    atLeast: 2,
  },
  rowE: { form: 'list', kind: 'number', symbol: 'e_k', meaning: 'limit e of each row', range: { min: 0 }, atLeast: 2 },
  rowY: { form: 'list', kind: 'number', symbol: 'Y_k', meaning: 'factor Y of each row', range: { min: 0 }, atLeast: 2 },
  x: { form: 'value', kind: 'number', symbol: 'X', meaning: 'factor X of the table', range: { min: 0, max: 1 } },
} as const satisfies Params;

/**
 * Equivalent dynamic load of a single-row deep groove ball bearing: never below the radial load.
 *
 * Errors: loads below zero, ratings not above zero, lists of different length or rows that do not rise.
 */
export const equivalentLoad = defineMethod({
  id,
  gives: 'Equivalent dynamic load of a deep groove ball bearing under radial and axial load',
  inputs,
  outputs: {
    load: { form: 'value', kind: 'force', symbol: 'P', meaning: 'equivalent dynamic load' },
    relative: { form: 'value', kind: 'number', symbol: 'q', meaning: 'relative axial load' },
    e: { form: 'value', kind: 'number', symbol: 'e', meaning: 'limit of the axial load over the radial load' },
    y: { form: 'value', kind: 'number', symbol: 'Y', meaning: 'factor Y' },
    part: { form: 'value', kind: 'number', symbol: 'x', meaning: 'part of the way between two rows' },
    lowerE: { form: 'value', kind: 'number', symbol: 'e_a', meaning: 'limit e in the row below' },
    upperE: { form: 'value', kind: 'number', symbol: 'e_b', meaning: 'limit e in the row above' },
    lowerY: { form: 'value', kind: 'number', symbol: 'Y_a', meaning: 'factor Y in the row below' },
    upperY: { form: 'value', kind: 'number', symbol: 'Y_b', meaning: 'factor Y in the row above' },
  },
  results: ['load', 'relative', 'e', 'y'],
  steps: [
    { key: 'relative', is: div(mul('f0', 'axial'), 'staticRating'), says: 'The table is entered with f₀ F_a / C₀.' },
    {
      key: 'e',
      is: add('lowerE', mul('part', add('upperE', mul(-1, 'lowerE')))),
      says: 'Straight between the rows; beyond the ends the end row counts.',
    },
    {
      key: 'y',
      is: add('lowerY', mul('part', add('upperY', mul(-1, 'lowerY')))),
      says: 'Straight between the rows.',
    },
    {
      key: 'load',
      is: choose(
        [branch(when('axial', '<=', mul('e', 'radial')), 'radial')],
        fn('max', 'radial', add(mul('x', 'radial'), mul('y', 'axial'))),
      ),
      says: 'Up to e the axial load does not count; the load never falls below the radial load.',
    },
  ],
  sources: [{ title: 'ISO 281:2007', at: 'table 3, by way of two makers’ catalogues', how: 'read' }],
  holds: ['One row of balls. The axial load stays under half the static rating, under a quarter for light series.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { radial, axial, staticRating, f0, rowLoads, rowE, rowY, x } = input;
    if (rowE.length !== rowLoads.length)
      throw new MethodError(
        id,
        'rowE',
        `${rowE.length} limits e read for ${rowLoads.length} rows; as many are accepted.`,
      );
    if (rowY.length !== rowLoads.length)
      throw new MethodError(
        id,
        'rowY',
        `${rowY.length} factors Y read for ${rowLoads.length} rows; as many are accepted.`,
      );
    const relative = (f0 * axial) / staticRating;
    const { row, part } = between(id, 'rowLoads', rowLoads, relative);
    const [lowerE, upperE] = [rowE[row] as number, rowE[row + 1] as number];
    const [lowerY, upperY] = [rowY[row] as number, rowY[row + 1] as number];
    const e = lowerE + part * (upperE - lowerE);
    const y = lowerY + part * (upperY - lowerY);
    const load = axial <= e * radial ? radial : Math.max(radial, x * radial + y * axial);
    return { load, relative, e, y, part, lowerE, upperE, lowerY, upperY };
  },
});
