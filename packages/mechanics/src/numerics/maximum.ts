const GOLDEN = (3 - Math.sqrt(5)) / 2;

/**
 * Where a function with a single peak inside a bracket is greatest: Brent's method, parabolas guarded by golden section.
 *
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives, 1973, chapter 5 (from memory).
 *
 * @param f Function with one peak between the ends; the peak may lie at an end.
 * @param low Lower end of the bracket, finite.
 * @param high Upper end of the bracket, above `low`.
 * @param tolerance Wanted relative nearness of the argument; finer than about 1e-8 is lost in rounding.
 * @param mostSteps Greatest number of evaluations.
 * @throws RangeError when the bracket is empty or the steps run out.
 */
export function findMaximum(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance = 1e-9,
  mostSteps = 200,
): number {
  if (!(low < high)) throw new RangeError(`A bracket runs from low to high, not from ${low} to ${high}.`);
  let a = low;
  let b = high;
  let best = a + GOLDEN * (b - a);
  let second = best;
  let third = best;
  let fBest = f(best);
  let fSecond = fBest;
  let fThird = fBest;
  let step = 0;
  let before = 0;
  for (let count = 0; count < mostSteps; count++) {
    const middle = (a + b) / 2;
    const near = tolerance * Math.abs(best) + Number.EPSILON * (high - low);
    if (Math.abs(best - middle) <= 2 * near - (b - a) / 2) return higherEnd(f, low, high, best, fBest);
    let parabolic = false;
    if (Math.abs(before) > near) {
      const r = (best - second) * (fThird - fBest);
      const s = (best - third) * (fSecond - fBest);
      let p = (best - third) * s - (best - second) * r;
      let q = 2 * (s - r);
      if (q > 0) p = -p;
      q = Math.abs(q);
      if (Math.abs(p) < Math.abs((q * before) / 2) && p > q * (a - best) && p < q * (b - best)) {
        before = step;
        step = p / q;
        const trial = best + step;
        if (trial - a < 2 * near || b - trial < 2 * near) step = best < middle ? near : -near;
        parabolic = true;
      }
    }
    if (!parabolic) {
      before = best < middle ? b - best : a - best;
      step = GOLDEN * before;
    }
    const x = best + (Math.abs(step) >= near ? step : Math.sign(step) * near);
    const fx = f(x);
    if (fx >= fBest) {
      if (x < best) b = best;
      else a = best;
      third = second;
      fThird = fSecond;
      second = best;
      fSecond = fBest;
      best = x;
      fBest = fx;
    } else {
      if (x < best) a = x;
      else b = x;
      if (fx >= fSecond || second === best) {
        third = second;
        fThird = fSecond;
        second = x;
        fSecond = fx;
      } else if (fx >= fThird || third === best || third === second) {
        third = x;
        fThird = fx;
      }
    }
  }
  throw new RangeError(`The peak between ${low} and ${high} was not reached in ${mostSteps} steps; last ${best}.`);
}

/** The search closes in on an end without touching it; a peak at an end is that end itself. */
function higherEnd(f: (x: number) => number, low: number, high: number, best: number, fBest: number): number {
  const fLow = f(low);
  const fHigh = f(high);
  if (fLow >= fBest && fLow >= fHigh) return low;
  return fHigh >= fBest ? high : best;
}
