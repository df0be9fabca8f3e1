/** A point of the x–z plane, m. */
export type Flat = readonly [x: number, z: number];

const fromTo = (a: Flat, b: Flat): Flat => [b[0] - a[0], b[1] - a[1]];
const turn = (a: Flat, b: Flat): number => a[0] * b[1] - a[1] * b[0];

function pointGap(point: Flat, from: Flat, to: Flat): number {
  const along = fromTo(from, to);
  const off = fromTo(from, point);
  const square = along[0] ** 2 + along[1] ** 2;
  const part = square === 0 ? 0 : Math.min(1, Math.max(0, (off[0] * along[0] + off[1] * along[1]) / square));
  return Math.hypot(off[0] - part * along[0], off[1] - part * along[1]);
}

/** Least distance of two straight pieces in a plane; 0 when they cross or touch. */
export function segmentGap(a: readonly [Flat, Flat], b: readonly [Flat, Flat]): number {
  const [ab, cd] = [fromTo(...a), fromTo(...b)];
  const sides = [
    turn(ab, fromTo(a[0], b[0])) * turn(ab, fromTo(a[0], b[1])),
    turn(cd, fromTo(b[0], a[0])) * turn(cd, fromTo(b[0], a[1])),
  ];
  if (sides.every((side) => side < 0)) return 0;
  return Math.min(pointGap(a[0], ...b), pointGap(a[1], ...b), pointGap(b[0], ...a), pointGap(b[1], ...a));
}
