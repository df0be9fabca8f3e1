/** Results by the objects that they come of, kept as long as all of those are. */
export type Within<T> = WeakMap<object, Within<T> | { readonly result: T }>;

/** The result for these objects, worked out once. All of them are immutable. */
export function within<T>(known: Within<T>, of: readonly [object, ...object[]], compute: () => T): T {
  let at = known;
  for (const part of of.slice(0, -1)) {
    const next = at.get(part);
    if (next instanceof WeakMap) at = next;
    else {
      const made: Within<T> = new WeakMap();
      at.set(part, made);
      at = made;
    }
  }
  const last = of.at(-1) as object;
  const found = at.get(last);
  if (found && !(found instanceof WeakMap)) return found.result;
  const result = compute();
  at.set(last, { result });
  return result;
}
