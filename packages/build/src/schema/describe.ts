import { z } from 'zod';
import { buildFile } from './build-file.ts';
import type { FieldFacts } from './field.ts';

/** The parts of JSON Schema that the build's schema uses. */
export interface SchemaNode {
  readonly type?: string;
  readonly const?: unknown;
  readonly enum?: readonly string[];
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: SchemaNode | boolean;
  readonly items?: SchemaNode;
  readonly prefixItems?: readonly SchemaNode[];
  readonly oneOf?: readonly SchemaNode[];
  readonly anyOf?: readonly SchemaNode[];
  readonly minLength?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly 'x-field'?: FieldFacts;
}

/** JSON Schema (draft 2020-12) of the build file, made from the one schema that reads it. */
export function buildJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(buildFile, { target: 'draft-2020-12' }) as Record<string, unknown>;
}

export const BUILD_SCHEMA: SchemaNode = buildJsonSchema() as SchemaNode;

/** Escapes one key for a JSON Pointer (RFC 6901). */
export function pointerKey(key: string): string {
  if (!key.includes('~') && !key.includes('/')) return key;
  return key.replaceAll('~', '~0').replaceAll('/', '~1');
}

/** Splits a JSON Pointer into its keys. */
export function pointerKeys(address: string): string[] {
  return address === ''
    ? []
    : address
        .slice(1)
        .split('/')
        .map((key) => key.replaceAll('~1', '/').replaceAll('~0', '~'));
}

/** The value at an address, or undefined. */
export function valueAt(root: unknown, address: string): unknown {
  let here: unknown = root;
  for (const key of pointerKeys(address)) {
    if (here === null || typeof here !== 'object') return undefined;
    here = Object.hasOwn(here, key) ? (here as Record<string, unknown>)[key] : undefined;
  }
  return here;
}

/** A JSON object, not a list. */
export const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The branch of a union that the value's `kind` picks; the node itself when it is no union. */
export function branchFor(node: SchemaNode, value: unknown): SchemaNode | undefined {
  const branches = node.oneOf ?? node.anyOf;
  if (!branches) return node;
  const kind = isRecord(value) ? value.kind : undefined;
  return branches.find((branch) => {
    const wanted = branch.properties?.kind;
    return wanted?.const === kind || (typeof kind === 'string' && wanted?.enum?.includes(kind));
  });
}

/** The schema node of one key of an object or array, or undefined where none is accepted. */
export function childNode(node: SchemaNode, key: string): SchemaNode | undefined {
  if (node.properties && Object.hasOwn(node.properties, key)) return node.properties[key];
  if (typeof node.additionalProperties === 'object') return node.additionalProperties;
  if (node.prefixItems) return node.prefixItems[Number(key)];
  return node.items;
}

/**
 * Calls `visit` for every value that the schema describes, the root first, in the order of the file.
 * @param before a value of the same schema; parts of it that stand in `value` as the very same objects are passed over
 */
export function walkSchema(
  value: unknown,
  visit: (address: string, value: unknown, node: SchemaNode) => void,
  before: unknown = undefined,
): void {
  walk(value, before, visit, BUILD_SCHEMA, '');
}

function walk(
  value: unknown,
  before: unknown,
  visit: (address: string, value: unknown, node: SchemaNode) => void,
  node: SchemaNode,
  address: string,
): void {
  const branch = branchFor(node, value);
  if (!branch) return;
  visit(address, value, branch);
  if (typeof value !== 'object' || value === null) return;
  // A part of the same name may be of another sort under another kind.
  const old = branchFor(node, before) === branch ? partsOf(before) : NOTHING;
  for (const [key, child] of Object.entries(value)) {
    const was = old[key];
    if (was !== undefined && was === child) continue;
    const next = childNode(branch, key);
    if (next) walk(child, was, visit, next, `${address}/${pointerKey(key)}`);
  }
}

const NOTHING: Readonly<Record<string, unknown>> = Object.freeze({});

const partsOf = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : NOTHING;

/**
 * A value without the parts that it has in common with one of the same schema and that it may lack, all the way down: what shape there is left
 * to look at.
 * @param before a value without faults of shape
 */
export function changedShape(value: unknown, before: unknown, node: SchemaNode = BUILD_SCHEMA): unknown {
  const branch = branchFor(node, value);
  // A part of the same name may be of another sort under another kind.
  if (!branch || !isRecord(value) || !isRecord(before) || branchFor(node, before) !== branch) return value;
  const left: [string, unknown][] = [];
  for (const [key, child] of Object.entries(value)) {
    const same = Object.hasOwn(before, key) && before[key] === child;
    if (same && !branch.required?.includes(key)) continue;
    const next = childNode(branch, key);
    left.push([key, next ? changedShape(child, before[key], next) : child]);
  }
  return Object.fromEntries(left);
}

/** The schema node at an address of a build, following the kinds that the build chose. */
export function nodeAt(root: unknown, address: string): SchemaNode | undefined {
  let node: SchemaNode | undefined = BUILD_SCHEMA;
  let value: unknown = root;
  for (const key of pointerKeys(address)) {
    const branch: SchemaNode | undefined = node && branchFor(node, value);
    node = branch && childNode(branch, key);
    value = typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[key] : undefined;
  }
  return node && (branchFor(node, value) ?? node);
}

/** How to measure what stands at an address, by the schema alone; empty where it does not say, or says it in two ways. */
export function recipeAt(address: string): string {
  const known = RECIPES.get(address) ?? recipeOf(address);
  if (RECIPES.size >= MOST_RECIPES) RECIPES.clear();
  RECIPES.set(address, known);
  return known;
}

const RECIPES = new Map<string, string>();
const MOST_RECIPES = 2_000;

function recipeOf(address: string): string {
  let nodes: readonly SchemaNode[] = [BUILD_SCHEMA];
  for (const key of pointerKeys(address))
    nodes = nodes.flatMap((node) => node.oneOf ?? node.anyOf ?? [node]).flatMap((node) => childNode(node, key) ?? []);
  const recipes = new Set(nodes.map((node) => node['x-field']?.recipe ?? ''));
  const [recipe = ''] = recipes;
  return recipes.size === 1 ? recipe : '';
}
