/** Fills forms and names places of the schema, for tests that hold that everything in a build file can be reached. */
import type { Form } from '../edit/types.ts';
import { BUILD_SCHEMA, branchFor, childNode, pointerKeys, type SchemaNode } from '../schema/describe.ts';
import type { Field } from '../session-types.ts';

const SPECIAL: readonly [RegExp, string][] = [
  [/overall$/, '18.4 12.1'],
  [/file$/, 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  [/(right|down)$/, '0.5'],
  [/along$/, '0 0 1'],
  [/cylinders$/, '2'],
  [/rows\/\+\/gear$/, '2'],
  [/rebound$|bump$/, '5 deg'],
  [/adjusters\/\+\/sets$/, 'slack'],
  [/adjusters\/\+\/of$/, 'chain-1'],
  [/adjusters\/\+\/moves$/, 'output'],
];

const answer = (field: Field): string =>
  SPECIAL.find(([at]) => at.test(field.address))?.[1] ??
  field.text ??
  field.choices?.[0] ??
  field.example ??
  (field.entry === 'integer' ? '17' : '0.5');

/** A filled form: what it begins with, a first choice, or the example of each field. */
export const filled = (form: Form): Record<string, string> =>
  Object.fromEntries(form.fields.map((field) => [field.address, answer(field)]));

/** Schema place of an address: keys of maps and rows of lists are "*", kinds of a union stand in the path. */
export function placeOf(build: unknown, address: string): string {
  let node: SchemaNode | undefined = BUILD_SCHEMA;
  let value: unknown = build;
  let out = '';
  for (const key of pointerKeys(address)) {
    const branch: SchemaNode | undefined = node && branchFor(node, value);
    const named = branch?.properties && Object.hasOwn(branch.properties, key);
    const discriminator = branch?.properties?.kind;
    const kind: string =
      discriminator && !discriminator['x-field'] ? `(${discriminator.const ?? discriminator.enum?.[0]})` : '';
    out += `${kind}/${named ? key : '*'}`;
    node = branch && childNode(branch, key);
    value = typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[key] : undefined;
  }
  return out;
}

function leaves(node: SchemaNode, at: string, out: string[]): void {
  const branches = node.oneOf ?? node.anyOf;
  if (branches) for (const branch of branches) leaves(branch, at, out);
  else if (node.properties) {
    const kind = node.properties.kind;
    const mark = kind && !kind['x-field'] ? `(${kind.const ?? kind.enum?.[0]})` : '';
    for (const [key, child] of Object.entries(node.properties))
      if (mark === '' || key !== 'kind') leaves(child, `${at}${mark}/${key}`, out);
  } else if (typeof node.additionalProperties === 'object') leaves(node.additionalProperties, `${at}/*`, out);
  else if (node.items && !node.prefixItems) leaves(node.items, `${at}/*`, out);
  else out.push(at);
}

/** Every leaf of the schema that a build file can hold, as places. */
export function schemaPlaces(): readonly string[] {
  const out: string[] = [];
  leaves(BUILD_SCHEMA, '', out);
  // The one wheel sits on the shaft at the end of the path, never on the engine's own output.
  return out.filter((place) => !place.startsWith('/brief/engine/output/seats/*(wheel)/'));
}
