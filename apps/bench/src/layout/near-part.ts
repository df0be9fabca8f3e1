import type { ViewId } from '@oddwheel/sheets/drawing';

/** A drawn part under a pointer. */
export interface PressedPart {
  readonly of: string;
  readonly moves: string | null;
  readonly view: ViewId;
}

/** A fingertip or a mouse may miss a thin part by so much, px. */
const MISSES = [0, 5, 10];
const ROUND = 8;

/** The part under a place on the screen, else the nearest within a fingertip. */
export function nearPart(x: number, y: number): PressedPart | null {
  for (const miss of MISSES)
    for (let k = 0; k < (miss === 0 ? 1 : ROUND); k += 1) {
      const angle = (2 * Math.PI * k) / ROUND;
      const found = partUnder(x + miss * Math.cos(angle), y + miss * Math.sin(angle));
      if (found) return found;
    }
  return null;
}

function partUnder(x: number, y: number): PressedPart | null {
  const part = document.elementFromPoint(x, y)?.closest<SVGElement>('[data-of]');
  const view = part?.closest<SVGElement>('[data-view]');
  const { of, moves } = part?.dataset ?? {};
  // Views are marked with their own ids.
  const id = view?.dataset.view;
  return of === undefined || id === undefined ? null : { of, moves: moves ?? null, view: id as ViewId };
}
