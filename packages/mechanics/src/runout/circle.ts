import { div, fn, sum } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { leastSquares } from '../numerics/least-squares.ts';
import { refuseOutside } from '../numerics/refuse.ts';

const id = 'runout.circle';

const inputs = {
  xs: { form: 'list', kind: 'length', symbol: 'x_i', meaning: 'points, first coordinate', atLeast: 3 },
  ys: { form: 'list', kind: 'length', symbol: 'y_i', meaning: 'points, second coordinate', atLeast: 3 },
} as const satisfies Params;

const MOST_STEPS = 500;

/**
 * The circle that leaves the least sum of squared distances to its points.
 *
 * Errors: lists of different lengths, points on one line.
 */
export const leastSquaresCircle = defineMethod({
  id,
  gives: 'Least-squares circle through points: centre and radius',
  inputs,
  outputs: {
    x: { form: 'value', kind: 'length', symbol: 'x_c', meaning: 'centre, first coordinate' },
    y: { form: 'value', kind: 'length', symbol: 'y_c', meaning: 'centre, second coordinate' },
    radius: { form: 'value', kind: 'length', symbol: 'R', meaning: 'radius' },
    deviation: { form: 'value', kind: 'length', symbol: 's', meaning: 'root mean square distance of the points' },
    distances: { form: 'list', kind: 'length', symbol: 'd_i', meaning: 'distance of each point from the centre' },
    squares: {
      form: 'list',
      kind: 'area',
      symbol: 'f_i^2',
      meaning: 'square of each point’s distance from the circle',
    },
    points: { form: 'integer', symbol: 'N', meaning: 'number of points' },
  },
  results: ['x', 'y', 'radius', 'deviation'],
  steps: [
    {
      key: 'radius',
      is: div(sum('distances'), 'points'),
      says: 'The centre is found so that the squares of the distances from the circle add up to the least; the radius is then the mean distance from it.',
    },
    { key: 'deviation', is: fn('sqrt', div(sum('squares'), 'points')), says: 'What is left over.' },
  ],
  sources: [
    {
      title: 'W. Gander, G. H. Golub, R. Strebel, Least-squares fitting of circles and ellipses',
      edition: 'BIT 34, 1994',
      how: 'memory',
    },
  ],
  holds: ['The distances count, not an algebraic stand-in: short arcs are not pulled to a small circle.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { xs, ys } = input;
    if (xs.length !== ys.length)
      throw new MethodError(
        id,
        'ys',
        `${ys.length} read for ${xs.length} first coordinates; one for each is accepted.`,
      );
    const first = startCircle(xs, ys);
    if (!first) throw new MethodError(id, 'xs', 'the points lie on one line; points round a circle are accepted.');
    const [x, y] = descend(xs, ys, first);
    const distances = distancesFrom(xs, ys, x, y);
    const radius = mean(distances);
    const squares = distances.map((d) => (d - radius) ** 2);
    return { x, y, radius, deviation: Math.sqrt(mean(squares)), distances, squares, points: xs.length };
  },
});

const mean = (list: readonly number[]): number => list.reduce((total, one) => total + one, 0) / list.length;
const distancesFrom = (xs: readonly number[], ys: readonly number[], x: number, y: number): number[] =>
  xs.map((px, i) => Math.hypot(px - x, (ys[i] as number) - y));

/** Centre by the linear stand-in, about the points' middle so that large coordinates cost no figures. */
function startCircle(xs: readonly number[], ys: readonly number[]): [number, number] | undefined {
  const [mx, my] = [mean(xs), mean(ys)];
  const us = xs.map((x) => x - mx);
  const vs = ys.map((y) => y - my);
  const size = Math.sqrt(mean(us.map((u, i) => u * u + (vs[i] as number) ** 2)));
  if (!(size > 0)) return undefined;
  const fit = leastSquares(
    us.map((u, i) => [u / size, (vs[i] as number) / size, 1]),
    us.map((u, i) => (u * u + (vs[i] as number) ** 2) / size ** 2),
  );
  return fit && [mx + ((fit.values[0] as number) * size) / 2, my + ((fit.values[1] as number) * size) / 2];
}

/** Damped Gauss–Newton on centre and radius. */
function descend(xs: readonly number[], ys: readonly number[], start: readonly [number, number]): [number, number] {
  let [x, y] = start;
  const cost = (cx: number, cy: number): number => {
    const d = distancesFrom(xs, ys, cx, cy);
    const r = mean(d);
    return d.reduce((total, one) => total + (one - r) ** 2, 0);
  };
  let now = cost(x, y);
  let damping = 1e-3;
  for (let step = 0; step < MOST_STEPS; step++) {
    const d = distancesFrom(xs, ys, x, y);
    const r = mean(d);
    const rows = d.map((one, i) => [(x - (xs[i] as number)) / one, (y - (ys[i] as number)) / one, -1]);
    const root = Math.sqrt(damping);
    const fit = leastSquares(
      [...rows, [root, 0, 0], [0, root, 0], [0, 0, root]],
      [...d.map((one) => r - one), 0, 0, 0],
    );
    if (!fit) break;
    const [dx, dy] = [fit.values[0] as number, fit.values[1] as number];
    const next = cost(x + dx, y + dy);
    if (next <= now) {
      [x, y, now, damping] = [x + dx, y + dy, next, damping / 10];
      if (Math.hypot(dx, dy) <= 1e-13 * r) break;
    } else {
      damping = Math.max(damping, 1e-9) * 10;
      if (damping > 1e12) break;
    }
  }
  return [x, y];
}
