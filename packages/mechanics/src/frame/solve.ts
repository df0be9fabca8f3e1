import { solveProfile } from '../numerics/profile-matrix.ts';
import { type FrameFactors, numbersOf, type Ready } from './factor.ts';
import { ENDS, MOVES } from './member-stiffness.ts';

/** What happens to the structure in one load case. */
export interface FrameLoad {
  /** Force along x, y, z and moment about x, y, z at each node, six by six. */
  readonly nodes: Float64Array;
  /** Movements forced on held movements, six by six; left out when there are none. */
  readonly forced?: Float64Array;
}

/** Movements of a part's two nodes. */
function nodeMoves(moves: Float64Array, nodes: readonly [number, number]): Float64Array {
  const twelve = new Float64Array(ENDS);
  for (const side of [0, 1] as const)
    if (nodes[side] >= 0) twelve.set(moves.subarray(nodes[side] * MOVES, nodes[side] * MOVES + MOVES), side * MOVES);
  return twelve;
}

/**
 * Movements of all nodes in one load case, m and rad, six by six.
 * @throws RangeError when the loads don't have six numbers for each node.
 */
export function solveFrame(factors: FrameFactors, load: FrameLoad): Float64Array {
  const { structure, unknowns, count, factored } = factors;
  const size = structure.nodes.length * MOVES;
  if (load.nodes.length !== size || (load.forced && load.forced.length !== size))
    throw new RangeError(`A load case has six numbers for each of ${structure.nodes.length} nodes.`);
  const b = new Float64Array(count);
  load.nodes.forEach((x, at) => {
    const n = unknowns[at] as number;
    if (n >= 0) b[n] = (b[n] as number) + x;
  });
  const moves = new Float64Array(size);
  if (load.forced) {
    load.forced.forEach((x, at) => {
      if ((unknowns[at] as number) < 0) moves[at] = x;
    });
    for (const part of [...factors.members, ...factors.springs]) {
      const numbers = numbersOf(unknowns, part.nodes);
      const held = nodeMoves(moves, part.nodes);
      for (let i = 0; i < ENDS; i++) {
        const n = numbers[i] as number;
        if (n < 0) continue;
        for (let j = 0; j < ENDS; j++)
          b[n] = (b[n] as number) - (part.whole[i * ENDS + j] as number) * (held[j] as number);
      }
    }
  }
  solveProfile(factored, b);
  unknowns.forEach((n, at) => {
    if (n >= 0) moves[at] = b[n] as number;
  });
  return moves;
}

/** Own end forces of a part: its stiffness times its own movements. */
function ownForces(part: Ready, moves: Float64Array): Float64Array {
  const { rows, own, transformation } = part;
  const node = nodeMoves(moves, part.nodes);
  const mine = new Float64Array(rows);
  for (let i = 0; i < rows; i++)
    for (let j = 0; j < ENDS; j++)
      mine[i] = (mine[i] as number) + (transformation[i * ENDS + j] as number) * (node[j] as number);
  const out = new Float64Array(rows);
  for (let i = 0; i < rows; i++)
    for (let j = 0; j < rows; j++) out[i] = (out[i] as number) + (own[i * rows + j] as number) * (mine[j] as number);
  return out;
}

/**
 * End forces of a member in its own axes, twelve numbers: what its nodes do to it, force x y z and moment x y z at its first end, then at its second.
 */
export function memberForces(factors: FrameFactors, member: number, moves: Float64Array): Float64Array {
  return ownForces(factors.members[member] as Ready, moves);
}

/** Force and moment of a spring along and about its axes, six numbers: what it does to its first node. */
export function springForces(factors: FrameFactors, spring: number, moves: Float64Array): Float64Array {
  return ownForces(factors.springs[spring] as Ready, moves);
}

/** What all members and springs together do to the nodes, six by six: loads plus reactions turned round. */
export function nodeResistance(factors: FrameFactors, moves: Float64Array): Float64Array {
  const out = new Float64Array(moves.length);
  for (const part of [...factors.members, ...factors.springs]) {
    const node = nodeMoves(moves, part.nodes);
    for (let i = 0; i < ENDS; i++) {
      const at = part.nodes[i < MOVES ? 0 : 1];
      if (at < 0) continue;
      let sum = 0;
      for (let j = 0; j < ENDS; j++) sum += (part.whole[i * ENDS + j] as number) * (node[j] as number);
      const place = at * MOVES + (i % MOVES);
      out[place] = (out[place] as number) + sum;
    }
  }
  return out;
}
