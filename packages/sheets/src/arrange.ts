import type { Bounds, Drawing, Point, View } from './drawing.ts';
import { lineHeight, textWidth } from './lettering.ts';
import { joined } from './plane.ts';

/** Room between views, and over each for its title, in heights of the lettering. */
const GAP = 2.5;
const TITLE = 2.2;
/** A view is given at least the width of its title. */
const SHORTEST_TITLE = 13;
/** A corner may be outgrown by so much. */
const ROUGHLY = 1.5;

/** A view and its title, which may be the wider of both. */
export const withTitle = ({ bounds, title }: Pick<View, 'bounds' | 'title'>, height: number): Bounds => ({
  ...bounds,
  right: Math.max(bounds.right, bounds.left + textWidth(title, height)),
});

const moved = ({ left, right, bottom, top }: Bounds, [x, y]: Point): Bounds => ({
  left: left + x,
  right: right + x,
  bottom: bottom + y,
  top: top + y,
});

/**
 * Lays the views on one sheet. The view from the left is the chief one; in third angle the view from above stands over it and the one from
 * behind on its right, where the rear is; in first angle on the far sides. Views along chains and belts fill the corner, then a row of their own.
 */
export function arrange(views: readonly View[], projection: Drawing['projection'], height: number): Drawing {
  const [above, left, behind, ...loops] = views;
  if (!above || !left || !behind) throw new Error('A layout has three views.');
  const gap = GAP * height;
  const title = TITLE * lineHeight(height);
  const third = projection === 'third angle';
  const over = third
    ? left.bounds.top + title + gap - above.bounds.bottom
    : left.bounds.bottom - title - gap - above.bounds.top;
  const mainRight = Math.max(left.bounds.right, above.bounds.right);
  const mainLeft = Math.min(left.bounds.left, above.bounds.left);
  const beside = third ? mainRight + gap - behind.bounds.left : mainLeft - gap - behind.bounds.right;
  const chief: View[] = [
    { ...above, at: [0, over] },
    { ...left, at: [0, 0] },
    { ...behind, at: [beside, 0] },
  ];
  // The first loop fills the corner over the view from behind where it nearly fits; the others stand in a row below all.
  const aboveTop = over + above.bounds.top;
  const corner = behind.bounds.top + title + gap;
  const tall = ({ bounds }: View): number => bounds.top - bounds.bottom;
  const [first] = loops;
  const fits = first !== undefined && third && tall(first) <= ROUGHLY * (aboveTop - corner);
  const cornerViews =
    first && fits
      ? [{ ...first, at: [mainRight + gap - first.bounds.left, corner - first.bounds.bottom] as Point }]
      : [];
  const soFar = joined([...chief, ...cornerViews].map((view) => moved(view.bounds, view.at)));
  let x = soFar.left;
  const row = (fits ? loops.slice(1) : loops).map((view): View => {
    const at: Point = [x - view.bounds.left, soFar.bottom - gap - title - view.bounds.top];
    x += Math.max(view.bounds.right - view.bounds.left, SHORTEST_TITLE * height) + gap;
    return { ...view, at };
  });
  const all = [...chief, ...cornerViews, ...row];
  const bounds = joined(all.map((view) => moved(withTitle(view, height), view.at)));
  return { views: all, bounds: { ...bounds, top: bounds.top + title }, textHeight: height, projection };
}
