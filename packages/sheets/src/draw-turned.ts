import { cross, dot, plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Element, Fill, LineType, Point } from './drawing.ts';
import { squareTo } from './gear-solids.ts';
import { hull, polygon, straight, toothedOutline } from './outline.ts';
import { onPage, type Plane } from './plane.ts';
import type { Solid, Turned } from './solids.ts';

const ALONG = 1e-9;
/** Corners of an outline sharper than this show as an edge, rad. */
const CREASE = 0.35;

export interface Look {
  readonly line: LineType;
  readonly fill: Fill;
}

/** How an axis lies to a view. */
export function lies(plane: Plane, along: Vec3): 'end on' | 'square' | 'slanting' {
  const part = Math.abs(dot(plane.towards, along));
  return part > 1 - ALONG ? 'end on' : part < ALONG ** 0.5 ? 'square' : 'slanting';
}

/** A body of revolution as one view shows it. */
export function drawTurned(plane: Plane, turned: Turned, role: Solid['role'], look: Look): readonly Element[] {
  switch (lies(plane, turned.along)) {
    case 'end on':
      return endOn(plane, turned, role, look);
    case 'square':
      return fromTheSide(plane, turned, role, look);
    case 'slanting':
      return slanting(plane, turned, look);
  }
}

function endOn(plane: Plane, turned: Turned, role: Solid['role'], { line, fill }: Look): readonly Element[] {
  const centre = onPage(plane, turned.at);
  const near = dot(plane.towards, turned.along) > 0 ? [...turned.outline].reverse() : turned.outline;
  const most = Math.max(...near.map(([, radius]) => radius));
  const { teeth, bore } = turned;
  const out: Element[] = [];
  if (teeth) {
    const gap = onPage(plane, teeth.gap);
    out.push(toothedOutline(centre, teeth, Math.atan2(gap[1], gap[0]), line));
    if (teeth.form === 'gear')
      out.push({ kind: 'circle', line: 'centre', fill: 'none', centre, radius: teeth.pitch, hole: 0 });
  } else out.push({ kind: 'circle', line, fill, centre, radius: most, hole: bore });
  if (bore > 0) out.push({ kind: 'circle', line, fill: 'none', centre, radius: bore, hole: 0 });
  if (role === 'tyre') {
    const tread = Math.max(...turned.outline.map(([, radius]) => radius)) * 0.965;
    out.push({ kind: 'circle', line: 'thin', fill: 'none', centre, radius: tread, hole: 0 });
    return out;
  }
  // Nearer steps stand in front of what is larger behind them.
  let reach = teeth && teeth.from === near[0]?.[0] ? Number.POSITIVE_INFINITY : bore;
  const rim = teeth ? Math.min(teeth.root, most) : most;
  for (const [, radius] of near) {
    if (radius <= reach + 0.01) continue;
    reach = radius;
    if (radius < rim - 0.01) out.push({ kind: 'circle', line, fill: 'none', centre, radius, hole: 0 });
  }
  return out;
}

const angleBetween = (a: Point, b: Point, c: Point): number => {
  const first = Math.atan2(b[1] - a[1], b[0] - a[0]);
  const second = Math.atan2(c[1] - b[1], c[0] - b[0]);
  return Math.abs(Math.atan2(Math.sin(second - first), Math.cos(second - first)));
};

function fromTheSide(plane: Plane, turned: Turned, role: Solid['role'], { line, fill }: Look): readonly Element[] {
  const centre = onPage(plane, turned.at);
  const along = onPage(plane, turned.along);
  const square: Point = [-along[1], along[0]];
  const at = (station: number, radius: number): Point => [
    centre[0] + station * along[0] + radius * square[0],
    centre[1] + station * along[1] + radius * square[1],
  ];
  const { outline, bore } = turned;
  const upper = outline.map(([station, radius]) => at(station, radius));
  const lower = outline.map(([station, radius]) => at(station, -radius)).reverse();
  const out: Element[] = [polygon([...upper, ...lower], line, fill)];
  outline.slice(1, -1).forEach((point, k) => {
    const [before, after] = [outline[k], outline[k + 2]];
    if (!before || !after || angleBetween(before, point, after) < CREASE) return;
    // At a step the line across is that of the smaller radius: the rest is the outline itself.
    if (before[0] === point[0] && before[1] < point[1]) return;
    if (after[0] === point[0] && point[1] > after[1]) return;
    out.push(straight(at(point[0], point[1]), at(point[0], -point[1]), line));
  });
  if (role === 'bearing') {
    const [[start, outer] = [0, 0], [end] = [0, 0]] = [outline[0], outline.at(-1)];
    for (const side of [1, -1])
      out.push(
        straight(at(start, side * bore), at(end, side * outer), 'thin'),
        straight(at(start, side * outer), at(end, side * bore), 'thin'),
        straight(at(start, side * bore), at(end, side * bore), 'thin'),
      );
  }
  return out;
}

const ROUND = 40;

function slanting(plane: Plane, turned: Turned, { line, fill }: Look): readonly Element[] {
  const first = squareTo(turned.along);
  const second = cross(turned.along, first);
  const circle = (station: number, radius: number): Point[] => {
    const centre = plus(turned.at, times(station, turned.along));
    return Array.from({ length: ROUND }, (_, k) => {
      const a = (2 * Math.PI * k) / ROUND;
      const out = plus(times(radius * Math.cos(a), first), times(radius * Math.sin(a), second));
      return onPage(plane, plus(centre, out));
    });
  };
  const faces = dot(plane.towards, turned.along) > 0;
  const order = faces ? turned.outline : [...turned.outline].reverse();
  return order.slice(1).flatMap((near, k): Element[] => {
    const far = order[k];
    if (!far || far[0] === near[0]) return [];
    const rim = circle(near[0], near[1]);
    return [polygon(hull([...circle(far[0], far[1]), ...rim]), line, fill), polygon(rim, line, fill)];
  });
}
