/**
 * What each part of a row joined in several positions brings to a section, learned from readings in several clockings,
 * and the clocking that leaves the least. Offset and tilt of every part are in it, since both turn with the part.
 */
import { leastSquares } from '../numerics/least-squares.ts';
import type { Offset } from './adviser-types.ts';

/** One section read in one clocking. */
export interface ClockedReading {
  /** Position of each joint. */
  readonly positions: readonly number[];
  /** Against the datum line, by the marks of the first part, m. */
  readonly offset: Offset;
}

export interface LearnedClocking {
  readonly positions: readonly number[];
  readonly tir: number;
  /** Standard uncertainty of either component of the offset behind it, m. */
  readonly spread: number;
}

/** Clockings looked at one by one; more than this is refused. */
const MOST = 200_000;

/** Angle that each part stands at: the joints before it add up. */
function anglesOf(positions: readonly number[], of: readonly number[]): number[] {
  let whole = 0;
  return [0, ...of.map((count, k) => (whole += (2 * Math.PI * (positions[k] ?? 0)) / count))];
}

/** Rows of the two components for one clocking. */
function rowsOf(angles: readonly number[]): [number[], number[]] {
  return [
    angles.flatMap((angle) => [Math.cos(angle), -Math.sin(angle)]),
    angles.flatMap((angle) => [Math.sin(angle), Math.cos(angle)]),
  ];
}

/**
 * All clockings at one section, the least TIR first.
 *
 * @param of positions that each joint can be put together in
 * @param readingSpread standard uncertainty of one reading with refitting, either component, m
 * @returns undefined when the readings do not tell the parts apart: another clocking must be measured
 * @throws RangeError when there are more clockings than can be looked at.
 */
export function bestClockings(
  readings: readonly ClockedReading[],
  of: readonly number[],
  readingSpread: number,
): LearnedClocking[] | undefined {
  const all = of.reduce((product, count) => product * count, 1);
  if (all > MOST) throw new RangeError(`joints: ${all} clockings read; at most ${MOST} are accepted.`);
  const fit = leastSquares(
    readings.flatMap(({ positions }) => rowsOf(anglesOf(positions, of))),
    readings.flatMap(({ offset }) => [offset.x, offset.y]),
  );
  if (!fit) return undefined;
  const found = Array.from({ length: all }, (_, index): LearnedClocking => {
    let rest = index;
    const positions = of.map((count) => {
      const position = rest % count;
      rest = Math.floor(rest / count);
      return position;
    });
    const [rowX, rowY] = rowsOf(anglesOf(positions, of));
    const inner = (row: readonly number[]) => row.reduce((sum, c, k) => sum + c * (fit.values[k] as number), 0);
    const variance = rowX.reduce(
      (sum, c, a) => sum + rowX.reduce((s, d, b) => s + c * d * (fit.spread[a]?.[b] ?? 0), 0),
      0,
    );
    return {
      positions,
      tir: 2 * Math.hypot(inner(rowX), inner(rowY)),
      spread: readingSpread * Math.sqrt(variance + 1),
    };
  });
  return found.sort((a, b) => a.tir - b.tir);
}
