import type { Vec3 } from '@oddwheel/quantity/quantity';
import { cross, minus, norm, plus, times, unit } from '../numerics/vector.ts';
import { FrameError, type Material, type Member, type Section, type Structure } from './structure.ts';

/** Movements per node, and per member with its two ends. */
export const MOVES = 6;
export const ENDS = 12;

const ZERO: Vec3 = [0, 0, 0];

/** Ends and local directions of a member in the structure's axes. */
export interface MemberPlace {
  readonly length: number;
  /** Rows: local x, y, z. */
  readonly axes: readonly [Vec3, Vec3, Vec3];
  readonly fromOffset: Vec3;
  readonly toOffset: Vec3;
}

/**
 * Length and local directions of a member.
 * @throws FrameError naming the member when it has no length, or when its reference runs along it.
 */
export function memberPlace(structure: Structure, index: number): MemberPlace {
  const member = structure.members[index] as Member;
  const [fromOffset, toOffset] = [member.fromOffset ?? ZERO, member.toOffset ?? ZERO];
  const start = plus(structure.nodes[member.from] as Vec3, fromOffset);
  const end = plus(structure.nodes[member.to] as Vec3, toOffset);
  const along = minus(end, start);
  const length = norm(along);
  if (!(length > 0))
    throw new FrameError('member', index, `Member ${index} has no length: both ends are at the same place.`);
  const x = times(1 / length, along);
  const side = cross(member.reference, x);
  if (!(norm(side) > 1e-9 * norm(member.reference)))
    throw new FrameError('member', index, `The reference of member ${index} runs along it; give one across it.`);
  const y = unit(side);
  return { length, axes: [x, y, cross(x, y)], fromOffset, toOffset };
}

/**
 * Stiffness of a straight member in its own axes, 12 × 12 by rows; order u v w θx θy θz at each end. Shear bending follows Timoshenko.
 *
 * Source: J. S. Przemieniecki, Theory of Matrix Structural Analysis (1968), section 5.6 (from memory).
 *
 * @param length m, above 0
 */
export function localStiffness(section: Section, material: Material, length: number): Float64Array {
  const k = new Float64Array(ENDS * ENDS);
  const put = (i: number, j: number, x: number): void => {
    k[i * ENDS + j] = x;
    k[j * ENDS + i] = x;
  };
  const { youngs: E, shear: G } = material;
  const axial = (E * section.area) / length;
  const twist = (G * section.torsion) / length;
  for (const [at, stiffness] of [
    [0, axial],
    [3, twist],
  ] as const) {
    put(at, at, stiffness);
    put(at + 6, at + 6, stiffness);
    put(at, at + 6, -stiffness);
  }
  /** Bending in one plane; `sign` is that of the rotation that goes with a rising deflection. */
  const bend = (shift: number, turn: number, inertia: number, shearArea: number, sign: 1 | -1): void => {
    const phi = shearArea > 0 ? (12 * E * inertia) / (G * shearArea * length * length) : 0;
    const b = (E * inertia) / (length ** 3 * (1 + phi));
    const [shift2, turn2] = [shift + 6, turn + 6];
    put(shift, shift, 12 * b);
    put(shift2, shift2, 12 * b);
    put(shift, shift2, -12 * b);
    const lever = sign * 6 * b * length;
    put(shift, turn, lever);
    put(shift, turn2, lever);
    put(shift2, turn, -lever);
    put(shift2, turn2, -lever);
    const near = (4 + phi) * b * length * length;
    const far = (2 - phi) * b * length * length;
    put(turn, turn, near);
    put(turn2, turn2, near);
    put(turn, turn2, far);
  };
  bend(1, 5, section.iz, section.shearY, 1);
  bend(2, 4, section.iy, section.shearZ, -1);
  return k;
}

/**
 * Mass of a straight member in its own axes, 12 × 12 by rows, consistent with its bending, with the inertia of its sections.
 *
 * Source: J. S. Przemieniecki, Theory of Matrix Structural Analysis (1968), section 11.3 (from memory).
 */
export function localMass(section: Section, material: Material, length: number): Float64Array {
  const m = new Float64Array(ENDS * ENDS);
  const put = (i: number, j: number, x: number): void => {
    m[i * ENDS + j] = x;
    m[j * ENDS + i] = x;
  };
  const mass = material.density * section.area * length;
  const turning = material.density * (section.iy + section.iz) * length;
  for (const [at, whole] of [
    [0, mass],
    [3, turning],
  ] as const) {
    put(at, at, whole / 3);
    put(at + 6, at + 6, whole / 3);
    put(at, at + 6, whole / 6);
  }
  const bend = (shift: number, turn: number, inertia: number, sign: 1 | -1): void => {
    const a = mass / 420;
    const r = (material.density * inertia) / (30 * length);
    const L = length;
    const [shift2, turn2] = [shift + 6, turn + 6];
    put(shift, shift, 156 * a + 36 * r);
    put(shift2, shift2, 156 * a + 36 * r);
    put(shift, shift2, 54 * a - 36 * r);
    put(shift, turn, sign * (22 * L * a + 3 * L * r));
    put(shift2, turn2, -sign * (22 * L * a + 3 * L * r));
    put(shift, turn2, sign * (-13 * L * a + 3 * L * r));
    put(shift2, turn, sign * (13 * L * a - 3 * L * r));
    put(turn, turn, 4 * L * L * (a + r));
    put(turn2, turn2, 4 * L * L * (a + r));
    put(turn, turn2, -L * L * (3 * a + r));
  };
  bend(1, 5, section.iz, 1);
  bend(2, 4, section.iy, -1);
  return m;
}

/** Rows `row`… of a transformation take the movements at a point off a node: those of the node turned into `axes`, with the arm's share. */
export function putPoint(
  G: Float64Array,
  row: number,
  column: number,
  axes: readonly [Vec3, Vec3, Vec3],
  offset: Vec3,
  factor: number,
): void {
  for (let i = 0; i < 3; i++) {
    const direction = axes[i] as Vec3;
    // u + θ × e, along the direction: θ · (e × direction).
    const arm = cross(offset, direction);
    for (let j = 0; j < 3; j++) {
      G[(row + i) * ENDS + column + j] = factor * (direction[j] as number);
      G[(row + i) * ENDS + column + 3 + j] = factor * (arm[j] as number);
      G[(row + 3 + i) * ENDS + column + 3 + j] = factor * (direction[j] as number);
    }
  }
}

/** Movements of a member's ends in its own axes from those of its nodes, 12 × 12 by rows. */
export function memberTransformation(place: MemberPlace): Float64Array {
  const G = new Float64Array(ENDS * ENDS);
  putPoint(G, 0, 0, place.axes, place.fromOffset, 1);
  putPoint(G, MOVES, MOVES, place.axes, place.toOffset, 1);
  return G;
}

/** Gᵀ k G for k of `rows` × `rows` and G of `rows` × 12, by rows. */
export function congruent(k: Float64Array, G: Float64Array, rows: number): Float64Array {
  const kG = new Float64Array(rows * ENDS);
  for (let i = 0; i < rows; i++)
    for (let l = 0; l < rows; l++) {
      const x = k[i * rows + l] as number;
      if (x === 0) continue;
      for (let j = 0; j < ENDS; j++) kG[i * ENDS + j] = (kG[i * ENDS + j] as number) + x * (G[l * ENDS + j] as number);
    }
  const out = new Float64Array(ENDS * ENDS);
  for (let l = 0; l < rows; l++)
    for (let i = 0; i < ENDS; i++) {
      const x = G[l * ENDS + i] as number;
      if (x === 0) continue;
      for (let j = 0; j < ENDS; j++)
        out[i * ENDS + j] = (out[i * ENDS + j] as number) + x * (kG[l * ENDS + j] as number);
    }
  return out;
}
