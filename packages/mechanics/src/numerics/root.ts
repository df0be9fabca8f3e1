/** Relative spacing of doubles near one. */
const EPSILON = Number.EPSILON;

/**
 * Root of a continuous function inside a bracket: Brent's method, which keeps the bracket and falls back on halving.
 *
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives, 1973, chapter 4 (from memory).
 *
 * @param f Continuous on the bracket; its values at the two ends must differ in sign, or one of them be zero.
 * @param low One end of the bracket, finite.
 * @param high Other end of the bracket, finite.
 * @param tolerance Wanted nearness of the argument, at least 0; doubles' own rounding is added to it.
 * @param mostSteps Greatest number of evaluations inside the bracket.
 * @throws RangeError when the ends do not bracket a root, or the steps run out; both name the numbers read.
 */
export function findRoot(f: (x: number) => number, low: number, high: number, tolerance = 0, mostSteps = 200): number {
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa * fb < 0)) {
    throw new RangeError(
      `No root is bracketed: the function is ${fa} at ${low} and ${fb} at ${high}; values of different sign are needed.`,
    );
  }
  let c = a;
  let fc = fa;
  let step = b - a;
  let before = step;
  for (let count = 0; count < mostSteps; count++) {
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b;
      b = c;
      c = a;
      fa = fb;
      fb = fc;
      fc = fa;
    }
    const near = 2 * EPSILON * Math.abs(b) + tolerance / 2;
    const half = (c - b) / 2;
    if (Math.abs(half) <= near || fb === 0) return b;
    if (Math.abs(before) < near || Math.abs(fa) <= Math.abs(fb)) {
      step = half;
      before = half;
    } else {
      const s = fb / fa;
      let p: number;
      let q: number;
      if (a === c) {
        p = 2 * half * s;
        q = 1 - s;
      } else {
        const r = fb / fc;
        q = fa / fc;
        p = s * (2 * half * q * (q - r) - (b - a) * (r - 1));
        q = (q - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      else p = -p;
      if (2 * p < Math.min(3 * half * q - Math.abs(near * q), Math.abs(before * q))) {
        before = step;
        step = p / q;
      } else {
        step = half;
        before = half;
      }
    }
    a = b;
    fa = fb;
    b += Math.abs(step) > near ? step : Math.sign(half) * near;
    fb = f(b);
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      step = b - a;
      before = step;
    }
  }
  throw new RangeError(
    `The root between ${low} and ${high} was not reached in ${mostSteps} steps; last ${b}, value ${fb}.`,
  );
}
