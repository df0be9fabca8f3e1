import type { Severity } from '@oddwheel/build/assess/types';
import type { Bounds, DrawnNote, Element, Point } from './drawing.ts';

/** One place or size to dimension along an axis of the page. */
export interface Measure {
  readonly of: string | null;
  readonly from: Point;
  readonly to: Point;
  readonly text: string;
}

type Dimension = Extract<Element, { kind: 'dimension' }>;

const SAME = 0.05;

/** Only one of those that say the same thing: same ends along the axis. */
function once(measures: readonly Measure[], axis: 0 | 1): readonly Measure[] {
  return measures.filter(
    (one, k) =>
      Math.abs(one.to[axis] - one.from[axis]) > SAME &&
      !measures
        .slice(0, k)
        .some(
          (other) =>
            Math.abs(other.to[axis] - one.to[axis]) < SAME && Math.abs(other.from[axis] - one.from[axis]) < SAME,
        ),
  );
}

/** Gap between lanes of dimension lines over the height of their lettering. */
const LANE = 1.75;

/**
 * Dimensions along one edge of a view, a lane each, the shortest innermost: no line or text crosses another.
 * @param side edge that they stand outside of
 */
export function lanes(
  measures: readonly Measure[],
  side: 'top' | 'bottom' | 'left' | 'right',
  bounds: Bounds,
  height: number,
): readonly DrawnNote[] {
  const axis = side === 'top' || side === 'bottom' ? 0 : 1;
  const outward = side === 'top' || side === 'right' ? 1 : -1;
  const size = ({ from, to }: Measure): number => Math.abs(to[axis] - from[axis]);
  const sorted = once(measures, axis).toSorted((a, b) => size(a) - size(b));
  return sorted.map((measure, k): DrawnNote => {
    const lane = bounds[side] + outward * height * (LANE * (k + 1) + 0.2);
    const end = (at: Point): Point => (axis === 0 ? [at[0], lane] : [lane, at[1]]);
    const [a, b] = [end(measure.from), end(measure.to)];
    const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const lift = 0.35 * height;
    // An extension line that a farther lane draws as well is left to it.
    const again = sorted.slice(k + 1).some(({ from }) => Math.abs(from[axis] - measure.from[axis]) < SAME);
    const dimension: Dimension = {
      kind: 'dimension',
      measured: [again ? a : measure.from, measure.to],
      ends: [a, b],
      text: measure.text,
      // Read from below and from the right, the text above its line.
      textAt: axis === 0 ? [middle[0], lane + lift] : [lane - lift, middle[1]],
      angle: axis === 0 ? 0 : 90,
      severity: null,
    };
    return { of: measure.of, finding: null, elements: [dimension] };
  });
}

/** A dimension along its own line, the text above it: a centre distance. */
export function alongLine(from: Point, to: Point, text: string, height: number, severity: Severity | null): Dimension {
  const slope = Math.atan2(to[1] - from[1], to[0] - from[0]);
  // The text is never upside down.
  const readable =
    slope > Math.PI / 2 + 1e-9 ? slope - Math.PI : slope <= -Math.PI / 2 + 1e-9 ? slope + Math.PI : slope;
  const lift = 0.35 * height;
  return {
    kind: 'dimension',
    measured: [from, to],
    ends: [from, to],
    text,
    textAt: [(from[0] + to[0]) / 2 - lift * Math.sin(readable), (from[1] + to[1]) / 2 + lift * Math.cos(readable)],
    angle: (readable * 180) / Math.PI,
    severity,
  };
}
