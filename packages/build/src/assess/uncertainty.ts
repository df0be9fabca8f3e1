import type { Value } from '../model/model.ts';

/** One choice of ends for the uncertain inputs, by `moverOf`; inputs that it does not name stand at their middle. */
export type Corner = ReadonlyMap<string, 'lo' | 'hi'>;

export const MIDDLE: Corner = new Map();

/** What a value moves with: itself, or the blanks that stand on the same unknown. */
export const moverOf = (value: Value): string => value.together ?? value.address;

/** Number of an input at a corner. */
export function atCorner(corner: Corner): (value: Value) => number {
  return (value) => {
    const end = corner.get(moverOf(value));
    return end === undefined ? value.si : value[end];
  };
}

/** Key of a corner as far as the given inputs go; the same for corners that agree on them. */
export function cornerKey(corner: Corner, values?: readonly (Value | null)[]): string {
  if (corner.size === 0) return '';
  if (!values) return [...corner].map(([address, end]) => `${address}=${end}`).join('&');
  return values
    .flatMap((v) => (v && corner.has(moverOf(v)) ? [`${moverOf(v)}=${corner.get(moverOf(v))}`] : []))
    .join('&');
}

/** Inputs that are uncertain, one for each unknown: of blanks that move together, the first. */
export function uncertainOf(values: readonly Value[]): readonly Value[] {
  const found = new Map<string, Value>();
  for (const value of values) if (value.lo < value.hi && !found.has(moverOf(value))) found.set(moverOf(value), value);
  return [...found.values()];
}

/** Part of the largest swing of a number below which an input does no more than change its last digits. */
const ROUNDING = 1e-9;

/** How far a number moves between the ends of one input; without limit where an end leaves it without an answer. */
function swing(middle: Float64Array, lo: Float64Array, hi: Float64Array, k: number): number {
  const moved = (x: number | undefined): number => Math.abs((x ?? Number.NaN) - (middle[k] ?? Number.NaN));
  const most = Math.max(moved(lo[k]), moved(hi[k]));
  return Number.isNaN(most) ? Number.POSITIVE_INFINITY : most;
}

/**
 * Corners that matter to a list of watched numbers. Each input is tried at both ends alone; for each watched number the ends that lower it make
 * one corner, the ends that raise it another. So which end is bad is found, not presumed, and inputs that work together are tried together.
 * Numbers are taken as monotone in each input between its ends, which the middle, always tried too, guards against in part.
 *
 * @param watch the watched numbers at a corner; NaN where one is not known
 * @returns corners to try beyond the middle, and for each watched number the inputs that move it
 */
export function findCorners(
  uncertain: readonly Value[],
  watch: (corner: Corner) => Float64Array,
): { readonly corners: readonly Corner[]; readonly movers: readonly (readonly number[])[] } {
  const middle = watch(MIDDLE);
  const ends = uncertain.map((value) => ({
    lo: watch(new Map([[moverOf(value), 'lo']])),
    hi: watch(new Map([[moverOf(value), 'hi']])),
  }));
  const corners = new Map<string, Corner>();
  for (const value of uncertain)
    for (const end of ['lo', 'hi'] as const) {
      const corner: Corner = new Map([[moverOf(value), end]]);
      corners.set(cornerKey(corner), corner);
    }
  const movers: number[][] = [];
  for (let k = 0; k < middle.length; k += 1) {
    const low = new Map<string, 'lo' | 'hi'>();
    const high = new Map<string, 'lo' | 'hi'>();
    const moving: number[] = [];
    const still = ROUNDING * Math.max(0, ...ends.map(({ lo, hi }) => swing(middle, lo, hi, k)).filter(Number.isFinite));
    uncertain.forEach((value, u) => {
      const { lo, hi } = ends[u] ?? { lo: middle, hi: middle };
      const [atLo, atHi] = [lo[k] ?? Number.NaN, hi[k] ?? Number.NaN];
      if (Object.is(atLo, atHi) && Object.is(atLo, middle[k])) return;
      if (swing(middle, lo, hi, k) < still) return;
      moving.push(u);
      const loIsLower = !(atLo > atHi);
      low.set(moverOf(value), loIsLower ? 'lo' : 'hi');
      high.set(moverOf(value), loIsLower ? 'hi' : 'lo');
    });
    movers.push(moving);
    for (const corner of [low, high]) if (corner.size > 1) corners.set(cornerKey(corner), corner);
  }
  return { corners: [...corners.values()], movers };
}
