import { dot, minus, norm, times } from '@oddwheel/mechanics/numerics/vector';
import { drawTurned, type Look, lies } from './draw-turned.ts';
import type { DrawnPart, Element, Point } from './drawing.ts';
import { hull, polygon, straight } from './outline.ts';
import { depth, onPage, type Plane } from './plane.ts';
import type { Bar, Loop, Solid } from './solids.ts';

/** The line that a part is drawn in, and what it covers. */
export function lookOf({ role, sized }: Solid): Look {
  if (role === 'keep-out') return { line: 'keep-out', fill: 'tint' };
  if (role === 'access') return { line: 'keep-out', fill: 'none' };
  if (role === 'grown tyre') return { line: 'hidden', fill: 'none' };
  return { line: sized ? 'visible' : 'thin', fill: role === 'arm' ? 'none' : 'sheet' };
}

/** Parts of the wheel that its tyre covers from all sides but the ends. */
const INSIDE_THE_WHEEL: readonly Solid['role'][] = ['spokes'];

function drawLoop(plane: Plane, loop: Loop): readonly Element[] {
  const pins = loop.pins.map((pin) => onPage(plane, pin));
  const how = lies(plane, loop.across);
  if (how === 'end on') return [{ kind: 'loop', pins, pitch: loop.pitch, height: loop.height }];
  if (how === 'slanting') return [polygon(pins, 'visible', 'none')];
  const side = onPage(plane, loop.across);
  const along: Point = [-side[1], side[0]];
  const reach = pins.map((pin) => pin[0] * along[0] + pin[1] * along[1]);
  const off = (pins[0]?.[0] ?? 0) * side[0] + (pins[0]?.[1] ?? 0) * side[1];
  const [low, high] = [Math.min(...reach) - loop.height / 2, Math.max(...reach) + loop.height / 2];
  const at = (t: number, w: number): Point => [t * along[0] + (off + w) * side[0], t * along[1] + (off + w) * side[1]];
  const half = loop.width / 2;
  const depths = loop.pins.map((pin) => depth(plane, pin));
  const middle = (Math.min(...depths) + Math.max(...depths)) / 2;
  const near = reach.filter((_, k) => (depths[k] ?? 0) >= middle);
  return [
    polygon([at(low, -half), at(high, -half), at(high, half), at(low, half)], 'visible', 'sheet'),
    {
      kind: 'hatch',
      lines: near.map((t): readonly [Point, Point] => [at(t, -half), at(t, half)]),
    },
  ];
}

function drawBar(plane: Plane, bar: Bar, look: Look): readonly Element[] {
  const [from, to] = [onPage(plane, bar.from), onPage(plane, bar.to)];
  const half = bar.size / 2;
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [x, y]: Point = length > 0.5 ? [(to[0] - from[0]) / length, (to[1] - from[1]) / length] : [1, 0];
  // End on it shows its section.
  const reach = length > 0.5 ? 0 : half;
  const at = ([px, py]: Point, along: number, out: number): Point => [
    px + along * x - out * y,
    py + along * y + out * x,
  ];
  return [
    polygon(
      [at(from, -reach, -half), at(to, reach, -half), at(to, reach, half), at(from, -reach, half)],
      look.line,
      look.fill,
    ),
  ];
}

/** One part as one view shows it; nothing where the view does not show it. */
export function drawSolid(plane: Plane, solid: Solid): DrawnPart | null {
  const look = lookOf(solid);
  const { shape, of, name, moves } = solid;
  const part = (elements: readonly Element[]): DrawnPart => ({ of, name, moves, elements });
  switch (shape.shape) {
    case 'turned': {
      const covered = solid.of.startsWith('/brief/wheel') && solid.role === 'rim' && solid.name !== 'driven wheel';
      if (covered && lies(plane, shape.along) !== 'end on') return null;
      return part(drawTurned(plane, shape, solid.role, look));
    }
    case 'loop':
      return part(drawLoop(plane, shape));
    case 'block':
      return part([polygon(hull(shape.corners.map((corner) => onPage(plane, corner))), look.line, look.fill)]);
    case 'bar':
      return part(drawBar(plane, shape, look));
    case 'wires': {
      const first = shape.lines[0];
      if (!first || (INSIDE_THE_WHEEL.includes(solid.role) && !flat(plane, solid))) return null;
      return part(shape.lines.map(([from, to]) => straight(onPage(plane, from), onPage(plane, to), 'thin')));
    }
  }
}

/** Spokes show where their rim is a circle: the far ends lie in one plane square to the view. */
function flat(plane: Plane, { shape }: Solid): boolean {
  if (shape.shape !== 'wires') return false;
  const ends = shape.lines.map(([, to]) => depth(plane, to));
  return Math.max(...ends) - Math.min(...ends) < 1;
}

/** How far a part stands toward the viewer: its middle; a tyre counts by its bulk, which hides its axle. */
export function nearness(plane: Plane, { shape, role }: Solid): number {
  switch (shape.shape) {
    case 'turned': {
      const [start = [0, 0] as const, end = start] = [shape.outline[0], shape.outline.at(-1)];
      const middle = depth(plane, shape.at) + ((start[0] + end[0]) / 2) * dot(plane.towards, shape.along);
      if (role !== 'tyre' && role !== 'grown tyre') return middle;
      const most = Math.max(...shape.outline.map(([, radius]) => radius));
      const across = minus(plane.towards, times(dot(plane.towards, shape.along), shape.along));
      return middle + 0.6 * most * norm(across);
    }
    case 'loop':
      return mean(shape.pins.map((pin) => depth(plane, pin)));
    case 'block':
      // What must be kept clear lies under everything else.
      return Number.NEGATIVE_INFINITY;
    case 'bar':
      return (depth(plane, shape.from) + depth(plane, shape.to)) / 2;
    case 'wires':
      return mean(shape.lines.map(([from, to]) => (depth(plane, from) + depth(plane, to)) / 2));
  }
}

const mean = (values: readonly number[]): number => values.reduce((sum, x) => sum + x, 0) / Math.max(1, values.length);
