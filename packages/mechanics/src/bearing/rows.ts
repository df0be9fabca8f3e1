import { MethodError } from '../method/method.ts';

/**
 * Place of a value between rising rows of a table; beyond the ends the end row counts.
 * @returns index of the row below and the part of the way to the next, 0 to 1
 * @throws MethodError naming the input when the rows do not rise
 */
export function between(
  method: string,
  input: string,
  rows: readonly number[],
  value: number,
): { readonly row: number; readonly part: number } {
  const falls = rows.findIndex((row, k) => k > 0 && !(row > (rows[k - 1] as number)));
  if (falls >= 0)
    throw new MethodError(
      method,
      input,
      `Row ${falls + 1} of the table, ${rows[falls]}, is not above the row before it.`,
    );
  const last = rows.length - 2;
  const above = rows.findIndex((row) => row >= value);
  const row = above < 0 ? last : Math.min(last, Math.max(0, above - 1));
  const [low, high] = [rows[row] as number, rows[row + 1] as number];
  return { row, part: Math.min(1, Math.max(0, (value - low) / (high - low))) };
}
