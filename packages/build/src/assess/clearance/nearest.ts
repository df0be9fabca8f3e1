import { type Distance, grownDistance } from '@oddwheel/mechanics/clearance/convex-distance';
import { type Grown, grown, type Solid } from '@oddwheel/mechanics/clearance/solid';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Part } from './part.ts';

/** A solid made ready for many questions, with the box that it fills. */
interface Ready {
  readonly solid: Solid;
  readonly grown: Grown;
  readonly low: Vec3;
  readonly high: Vec3;
}

function ready(solid: Solid): Ready {
  const core = grown(solid);
  const reach = (k: 0 | 1 | 2, sign: 1 | -1): number => {
    const point = core.support([k === 0 ? sign : 0, k === 1 ? sign : 0, k === 2 ? sign : 0]);
    return point[k] + sign * core.margin;
  };
  return {
    solid,
    grown: core,
    low: [reach(0, -1), reach(1, -1), reach(2, -1)],
    high: [reach(0, 1), reach(1, 1), reach(2, 1)],
  };
}

type Bounds = Pick<Ready, 'low' | 'high'>;

/** Distance of two boxes along the axes of the vehicle: what lies in them is no nearer. */
export function boxGap(a: Bounds, b: Bounds): number {
  const gap = (k: 0 | 1 | 2): number => Math.max(0, a.low[k] - b.high[k], b.low[k] - a.high[k]);
  return Math.hypot(gap(0), gap(1), gap(2));
}

/** The envelopes of a part at its places. */
interface Shape {
  /** At a place of the arm, with the largest sprockets or as drawn. */
  readonly at: (arm: number, withLargest: boolean) => readonly Ready[];
  /** Box around it at all places of the arm, largest sprockets included. */
  readonly all: Bounds;
  readonly largest: Part['largest'];
}

/** A part at its places. */
export interface Placed extends Shape {
  readonly part: Part;
  readonly shape: Shape;
}

/** Shapes by the envelopes that they were made from, as long as a part with those stands in the build. */
const shapes = new WeakMap<Part['at'], Shape>();

/** @param angles places of the arm that are tried */
export function placed(part: Part, angles: readonly number[]): Placed {
  const known = shapes.get(part.at);
  if (known?.largest === part.largest) return { ...known, part, shape: known };
  const shape = shapeOf(part, angles);
  shapes.set(part.at, shape);
  return { ...shape, part, shape };
}

function shapeOf(part: Part, angles: readonly number[]): Shape {
  const made = new Map<string, readonly Ready[]>();
  const at = (arm: number, withLargest: boolean): readonly Ready[] => {
    const angle = part.swings ? arm : 0;
    const key = `${angle}:${withLargest && part.largest !== null}`;
    const known = made.get(key);
    if (known) return known;
    const larger = withLargest && part.largest ? part.largest(angle) : [];
    const solids = [...part.at(angle), ...larger].map(ready);
    made.set(key, solids);
    return solids;
  };
  const boxes = (part.swings ? angles : [0]).flatMap((angle) => at(angle, true));
  const end = (k: 0 | 1 | 2, of: 'low' | 'high'): number =>
    of === 'low' ? Math.min(...boxes.map((b) => b.low[k])) : Math.max(...boxes.map((b) => b.high[k]));
  return {
    at,
    largest: part.largest,
    all: { low: [end(0, 'low'), end(1, 'low'), end(2, 'low')], high: [end(0, 'high'), end(1, 'high'), end(2, 'high')] },
  };
}

/** The nearest solids of two parts at one place. */
export interface Nearest extends Distance {
  readonly solids: readonly [Solid, Solid];
}

/** The nearest of two lots of solids, or null where all are at least so far apart. */
export function nearestOf(a: readonly Ready[], b: readonly Ready[], below: number): Nearest | null {
  const pairs = a
    .flatMap((first) => b.map((second) => ({ first, second, gap: boxGap(first, second) })))
    .sort((x, y) => x.gap - y.gap);
  let best: Nearest | null = null;
  for (const { first, second, gap } of pairs) {
    const limit: number = best ? best.distance : below;
    if (gap >= limit) break;
    const found = grownDistance(first.grown, second.grown, limit);
    if (found.distance < limit) best = { ...found, solids: [first.solid, second.solid] };
    if (found.overlaps) break;
  }
  return best;
}

/** Smallest distance of two parts over the places of the arm. */
export interface Smallest {
  readonly drawn: number;
  /** With all that swings and the largest sprockets. */
  readonly nearest: Nearest;
  readonly arm: number;
  /** As `nearest`, with the sprockets as drawn. */
  readonly asFitted: number;
}

/** What is known of two shapes: their smallest distance, or that they are at least so far apart. */
interface Known {
  readonly found: Smallest | null;
  readonly below: number;
}

const pairs = new WeakMap<Shape, WeakMap<Shape, Known>>();

/**
 * Two parts whose envelopes were asked for before are not tried again.
 * @param angles places of the arm, as drawn first
 * @returns null where the two never come nearer than `below`
 */
export function smallestOf(a: Placed, b: Placed, angles: readonly number[], below: number): Smallest | null {
  const others = pairs.get(a.shape) ?? new WeakMap<Shape, Known>();
  const known = others.get(b.shape);
  if (known?.found) return known.found.nearest.distance < below ? known.found : null;
  if (known && known.below >= below) return null;
  const found = smallestAnew(a, b, angles, below);
  others.set(b.shape, { found, below });
  pairs.set(a.shape, others);
  return found;
}

function smallestAnew(a: Placed, b: Placed, angles: readonly number[], below: number): Smallest | null {
  const swings = a.part.swings || b.part.swings;
  let best: { readonly nearest: Nearest; readonly arm: number } | null = null;
  for (const arm of swings ? angles : [0]) {
    const limit: number = best ? best.nearest.distance : below;
    const nearest = nearestOf(a.at(arm, true), b.at(arm, true), limit);
    if (nearest) best = { nearest, arm };
    if (nearest?.overlaps) break;
  }
  if (!best) return null;
  const fitted = (arm: number): number =>
    nearestOf(a.at(arm, false), b.at(arm, false), Number.POSITIVE_INFINITY)?.distance ?? 0;
  const { nearest, arm } = best;
  const larger = a.part.largest !== null || b.part.largest !== null;
  const asFitted = larger ? fitted(arm) : nearest.distance;
  return { drawn: arm === 0 ? asFitted : fitted(0), nearest, arm, asFitted };
}
