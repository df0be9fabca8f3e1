import { nodeOrder } from '../numerics/node-order.ts';
import {
  addEntry,
  type Factored,
  factorProfile,
  type ProfileMatrix,
  profileMatrix,
} from '../numerics/profile-matrix.ts';
import {
  congruent,
  ENDS,
  localStiffness,
  type MemberPlace,
  MOVES,
  memberPlace,
  memberTransformation,
  putPoint,
} from './member-stiffness.ts';
import { FrameError, type Member, type Spring, type Structure } from './structure.ts';

/** A member or spring made ready: its stiffness and the way from node movements to its own. */
export interface Ready {
  /** First node, then second; −1 for the ground. */
  readonly nodes: readonly [number, number];
  /** Own stiffness, `rows` × `rows`, and transformation, `rows` × 12. */
  readonly own: Float64Array;
  readonly transformation: Float64Array;
  readonly rows: number;
  /** Stiffness in the structure's axes, 12 × 12. */
  readonly whole: Float64Array;
  readonly place: MemberPlace | null;
}

/** A structure factored once; movements for any number of load cases follow from it. */
export interface FrameFactors {
  readonly structure: Structure;
  readonly members: readonly Ready[];
  readonly springs: readonly Ready[];
  /** Number of the unknown of each movement of each node; −1 where it is held. */
  readonly unknowns: Int32Array;
  readonly count: number;
  readonly factored: Factored;
}

const MOVE_WORDS = ['along x', 'along y', 'along z', 'about x', 'about y', 'about z'] as const;
const ORIGIN = [0, 0, 0] as const;

function readyMember(structure: Structure, index: number): Ready {
  const member = structure.members[index] as Member;
  const place = memberPlace(structure, index);
  const own = localStiffness(member.section, member.material, place.length);
  const transformation = memberTransformation(place);
  const whole = congruent(own, transformation, ENDS);
  return { nodes: [member.from, member.to], own, transformation, rows: ENDS, whole, place };
}

function readySpring(spring: Spring): Ready {
  const own = new Float64Array(MOVES * MOVES);
  spring.stiffness.forEach((x, i) => {
    own[i * MOVES + i] = x;
  });
  const transformation = new Float64Array(MOVES * ENDS);
  putPoint(transformation, 0, 0, spring.axes, spring.aOffset ?? ORIGIN, -1);
  if (spring.b !== null) putPoint(transformation, 0, MOVES, spring.axes, spring.bOffset ?? ORIGIN, 1);
  const whole = congruent(own, transformation, MOVES);
  return { nodes: [spring.a, spring.b ?? -1], own, transformation, rows: MOVES, whole, place: null };
}

/** Gives every free movement its number, in an order that keeps the profile small; ties share their master's. */
function numberUnknowns(structure: Structure): { readonly unknowns: Int32Array; readonly count: number } {
  const { nodes, members, springs, supports, ties = [] } = structure;
  const links = [
    ...members.map(({ from, to }) => [from, to] as const),
    ...springs.flatMap(({ a, b }) => (b === null ? [] : [[a, b] as const])),
    ...ties.map(({ node, to }) => [node, to] as const),
  ];
  const unknowns = new Int32Array(nodes.length * MOVES).fill(-2);
  for (const { node, held } of supports)
    held.forEach((is, move) => {
      if (is) unknowns[node * MOVES + move] = -1;
    });
  const tied = new Map<number, number>();
  for (const { node, to, moves } of ties)
    moves.forEach((is, move) => {
      if (is) tied.set(node * MOVES + move, to * MOVES + move);
    });
  let count = 0;
  for (const node of nodeOrder(nodes.length, links))
    for (let move = 0; move < MOVES; move++) {
      const at = node * MOVES + move;
      if (unknowns[at] === -2 && !tied.has(at)) unknowns[at] = count++;
    }
  for (const [at, master] of tied) unknowns[at] = unknowns[master] as number;
  return { unknowns, count };
}

/** Numbers of a part's twelve movements; −1 where held or grounded. */
export function numbersOf(unknowns: Int32Array, nodes: readonly [number, number]): Int32Array {
  const numbers = new Int32Array(ENDS).fill(-1);
  for (const side of [0, 1] as const)
    if (nodes[side] >= 0)
      for (let move = 0; move < MOVES; move++)
        numbers[side * MOVES + move] = unknowns[nodes[side] * MOVES + move] as number;
  return numbers;
}

/** A matrix with room for all parts: of each column the smallest number that a part shares with it. */
export function roomFor(
  unknowns: Int32Array,
  count: number,
  parts: readonly { readonly nodes: readonly [number, number] }[],
): ProfileMatrix {
  const first = Int32Array.from({ length: count }, (_, j) => j);
  for (const { nodes } of parts) {
    const numbers = numbersOf(unknowns, nodes).filter((n) => n >= 0);
    const least = Math.min(...numbers);
    for (const n of numbers) if (least < (first[n] as number)) first[n] = least;
  }
  return profileMatrix(first);
}

/** Adds a part's 12 × 12 matrix to the whole. */
export function addPart(matrix: ProfileMatrix, numbers: Int32Array, whole: Float64Array): void {
  for (let i = 0; i < ENDS; i++) {
    const row = numbers[i] as number;
    if (row < 0) continue;
    for (let j = 0; j < ENDS; j++) {
      const column = numbers[j] as number;
      // Each pair once: the upper triangle by number; two movements with one number meet twice, as they must.
      if (column < 0 || row > column) continue;
      if (row === column || row < column) addEntry(matrix, row, column, whole[i * ENDS + j] as number);
    }
  }
}

function check(structure: Structure): void {
  const last = structure.nodes.length - 1;
  const known = (node: number): boolean => Number.isInteger(node) && node >= 0 && node <= last;
  structure.members.forEach(({ from, to, section, material }, k) => {
    if (!known(from) || !known(to)) throw new FrameError('member', k, `Member ${k} names a node that is not there.`);
    const sizes = [section.area, section.iy, section.iz, section.torsion, material.youngs, material.shear];
    if (!sizes.every((x) => Number.isFinite(x) && x > 0))
      throw new FrameError('member', k, `Member ${k} has a size or a stiffness that is not above zero.`);
  });
  structure.springs.forEach(({ a, b, stiffness }, k) => {
    if (!known(a) || (b !== null && !known(b)))
      throw new FrameError('spring', k, `Spring ${k} names a node that is not there.`);
    if (!stiffness.every((x) => Number.isFinite(x) && x >= 0))
      throw new FrameError('spring', k, `Spring ${k} has a stiffness that is not a number of at least zero.`);
  });
}

/**
 * Assembles and factors a structure.
 *
 * Source: J. S. Przemieniecki, Theory of Matrix Structural Analysis (1968), chapters 5 and 6 (from memory).
 *
 * @throws FrameError when a part is wrong, or naming the node and the way it can move without anything that holds it.
 */
export function factorFrame(structure: Structure): FrameFactors {
  check(structure);
  const members = structure.members.map((_, k) => readyMember(structure, k));
  const springs = structure.springs.map(readySpring);
  const { unknowns, count } = numberUnknowns(structure);
  const parts = [...members, ...springs];
  const matrix = roomFor(unknowns, count, parts);
  for (const part of parts) addPart(matrix, numbersOf(unknowns, part.nodes), part.whole);
  const result = factorProfile(matrix);
  if (!result.ok) {
    const at = unknowns.indexOf(result.unknown);
    const node = Math.floor(at / MOVES);
    throw new FrameError('node', node, `Nothing holds node ${node} ${MOVE_WORDS[at % MOVES] ?? ''}.`);
  }
  return { structure, members, springs, unknowns, count, factored: result.factored };
}
