/**
 * Eigenvalues and vectors of a small symmetric matrix by plane rotations; rising, vectors of length one in columns.
 *
 * Source: C. G. J. Jacobi’s method as in G. H. Golub, C. F. Van Loan, Matrix Computations, section 8.5 (from memory).
 *
 * @param a n × n by rows; symmetric
 */
export function symmetricEigen(
  a: Float64Array,
  n: number,
): { readonly values: Float64Array; readonly vectors: Float64Array } {
  const m = Float64Array.from(a);
  const v = new Float64Array(n * n);
  for (let i = 0; i < n; i++) v[i * n + i] = 1;
  const at = (x: Float64Array, i: number, j: number): number => x[i * n + j] as number;
  for (let sweep = 0; sweep < 60; sweep++) {
    let off = 0;
    let size = 0;
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) {
        if (i !== j) off += at(m, i, j) ** 2;
        size += at(m, i, j) ** 2;
      }
    if (off <= 1e-30 * size) break;
    for (let p = 0; p < n - 1; p++)
      for (let q = p + 1; q < n; q++) {
        const apq = at(m, p, q);
        if (apq === 0) continue;
        const tau = (at(m, q, q) - at(m, p, p)) / (2 * apq);
        const t = (tau >= 0 ? 1 : -1) / (Math.abs(tau) + Math.sqrt(1 + tau * tau));
        const c = 1 / Math.sqrt(1 + t * t);
        const s = t * c;
        for (let k = 0; k < n; k++) {
          const kp = at(m, k, p);
          const kq = at(m, k, q);
          m[k * n + p] = c * kp - s * kq;
          m[k * n + q] = s * kp + c * kq;
        }
        for (let k = 0; k < n; k++) {
          const pk = at(m, p, k);
          const qk = at(m, q, k);
          m[p * n + k] = c * pk - s * qk;
          m[q * n + k] = s * pk + c * qk;
          const vp = at(v, k, p);
          const vq = at(v, k, q);
          v[k * n + p] = c * vp - s * vq;
          v[k * n + q] = s * vp + c * vq;
        }
      }
  }
  const order = Array.from({ length: n }, (_, i) => i).sort((i, j) => at(m, i, i) - at(m, j, j));
  const vectors = new Float64Array(n * n);
  order.forEach((from, to) => {
    for (let k = 0; k < n; k++) vectors[k * n + to] = at(v, k, from);
  });
  return { values: Float64Array.from(order, (i) => at(m, i, i)), vectors };
}
