import type { Element, Fill, LineType, PathStep, Point } from './drawing.ts';

/** A closed outline of straight sides. */
export function polygon(points: readonly Point[], line: LineType, fill: Fill): Element {
  const [start = [0, 0] as const, ...rest] = points;
  return { kind: 'path', line, fill, start, steps: rest.map((to) => ({ to })), closed: true };
}

export const straight = (from: Point, to: Point, line: LineType): Element => ({ kind: 'line', line, from, to });

const polar = ([x, y]: Point, radius: number, angle: number): Point => [
  x + radius * Math.cos(angle),
  y + radius * Math.sin(angle),
];

/** A roller's seat reaches so far round from its bottom; tooth tips and gaps as parts of half a pitch. For drawing. */
const SEAT = (2 * Math.PI) / 3;
const SPROCKET_TIP = 0.34;
const GEAR = { root: 0.36, tip: 0.66 } as const;

/**
 * The outline of a toothed wheel with its true number of teeth, counterclockwise.
 * @param gap angle of the middle of a gap, rad
 */
export function toothedOutline(
  centre: Point,
  teeth: {
    readonly form: 'sprocket' | 'gear';
    readonly count: number;
    readonly pitch: number;
    readonly tip: number;
    readonly root: number;
  },
  gap: number,
  line: LineType,
): Element {
  const half = Math.PI / teeth.count;
  const steps: PathStep[] = [];
  const roller = teeth.pitch - teeth.root;
  for (let k = 0; k < teeth.count; k += 1) {
    const at = gap + 2 * half * k;
    if (teeth.form === 'sprocket') {
      const pin = polar(centre, teeth.pitch, at);
      steps.push(
        { to: polar(pin, roller, at - SEAT) },
        { to: polar(pin, roller, at + SEAT), radius: roller, large: false, ccw: false },
        { to: polar(centre, teeth.tip, at + half * (1 - SPROCKET_TIP)) },
        { to: polar(centre, teeth.tip, at + half * (1 + SPROCKET_TIP)) },
      );
    } else {
      steps.push(
        { to: polar(centre, teeth.root, at - half * GEAR.root) },
        { to: polar(centre, teeth.root, at + half * GEAR.root) },
        { to: polar(centre, teeth.tip, at + half * GEAR.tip) },
        { to: polar(centre, teeth.tip, at + half * (2 - GEAR.tip)) },
      );
    }
  }
  const start = steps.at(-1)?.to ?? centre;
  return { kind: 'path', line, fill: 'sheet', start, steps, closed: true };
}

/** The smallest convex outline round points, counterclockwise. */
export function hull(points: readonly Point[]): readonly Point[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const turns = (o: Point, a: Point, b: Point): boolean =>
    (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0]) > 1e-9;
  const side = (list: readonly Point[]): Point[] => {
    const out: Point[] = [];
    for (const point of list) {
      for (;;) {
        const [o, a] = [out.at(-2), out.at(-1)];
        if (!o || !a || turns(o, a, point)) break;
        out.pop();
      }
      out.push(point);
    }
    return out.slice(0, -1);
  };
  return [...side(sorted), ...side([...sorted].reverse())];
}
