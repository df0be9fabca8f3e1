import { withTitle } from './arrange.ts';
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
/** Lettering stays between these, mm of the vehicle, whatever the frame. */
const SMALLEST = 0.5;
const LARGEST = 120;
const NEAR_ENOUGH = 0.03;
/** Room above a view for its title, in lines. */
const TITLE = 2;

/** What of a drawing is shown, its title and a margin included; on the sheet, or in the view itself where it stands alone. */
export function shownBounds(drawing: Drawing, id: ViewId | null): Bounds {
  const view = id === null ? undefined : drawing.views.find((one) => one.id === id);
  const { left, right, bottom, top } = view ? withTitle(view, drawing.textHeight) : drawing.bounds;
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
  const draw = (height: number): Drawing => layoutViews(drawable, found, { ...options, textHeight: height });
  /** How much larger the lettering of a drawing should be. */
  const short = (drawing: Drawing): number => {
    const { left, right, bottom, top } = shownBounds(drawing, frame.view);
    const scale = Math.max((right - left) / frame.width, frame.height === null ? 0 : (top - bottom) / frame.height);
    return scale * frame.textHeight - drawing.textHeight;
  };
  let before = draw(GUESS);
  let drawing = draw(GUESS + short(before));
  for (let round = 0; round < ROUNDS; round += 1) {
    const [missed, misses] = [short(before), short(drawing)];
    if (Math.abs(misses) < NEAR_ENOUGH * drawing.textHeight) break;
    // Both sides grow with the lettering, so two drawings say where they meet.
    const rate = (misses - missed) / (drawing.textHeight - before.textHeight);
    const next = drawing.textHeight + (rate < 0 ? -misses / rate : misses);
    before = drawing;
    drawing = draw(Math.min(LARGEST, Math.max(SMALLEST, next)));
  }
  return drawing;
}
