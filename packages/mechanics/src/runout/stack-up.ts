import { add, fn, pow, sum } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';

const id = 'runout.stackUp';

const inputs = {
  tirs: {
    form: 'list',
    kind: 'length',
    symbol: 'T_i',
    meaning: 'TIR that each contributor makes',
    range: { min: 0 },
    atLeast: 1,
  },
  highs: {
    form: 'list',
    kind: 'angle',
    symbol: 'φ_i',
    meaning: 'angle of each high spot, all in one set of marks',
    atLeast: 1,
  },
} as const satisfies Params;

/**
 * Run-out of parts joined together: worst case, root-sum-square and, with the angles known, exactly.
 *
 * Errors: lists of different lengths, a negative TIR.
 */
export const stackUp = defineMethod({
  id,
  gives: 'Run-out of several parts together: worst case, root-sum-square and by their angles',
  inputs,
  outputs: {
    worst: { form: 'value', kind: 'length', symbol: 'T_w', meaning: 'TIR with all high spots in line' },
    rootSumSquare: {
      form: 'value',
      kind: 'length',
      symbol: 'T_r',
      meaning: 'usual TIR with chance angles; one in three lies above it',
    },
    tir: { form: 'value', kind: 'length', symbol: 'T', meaning: 'TIR at the given angles' },
    high: { form: 'value', kind: 'angle', symbol: 'φ', meaning: 'angle of its high spot' },
    squares: { form: 'list', kind: 'area', symbol: 'T_i^2', meaning: 'squares of the TIRs' },
    xs: { form: 'list', kind: 'length', symbol: 'x_i', meaning: 'parts towards mark 0' },
    ys: { form: 'list', kind: 'length', symbol: 'y_i', meaning: 'parts a quarter turn on' },
  },
  results: ['worst', 'rootSumSquare', 'tir', 'high'],
  steps: [
    { key: 'worst', is: sum('tirs'), says: 'All high spots in line.' },
    {
      key: 'rootSumSquare',
      is: fn('sqrt', sum('squares')),
      says: 'Mean square of vectors at chance angles; not a bound.',
    },
    { key: 'tir', is: fn('sqrt', add(pow(sum('xs'), 2), pow(sum('ys'), 2))), says: 'Vectors added.' },
    { key: 'high', is: fn('atan2', sum('ys'), sum('xs')), says: 'Direction of the sum.' },
  ],
  sources: [{ title: 'Vector sum of first-order run-outs', how: 'derived' }],
  holds: ['Only offsets are added; ovality and lobes stay with their part.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { tirs, highs } = input;
    if (tirs.length !== highs.length)
      throw new MethodError(
        id,
        'highs',
        `${highs.length} angles read for ${tirs.length} TIRs; one for each is accepted.`,
      );
    const total = (list: readonly number[]): number => list.reduce((all, one) => all + one, 0);
    const xs = tirs.map((t, i) => t * Math.cos(highs[i] as number));
    const ys = tirs.map((t, i) => t * Math.sin(highs[i] as number));
    const squares = tirs.map((t) => t * t);
    return {
      worst: total(tirs),
      rootSumSquare: Math.sqrt(total(squares)),
      tir: Math.hypot(total(xs), total(ys)),
      high: Math.atan2(total(ys), total(xs)),
      squares,
      xs,
      ys,
    };
  },
});
