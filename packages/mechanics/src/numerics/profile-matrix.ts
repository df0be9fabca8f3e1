/**
 * A symmetric matrix kept by its profile: of each column only the entries from the first one that is not zero down to the diagonal.
 * `first[j]` is the row of that entry, and entry (i, j) lies at `values[top[j] + i − first[j]]`.
 */
export interface ProfileMatrix {
  readonly size: number;
  readonly first: Int32Array;
  readonly top: Int32Array;
  readonly values: Float64Array;
}

/**
 * An empty matrix with room for a profile.
 * @param first row of the first entry of each column; at most the column itself
 */
export function profileMatrix(first: Int32Array): ProfileMatrix {
  const size = first.length;
  const top = new Int32Array(size + 1);
  for (let j = 0; j < size; j++) top[j + 1] = (top[j] as number) + j - (first[j] as number) + 1;
  return { size, first, top, values: new Float64Array(top[size] as number) };
}

/** Adds to entry (i, j) and so to (j, i); the place must lie inside the profile. */
export function addEntry(m: ProfileMatrix, i: number, j: number, x: number): void {
  const [row, column] = i <= j ? [i, j] : [j, i];
  const at = (m.top[column] as number) + row - (m.first[column] as number);
  m.values[at] = (m.values[at] as number) + x;
}

/** A factored matrix: unit upper triangle and diagonal in the same profile. */
export interface Factored extends ProfileMatrix {
  readonly kind: 'factored';
}

/**
 * Factors a positive definite matrix as Uᵀ D U in place, column by column within its profile.
 * A pivot that shrinks below `smallest` of its own diagonal means that nothing holds that unknown.
 *
 * Source: G. Dahlquist, Å. Björck, Numerical Methods (1974), section 5.4, band and profile matrices (from memory).
 *
 * @returns the factors, or the unknown at fault
 */
export function factorProfile(
  m: ProfileMatrix,
  smallest = 1e-12,
): { readonly ok: true; readonly factored: Factored } | { readonly ok: false; readonly unknown: number } {
  const { size, first, top, values } = m;
  for (let j = 0; j < size; j++) {
    const fj = first[j] as number;
    const tj = (top[j] as number) - fj;
    const own = values[tj + j] as number;
    for (let i = fj + 1; i < j; i++) {
      const fi = first[i] as number;
      const ti = (top[i] as number) - fi;
      let sum = 0;
      for (let k = Math.max(fi, fj); k < i; k++) sum += (values[ti + k] as number) * (values[tj + k] as number);
      values[tj + i] = (values[tj + i] as number) - sum;
    }
    let diagonal = own;
    for (let i = fj; i < j; i++) {
      const g = values[tj + i] as number;
      const u = g / (values[(top[i] as number) - (first[i] as number) + i] as number);
      values[tj + i] = u;
      diagonal -= u * g;
    }
    if (!(diagonal > smallest * own)) return { ok: false, unknown: j };
    values[tj + j] = diagonal;
  }
  return { ok: true, factored: { ...m, kind: 'factored' } };
}

/** Solves for one right-hand side in place. */
export function solveProfile(m: Factored, b: Float64Array): void {
  const { size, first, top, values } = m;
  for (let j = 0; j < size; j++) {
    const fj = first[j] as number;
    const tj = (top[j] as number) - fj;
    let x = b[j] as number;
    for (let i = fj; i < j; i++) x -= (values[tj + i] as number) * (b[i] as number);
    b[j] = x;
  }
  for (let j = 0; j < size; j++)
    b[j] = (b[j] as number) / (values[(top[j] as number) - (first[j] as number) + j] as number);
  for (let j = size - 1; j > 0; j--) {
    const fj = first[j] as number;
    const tj = (top[j] as number) - fj;
    const x = b[j] as number;
    for (let i = fj; i < j; i++) b[i] = (b[i] as number) - (values[tj + i] as number) * x;
  }
}
