import type { Vec3 } from '@oddwheel/quantity/quantity';
import { lookOf } from './draw-solid.ts';
import type { Fill, LineType } from './drawing.ts';
import type { Solid } from './solids.ts';
import { edgeNumbers, lineNumbers, type Mesh, triangleNumbers } from './space-mesh.ts';
import { barMesh, beltMesh, blockMesh, chainMesh, turnedShape } from './space-shapes.ts';

/** One part for the picture in space, in vehicle axes and mm. */
export interface SpacePart {
  /** Address of what it shows. */
  readonly of: string;
  readonly name: string;
  /** Address of the shaft that places it; null where none does. */
  readonly moves: string | null;
  readonly line: LineType;
  readonly fill: Fill;
  /** Nine numbers a facet. */
  readonly facets: Float32Array;
  /** Thirteen numbers a line, as `edgeNumbers` gives them. */
  readonly edges: Float32Array;
  /** The box that it takes. */
  readonly least: Vec3;
  readonly most: Vec3;
}

/** Widths of lines of less weight, as parts of the full one. */
const FINE = 0.45;
const NO_MESH: Mesh = { points: [], facets: [] };

interface Made {
  readonly mesh: Mesh;
  readonly width: number;
  readonly lines: readonly (readonly [Vec3, Vec3])[];
}

function made({ shape, role }: Solid): Made {
  switch (shape.shape) {
    case 'turned':
      return { ...turnedShape(shape), width: 1 };
    case 'loop':
      return { mesh: role === 'belt' ? beltMesh(shape) : chainMesh(shape), width: FINE, lines: [] };
    case 'block':
      return { mesh: blockMesh(shape), width: 1, lines: [] };
    case 'bar':
      return { mesh: barMesh(shape), width: 1, lines: [] };
    case 'wires':
      return { mesh: NO_MESH, width: 1, lines: shape.lines };
  }
}

function boxOf(points: readonly Vec3[]): Pick<SpacePart, 'least' | 'most'> {
  const along = (axis: 0 | 1 | 2, pick: (a: number, b: number) => number): number =>
    points.reduce((best, point) => pick(best, point[axis]), points[0]?.[axis] ?? 0);
  return {
    least: [along(0, Math.min), along(1, Math.min), along(2, Math.min)],
    most: [along(0, Math.max), along(1, Math.max), along(2, Math.max)],
  };
}

/** A solid as facets that hide what lies behind them, and as the lines that are drawn of it. */
export function spacePart(solid: Solid): SpacePart {
  const { of, name, moves } = solid;
  const { mesh, width, lines } = made(solid);
  const drawn = [...edgeNumbers(mesh, width), ...lines.flatMap(([from, to]) => lineNumbers(from, to, FINE))];
  return {
    of,
    name,
    moves,
    ...lookOf(solid),
    facets: Float32Array.from(triangleNumbers(mesh)),
    edges: Float32Array.from(drawn),
    ...boxOf([...mesh.points, ...lines.flat()]),
  };
}
