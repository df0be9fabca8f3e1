/**
 * Reuse of computed parts. A slot keeps its last result and the inputs it came from; the result is given again only when every input is the
 * very same object or number. All inputs are immutable, so an assessment with a cache equals one without it, bit for bit.
 */
export interface Cache {
  readonly slots: Map<string, Slot>;
  /** Slots of the build that is tried on: looked at, never written. */
  readonly under: Cache | null;
}

interface Slot {
  readonly inputs: readonly unknown[];
  readonly result: unknown;
}

/** Above this many slots (a build of many uncertain inputs, edited for long) the cache starts afresh. */
const MOST_SLOTS = 20_000;

export function createCache(): Cache {
  return { slots: new Map(), under: null };
}

/** A cache for a change that is only tried: it gives what the build's own cache knows, and leaves that as it is. */
export function trialCache(under: Cache | null): Cache {
  return { slots: new Map(), under };
}

const fits = (slot: Slot | undefined, inputs: readonly unknown[]): slot is Slot =>
  slot !== undefined &&
  slot.inputs.length === inputs.length &&
  slot.inputs.every((input, k) => Object.is(input, inputs[k]));

/** The slot's result for these inputs; computed when they differ from the last, or when there is no cache. */
export function reuse<T>(cache: Cache | null, slot: string, inputs: readonly unknown[], compute: () => T): T {
  if (!cache) return compute();
  for (let at: Cache | null = cache; at; at = at.under) {
    const last = at.slots.get(slot);
    // A slot is only ever filled by one call site, so its result has that call's type.
    if (fits(last, inputs)) return last.result as T;
  }
  const result = compute();
  if (cache.slots.size > MOST_SLOTS) cache.slots.clear();
  cache.slots.set(slot, { inputs, result });
  return result;
}

/** The new value with every part that equals the old one replaced by the old object, so that unchanged parts keep their identity. */
export function shareUnchanged<T>(before: unknown, after: T): T {
  if (Object.is(before, after)) return after;
  if (typeof before !== 'object' || typeof after !== 'object' || before === null || after === null) return after;
  if (Array.isArray(before) !== Array.isArray(after)) return after;
  const old = before as Record<string, unknown>;
  const fresh = after as Record<string, unknown>;
  const keys = Object.keys(fresh);
  const keysBefore = Object.keys(old);
  let same = keys.length === keysBefore.length;
  keys.forEach((key, k) => {
    const shared = Object.hasOwn(old, key) ? shareUnchanged(old[key], fresh[key]) : fresh[key];
    fresh[key] = shared;
    // Order of keys counts: stages and findings are listed in the order of the file.
    if (!Object.is(shared, old[key]) || keysBefore[k] !== key) same = false;
  });
  return same ? (before as T) : after;
}
