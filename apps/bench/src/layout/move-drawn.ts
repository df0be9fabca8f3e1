import { dot, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { View } from '@oddwheel/sheets/drawing';

/** What of a drawing goes along with the choice. */
const MOVES = '.part.chosen, .goes-along';

/**
 * Shifts what is chosen in every view at once, without drawing anything anew.
 * @param by move in vehicle axes, m
 */
export function moveDrawn(sheet: SVGSVGElement, views: readonly View[], by: Vec3): void {
  const mm = times(1000, by);
  for (const view of views) {
    const group = sheet.querySelector(`[data-view="${CSS.escape(view.id)}"]`);
    const shift = `translate(${dot(mm, view.right)} ${-dot(mm, view.up)})`;
    for (const part of group?.querySelectorAll(MOVES) ?? []) part.setAttribute('transform', shift);
  }
}

/** Puts everything back to where it is drawn. */
export function clearMoved(sheet: SVGSVGElement): void {
  for (const part of sheet.querySelectorAll('.part[transform], .drawn-note[transform]'))
    part.removeAttribute('transform');
}
