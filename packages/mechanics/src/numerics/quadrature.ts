/** Places between the middle and the right end of a span of half length 1, and their weights in the rule of 15; every other one is in that of 7. */
const NODES = [
  0.991455371120812639206854697526329, 0.949107912342758524526189684047851, 0.864864423359769072789712788640926,
  0.741531185599394439863864773280788, 0.58608723546769113029414469165838, 0.405845151377397166906606412076961,
  0.207784955007898467600689403773245,
] as const;
const WEIGHTS = [
  0.02293532201052922496373200805897, 0.063092092629978553290700663189204, 0.104790010322250183839876322541518,
  0.140653259715525918745189590510238, 0.16900472663926790282658342659855, 0.190350578064785409913256402421014,
  0.204432940075298892414161999234649,
] as const;
const MIDDLE = 0.209482141084727828012999174891714;
const COARSE = [
  0.129484966168869693270611432679082, 0.27970539148927666790146777142378, 0.38183005050511894495036977548897,
] as const;
const COARSE_MIDDLE = 0.417959183673469387755102040816327;

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
  const near = fine.every((value, k) => Math.abs(value - (coarse[k] as number)) <= within * Math.abs(value));
  if (near) return fine.map((value) => value * half);
  if (depth >= DEEPEST || !fine.every(Number.isFinite))
    throw new RangeError(`No integral from ${from} to ${to}: the values grow without end, or jump.`);
  const first = integralsOf(values, from, centre, within, depth + 1);
  const second = integralsOf(values, centre, to, within, depth + 1);
  return first.map((value, k) => value + (second[k] as number));
}
