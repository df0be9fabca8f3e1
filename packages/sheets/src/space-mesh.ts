/** Surfaces as triangles, and the lines that a drawing in space shows of them. */
import { cross, dot, minus, norm, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';

/** A flat piece of a surface: three points of its mesh. */
export interface Facet {
  readonly corners: readonly [number, number, number];
  /** Facets of one surface meet without a line, unless one of them is turned away from whoever looks. */
  readonly surface: number;
  /** Unit vector outward, where its corners do not say it. */
  readonly normal: Vec3 | null;
}

export interface Mesh {
  readonly points: readonly Vec3[];
  readonly facets: readonly Facet[];
}

/** Numbers that a line takes: both ends, the normals of the two facets that meet in it, and its width as a part of the full one. */
export const EDGE_NUMBERS = 13;

/** Facets that meet at more than this show a line, rad. */
const CREASE = 0.35;
const SAME_PLANE = 1 - 1e-9;
const ALWAYS: Vec3 = [0, 0, 0];

function normalOf({ points }: Mesh, { corners: [a, b, c], normal }: Facet): Vec3 | null {
  if (normal) return normal;
  const [p, q, r] = [points[a], points[b], points[c]];
  if (!p || !q || !r) return null;
  const square = cross(minus(q, p), minus(r, p));
  const size = norm(square);
  // A facet without area has no side that could be seen.
  return size > 1e-9 ? times(1 / size, square) : null;
}

/** All corners of the facets, nine numbers a facet. */
export function triangleNumbers({ points, facets }: Mesh): readonly number[] {
  return facets.flatMap(({ corners }) => corners.flatMap((k) => [...(points[k] ?? ALWAYS)]));
}

/** A line that is seen from everywhere, unless something stands before it. */
export const lineNumbers = (from: Vec3, to: Vec3, width: number): readonly number[] => [
  ...from,
  ...to,
  ...ALWAYS,
  ...ALWAYS,
  width,
];

/**
 * The lines of a mesh, `EDGE_NUMBERS` numbers a line. Where two facets meet at a crease, or a facet ends, both normals are zero: the line always shows.
 * Elsewhere it shows where one of the two faces whoever looks and the other does not, which is the outline of a round body.
 */
export function edgeNumbers(mesh: Mesh, width: number): readonly number[] {
  const { points, facets } = mesh;
  const met = new Map<
    number,
    { readonly ends: readonly [number, number]; readonly sides: { n: Vec3; of: number }[] }
  >();
  for (const facet of facets) {
    const n = normalOf(mesh, facet);
    if (!n) continue;
    const [a, b, c] = facet.corners;
    for (const [from, to] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      const [low, high] = from < to ? [from, to] : [to, from];
      const key = low * points.length + high;
      const known = met.get(key);
      if (known) known.sides.push({ n, of: facet.surface });
      else met.set(key, { ends: [low, high], sides: [{ n, of: facet.surface }] });
    }
  }
  const out: number[] = [];
  for (const { ends, sides } of met.values()) {
    const [from, to] = [points[ends[0]], points[ends[1]]];
    const [one, other] = sides;
    if (!from || !to || !one) continue;
    if (!other) {
      out.push(...lineNumbers(from, to, width));
      continue;
    }
    const between = dot(one.n, other.n);
    if (between > SAME_PLANE) continue;
    if (one.of !== other.of && between < Math.cos(CREASE)) out.push(...lineNumbers(from, to, width));
    else out.push(...from, ...to, ...one.n, ...other.n, width);
  }
  return out;
}
