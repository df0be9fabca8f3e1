/** A linear fit: the values that leave the least sum of squares. */
export interface LinearFit {
  readonly values: readonly number[];
  /** Inverse of the normal matrix: times the variance of one observation it is the covariance of the values. */
  readonly spread: readonly (readonly number[])[];
  readonly residuals: readonly number[];
  /** How much of its own observation each fitted value follows, 0..1. */
  readonly leverage: readonly number[];
}

/** Columns that lie in the others to this part of their own length have no value of their own. */
const DEPENDENT = 1e-8;

/**
 * Least squares by orthogonal columns (Gram–Schmidt, each column twice).
 *
 * @param rows one row of coefficients for each observation
 * @returns undefined when the columns depend on each other, or there are fewer rows than columns.
 */
export function leastSquares(rows: readonly (readonly number[])[], observed: readonly number[]): LinearFit | undefined {
  const n = rows[0]?.length ?? 0;
  if (rows.length < n || n === 0) return undefined;
  const at = (i: number, j: number): number => (rows[i] as readonly number[])[j] as number;
  const columns: number[][] = [];
  const upper: number[][] = [];
  for (let j = 0; j < n; j++) {
    const column = rows.map((_, i) => at(i, j));
    const whole = length(column);
    const factors = new Array<number>(n).fill(0);
    for (let pass = 0; pass < 2; pass++)
      for (const [k, earlier] of columns.entries()) {
        const part = inner(earlier, column);
        factors[k] = (factors[k] as number) + part;
        for (let i = 0; i < column.length; i++) column[i] = (column[i] as number) - part * (earlier[i] as number);
      }
    const rest = length(column);
    if (!(rest > DEPENDENT * whole)) return undefined;
    factors[j] = rest;
    columns.push(column.map((value) => value / rest));
    upper.push(factors);
  }
  const values = solveUpper(
    upper,
    columns.map((column) => inner(column, observed)),
  );
  const inverse = upper.map((_, j) =>
    solveUpper(
      upper,
      upper.map((_, k) => (k === j ? 1 : 0)),
    ),
  );
  const spread = values.map((_, a) =>
    values.map((_, b) => inverse.reduce((sum, column) => sum + (column[a] as number) * (column[b] as number), 0)),
  );
  const residuals = observed.map((value, i) => value - values.reduce((sum, v, j) => sum + v * at(i, j), 0));
  const leverage = rows.map((_, i) => columns.reduce((sum, column) => sum + (column[i] as number) ** 2, 0));
  return { values, spread, residuals, leverage };
}

const inner = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * (b[i] as number), 0);
const length = (a: readonly number[]): number => Math.sqrt(inner(a, a));

/** Solves an upper triangle given by columns: `upper[j][k]` stands in row k of column j. */
function solveUpper(upper: readonly (readonly number[])[], right: readonly number[]): number[] {
  const x = right.slice();
  for (let k = x.length - 1; k >= 0; k--) {
    let sum = x[k] as number;
    for (let j = k + 1; j < x.length; j++) sum -= ((upper[j] as readonly number[])[k] as number) * (x[j] as number);
    x[k] = sum / ((upper[k] as readonly number[])[k] as number);
  }
  return x;
}
