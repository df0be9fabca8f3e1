import type { Bar, Cylinder, Solid } from '@oddwheel/mechanics/clearance/solid';
import { cross, dot, minus, norm, plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';

/** A wheel that a chain or belt runs round. */
export interface LoopWheel {
  readonly centre: Vec3;
  /** Of the pitch line. */
  readonly radius: number;
  /** False for an idler that presses on the outside. */
  readonly inside: boolean;
}

/** Section about the pitch line: half height in the plane, half width along the shafts. */
export interface Section {
  readonly height: number;
  readonly width: number;
}

/** A disc about a point, on an axis of length one. */
export function disc(centre: Vec3, axis: Vec3, radius: number, halfWidth: number): Cylinder {
  const reach = times(halfWidth, axis);
  return { shape: 'cylinder', from: minus(centre, reach), to: plus(centre, reach), radius, rounding: 0 };
}

/** Straight piece of the pitch line from one wheel to the next; null where one lies within the other. */
function span(from: LoopWheel, to: LoopWheel, normal: Vec3): { readonly from: Vec3; readonly to: Vec3 } | null {
  const between = minus(to.centre, from.centre);
  const across = minus(between, times(dot(between, normal), normal));
  const distance = norm(across);
  const [reachFrom, reachTo] = [from, to].map(({ radius, inside }) => (inside ? radius : -radius)) as [number, number];
  const lean = distance > 0 ? (reachFrom - reachTo) / distance : 2;
  if (Math.abs(lean) >= 1) return null;
  const along = times(1 / distance, across);
  // The loop runs counter-clockwise about the normal, and so has its outside on the right.
  const out = plus(times(lean, along), times(Math.sqrt(1 - lean * lean), cross(along, normal)));
  return { from: plus(from.centre, times(reachFrom, out)), to: plus(to.centre, times(reachTo, out)) };
}

/**
 * Envelopes of a chain or belt: each straight span as a bar, each wrapped wheel as a disc over the outside of what runs on it.
 * @param wheels in the order in which it passes them, counter-clockwise about the normal
 * @param normal direction of the shafts, of length one
 * @param sagOf how far the middle of a span of that length swings to either side
 */
export function loopEnvelope(
  wheels: readonly LoopWheel[],
  normal: Vec3,
  section: Section,
  sagOf: (length: number) => number,
): readonly Solid[] {
  const spans = wheels.flatMap((wheel, k): Bar[] => {
    const next = wheels[(k + 1) % wheels.length];
    const line = next && span(wheel, next, normal);
    if (!line) return [];
    const along = minus(line.to, line.from);
    return [
      {
        shape: 'bar',
        ...line,
        across: cross(along, normal),
        halfHeight: section.height,
        halfWidth: section.width,
        sag: sagOf(norm(along)),
      },
    ];
  });
  return [
    ...spans,
    ...wheels.map(({ centre, radius }) => disc(centre, normal, radius + section.height, section.width)),
  ];
}
