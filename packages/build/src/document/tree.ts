/** A JSON text as a tree that keeps every byte of it: printing an untouched tree gives the text back. */
import { type ArrayNode, type ObjectNode, parse, type ValueNode } from '@humanwhocodes/momoa';
import { isJsonArray, isJsonObject, type Json } from './json.ts';
import type { Syntax } from './json-text.ts';
import { type Layout, OWN_LAYOUT } from './print.ts';

export type TreeNode = Leaf | Branch;

/** A scalar, or a value printed as a whole. */
export interface Leaf {
  readonly kind: 'leaf';
  readonly text: string;
  readonly value: Json;
}

/** An object or array; its parts are changed in place while patches are applied. */
export interface Branch {
  readonly kind: '{' | '[';
  readonly items: Item[];
  /** White space before the closing sign; all white space inside when there are no items. */
  tail: string;
}

export interface Item {
  /** White space before the item. */
  pre: string;
  /** Key of a member; "" in an array. */
  readonly key: string;
  /** Text from the key to the value, such as `"teeth": `; "" in an array. */
  readonly head: string;
  node: TreeNode;
  /** White space between the value and its comma; "" for the last item. */
  post: string;
}

export interface TextTree {
  /** Byte order mark and white space before the value. */
  readonly lead: string;
  root: TreeNode;
  readonly trail: string;
  readonly layout: Layout;
}

/** A new tree of a text. */
export function treeOf({ mark, body, root }: Syntax): TextTree {
  return {
    lead: mark + body.slice(0, root.loc.start.offset),
    root: nodeOf(root, body),
    trail: body.slice(root.loc.end.offset),
    layout: layoutOf(body),
  };
}

/** The tree of a piece of JSON alone. */
export function nodeOfText(text: string): TreeNode {
  return nodeOf(parse(text, { mode: 'json' }).body, text);
}

export function printTree(tree: TextTree): string {
  return tree.lead + printNode(tree.root) + tree.trail;
}

export function printNode(node: TreeNode): string {
  if (node.kind === 'leaf') return node.text;
  const items = node.items.map((item) => item.pre + item.head + printNode(item.node) + item.post);
  return node.kind + items.join(',') + node.tail + (node.kind === '{' ? '}' : ']');
}

export function nodeValue(node: TreeNode): Json {
  if (node.kind === 'leaf') return node.value;
  if (node.kind === '[') return node.items.map((item) => nodeValue(item.node));
  return Object.fromEntries(node.items.map((item) => [item.key, nodeValue(item.node)]));
}

/** Text after the last line end in a stretch of white space; undefined when it stays on the line. */
export function indentIn(space: string): string | undefined {
  const at = space.lastIndexOf('\n');
  return at < 0 ? undefined : space.slice(at + 1);
}

/** Line end and indentation of a text, as its first lines have them. */
export function layoutOf(body: string): Layout {
  const trimmed = body.trim();
  const eol = /\r?\n/.exec(body)?.[0] === '\r\n' ? '\r\n' : '\n';
  const first = /^[{[][ \t]*\r?\n(?:[ \t]*\r?\n)*([ \t]+)/.exec(trimmed);
  if (first?.[1] !== undefined) return { eol, step: first[1] };
  const oneLine = !trimmed.includes('\n') && /[^{}[\]\s]/.test(trimmed);
  return { eol, step: oneLine ? '' : OWN_LAYOUT.step };
}

function nodeOf(node: ValueNode, text: string): TreeNode {
  if (node.type === 'Object' || node.type === 'Array') return branchOf(node, text);
  const value: Json = node.type === 'Number' || node.type === 'String' || node.type === 'Boolean' ? node.value : null;
  return { kind: 'leaf', text: text.slice(node.loc.start.offset, node.loc.end.offset), value };
}

function branchOf(node: ObjectNode | ArrayNode, text: string): Branch {
  const items: Item[] = [];
  let at = node.loc.start.offset + 1;
  for (const part of node.type === 'Object' ? node.members : node.elements) {
    const start = part.loc.start.offset;
    const valueStart = part.value.loc.start.offset;
    const gap = text.slice(at, start);
    const comma = gap.indexOf(',');
    const previous = items.at(-1);
    if (previous) previous.post = gap.slice(0, comma);
    const key = part.type === 'Member' ? (part.name.type === 'String' ? part.name.value : part.name.name) : '';
    items.push({
      pre: gap.slice(comma + 1),
      key,
      head: text.slice(start, valueStart),
      node: nodeOf(part.value, text),
      post: '',
    });
    at = part.value.loc.end.offset;
  }
  return { kind: node.type === 'Object' ? '{' : '[', items, tail: text.slice(at, node.loc.end.offset - 1) };
}

/** A printed value as a tree, so that later patches can reach into it. */
export function nodeOfPrinted(value: Json, text: string): TreeNode {
  return isJsonArray(value) || isJsonObject(value) ? nodeOfText(text) : { kind: 'leaf', text, value };
}
