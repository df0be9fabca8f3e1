/** How near an integration must keep. */
export interface OdeOptions {
  /** Wanted error of a step relative to the value. */
  readonly relative?: number;
  /** Wanted error of a step where a value is near zero. */
  readonly absolute?: number;
  /** Greatest number of steps, taken or refused. */
  readonly mostSteps?: number;
}

/** Slopes of all values at a place. */
export type Slopes = (t: number, y: readonly number[]) => readonly number[];

/** Places of the stages as parts of the step, and the weights of the slopes before each. */
const PLACES = [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1] as const;
const WEIGHTS: readonly (readonly number[])[] = [
  [],
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
];
/** Fifth order less fourth order: the error of a step. */
const ERRORS = [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40] as const;

const SAFETY = 0.9;
const LEAST_CHANGE = 0.2;
const MOST_CHANGE = 5;
/** Of the usual step control for a pair whose error goes with the fifth power of the step. */
const EXPONENT = 1 / 5;

const moved = (
  y: readonly number[],
  step: number,
  weights: readonly number[],
  slopes: readonly (readonly number[])[],
) => y.map((value, k) => value + step * weights.reduce((sum, weight, s) => sum + weight * (slopes[s]?.[k] ?? 0), 0));

/** Root mean square of the errors, each as a part of what is allowed for its value. */
function errorOf(
  before: readonly number[],
  after: readonly number[],
  errors: readonly number[],
  options: OdeOptions,
): number {
  const { relative = 1e-10, absolute = 1e-12 } = options;
  const squares = errors.map((error, k) => {
    const size = Math.max(Math.abs(before[k] ?? 0), Math.abs(after[k] ?? 0));
    return (error / (absolute + relative * size)) ** 2;
  });
  return Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / squares.length);
}

/**
 * Values at the end of a span, from their slopes: Runge–Kutta pair of order 5(4) with step control.
 *
 * Source: J. R. Dormand, P. J. Prince, A family of embedded Runge-Kutta formulae, J. Comp. Appl. Math. 6 (1980) 19, table 2 (from
 * memory; the conditions of order are tested).
 *
 * @param slopes Slopes at a place, smooth over the span: split the span where they jump.
 * @param from Place where the values are known.
 * @param y Values there, at least one.
 * @param to Place where they are wanted; may lie before `from`.
 * @throws RangeError when a slope is not finite, or the steps run out or vanish.
 */
export function integrate(
  slopes: Slopes,
  from: number,
  y: readonly number[],
  to: number,
  options: OdeOptions = {},
): readonly number[] {
  const { mostSteps = 20_000 } = options;
  const sign = Math.sign(to - from);
  if (sign === 0) return y;
  let t = from;
  let here = y;
  let step = (to - from) / 64;
  let first = slopes(t, here);
  for (let count = 0; count < mostSteps; count++) {
    const last = sign * (t + step - to) >= 0;
    if (last) step = to - t;
    const taken: (readonly number[])[] = [first];
    let next = here;
    for (let stage = 1; stage < PLACES.length; stage++) {
      next = moved(here, step, WEIGHTS[stage] as readonly number[], taken);
      taken.push(slopes(t + (PLACES[stage] as number) * step, next));
    }
    const errors = here.map((_, k) => step * ERRORS.reduce((sum, weight, s) => sum + weight * (taken[s]?.[k] ?? 0), 0));
    const error = errorOf(here, next, errors, options);
    if (!Number.isFinite(error)) throw new RangeError(`The slopes near ${t} are not finite.`);
    if (error <= 1) {
      t = last ? to : t + step;
      here = next;
      first = taken.at(-1) as readonly number[];
      if (last) return here;
    }
    step *= Math.min(MOST_CHANGE, Math.max(LEAST_CHANGE, error === 0 ? MOST_CHANGE : SAFETY * error ** -EXPONENT));
    if (t + step === t) throw new RangeError(`The steps vanish at ${t}; the slopes jump there.`);
  }
  throw new RangeError(`The end at ${to} was not reached in ${mostSteps} steps; last ${t}.`);
}
