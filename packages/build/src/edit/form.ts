/** The form that is filled before something is added, and the value made from it. */
import type { Json } from '../document/json.ts';
import type { Fault } from '../fault.ts';
import { toField } from '../fields.ts';
import { isRecord, pointerKey, type SchemaNode, valueAt } from '../schema/describe.ts';
import type { FieldFacts } from '../schema/field.ts';
import type { Field, Session } from '../session-types.ts';
import { exampleOf, typedValue } from './typed.ts';
import type { Answers } from './types.ts';
import { entryName } from './words.ts';

/** The key that stands in a form for an id that is made from the name, or for the next row. */
export const NEW_KEY = '+';

const kindsIn = (branch: SchemaNode): readonly string[] => {
  const kind = branch.properties?.kind;
  if (!kind || kind['x-field']) return [];
  return kind.enum ?? (typeof kind.const === 'string' ? [kind.const] : []);
};

const branchesOf = (node: SchemaNode): readonly SchemaNode[] => node.oneOf ?? node.anyOf ?? [node];

/** Kinds that an entry can be of; null where there is only one. */
export function kindsOf(node: SchemaNode): readonly string[] | null {
  const kinds = branchesOf(node).flatMap(kindsIn);
  return kinds.length > 0 ? kinds : null;
}

/** The branch of a union for a kind; the node itself when it is no union. */
export function branchOfKind(node: SchemaNode, kind: string | null): SchemaNode | undefined {
  if (kindsOf(node) === null) return node;
  return branchesOf(node).find((branch) => kindsIn(branch).includes(kind ?? ''));
}

const listFacts = (node: SchemaNode): FieldFacts | undefined => {
  const facts = node['x-field'];
  const example = node.items?.['x-field']?.example;
  return facts && example !== undefined ? { ...facts, example: `${example} 12.1 8.6`, name: facts.name } : facts;
};

/** Required leaves of a node, in the order of the file; maps begin empty and ask for nothing. */
export function requiredLeaves(
  node: SchemaNode,
  address: string,
  visit: (address: string, node: SchemaNode, facts: FieldFacts, group: string | null, groupAddress: string) => void,
  group: string | null = null,
): void {
  for (const [key, child] of Object.entries(node.properties ?? {})) {
    if (!(node.required ?? []).includes(key) || (key === 'kind' && !child['x-field'])) continue;
    const at = `${address}/${pointerKey(key)}`;
    if (child.properties) requiredLeaves(child, at, visit, child['x-field']?.name ?? group);
    else if (typeof child.additionalProperties !== 'object') {
      const facts = child.items ? listFacts(child) : child['x-field'];
      if (facts) visit(at, child, facts, group, address);
    }
  }
}

/** "Keep-out 2": the next free name of its sort. */
function suggestedName(session: Session, at: string, kind: string | null): string {
  const map = valueAt(session.build, at);
  const names = new Set(
    (isRecord(map) ? Object.values(map) : []).map((entry) => (isRecord(entry) ? String(entry.name) : '')),
  );
  const base = kind ?? entryName(at);
  const first = base.charAt(0).toUpperCase() + base.slice(1);
  for (let k = 1; ; k += 1) if (!names.has(`${first} ${k}`)) return `${first} ${k}`;
}

/** Fields of the form for an entry or a group of this shape. */
export function formFields(
  session: Session,
  at: string,
  branch: SchemaNode,
  kind: string | null,
  entry: boolean,
): Field[] {
  const base = entry ? `${at}/${NEW_KEY}` : at;
  const out: Field[] = [];
  requiredLeaves(branch, base, (address, node, facts, group, groupAddress) => {
    const text = entry && address === `${base}/name` ? suggestedName(session, at, kind) : null;
    const place = { name: group, address: group === null ? null : groupAddress };
    out.push(toField(session, address, node, facts, place, { text, optional: false, kind }));
  });
  return out;
}

export type Made =
  | { readonly ok: true; readonly value: Json }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** The value of a filled form: keys in the order of the schema, the kind first. All faults at once. */
export function makeValue(branch: SchemaNode, base: string, kind: string | null, answers: Answers): Made {
  const faults: Fault[] = [];
  const leaf = (address: string, node: SchemaNode, facts: FieldFacts): Json => {
    const text = answers[address]?.trim() ?? '';
    if (text === '') {
      const problem = `${facts.name}: This is wanted.`;
      const accepted = node.enum
        ? `One of ${node.enum.join(', ')}.`
        : exampleOf(facts, node.type === 'integer' ? 'For example 17.' : 'A value.');
      faults.push({ code: 'edit.required', address, problem, read: '', accepted });
      return null;
    }
    const read = typedValue(address, text, node, facts);
    if (read.ok) return read.value;
    faults.push(read.fault);
    return null;
  };
  const make = (node: SchemaNode, address: string): Json => {
    const out: Record<string, Json> = {};
    for (const [key, child] of Object.entries(node.properties ?? {})) {
      const at = `${address}/${pointerKey(key)}`;
      if (!(node.required ?? []).includes(key)) continue;
      const facts = child.items ? listFacts(child) : child['x-field'];
      if (key === 'kind' && !child['x-field']) out[key] = kind;
      else if (child.properties) out[key] = make(child, at);
      else if (typeof child.additionalProperties === 'object') out[key] = {};
      else if (facts) out[key] = leaf(at, child, facts);
    }
    return out;
  };
  const value = branch.properties ? make(branch, base) : leaf(base, branch, branch['x-field'] ?? { name: 'Row' });
  return faults.length > 0 ? { ok: false, faults } : { ok: true, value };
}
