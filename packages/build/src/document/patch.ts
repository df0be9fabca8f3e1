import type { Fault } from '../fault.ts';
import { equalJson, type Json, jsonFaults, unsafeKeyFault } from './json.ts';
import { parseJsonText, parseSyntax } from './json-text.ts';
import { addressOf, indexOf, keysOf, UNSAFE_KEY } from './pointer.ts';
import type { Layout } from './print.ts';
import { insertItem, removeItem, type TextEdit, updateNode } from './text-edit.ts';
import { type Branch, indentIn, layoutOf, printTree, type TextTree, treeOf } from './tree.ts';

/** How a value was written, so that undoing gives back the builder's own layout. */
export interface Source {
  readonly text: string;
  /** Key and colon as written; given for members that are put back. */
  readonly head?: string;
  /**
   * White space lost with a removed item: [before its comma, before the next item]; for a last item [after the item
   * before, before this one]; for an only item [before, after].
   */
  readonly gaps?: readonly [string, string];
}

/** Puts a value at an address. */
export interface SetPatch {
  readonly op: 'set';
  /** JSON Pointer (RFC 6901). In an array: an index, or its length or "-" for the end. */
  readonly at: string;
  readonly value: Json;
  /**
   * Where a new key goes: before this key, or at the end (null, or left out, or no such key). A key that exists keeps its
   * place. In an array, `before` makes the patch insert at the index instead of replacing.
   */
  readonly before?: string | null;
  readonly source?: Source;
}

/** Takes the value at an address away; in an array, the items after it move up. */
export interface RemovePatch {
  readonly op: 'remove';
  readonly at: string;
}

/** One change of a build file. */
export type Patch = SetPatch | RemovePatch;

export type Patched =
  | { readonly ok: true; readonly text: string; readonly inverse: Patch[] }
  | { readonly ok: false; readonly faults: Fault[] };

/**
 * Applies patches to the text of a build file, one after the other, and leaves every byte alone that they don't touch:
 * own indentation, line ends, number spellings and key order stay. An object or array set over another changes only what
 * differs. `inverse`, applied to the new text, gives back the old one byte for byte.
 *
 * Nothing is applied when a patch has a fault: an address that leads nowhere, a value that is not JSON, or the text itself
 * is not JSON.
 */
export function applyPatches(text: string, patches: readonly Patch[]): Patched {
  const tree = treeOfText(text);
  if ('faults' in tree) return { ok: false, faults: tree.faults };
  const first = run(tree, patches, false);
  if (!first.ok) return first;
  const { layout } = first;
  const sameLayout = layout.eol === tree.layout.eol && layout.step === tree.layout.step;
  // When the first lines change, the inverse meets another layout than this one, so it must carry every source.
  const again = sameLayout ? null : treeOfText(text);
  const { inverse } = again === null || 'faults' in again ? first : (run(again, patches, true) as typeof first);
  printed = { text: first.text, tree: { ...tree, layout } };
  return { ok: true, text: first.text, inverse };
}

/** The text that came of the last edit, with its tree: the next edit mostly goes on from there, and need not read it. */
let printed: { readonly text: string; readonly tree: TextTree } | null = null;

/** A tree of a text, for one edit: it is changed in place, so it is given once. */
function treeOfText(text: string): TextTree | { readonly faults: Fault[] } {
  if (printed?.text === text) {
    const { tree } = printed;
    printed = null;
    return tree;
  }
  const parsed = parseSyntax(text);
  return parsed.ok ? treeOf(parsed) : { faults: parsed.faults };
}

type Run =
  | { readonly ok: true; readonly text: string; readonly inverse: Patch[]; readonly layout: Layout }
  | { readonly ok: false; readonly faults: Fault[] };

function run(tree: TextTree, patches: readonly Patch[], keepSources: boolean): Run {
  const edit: TextEdit = { layout: tree.layout, keepSources, undo: [] };
  for (const patch of patches) {
    const faults = applyOne(tree, patch, edit);
    if (faults.length > 0) return { ok: false, faults };
  }
  const text = printTree(tree);
  return { ok: true, text, inverse: edit.undo.reverse(), layout: layoutOf(text) };
}

function applyOne(tree: TextTree, patch: Patch, edit: TextEdit): Fault[] {
  const keys = patchKeys(patch.at);
  if (!Array.isArray(keys)) return [keys];
  if (patch.op === 'set') {
    const faults = [...jsonFaults(patch.value, keys), ...sourceFaults(patch)];
    if (faults.length > 0) return faults;
  }
  const key = keys.at(-1);
  if (key === undefined) {
    if (patch.op === 'remove') return [addressFault(patch.at, 'The whole file cannot be removed.')];
    tree.root = updateNode(tree.root, patch.value, { keys, indent: '', head: '', source: patch.source }, edit);
    return [];
  }
  const parentKeys = keys.slice(0, -1);
  const parent = branchAt(tree, parentKeys, patch.at);
  if ('fault' in parent) return [parent.fault];
  const { branch, indent } = parent;
  const items = branch.items;
  const place = branch.kind === '{' ? items.findIndex((item) => item.key === key) : (indexOf(key, items.length) ?? -2);
  if (place === -2) return [noPlaceFault(patch.at, parentKeys, branch)];
  const item = items[place];
  if (patch.op === 'remove') {
    if (item === undefined) return [noPlaceFault(patch.at, parentKeys, branch)];
    removeItem(branch, place, { keys: parentKeys, indent }, edit);
    return [];
  }
  const inserts = item === undefined || (branch.kind === '[' && patch.before !== undefined);
  if (inserts) {
    const before = branch.kind === '{' ? items.findIndex((other) => other.key === patch.before) : place;
    insertItem(branch, before < 0 ? items.length : before, key, patch, { keys: parentKeys, indent }, edit);
    return [];
  }
  item.node = updateNode(
    item.node,
    patch.value,
    {
      keys: [...parentKeys, branch.kind === '{' ? key : String(place)],
      indent: indentIn(item.pre) ?? indent,
      head: item.head,
      pre: item.pre,
      source: patch.source,
    },
    edit,
  );
  return [];
}

/** Keys of a patch's address, or the fault of an address that no patch may have. */
export function patchKeys(at: string): string[] | Fault {
  const keys = keysOf(at);
  if (keys === undefined) return addressFault(at, 'This is not an address in the file.');
  return keys.includes(UNSAFE_KEY) ? unsafeKeyFault(at) : keys;
}

function branchAt(
  tree: TextTree,
  keys: readonly string[],
  at: string,
): { branch: Branch; indent: string } | { fault: Fault } {
  let node = tree.root;
  let indent = '';
  for (const [depth, key] of keys.entries()) {
    if (node.kind === 'leaf') return { fault: noPlaceFault(at, keys.slice(0, depth)) };
    const place =
      node.kind === '{' ? node.items.findIndex((item) => item.key === key) : indexOf(key, node.items.length);
    const item = node.items[place ?? -1];
    if (item === undefined) return { fault: noPlaceFault(at, keys.slice(0, depth), node) };
    indent = indentIn(item.pre) ?? indent;
    node = item.node;
  }
  return node.kind === 'leaf' ? { fault: noPlaceFault(at, keys) } : { branch: node, indent };
}

function addressFault(at: string, problem: string): Fault {
  return {
    code: 'patch.address',
    address: at,
    problem,
    read: at,
    accepted: 'A JSON Pointer below the whole file, such as "/path/stages/chain-1/driver/teeth".',
  };
}

/** An address that leads nowhere, with what there is at the last place that exists. */
function noPlaceFault(at: string, deepest: readonly string[], branch?: Branch): Fault {
  return placeFault(
    at,
    deepest,
    branch && (branch.kind === '[' ? branch.items.length : branch.items.map(({ key }) => key)),
  );
}

/** As above; `inside` is the keys of an object, the length of an array, or undefined for a scalar. */
export function placeFault(
  at: string,
  deepest: readonly string[],
  inside: readonly string[] | number | undefined,
): Fault {
  const there = deepest.length === 0 ? 'the file' : `"${addressOf(deepest)}"`;
  return {
    code: 'patch.place',
    address: at,
    problem: 'This address leads nowhere in the file.',
    read: at,
    accepted:
      inside === undefined
        ? `An address that ends at ${there}: nothing stands below it.`
        : typeof inside === 'number'
          ? `An index in ${there}, which has ${inside} items, counted from 0; its length or "-" for a new last item.`
          : inside.length === 0
            ? `A key of ${there}, which is empty.`
            : `A key of ${there}: ${inside
                .slice(0, 12)
                .map((key) => JSON.stringify(key))
                .join(', ')}${inside.length > 12 ? ', …' : ''}.`,
  };
}

/** A source comes from the history or over the network, so it must say the same as the value and nothing more. */
function sourceFaults({ at, value, source }: SetPatch): Fault[] {
  if (source === undefined) return [];
  const parsed = parseJsonText(source.text);
  const head = source.head ?? '""';
  const fits =
    parsed.ok &&
    source.text.trim() === source.text &&
    equalJson(parsed.value, value) &&
    (source.gaps ?? []).every((gap) => /^[ \t\r\n]*$/.test(gap)) &&
    (source.head === undefined || headKey(head) === keysOf(at)?.at(-1));
  if (fits) return [];
  return [
    {
      code: 'patch.source',
      address: at,
      problem: 'The written form of the patch says something else than its value.',
      read: `${source.head ?? ''}${source.text}`.slice(0, 80),
      accepted: `No written form, or one that reads as the value.`,
    },
  ];
}

/** The key that a head such as `"teeth": ` writes; undefined when it is no head. */
function headKey(head: string): string | undefined {
  const match = /^("(?:[^"\\]|\\.)*")[ \t\r\n]*:[ \t\r\n]*$/.exec(head);
  const parsed = match?.[1] === undefined ? undefined : parseJsonText(match[1]);
  return parsed?.ok && typeof parsed.value === 'string' ? parsed.value : undefined;
}
