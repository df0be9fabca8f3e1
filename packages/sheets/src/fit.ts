import type { Drawable } from './build-solids.ts';
import type { Bounds, Drawing, ViewId } from './drawing.ts';
import { lineHeight } from './lettering.ts';
import { type DrawingOptions, type Found, layoutViews } from './views.ts';

/** What a drawing is shown on, in whatever the screen counts in. */
export interface Frame {
  /** One view alone, or null for all on their sheet. */
  readonly view: ViewId | null;
  readonly width: number;
  /** Most height, null for as much as it takes. */
  readonly height: number | null;
  /** Height that the lettering shall have. */
  readonly textHeight: number;
}

/** First guess at the height of the lettering, mm of the vehicle. */
const GUESS = 26;
const ROUNDS = 4;
const NEAR_ENOUGH = 0.03;
/** Room above a view for its title, in lines. */
const TITLE = 2;

/** What of a drawing is shown, its title and a margin included; on the sheet, or in the view itself where it stands alone. */
export function shownBounds(drawing: Drawing, id: ViewId | null): Bounds {
  const view = id === null ? undefined : drawing.views.find((one) => one.id === id);
  const { left, right, bottom, top } = view?.bounds ?? drawing.bounds;
  const margin = 0.8 * drawing.textHeight;
  const title = view ? TITLE * lineHeight(drawing.textHeight) : 0;
  return { left: left - margin, right: right + margin, bottom: bottom - margin, top: top + title + margin };
}

/** The layout with lettering of the wanted height on the screen: the drawing makes room for its lettering, so the height is found by trying. */
export function layoutToFit(
  drawable: Drawable,
  found: Found,
  options: Omit<DrawingOptions, 'textHeight'>,
  frame: Frame,
): Drawing {
  let height = GUESS;
  let drawing = layoutViews(drawable, found, { ...options, textHeight: height });
  for (let round = 0; round < ROUNDS; round += 1) {
    const { left, right, bottom, top } = shownBounds(drawing, frame.view);
    const scale = Math.max((right - left) / frame.width, frame.height === null ? 0 : (top - bottom) / frame.height);
    const wanted = scale * frame.textHeight;
    if (Math.abs(wanted - height) < NEAR_ENOUGH * height) return drawing;
    height = wanted;
    drawing = layoutViews(drawable, found, { ...options, textHeight: height });
  }
  return drawing;
}
