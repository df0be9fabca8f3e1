import type { Vec3 } from '@oddwheel/quantity/quantity';
import { factorFrame } from '../frame/factor.ts';
import { solveFrame } from '../frame/solve.ts';
import { FrameError } from '../frame/structure.ts';
import { add, cross as crossTree, div, mul, neg, norm as normTree, sub, sum, sym } from '../method/expr.ts';
import { defineMethod, MethodError, type Params, type Step } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { cross, minus, norm, plus, times } from '../numerics/vector.ts';

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

/** Pulls together as one at a point. */
export const pullAt = (pulls: readonly BodyPull[], point: Vec3): BodyPull => ({
  at: point,
  force: pulls.reduce<Vec3>((all, one) => plus(all, one.force), [0, 0, 0]),
  moment: pulls.reduce<Vec3>(
    (all, { at, force, moment }) => plus(all, plus(moment, cross(minus(at, point), force))),
    [0, 0, 0],
  ),
});

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
    const { force, moment } = pullAt(pulls, about);
    const [x = 0, y = 0, z = 0, a = 0, b = 0, c = 0] = solveFrame(factors, {
      nodes: new Float64Array([...force, ...moment]),
    });
    return { about, shift: [x, y, z], turn: [a, b, c] };
  };
}

/** How far a point of the body moves, m. */
export const moveOfPoint = ({ about, shift, turn }: BodyMove, point: Vec3): Vec3 =>
  plus(shift, cross(turn, minus(point, about)));

const id = 'mount.bodyMoves';

const inputs = {
  x: { form: 'list', kind: 'length', symbol: 'x_k', meaning: 'places of the mounts, first axis', atLeast: 3 },
  y: { form: 'list', kind: 'length', symbol: 'y_k', meaning: 'places of the mounts, second axis', atLeast: 3 },
  z: { form: 'list', kind: 'length', symbol: 'z_k', meaning: 'places of the mounts, third axis', atLeast: 3 },
  stiffness: {
    form: 'list',
    kind: 'stiffness',
    symbol: 'k_k',
    meaning: 'stiffness of each mount, the same in each direction',
    range: ABOVE_ZERO,
    atLeast: 3,
  },
  at: { form: 'vector', kind: 'length', symbol: 'p', meaning: 'where the pull acts' },
  force: { form: 'vector', kind: 'force', symbol: 'F', meaning: 'pull on the body' },
  moment: { form: 'vector', kind: 'torque', symbol: 'M', meaning: 'torque on the body besides' },
  point: { form: 'vector', kind: 'length', symbol: 'q', meaning: 'point of the body whose movement is asked for' },
} as const satisfies Params;

/** Balance of torques about one axis: what all mounts push back when the body turns by the three angles. */
const turning = (
  axis: 0 | 1 | 2,
  own: string,
  others: readonly (readonly [string, 0 | 1 | 2])[],
  says: string,
): Step => ({
  key: 'turn',
  left: add(mul(sum(own), sym('turn', axis)), ...others.map(([list, n]) => neg(mul(sum(list), sym('turn', n))))),
  right: sym('momentMiddle', axis),
  says,
});

/**
 * Movement of a rigid body on its mounts under a pull and a torque.
 *
 * Errors: lists of different length; mounts on one line.
 */
export const bodyMoves = defineMethod({
  id,
  gives: 'Movement of a body on its mounts under a pull',
  inputs,
  outputs: {
    moves: { form: 'value', kind: 'length', symbol: 'u', meaning: 'how far that point moves' },
    move: { form: 'vector', kind: 'length', symbol: 'u_q', meaning: 'movement of that point' },
    shift: { form: 'vector', kind: 'length', symbol: 'u_c', meaning: 'movement of the middle of the stiffness' },
    turn: { form: 'vector', kind: 'angle', symbol: 'φ', meaning: 'turn of the body about each axis' },
    middle: { form: 'vector', kind: 'length', symbol: 'c', meaning: 'middle of the stiffness' },
    momentMiddle: { form: 'vector', kind: 'torque', symbol: 'M_c', meaning: 'torque about that middle' },
    weighedX: { form: 'list', kind: 'force', symbol: 'a_k', meaning: 'stiffness times place, first axis' },
    weighedY: { form: 'list', kind: 'force', symbol: 'b_k', meaning: 'stiffness times place, second axis' },
    weighedZ: { form: 'list', kind: 'force', symbol: 'e_k', meaning: 'stiffness times place, third axis' },
    aboutX: {
      form: 'list',
      kind: 'turningStiffness',
      symbol: 'J_xk',
      meaning: 'stiffness times distance squared from the first axis through the middle',
    },
    aboutY: {
      form: 'list',
      kind: 'turningStiffness',
      symbol: 'J_yk',
      meaning: 'stiffness times distance squared from the second axis through the middle',
    },
    aboutZ: {
      form: 'list',
      kind: 'turningStiffness',
      symbol: 'J_zk',
      meaning: 'stiffness times distance squared from the third axis through the middle',
    },
    mixedXY: {
      form: 'list',
      kind: 'turningStiffness',
      symbol: 'D_xyk',
      meaning: 'stiffness times first and second place from the middle',
    },
    mixedYZ: {
      form: 'list',
      kind: 'turningStiffness',
      symbol: 'D_yzk',
      meaning: 'stiffness times second and third place from the middle',
    },
    mixedZX: {
      form: 'list',
      kind: 'turningStiffness',
      symbol: 'D_zxk',
      meaning: 'stiffness times third and first place from the middle',
    },
  },
  results: ['moves', 'move', 'shift', 'turn'],
  steps: [
    ...(['weighedX', 'weighedY', 'weighedZ'] as const).map((list, n) => ({
      key: 'middle',
      left: mul(sum('stiffness'), sym('middle', n)),
      right: sum(list),
      says: 'Each place counts by its stiffness.',
    })),
    {
      key: 'momentMiddle',
      is: add('moment', crossTree(sub('at', 'middle'), 'force')),
      says: 'The pull turns the body about that middle.',
    },
    {
      key: 'shift',
      is: div('force', sum('stiffness')),
      says: 'Balance has six equations in six movements; about that middle they part. Three are of forces.',
    },
    turning(
      0,
      'aboutX',
      [
        ['mixedXY', 1],
        ['mixedZX', 2],
      ],
      'Torques about the first axis.',
    ),
    turning(
      1,
      'aboutY',
      [
        ['mixedXY', 0],
        ['mixedYZ', 2],
      ],
      'Torques about the second axis.',
    ),
    turning(
      2,
      'aboutZ',
      [
        ['mixedZX', 0],
        ['mixedYZ', 1],
      ],
      'Torques about the third axis; three equations for three turns.',
    ),
    {
      key: 'move',
      is: add('shift', crossTree('turn', sub('point', 'middle'))),
      says: 'Along with the middle, and round it.',
    },
    { key: 'moves', is: normTree('move'), says: 'How far, whichever way.' },
  ],
  sources: [
    { title: 'Own derivation', at: 'balance of forces and torques of a rigid body on springs', how: 'derived' },
  ],
  holds: [
    'The body is rigid against its mounts, each mount is as stiff in every direction and does not resist turning, and turns are small.',
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { x, y, z, stiffness, at, force, moment, point } = input;
    for (const [key, list] of [
      ['y', y],
      ['z', z],
      ['stiffness', stiffness],
    ] as const)
      if (list.length !== x.length)
        throw new MethodError(
          id,
          key,
          `${list.length} entries read of ${inputs[key].meaning} for ${x.length} places on the first axis; as many are accepted.`,
        );
    const mounts = stiffness.map(
      (k, n): MountSpring => ({
        at: [x[n] as number, y[n] as number, z[n] as number],
        stiffness: k,
      }),
    );
    const whole = stiffness.reduce((all, k) => all + k, 0);
    const weighed = mounts.map((one) => times(one.stiffness, one.at));
    const middle = times(
      1 / whole,
      weighed.reduce<Vec3>((all, one) => plus(all, one), [0, 0, 0]),
    );
    const body = moving(mounts, [{ at, force, moment }]);
    const move = moveOfPoint(body, point);
    const arms = mounts.map((one) => minus(one.at, middle));
    const each = (of: (arm: Vec3) => number) => arms.map((arm, n) => (stiffness[n] as number) * of(arm));
    return {
      moves: norm(move),
      move,
      shift: moveOfPoint(body, middle),
      turn: body.turn,
      middle,
      momentMiddle: pullAt([{ at, force, moment }], middle).moment,
      weighedX: weighed.map((one) => one[0]),
      weighedY: weighed.map((one) => one[1]),
      weighedZ: weighed.map((one) => one[2]),
      aboutX: each(([, b, c]) => b * b + c * c),
      aboutY: each(([a, , c]) => a * a + c * c),
      aboutZ: each(([a, b]) => a * a + b * b),
      mixedXY: each(([a, b]) => a * b),
      mixedYZ: each(([, b, c]) => b * c),
      mixedZX: each(([a, , c]) => c * a),
    };
  },
});

function moving(mounts: readonly MountSpring[], pulls: readonly BodyPull[]): BodyMove {
  try {
    return bodyOnMounts(mounts)(pulls);
  } catch (error) {
    if (!(error instanceof FrameError)) throw error;
    throw new MethodError(
      id,
      'x',
      'The mounts stand on one line and leave the body free to turn round it; three that do not are accepted.',
    );
  }
}
