/** Places between the middle and the right end of a span of half length 1, and their weights in the rule of 15; every other one is in that of 7. */
const NODES = [
  0.9914553711208126, 0.9491079123427585, 0.8648644233597691, 0.7415311855993945, 0.5860872354676911,
  0.4058451513773972, 0.20778495500789848,
] as const;
const WEIGHTS = [
  0.022935322010529224, 0.06309209262997856, 0.10479001032225019, 0.14065325971552592, 0.1690047266392679,
  0.19035057806478542, 0.20443294007529889,
] as const;
const MIDDLE = 0.20948214108472782;
const COARSE = [0.1294849661688697, 0.27970539148927664, 0.3818300505051189] as const;
const COARSE_MIDDLE = 0.4179591836734694;

/** Halvings of a span before it is given up. */
const DEEPEST = 40;

/**
 * Integrals of several functions over a span, all worked out at the same places: Gauss–Kronrod pair of 7 and 15 places, the span halved until the two agree.
 *
 * Source: QUADPACK (R. Piessens et al., 1983), routine qk15, from memory; the powers that it integrates exactly are tested.
 *
 * @param values All functions at a place, smooth over the span: split the span where they jump.
 * @param within Wanted error of each as a part of its integral's size.
 * @throws RangeError when a value is not finite, or halving does not help.
 */
export function integralsOf(
  values: (t: number) => readonly number[],
  from: number,
  to: number,
  within: number,
  depth = 0,
): readonly number[] {
  const [centre, half] = [(from + to) / 2, (to - from) / 2];
  const middle = values(centre);
  const fine = middle.map((value) => value * MIDDLE);
  const coarse = middle.map((value) => value * COARSE_MIDDLE);
  for (let n = 0; n < NODES.length; n++) {
    const away = half * (NODES[n] as number);
    const [left, right] = [values(centre - away), values(centre + away)];
    for (let k = 0; k < fine.length; k++) {
      const both = (left[k] as number) + (right[k] as number);
      fine[k] = (fine[k] as number) + both * (WEIGHTS[n] as number);
      if (n % 2 === 1) coarse[k] = (coarse[k] as number) + both * (COARSE[(n - 1) / 2] as number);
    }
  }
  // The two differ by the error of the coarse rule; that of the fine one is so much less.
  const near = fine.every((value, k) => {
    const difference = Math.abs(value - (coarse[k] as number));
    const apart = difference / Math.abs(value);
    return difference === 0 || Math.min(apart, (200 * apart) ** 1.5) <= within;
  });
  if (near) return fine.map((value) => value * half);
  if (depth >= DEEPEST || !fine.every(Number.isFinite))
    throw new RangeError(`No integral from ${from} to ${to}: the values grow without end, or jump.`);
  const first = integralsOf(values, from, centre, within, depth + 1);
  const second = integralsOf(values, centre, to, within, depth + 1);
  return first.map((value, k) => value + (second[k] as number));
}
