import { plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { MoveView, Wished } from './use-move.ts';

/** A place is taken from so near, px. */
const TAKEN_FROM = 7;
const MM = 0.001;
/** And never from farther, m: the centres of whole links lie close together. */
const NEVER_FARTHER = 0.005;

/**
 * A drag as a wish.
 * @param scale mm for a px
 * @param free neither places nor whole steps are taken
 */
export function dragTo(view: MoveView, right: number, down: number, scale: number, free: boolean): Wished {
  const by = plus(times(right * scale * MM, view.right), times(-down * scale * MM, view.up));
  return { by, reach: free ? 0 : Math.min(NEVER_FARTHER, TAKEN_FROM * scale * MM), whole: !free };
}
