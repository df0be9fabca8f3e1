import { symmetricEigen } from '../numerics/symmetric-eigen.ts';

/** One natural swing of a row of turning masses. */
export interface TrainMode {
  /** rad/s. */
  readonly angularFrequency: number;
  /** Angle of each mass, the largest one. */
  readonly shape: readonly number[];
}

/**
 * Natural swings of masses in a row with a spring between each two, both ends free: M φ″ + K φ = 0.
 *
 * @param inertias kg·m², above zero, two at least
 * @param stiffnesses N·m/rad between each mass and the next, above zero; one fewer
 * @returns the swings, slowest first, without the one in which all turn together
 * Source: S. S. Rao, Mechanical Vibrations, multi-degree-of-freedom systems (from memory)
 */
export function trainModes(inertias: readonly number[], stiffnesses: readonly number[]): TrainMode[] {
  const n = inertias.length;
  const root = inertias.map(Math.sqrt);
  const a = new Float64Array(n * n);
  const put = (i: number, j: number, by: number): void => {
    a[i * n + j] = (a[i * n + j] as number) + by / ((root[i] as number) * (root[j] as number));
  };
  stiffnesses.forEach((k, i) => {
    put(i, i, k);
    put(i + 1, i + 1, k);
    put(i, i + 1, -k);
    put(i + 1, i, -k);
  });
  const { values, vectors } = symmetricEigen(a, n);
  return Array.from({ length: n - 1 }, (_, m) => {
    const angles = root.map((r, i) => (vectors[i * n + m + 1] as number) / r);
    const most = angles.reduce((best, x) => (Math.abs(x) > Math.abs(best) ? x : best), 0);
    return {
      angularFrequency: Math.sqrt(Math.max(0, values[m + 1] as number)),
      shape: angles.map((x) => x / most),
    };
  });
}
