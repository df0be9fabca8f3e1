import type { Fault } from '../fault.ts';
import { equalJson, isJsonArray, isJsonObject, type Json } from './json.ts';
import type { Patch } from './patch.ts';
import { patchValue, valueAt } from './patch-value.ts';
import { addressOf, keysOf } from './pointer.ts';

/**
 * The patches that turn one value into another, by address: per key in objects, per index in arrays of one length. Arrays
 * of different lengths are set as a whole, because an index means another row once rows have moved.
 */
export function diffJson(before: Json, after: Json): Patch[] {
  const patches: Patch[] = [];
  collect(before, after, [], patches);
  return patches;
}

function collect(before: Json, after: Json, keys: readonly string[], patches: Patch[]): void {
  if (isJsonObject(before) && isJsonObject(after)) {
    for (const key of Object.keys(before)) {
      if (!Object.hasOwn(after, key)) patches.push({ op: 'remove', at: addressOf([...keys, key]) });
    }
    const order = Object.keys(after);
    // Key each new key goes before: the next one that stays. Found from the back, so that one pass is enough.
    let next: string | undefined;
    const ahead = new Map<string, string | undefined>();
    for (const key of order.toReversed()) {
      ahead.set(key, next);
      if (Object.hasOwn(before, key)) next = key;
    }
    for (const key of order) {
      const value = after[key] as Json;
      if (Object.hasOwn(before, key)) {
        collect(before[key] as Json, value, [...keys, key], patches);
        continue;
      }
      const place = ahead.get(key);
      patches.push({
        op: 'set',
        at: addressOf([...keys, key]),
        value,
        ...(place === undefined ? {} : { before: place }),
      });
    }
  } else if (isJsonArray(before) && isJsonArray(after) && before.length === after.length) {
    for (const [i, value] of after.entries()) collect(before[i] as Json, value, [...keys, String(i)], patches);
  } else if (!equalJson(before, after)) {
    patches.push({ op: 'set', at: addressOf(keys), value: after });
  }
}

/** True when two addresses meet: they are the same, or one lies below the other. */
export function overlaps(a: string, b: string): boolean {
  return a === b || a.startsWith(`${b}/`) || b.startsWith(`${a}/`);
}

/** An address that both sides changed, each to something else; a side without the value has no key for it. */
export interface Conflict {
  readonly address: string;
  readonly mine?: Json;
  readonly theirs?: Json;
  readonly base?: Json;
}

export type Merged =
  | { readonly ok: true; readonly clean: Patch[]; readonly conflicts: Conflict[] }
  | { readonly ok: false; readonly faults: Fault[] };

/**
 * What of mine stands beside theirs where both made a group or a map that was missing, each with keys of their own; null
 * where they meet within it as well.
 */
function addedBeside(mine: Json | undefined, theirs: Json | undefined, keys: readonly string[]): Patch[] | null {
  if (mine === undefined || theirs === undefined || !isJsonObject(mine) || !isJsonObject(theirs)) return null;
  const patches: Patch[] = [];
  for (const [key, value] of Object.entries(mine)) {
    const at = [...keys, key];
    const other = theirs[key];
    if (!Object.hasOwn(theirs, key)) patches.push({ op: 'set', at: addressOf(at), value });
    else if (other === undefined || !equalJson(value, other)) {
      const inner = addedBeside(value, other, at);
      if (!inner) return null;
      patches.push(...inner);
    }
  }
  return patches;
}

/**
 * Merges two lists of patches made from the same value, three-way by address. `clean` is what remains to be applied on
 * top of theirs: my changes that touch no address of theirs. Where both made the same change there is nothing to apply;
 * where they differ there is a conflict, at the outer of the two addresses; two new groups without a key in common stand
 * beside each other. Faults when a list cannot be applied to
 * `base`.
 */
export function mergePatches(base: Json, mine: readonly Patch[], theirs: readonly Patch[]): Merged {
  const my = patchValue(base, mine);
  if (!my.ok) return my;
  const their = patchValue(base, theirs);
  if (!their.ok) return their;
  const theirChanges = diffJson(base, their.value);
  const clean: Patch[] = [];
  const conflicts = new Map<string, Conflict>();
  for (const patch of diffJson(base, my.value)) {
    const met = theirChanges.filter(({ at }) => overlaps(at, patch.at));
    if (met.length === 0) {
      clean.push(patch);
      continue;
    }
    const address = [patch, ...met].map(({ at }) => at).reduce((a, b) => (a.length <= b.length ? a : b));
    const keys = keysOf(address) ?? [];
    const [mineAt, theirsAt, baseAt] = [my.value, their.value, base].map((value) => valueAt(value, keys));
    const same = mineAt === undefined || theirsAt === undefined ? mineAt === theirsAt : equalJson(mineAt, theirsAt);
    if (same) continue;
    const added = baseAt === undefined ? addedBeside(mineAt, theirsAt, keys) : null;
    if (added) {
      clean.push(...added);
      continue;
    }
    conflicts.set(address, {
      address,
      ...(mineAt === undefined ? {} : { mine: mineAt }),
      ...(theirsAt === undefined ? {} : { theirs: theirsAt }),
      ...(baseAt === undefined ? {} : { base: baseAt }),
    });
  }
  return { ok: true, clean, conflicts: [...conflicts.values()] };
}
