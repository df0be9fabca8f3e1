import { cross, minus, norm, plus, times, unit } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Point } from './drawing.ts';
import { squareTo } from './gear-solids.ts';
import { toothedOutline } from './outline.ts';
import type { Bar, Block, Loop, Teeth, Turned } from './solids.ts';
import type { Facet, Mesh } from './space-mesh.ts';

/** A circle has so many sides at the least and the most, and one for so many mm of its length between. */
const SIDES = { least: 20, most: 72, length: 9 } as const;
/** A quarter of a roller's seat is drawn in so many steps. */
const ARC_STEPS = 4;
/** An inner link of a chain is so wide over an outer one; its plates so high over those seen from the side. Common practice. */
const INNER_LINK = 0.7;

type Profile = readonly (readonly [station: number, radius: number])[];

const quad = (a: number, b: number, c: number, d: number, surface: number): readonly Facet[] => [
  { corners: [a, b, c], surface, normal: null },
  { corners: [a, c, d], surface, normal: null },
];

const joined = (meshes: readonly Mesh[]): Mesh => {
  const points: Vec3[] = [];
  const facets: Facet[] = [];
  for (const mesh of meshes) {
    const before = points.length;
    points.push(...mesh.points);
    for (const { corners, surface, normal } of mesh.facets)
      facets.push({ corners: [corners[0] + before, corners[1] + before, corners[2] + before], surface, normal });
  }
  return { points, facets };
};

const sidesFor = (radius: number): number =>
  Math.min(SIDES.most, Math.max(SIDES.least, Math.ceil((2 * Math.PI * radius) / SIDES.length)));

/** A closed profile turned about an axis. Each of its stretches is a surface of its own; a place on the axis is one point. */
function turnedMesh(turned: Turned, profile: Profile): Mesh {
  const first = squareTo(turned.along);
  const second = cross(turned.along, first);
  const sides = sidesFor(Math.max(...profile.map(([, radius]) => radius)));
  const points: Vec3[] = [];
  const rings = profile.map(([station, radius]) => {
    const start = points.length;
    const centre = plus(turned.at, times(station, turned.along));
    if (radius === 0) points.push(centre);
    else
      for (let k = 0; k < sides; k += 1) {
        const angle = (2 * Math.PI * k) / sides;
        points.push(
          plus(centre, plus(times(radius * Math.cos(angle), first), times(radius * Math.sin(angle), second))),
        );
      }
    return (k: number): number => (radius === 0 ? start : start + (k % sides));
  });
  const facets = rings.flatMap((here, j) => {
    const there = rings[(j + 1) % rings.length];
    if (!there) return [];
    return Array.from({ length: sides }, (_, k) =>
      quad(here(k), there(k), there(k + 1), here(k + 1), j).filter(
        ({ corners: [a, b, c] }) => a !== b && b !== c && c !== a,
      ),
    ).flat();
  });
  return { points, facets };
}

/** An outline from end to end, closed along its bore or its axis. */
function closedAlong(outline: Profile, bore: number): Profile {
  const [start, end] = [outline[0], outline.at(-1)];
  if (!start || !end) return [];
  return [
    ...outline,
    ...(end[1] > bore ? [[end[0], bore] as const] : []),
    ...(start[1] > bore ? [[start[0], bore] as const] : []),
  ];
}

/** The points of a toothed outline about its centre, counterclockwise, the middle of a gap to the right. */
function toothPoints(teeth: Teeth): readonly Point[] {
  const outline = toothedOutline([0, 0], teeth, 0, 'visible');
  if (outline.kind !== 'path') return [];
  let [x, y] = outline.start;
  return outline.steps.flatMap((step): Point[] => {
    const [from, to]: [Point, Point] = [[x, y], step.to];
    [x, y] = to;
    if (!('radius' in step)) return [to];
    return arc(from, to, step.radius, step.ccw);
  });
}

/** Points along the shorter arc between two points, without the first. */
function arc(from: Point, to: Point, radius: number, ccw: boolean): Point[] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const chord = Math.hypot(dx, dy);
  const rise = Math.sqrt(Math.max(0, radius * radius - (chord * chord) / 4));
  const side = ccw ? 1 : -1;
  const centre: Point = [
    (from[0] + to[0]) / 2 - (side * rise * dy) / chord,
    (from[1] + to[1]) / 2 + (side * rise * dx) / chord,
  ];
  const start = Math.atan2(from[1] - centre[1], from[0] - centre[0]);
  const sweep = side * 2 * Math.asin(Math.min(1, chord / 2 / radius));
  return Array.from({ length: 2 * ARC_STEPS }, (_, k): Point => {
    const angle = start + (sweep * (k + 1)) / (2 * ARC_STEPS);
    return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
  });
}

/** A toothed disc between its two stations. */
function toothedMesh(turned: Turned, teeth: Teeth): Mesh {
  const outline = toothPoints(teeth);
  const side = cross(turned.along, teeth.gap);
  const [low, high] = teeth.from < teeth.to ? [teeth.from, teeth.to] : [teeth.to, teeth.from];
  const at = (station: number, [x, y]: Point): Vec3 =>
    plus(plus(turned.at, times(station, turned.along)), plus(times(x, teeth.gap), times(y, side)));
  const count = outline.length;
  const points = [
    ...outline.map((p) => at(low, p)),
    ...outline.map((p) => at(high, p)),
    at(low, [0, 0]),
    at(high, [0, 0]),
  ];
  const facets = outline.flatMap((_, k): readonly Facet[] => {
    const next = (k + 1) % count;
    return [
      ...quad(k, next, count + next, count + k, 0),
      { corners: [2 * count, next, k], surface: 1, normal: times(-1, turned.along) },
      { corners: [2 * count + 1, count + k, count + next], surface: 2, normal: turned.along },
    ];
  });
  return { points, facets };
}

/** The parts of an outline that stand out of a toothed disc on either side. */
function besideTeeth(outline: Profile, teeth: Teeth): readonly Profile[] {
  const near = 0.01;
  const before = outline.filter(([station]) => station <= teeth.from + near);
  const after = outline.filter(([station]) => station >= teeth.to - near);
  const hub = (part: Profile): Profile => part.filter(([, radius]) => radius < teeth.root);
  return [hub(before), hub(after)].filter((part) => part.length > 1);
}

/** A body of revolution and, where its teeth lie on a cone, a line for each of them. */
export function turnedShape(turned: Turned): {
  readonly mesh: Mesh;
  readonly lines: readonly (readonly [Vec3, Vec3])[];
} {
  const { teeth, outline, bore } = turned;
  if (!teeth) return { mesh: turnedMesh(turned, closedAlong(outline, bore)), lines: [] };
  const cone = coneLine(turned, teeth);
  if (cone) return { mesh: turnedMesh(turned, closedAlong(outline, bore)), lines: toothLines(turned, teeth, cone) };
  const hubs = besideTeeth(outline, teeth).map((part) => turnedMesh(turned, closedAlong(part, 0)));
  return { mesh: joined([toothedMesh(turned, teeth), ...hubs]), lines: [] };
}

/** The ends of the outline between the ends of its teeth, where it is no cylinder; null for a cylinder. */
function coneLine({ outline }: Turned, teeth: Teeth): readonly [Profile[number], Profile[number]] | null {
  const outermost = (station: number): Profile[number] | undefined =>
    outline.filter(([one]) => Math.abs(one - station) < 0.01).sort((a, b) => b[1] - a[1])[0];
  const [from, to] = [outermost(teeth.from), outermost(teeth.to)];
  return from && to && Math.abs(from[1] - to[1]) > 0.01 ? [from, to] : null;
}

function toothLines(
  { at, along }: Turned,
  { count, gap }: Teeth,
  [from, to]: readonly [Profile[number], Profile[number]],
): readonly (readonly [Vec3, Vec3])[] {
  const side = cross(along, gap);
  return Array.from({ length: count }, (_, k) => {
    const angle = (2 * Math.PI * k) / count;
    const out = plus(times(Math.cos(angle), gap), times(Math.sin(angle), side));
    const point = ([station, radius]: Profile[number]): Vec3 =>
      plus(plus(at, times(station, along)), times(radius, out));
    return [point(from), point(to)] as const;
  });
}

/** Each link of a chain as its two plates, inner and outer in turn; the sides follow the pins. */
export function chainMesh({ pins, across, width, height }: Loop): Mesh {
  return joined(
    pins.flatMap((pin, k): Mesh[] => {
      const next = pins[(k + 1) % pins.length];
      if (!next || norm(minus(next, pin)) < 1e-6) return [];
      const up = times(height / 2, unit(cross(across, minus(next, pin))));
      const half = ((k % 2 === 0 ? 1 : INNER_LINK) * width) / 2;
      return [-half, half].map((off): Mesh => {
        const away = times(off, across);
        const [a, b] = [plus(pin, away), plus(next, away)];
        return { points: [minus(a, up), minus(b, up), plus(b, up), plus(a, up)], facets: quad(0, 1, 2, 3, 0) };
      });
    }),
  );
}

/** A belt as a closed band. */
export function beltMesh({ pins, across, width, height }: Loop): Mesh {
  const count = pins.length;
  const corner = (k: number, out: number, off: number): Vec3 => {
    const [before, here, after] = [pins[(k + count - 1) % count], pins[k], pins[(k + 1) % count]];
    if (!before || !here || !after) return [0, 0, 0];
    const up = unit(cross(across, minus(after, before)));
    return plus(here, plus(times((out * height) / 2, up), times((off * width) / 2, across)));
  };
  const rails = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ] as const;
  const points = rails.flatMap(([out, off]) => pins.map((_, k) => corner(k, out, off)));
  const facets = rails.flatMap((_, rail) =>
    pins.flatMap((__, k) => {
      const [beside, next] = [(rail + 1) % rails.length, (k + 1) % count];
      return quad(rail * count + k, rail * count + next, beside * count + next, beside * count + k, rail);
    }),
  );
  return { points, facets };
}

/** The six sides of a body with eight corners, low before high in x, then y, then z. */
export function blockMesh({ corners }: Pick<Block, 'corners'>): Mesh {
  const sides = [
    [0, 1, 3, 2],
    [4, 6, 7, 5],
    [0, 4, 5, 1],
    [2, 3, 7, 6],
    [0, 2, 6, 4],
    [1, 5, 7, 3],
  ] as const;
  return { points: corners, facets: sides.flatMap(([a, b, c, d], k) => quad(a, b, c, d, k)) };
}

/** A straight bar of square section; nothing where it has no length. */
export function barMesh({ from, to, size }: Bar): Mesh {
  const way = minus(to, from);
  if (norm(way) < 1e-6) return { points: [], facets: [] };
  const first = times(size / 2, squareTo(unit(way)));
  const second = times(size / 2, unit(cross(way, first)));
  const corners = [from, to].flatMap((end) =>
    [-1, 1].flatMap((a) => [-1, 1].map((b) => plus(end, plus(times(a, first), times(b, second))))),
  );
  return blockMesh({ corners });
}
