/** Points with their slopes, ready to be evaluated. */
export interface MonotoneCubic {
  /** Arguments, rising. */
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** Slope dy/dx at each point. */
  readonly slope: readonly number[];
}

/** Three-point slope at an end, held to the shape of the first two spans. */
function endSlope(h0: number, h1: number, rise0: number, rise1: number): number {
  const slope = ((2 * h0 + h1) * rise0 - h0 * rise1) / (h0 + h1);
  if (Math.sign(slope) !== Math.sign(rise0)) return 0;
  if (Math.sign(rise0) !== Math.sign(rise1) && Math.abs(slope) > 3 * Math.abs(rise0)) return 3 * rise0;
  return slope;
}

/**
 * Slopes of the smooth curve through measured points that never leaves the range of two neighbouring points: cubic Hermite
 * spans with weighted harmonic mean slopes.
 *
 * Source: F. N. Fritsch, J. Butland, A method for constructing local monotone piecewise cubic interpolants, SIAM J. Sci. Stat.
 * Comput. 5 (1984) 300; end slopes by the three-point formula of F. N. Fritsch, R. E. Carlson (1980) (both from memory).
 *
 * @param x Arguments, at least two, each above the one before.
 * @param y Values, one for each argument.
 * @throws RangeError naming the point at fault.
 */
export function monotoneCubic(x: readonly number[], y: readonly number[]): MonotoneCubic {
  const count = x.length;
  if (count < 2) throw new RangeError(`A curve needs at least two points, not ${count}.`);
  if (y.length !== count)
    throw new RangeError(`A curve needs a value for each argument: ${count} arguments, ${y.length} values.`);
  const h: number[] = [];
  const rise: number[] = [];
  for (let k = 0; k < count; k++) {
    const at = x[k] as number;
    const value = y[k] as number;
    if (!Number.isFinite(at) || !Number.isFinite(value))
      throw new RangeError(`Point ${k + 1} of the curve is (${at}, ${value}); finite numbers are needed.`);
    if (k === 0) continue;
    const gap = at - (x[k - 1] as number);
    if (!(gap > 0))
      throw new RangeError(`Point ${k + 1} of the curve is at ${at}, not above ${x[k - 1]} of the point before.`);
    h.push(gap);
    rise.push((value - (y[k - 1] as number)) / gap);
  }
  const gap = (k: number): number => h[k] as number;
  const slant = (k: number): number => rise[k] as number;
  if (count === 2) return { x, y, slope: [slant(0), slant(0)] };
  const slope: number[] = [endSlope(gap(0), gap(1), slant(0), slant(1))];
  for (let k = 1; k < count - 1; k++) {
    const left = slant(k - 1);
    const right = slant(k);
    const w1 = 2 * gap(k) + gap(k - 1);
    const w2 = gap(k) + 2 * gap(k - 1);
    slope.push(left * right > 0 ? (w1 + w2) / (w1 / left + w2 / right) : 0);
  }
  slope.push(endSlope(gap(count - 2), gap(count - 3), slant(count - 2), slant(count - 3)));
  return { x, y, slope };
}

/**
 * Index of the span that holds an argument: the span from point k to point k + 1.
 * @throws RangeError when the argument lies outside the points: a curve is not extended.
 */
export function spanAt(curve: MonotoneCubic, at: number): number {
  const { x } = curve;
  const last = x.length - 1;
  if (!(at >= (x[0] as number) && at <= (x[last] as number)))
    throw new RangeError(`${at} lies outside the curve, which runs from ${x[0]} to ${x[last]}.`);
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (at < (x[middle] as number)) high = middle;
    else low = middle;
  }
  return low;
}

/**
 * Value of the curve.
 * @throws RangeError when the argument lies outside the points.
 */
export function cubicAt(curve: MonotoneCubic, at: number): number {
  const k = spanAt(curve, at);
  const { x, y, slope } = curve;
  const h = (x[k + 1] as number) - (x[k] as number);
  const t = (at - (x[k] as number)) / h;
  return hermite(t, h, y[k] as number, y[k + 1] as number, slope[k] as number, slope[k + 1] as number);
}

/** Cubic from y0 with slope d0 to y1 with slope d1 over a span h, at the part t of the span. */
export function hermite(t: number, h: number, y0: number, y1: number, d0: number, d1: number): number {
  const u = 1 - t;
  return u * u * ((1 + 2 * t) * y0 + t * h * d0) + t * t * ((3 - 2 * t) * y1 - u * h * d1);
}
