/** What a dial shows on a section that is off its axis and out of round at once, and what its form leaves for the offset. */
import type { Offset } from './adviser-types.ts';
import type { Harmonic } from './readings.ts';

/** Angles that the dial is followed at, and directions that the offset may end up in. */
const ANGLES = 180;
const DIRECTIONS = 24;
/** A lobe counts when it stands this many standard uncertainties above nothing. */
const STANDS_OUT = 3;
/** Halvings of the search: far below what any dial tells. */
const HALVINGS = 20;

/** Form of a section that stands out of the noise of its readings: ovality and lobes, without the offset. */
export function formSeen(harmonics: readonly Harmonic[]): Harmonic[] {
  return harmonics.filter(({ order, amplitude, spread }) => order > 1 && amplitude > STANDS_OUT * spread * Math.SQRT2);
}

/**
 * Highest less lowest of the dial over a turn, m: the form of a section that turns about an axis which it is off by the offset.
 *
 * Source: derived; to first order the dial shows the sum of all orders.
 */
export function dialSwing(offset: Offset, form: readonly Harmonic[]): number {
  return swingOf(formAngles(form), offset);
}

/**
 * TIR that the offset alone may have so that the whole dial stays within the goal, m, whichever way the offset ends up;
 * 0 when ovality and lobes alone are beyond the goal.
 * @param goal swing of the dial that is good enough, m
 */
export function offsetShare(goal: number, form: readonly Harmonic[]): number {
  if (form.length === 0) return goal;
  const angles = formAngles(form);
  if (swingOf(angles, { x: 0, y: 0 }) > goal) return 0;
  const worst = (tir: number): number =>
    Math.max(
      ...Array.from({ length: DIRECTIONS }, (_, d) => {
        const direction = (2 * Math.PI * d) / DIRECTIONS;
        return swingOf(angles, { x: (tir / 2) * Math.cos(direction), y: (tir / 2) * Math.sin(direction) });
      }),
    );
  let [low, high] = [0, goal];
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (low + high) / 2;
    if (worst(middle) <= goal) low = middle;
    else high = middle;
  }
  return low;
}

function formAngles(form: readonly Harmonic[]): Float64Array {
  return Float64Array.from({ length: ANGLES }, (_, k) => {
    const angle = (2 * Math.PI * k) / ANGLES;
    return form.reduce(
      (sum, { order, cosine, sine }) => sum + cosine * Math.cos(order * angle) + sine * Math.sin(order * angle),
      0,
    );
  });
}

function swingOf(form: Float64Array, { x, y }: Offset): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let k = 0; k < ANGLES; k++) {
    const angle = (2 * Math.PI * k) / ANGLES;
    const value = (form[k] as number) + x * Math.cos(angle) + y * Math.sin(angle);
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return high - low;
}
