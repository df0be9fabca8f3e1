/** Corrections that need no heat: moving the part in a four-jaw chuck, and turning it true. */
import type { Offset } from './adviser-types.ts';

/** Movement of each jaw; plus is inward. Jaws stand at 0, 90, 180 and 270 degrees of the part. */
export interface JawMoves {
  readonly jaws: readonly [number, number, number, number];
}

/** Jaw moves that bring the part's axis onto the spindle's: the jaw at the high spot goes in by the offset. */
export function fourJaw({ x, y }: Offset): JawMoves {
  return { jaws: [x, y, -x, -y] };
}

export interface TurnTrue {
  /** Diameter left when the surface just cleans up, m. */
  readonly cleansUpAt: number;
  /** What the finished diameter would fall short of its least size, m; 0 when it is kept. */
  readonly short: number;
  readonly keeps: boolean;
}

/**
 * Whether a seat can be turned true within its fit: the cut must take twice the offset, and the form error, off the diameter.
 * @param diameter as it is, m
 * @param form greatest less smallest radius about its own axis, m
 * @param least smallest diameter of its fit, m
 * @throws RangeError when a value is not finite, or a size is below zero.
 */
export function turnTrue(diameter: number, offset: Offset, form: number, least: number): TurnTrue {
  for (const [at, value] of [
    ['diameter', diameter],
    ['form', form],
    ['least', least],
  ] as const)
    if (!Number.isFinite(value) || value < 0)
      throw new RangeError(`${at}: ${value} read; a length of at least 0 is accepted.`);
  const cleansUpAt = diameter - 2 * (Math.hypot(offset.x, offset.y) + form);
  const short = Math.max(0, least - cleansUpAt);
  return { cleansUpAt, short, keeps: short === 0 };
}
