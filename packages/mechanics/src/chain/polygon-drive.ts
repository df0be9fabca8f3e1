import { findRoot } from '../numerics/root.ts';

type Point = readonly [x: number, y: number];

/** Andrew's monotone chain: corners of the taut outline, anticlockwise. */
function outline(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: readonly Point[]): Point[] => {
    const hull: Point[] = [];
    for (const point of list) {
      for (;;) {
        const [b, a] = [hull.at(-1), hull.at(-2)];
        if (a === undefined || b === undefined) break;
        if ((b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0]) > 1e-12) break;
        hull.pop();
      }
      hull.push(point);
    }
    return hull.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

function corners(teeth: number, phase: number, x: number): Point[] {
  const [radius, step] = [1 / (2 * Math.sin(Math.PI / teeth)), (2 * Math.PI) / teeth];
  return Array.from({ length: teeth }, (_, k) => [
    x + radius * Math.cos(step * (k + phase)),
    radius * Math.sin(step * (k + phase)),
  ]);
}

/** Length of the taut outline of two polygons of side 1, and of its upper span. */
function lay(teeth1: number, phase1: number, teeth2: number, phase2: number, centre: number) {
  const hull = outline([...corners(teeth1, phase1, 0), ...corners(teeth2, phase2, centre)]);
  let total = 0;
  let upper = 0;
  hull.forEach(([x, y], k) => {
    const [nx, ny] = hull[(k + 1) % hull.length] ?? [x, y];
    const length = Math.hypot(nx - x, ny - y);
    total += length;
    // A side is 1; only the spans are longer. Anticlockwise, the upper one runs back toward the driver.
    if (length > 1.5 && nx < x) upper = length;
  });
  return { total, upper };
}

/** Turns of the driven polygon, as parts of a tooth, that leave a whole number of links in the upper span. */
function fittingPhases(teeth1: number, phase1: number, teeth2: number, centre: number): number[] {
  const off = (phase2: number): number => {
    const { upper } = lay(teeth1, phase1, teeth2, phase2, centre);
    return upper - Math.round(upper);
  };
  const parts = 24;
  const found: number[] = [];
  for (let k = 0; k < parts; k++) {
    const [low, high] = [k / parts, (k + 1) / parts];
    const [here, next] = [off(low), off(high)];
    // A jump from half to minus half is where rounding changes over, no root.
    if (here * next <= 0 && Math.abs(here - next) < 0.5) found.push(findRoot(off, low, high));
  }
  return found;
}

/**
 * Centre distance, in pitches, at which a chain of rigid links lies taut on two polygons while the driver stands at a phase.
 * The driven polygon takes the turn that leaves whole links in the upper span; then the centres part until the outline holds all links.
 *
 * @param phase1 turn of the driver as part of one tooth, 0..1
 * @param links whole links of the chain
 * @param near centre distance to search about, pitches
 * @throws RangeError when no place within a tenth of a pitch fits.
 */
export function polygonCentre(teeth1: number, phase1: number, teeth2: number, links: number, near: number): number {
  const over = (centre: number): number => {
    const [phase2] = fittingPhases(teeth1, phase1, teeth2, centre);
    if (phase2 === undefined)
      throw new RangeError(`No turn of the driven sprocket fits the upper span at ${centre} pitches.`);
    return lay(teeth1, phase1, teeth2, phase2, centre).total - links;
  };
  return findRoot(over, near - 0.1, near + 0.1, 1e-10);
}
