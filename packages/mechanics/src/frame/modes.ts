import { addEntry, type ProfileMatrix, solveProfile } from '../numerics/profile-matrix.ts';
import { symmetricEigen } from '../numerics/symmetric-eigen.ts';
import { addPart, type FrameFactors, numbersOf, roomFor } from './factor.ts';
import { congruent, ENDS, localMass, MOVES } from './member-stiffness.ts';
import type { Member, PointMass } from './structure.ts';

/** One natural mode. */
export interface Mode {
  /** Hz. */
  readonly frequency: number;
  /** Movements of all nodes, six by six; the largest movement along an axis is 1. */
  readonly shape: Float64Array;
}

function massMatrix(factors: FrameFactors, masses: readonly PointMass[]): ProfileMatrix {
  const { structure, unknowns, count, members } = factors;
  const matrix = roomFor(unknowns, count, members);
  members.forEach((part, k) => {
    const { section, material } = structure.members[k] as Member;
    if (!part.place || material.density === 0) return;
    const own = localMass(section, material, part.place.length);
    addPart(matrix, numbersOf(unknowns, part.nodes), congruent(own, part.transformation, ENDS));
  });
  for (const { node, mass, inertia } of masses)
    [mass, mass, mass, ...inertia].forEach((x, move) => {
      const n = unknowns[node * MOVES + move] as number;
      if (n >= 0) addEntry(matrix, n, n, x);
    });
  return matrix;
}

/** Matrix times vector. */
function multiply(m: ProfileMatrix, x: Float64Array): Float64Array {
  const out = new Float64Array(m.size);
  for (let j = 0; j < m.size; j++) {
    const first = m.first[j] as number;
    const top = (m.top[j] as number) - first;
    for (let i = first; i < j; i++) {
      const a = m.values[top + i] as number;
      out[i] = (out[i] as number) + a * (x[j] as number);
      out[j] = (out[j] as number) + a * (x[i] as number);
    }
    out[j] = (out[j] as number) + (m.values[top + j] as number) * (x[j] as number);
  }
  return out;
}

const product = (a: Float64Array, b: Float64Array): number => a.reduce((sum, x, k) => sum + x * (b[k] as number), 0);

/** A start that no symmetry of a frame matches: the same numbers each time. */
function start(size: number, seed: number): Float64Array {
  let state = seed;
  return Float64Array.from({ length: size }, () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296 - 0.5;
  });
}

/** Makes each vector of length one by mass and square to those before it; drops those that vanish. */
function orthonormal(vectors: readonly Float64Array[], mass: ProfileMatrix): Float64Array[] {
  const kept: Float64Array[] = [];
  const weighed: Float64Array[] = [];
  for (const vector of vectors) {
    const x = Float64Array.from(vector);
    const before = Math.sqrt(Math.max(0, product(x, multiply(mass, x))));
    for (let pass = 0; pass < 2; pass++)
      kept.forEach((other, k) => {
        const part = product(x, weighed[k] as Float64Array);
        for (let i = 0; i < x.length; i++) x[i] = (x[i] as number) - part * (other[i] as number);
      });
    const Mx = multiply(mass, x);
    const length = Math.sqrt(Math.max(0, product(x, Mx)));
    if (!(length > 1e-10 * before) || before === 0) continue;
    kept.push(x.map((one) => one / length));
    weighed.push(Mx.map((one) => one / length));
  }
  return kept;
}

/**
 * Lowest natural modes, rising; equal ones are all returned. By iteration on a subspace wider than asked for.
 *
 * Source: K.-J. Bathe, E. L. Wilson, Numerical Methods in Finite Element Analysis (1976), section 12.3 (from memory).
 *
 * @param count how many, at least 1
 * @param masses masses at nodes besides those of the members
 */
export function frameModes(factors: FrameFactors, count: number, masses: readonly PointMass[] = []): readonly Mode[] {
  const mass = massMatrix(factors, masses);
  const size = factors.count;
  const wide = Math.min(size, 2 * count + 8);
  let space = orthonormal(
    Array.from({ length: wide }, (_, k) => start(size, 7919 * (k + 1))),
    mass,
  );
  let values = new Float64Array(0);
  for (let round = 0; round < 200; round++) {
    const moved = orthonormal(
      space.map((x) => {
        const b = multiply(mass, x);
        solveProfile(factors.factored, b);
        return b;
      }),
      mass,
    );
    const n = moved.length;
    // K⁻¹ seen in the subspace: its eigenvalues are one over the squares of the angular frequencies.
    const weighed = moved.map((x) => multiply(mass, x));
    const answered = weighed.map((x) => {
      const b = Float64Array.from(x);
      solveProfile(factors.factored, b);
      return b;
    });
    const small = new Float64Array(n * n);
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++)
        small[i * n + j] =
          (product(weighed[i] as Float64Array, answered[j] as Float64Array) +
            product(weighed[j] as Float64Array, answered[i] as Float64Array)) /
          2;
    const eigen = symmetricEigen(small, n);
    const next = Float64Array.from({ length: n }, (_, k) => 1 / (eigen.values[n - 1 - k] as number));
    space = Array.from({ length: n }, (_, k) => {
      const x = new Float64Array(size);
      for (let l = 0; l < n; l++) {
        const c = eigen.vectors[l * n + (n - 1 - k)] as number;
        const from = moved[l] as Float64Array;
        for (let i = 0; i < size; i++) x[i] = (x[i] as number) + c * (from[i] as number);
      }
      return x;
    });
    const wanted = Math.min(count, n);
    const settled =
      values.length >= wanted &&
      Array.from(
        { length: wanted },
        (_, k) => Math.abs((next[k] as number) - (values[k] as number)) <= 1e-12 * (next[k] as number),
      ).every(Boolean);
    values = next;
    if (settled) break;
  }
  return space.slice(0, count).map((x, k) => ({
    frequency: Math.sqrt(Math.max(0, values[k] as number)) / (2 * Math.PI),
    shape: shapeOf(factors, x),
  }));
}

function shapeOf(factors: FrameFactors, x: Float64Array): Float64Array {
  const { unknowns, structure } = factors;
  const shape = new Float64Array(structure.nodes.length * MOVES);
  unknowns.forEach((n, at) => {
    if (n >= 0) shape[at] = x[n] as number;
  });
  let most = 0;
  shape.forEach((one, at) => {
    if (at % MOVES < 3 && Math.abs(one) > Math.abs(most)) most = one;
  });
  return most === 0 ? shape : shape.map((one) => one / most);
}
