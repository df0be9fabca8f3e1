import type { Vec3 } from '@oddwheel/quantity/quantity';
import { FROM_ABOVE, FROM_BEHIND, FROM_THE_LEFT, onPage } from '@oddwheel/sheets/plane';

export type UnderView = 'from above' | 'from the left' | 'from behind';

/** A point of a picture, as parts of its width and height from the upper left corner, and where it is on the vehicle, m. */
export interface Known {
  readonly right: number;
  readonly down: number;
  readonly at: Vec3;
}

export interface UnderPlace {
  readonly view: UnderView;
  readonly first: Known;
  readonly second: Known;
}

/** How a picture lies under its view. */
export type Lay =
  | {
      readonly ok: true;
      /** Of an SVG transform: from pixels of the picture to mm of the view, down counted positive in both. */
      readonly matrix: readonly [number, number, number, number, number, number];
      /** mm of the view for a pixel of the picture. */
      readonly scale: number;
      /** How far the picture is turned, counterclockwise, rad. */
      readonly turned: number;
    }
  | { readonly ok: false; readonly says: string };

export const PLANES = {
  'from above': FROM_ABOVE,
  'from the left': FROM_THE_LEFT,
  'from behind': FROM_BEHIND,
} as const;
/** Points nearer together than this, in pixels or in mm, tell no scale. */
const [LEAST_PIXELS, LEAST_MM] = [4, 1];
const MM = 1000;

const place = ({ at }: Known, view: UnderView): readonly [number, number] =>
  onPage(PLANES[view], [at[0] * MM, at[1] * MM, at[2] * MM]);

/**
 * Scales, turns and shifts a picture so that its two known points lie where they are on the vehicle. The picture keeps its shape: two points
 * tell four numbers, which are its scale, its turn and its two shifts.
 * @param size of the picture, pixels
 */
export function layPicture(
  { view, first, second }: UnderPlace,
  size: { readonly width: number; readonly height: number },
): Lay {
  const pixel = ({ right, down }: Known): readonly [number, number] => [right * size.width, -down * size.height];
  const [p, q] = [pixel(first), pixel(second)];
  const [a, b] = [place(first, view), place(second, view)];
  const [px, py] = [q[0] - p[0], q[1] - p[1]];
  const [ax, ay] = [b[0] - a[0], b[1] - a[1]];
  const square = px * px + py * py;
  if (Math.sqrt(square) < LEAST_PIXELS)
    return { ok: false, says: 'Both points lie at the same place of the picture. Mark two that are far apart.' };
  if (Math.hypot(ax, ay) < LEAST_MM)
    return {
      ok: false,
      says: `Seen ${view} both known places are the same. Choose two that stand apart in this view.`,
    };
  // The quotient of both differences as complex numbers is the scale and the turn.
  const [re, im] = [(ax * px + ay * py) / square, (ay * px - ax * py) / square];
  const [x, y] = [a[0] - (re * p[0] - im * p[1]), a[1] - (im * p[0] + re * p[1])];
  return {
    ok: true,
    matrix: [re, -im, im, re, x, -y],
    scale: Math.hypot(re, im),
    turned: Math.atan2(im, re),
  };
}

/** How far apart the two known points stand along the line of sight, m: a camera shows the nearer one larger. */
export function depthBetween({ view, first, second }: UnderPlace): number {
  const { towards } = PLANES[view];
  const depth = ({ at }: Known): number => at[0] * towards[0] + at[1] * towards[1] + at[2] * towards[2];
  return Math.abs(depth(first) - depth(second));
}
