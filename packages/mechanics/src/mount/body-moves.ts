import type { Vec3 } from '@oddwheel/quantity/quantity';
import { factorFrame } from '../frame/factor.ts';
import { solveFrame } from '../frame/solve.ts';
import { cross, minus, plus, times } from '../numerics/vector.ts';

/** A rubber that holds a body to what stands still, m and N/m; as stiff in each direction. */
export interface MountSpring {
  readonly at: Vec3;
  readonly stiffness: number;
}

/** What pulls on a body: a force at a point, and a moment, N and N·m. */
export interface BodyPull {
  readonly at: Vec3;
  readonly force: Vec3;
  readonly moment: Vec3;
}

/** Small movement of a rigid body: of one of its points, and its turn, m and rad. */
export interface BodyMove {
  readonly about: Vec3;
  readonly shift: Vec3;
  readonly turn: Vec3;
}

const AXES = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
] as const;

/**
 * A rigid body on springs to the ground: one node of the frame, its springs off it, six by six, factored once.
 *
 * @returns movement of the body under any pulls; valid for turns of a few degrees
 * @throws FrameError where the mounts leave it free to move, as those on one line do
 */
export function bodyOnMounts(mounts: readonly MountSpring[]): (pulls: readonly BodyPull[]) => BodyMove {
  const sum = mounts.reduce<Vec3>((all, { at }) => plus(all, at), [0, 0, 0]);
  const about = times(1 / mounts.length, sum);
  const factors = factorFrame({
    nodes: [about],
    members: [],
    springs: mounts.map(({ at, stiffness: k }) => ({
      a: 0,
      b: null,
      axes: AXES,
      stiffness: [k, k, k, 0, 0, 0],
      aOffset: minus(at, about),
    })),
    supports: [],
  });
  return (pulls) => {
    const force = pulls.reduce<Vec3>((all, one) => plus(all, one.force), [0, 0, 0]);
    const moment = pulls.reduce<Vec3>(
      (all, { at, force: f, moment: m }) => plus(all, plus(m, cross(minus(at, about), f))),
      [0, 0, 0],
    );
    const [x = 0, y = 0, z = 0, a = 0, b = 0, c = 0] = solveFrame(factors, {
      nodes: new Float64Array([...force, ...moment]),
    });
    return { about, shift: [x, y, z], turn: [a, b, c] };
  };
}

/** How far a point of the body moves, m. */
export const moveOfPoint = ({ about, shift, turn }: BodyMove, point: Vec3): Vec3 =>
  plus(shift, cross(turn, minus(point, about)));
