import { METHODS } from '@oddwheel/mechanics/catalogue';
import type { Method } from '@oddwheel/mechanics/method/method';
import type { RowLookup } from '@oddwheel/mechanics/method/read-input';
import { tableRow } from '@oddwheel/tables/catalogue';

const BY_ID: ReadonlyMap<string, Method> = new Map(METHODS.map((method) => [method.id, method]));

/** @throws RangeError when no method has this id. */
export function methodNamed(id: string): Method {
  const method = BY_ID.get(id);
  if (method === undefined) throw new RangeError(`There is no method "${id}".`);
  return method;
}

/** Table rows as cases name them; null when there is no such row. */
export const rowLookup: RowLookup = (row) => {
  try {
    return tableRow(row);
  } catch {
    return null;
  }
};
