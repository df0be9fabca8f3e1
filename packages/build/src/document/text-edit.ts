/** The three edits of a text tree. Each notes the patch that takes it back. */
import { equalJson, isJsonArray, isJsonObject, type Json, own } from './json.ts';
import type { Patch, SetPatch, Source } from './patch.ts';
import { addressOf } from './pointer.ts';
import { type Layout, printValue } from './print.ts';
import {
  type Branch,
  type Item,
  indentIn,
  nodeOfPrinted,
  nodeOfText,
  nodeValue,
  printNode,
  type TreeNode,
} from './tree.ts';

export interface TextEdit {
  readonly layout: Layout;
  /** Keep how every lost value was written, even where printing would give the same. */
  readonly keepSources: boolean;
  /** Inverse patches, in the order of the edits. */
  readonly undo: Patch[];
}

/** An object or array: its keys, and the indentation of the line that it begins on. */
interface Place {
  readonly keys: readonly string[];
  readonly indent: string;
}

interface ValuePlace extends Place {
  readonly head: string;
  /** White space before the item; undefined for the whole file. */
  readonly pre?: string | undefined;
  readonly source?: Source | undefined;
}

/** Sets `value` over `node` and returns what stands there now; containers of one kind change only where they differ. */
export function updateNode(node: TreeNode, value: Json, place: ValuePlace, edit: TextEdit): TreeNode {
  const alike = (node.kind === '{' && isJsonObject(value)) || (node.kind === '[' && isJsonArray(value));
  if (place.source === undefined && node.kind !== 'leaf' && alike) {
    if (isJsonObject(value)) updateObject(node, value, place, edit);
    else if (isJsonArray(value)) updateArray(node, value, place, edit);
    return node;
  }
  if (place.source === undefined && node.kind === 'leaf' && Object.is(node.value, value)) return node;
  const old = { value: nodeValue(node), text: printNode(node) };
  const printed = printAt(old.value, place, edit.layout);
  const same = !edit.keepSources && !alike && printed === old.text;
  edit.undo.push({
    op: 'set',
    at: addressOf(place.keys),
    value: old.value,
    ...(same ? {} : { source: { text: old.text } }),
  });
  return place.source ? nodeOfText(place.source.text) : nodeOfPrinted(value, printAt(value, place, edit.layout));
}

function updateObject(branch: Branch, value: { readonly [key: string]: Json }, place: Place, edit: TextEdit): void {
  for (const { key } of [...branch.items]) {
    if (!Object.hasOwn(value, key)) {
      removeItem(
        branch,
        branch.items.findIndex((item) => item.key === key),
        place,
        edit,
      );
    }
  }
  for (const key of Object.keys(value)) {
    const wanted = own(value, key) as Json;
    const item = branch.items.find((other) => other.key === key);
    if (item) updateItem(item, wanted, key, place, edit);
    else insertItem(branch, branch.items.length, key, { value: wanted }, place, edit);
  }
}

/** Rows that agree at the front and at the back stay; those between are changed, then taken away or added. */
function updateArray(branch: Branch, value: readonly Json[], place: Place, edit: TextEdit): void {
  const now = branch.items.map((item) => nodeValue(item.node));
  const shorter = Math.min(now.length, value.length);
  let front = 0;
  while (front < shorter && equalJson(now[front] as Json, value[front] as Json)) front += 1;
  let back = 0;
  while (
    back < shorter - front &&
    equalJson(now[now.length - 1 - back] as Json, value[value.length - 1 - back] as Json)
  ) {
    back += 1;
  }
  const kept = shorter - back;
  for (let i = front; i < kept; i += 1) updateItem(branch.items[i] as Item, value[i] as Json, String(i), place, edit);
  for (let i = now.length - back - 1; i >= kept; i -= 1) removeItem(branch, i, place, edit);
  for (let i = kept; i < value.length - back; i += 1) {
    insertItem(branch, i, String(i), { value: value[i] as Json }, place, edit);
  }
}

function updateItem(item: Item, value: Json, key: string, place: Place, edit: TextEdit): void {
  const indent = indentIn(item.pre) ?? place.indent;
  const at = { keys: [...place.keys, key], indent, head: item.head, pre: item.pre };
  item.node = updateNode(item.node, value, at, edit);
}

/** Puts a new item before the one at `index`, or at the end. */
export function insertItem(
  branch: Branch,
  index: number,
  key: string,
  patch: Pick<SetPatch, 'value' | 'source'>,
  place: Place,
  edit: TextEdit,
): void {
  const { value, source } = patch;
  const usual = usualForm(branch, index, key, value, place, edit.layout);
  const gaps = source?.gaps ?? usual.gaps;
  const head = branch.kind === '{' ? (source?.head ?? usual.head) : '';
  const next = branch.items[index];
  const previous = branch.items[index - 1];
  const item: Item = {
    pre: next ? next.pre : previous ? gaps[1] : gaps[0],
    key: branch.kind === '{' ? key : '',
    head,
    node: source ? nodeOfText(source.text) : nodeOfPrinted(value, usual.text),
    post: next ? gaps[0] : '',
  };
  const emptyText = branch.kind + branch.tail + (branch.kind === '{' ? '}' : ']');
  const spaceInside = branch.items.length === 0 && branch.tail !== '';
  if (next) next.pre = gaps[1];
  else if (previous) previous.post = gaps[0];
  else branch.tail = gaps[1];
  branch.items.splice(index, 0, item);
  edit.undo.push(
    spaceInside
      ? { op: 'set', at: addressOf(place.keys), value: branch.kind === '{' ? {} : [], source: { text: emptyText } }
      : { op: 'remove', at: addressOf([...place.keys, branch.kind === '{' ? key : String(index)]) },
  );
}

/** Takes the item at `index` away, with one comma. */
export function removeItem(branch: Branch, index: number, place: Place, edit: TextEdit): void {
  const item = branch.items[index] as Item;
  const next = branch.items[index + 1];
  const previous = branch.items[index - 1];
  const gaps: [string, string] = next
    ? [item.post, next.pre]
    : previous
      ? [previous.post, item.pre]
      : [item.pre, branch.tail];
  if (next) next.pre = item.pre;
  else if (previous) previous.post = '';
  else branch.tail = '';
  branch.items.splice(index, 1);
  const key = branch.kind === '{' ? item.key : String(index);
  const value = nodeValue(item.node);
  const text = printNode(item.node);
  const usual = usualForm(branch, index, key, value, place, edit.layout);
  const same =
    !edit.keepSources &&
    usual.gaps[0] === gaps[0] &&
    usual.gaps[1] === gaps[1] &&
    usual.head === item.head &&
    usual.text === text;
  const head = branch.kind === '{' ? { head: item.head } : {};
  edit.undo.push({
    op: 'set',
    at: addressOf([...place.keys, key]),
    value,
    before: next ? (branch.kind === '{' ? next.key : key) : null,
    ...(same ? {} : { source: { text, ...head, gaps } }),
  });
}

interface Form {
  readonly head: string;
  readonly gaps: readonly [string, string];
  readonly text: string;
}

/** How a new item at `index` is written when nothing else is known: like its neighbours. */
function usualForm(branch: Branch, index: number, key: string, value: Json, place: Place, layout: Layout): Form {
  const head = branch.kind === '{' ? JSON.stringify(key) + colonLike(branch.items[index - 1] ?? branch.items[0]) : '';
  const gaps = usualGaps(branch, index, value, place.indent, layout);
  const next = branch.items[index];
  const pre = next ? next.pre : branch.items.length > 0 ? gaps[1] : gaps[0];
  const indent = indentIn(pre) ?? place.indent;
  return { head, gaps, text: printAt(value, { indent, head, pre }, layout) };
}

function usualGaps(branch: Branch, index: number, value: Json, indent: string, layout: Layout): [string, string] {
  const { items } = branch;
  const next = items[index];
  if (next) {
    const nextIndent = indentIn(next.pre);
    // One line end only: a blank line before an item is not its neighbour's.
    if (nextIndent !== undefined) return ['', layout.eol + nextIndent];
    return ['', index > 0 ? next.pre : (items[1]?.pre ?? ' ')];
  }
  const last = items.at(-1);
  if (last) {
    const lastIndent = indentIn(last.pre);
    if (lastIndent !== undefined) return ['', layout.eol + lastIndent];
    return ['', items.length > 1 ? last.pre : ' '];
  }
  const inline = layout.step === '' || (branch.kind === '[' && !holdsObject(value));
  return inline ? ['', ''] : [layout.eol + indent + layout.step, layout.eol + indent];
}

function holdsObject(value: Json): boolean {
  return isJsonArray(value) ? value.some(holdsObject) : isJsonObject(value) && Object.keys(value).length > 0;
}

function colonLike(sibling: Item | undefined): string {
  const colon = sibling?.head.replace(/^"(?:[^"\\]|\\.)*"/, '');
  return colon === undefined || colon.includes('\n') ? ': ' : colon;
}

/** Items that share their line with others are printed without line ends. */
function printAt(value: Json, at: Pick<ValuePlace, 'indent' | 'head' | 'pre'>, layout: Layout): string {
  const ownLine = at.pre === undefined || indentIn(at.pre) !== undefined;
  return printValue(value, ownLine ? layout : { ...layout, step: '' }, at.indent, at.indent.length + at.head.length);
}
