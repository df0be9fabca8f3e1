import type { Bounds, Drawing, ViewId } from '@oddwheel/sheets/drawing';
import { shownBounds } from '@oddwheel/sheets/fit';

/** A drawing laid into its frame: what of it is shown, and how large. */
export interface Framed {
  readonly bounds: Bounds;
  /** px on the screen. */
  readonly width: number;
  readonly height: number;
  /** mm of the vehicle for a px. */
  readonly scale: number;
}

/** @param frame px; the height is null where the drawing may be as tall as it comes */
export function framed(
  drawing: Drawing,
  view: ViewId | null,
  frame: { readonly width: number; readonly height: number | null },
  zoom: number,
): Framed {
  const bounds = shownBounds(drawing, view);
  const [wide, tall] = [bounds.right - bounds.left, bounds.top - bounds.bottom];
  const scale = Math.max(wide / frame.width, frame.height === null ? 0 : tall / frame.height) / zoom;
  return { bounds, width: wide / scale, height: tall / scale, scale };
}
