import type { Fault } from '../fault.ts';
import { isJsonArray, isJsonObject, type Json } from './json.ts';
import type { Patch } from './patch.ts';

/**
 * Checks that a JSON value that came from outside is a list of patches. Whether the patches fit a file is for
 * `applyPatches` to say. Addresses of faults begin at the list.
 */
export function parsePatches(
  value: Json,
): { readonly ok: true; readonly patches: Patch[] } | { readonly ok: false; readonly faults: Fault[] } {
  if (!isJsonArray(value)) return { ok: false, faults: [shapeFault('', value)] };
  const faults = value.flatMap((item, i) => (isPatch(item) ? [] : [shapeFault(`/${i}`, item)]));
  return faults.length > 0 ? { ok: false, faults } : { ok: true, patches: value as unknown as Patch[] };
}

function isPatch(value: Json): boolean {
  if (!isJsonObject(value) || typeof value.at !== 'string') return false;
  const keys = Object.keys(value);
  if (value.op === 'remove') return keys.length === 2;
  const { before, source } = value;
  return (
    value.op === 'set' &&
    value.value !== undefined &&
    (before === undefined || before === null || typeof before === 'string') &&
    (source === undefined || isSource(source)) &&
    keys.every((key) => ['op', 'at', 'value', 'before', 'source'].includes(key))
  );
}

function isSource(value: Json): boolean {
  if (!isJsonObject(value) || typeof value.text !== 'string') return false;
  const { head, gaps } = value;
  return (
    (head === undefined || typeof head === 'string') &&
    (gaps === undefined || (isJsonArray(gaps) && gaps.length === 2 && gaps.every((gap) => typeof gap === 'string')))
  );
}

function shapeFault(address: string, value: Json): Fault {
  return {
    code: 'patch.shape',
    address,
    problem: 'This is not a patch.',
    read: JSON.stringify(value).slice(0, 80),
    accepted: '{ "op": "set", "at": "/path/…", "value": … } or { "op": "remove", "at": "/path/…" }, in a list.',
  };
}
