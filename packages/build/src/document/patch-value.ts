import type { Fault } from '../fault.ts';
import { isJsonArray, isJsonObject, type Json, type JsonObject, jsonFaults } from './json.ts';
import { type Patch, patchKeys, placeFault } from './patch.ts';
import { indexOf } from './pointer.ts';

export type PatchedValue =
  | { readonly ok: true; readonly value: Json }
  | { readonly ok: false; readonly faults: Fault[] };

/** Applies patches to a value, for previews and merging; the value given is not changed. Faults as in `applyPatches`. */
export function patchValue(value: Json, patches: readonly Patch[]): PatchedValue {
  let result = value;
  for (const patch of patches) {
    const keys = patchKeys(patch.at);
    if (!Array.isArray(keys)) return { ok: false, faults: [keys] };
    const faults = patch.op === 'set' ? jsonFaults(patch.value, keys) : [];
    if (faults.length > 0) return { ok: false, faults };
    const next = changed(result, keys, 0, patch);
    if ('fault' in next) return { ok: false, faults: [next.fault] };
    result = next.value;
  }
  return { ok: true, value: result };
}

/** The value at an address, or undefined when nothing is there. */
export function valueAt(value: Json, keys: readonly string[]): Json | undefined {
  let at: Json | undefined = value;
  for (const key of keys) {
    if (at === undefined) return undefined;
    if (isJsonArray(at)) at = at[indexOf(key, at.length) ?? -1];
    else at = isJsonObject(at) && Object.hasOwn(at, key) ? at[key] : undefined;
  }
  return at;
}

type Next = { readonly value: Json } | { readonly fault: Fault };

function changed(value: Json, keys: readonly string[], depth: number, patch: Patch): Next {
  const key = keys[depth];
  if (key === undefined) {
    return patch.op === 'set' ? { value: patch.value } : { fault: placeFault(patch.at, [], undefined) };
  }
  const last = depth === keys.length - 1;
  const inside = isJsonArray(value) ? value.length : isJsonObject(value) ? Object.keys(value) : undefined;
  const nowhere = { fault: placeFault(patch.at, keys.slice(0, depth), inside) };
  if (isJsonArray(value)) {
    const index = indexOf(key, value.length);
    if (index === undefined) return nowhere;
    const item = value[index];
    if (!last) {
      if (item === undefined) return nowhere;
      const next = changed(item, keys, depth + 1, patch);
      return 'fault' in next ? next : { value: value.with(index, next.value) };
    }
    if (patch.op === 'remove') return item === undefined ? nowhere : { value: value.toSpliced(index, 1) };
    return { value: value.toSpliced(index, patch.before === undefined ? 1 : 0, patch.value) };
  }
  if (!isJsonObject(value)) return nowhere;
  if (last && patch.op === 'set') return { value: withKey(value, key, patch.value, patch.before) };
  if (!Object.hasOwn(value, key)) return nowhere;
  if (last) return { value: Object.fromEntries(Object.entries(value).filter(([other]) => other !== key)) };
  const next = changed(value[key] as Json, keys, depth + 1, patch);
  return 'fault' in next ? next : { value: withKey(value, key, next.value, undefined) };
}

function withKey(object: JsonObject, key: string, value: Json, before: string | null | undefined): JsonObject {
  if (Object.hasOwn(object, key) || typeof before !== 'string' || !Object.hasOwn(object, before)) {
    return { ...object, [key]: value };
  }
  return Object.fromEntries(
    Object.entries(object).flatMap(([other, item]) =>
      other === before
        ? [
            [key, value],
            [other, item],
          ]
        : [[other, item]],
    ),
  );
}
