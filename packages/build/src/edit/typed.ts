import type { Json } from '../document/json.ts';
import type { Fault } from '../fault.ts';
import { quantityFault } from '../read/quantities.ts';
import type { SchemaNode } from '../schema/describe.ts';
import type { FieldFacts } from '../schema/field.ts';

export type TypedValue = { readonly ok: true; readonly value: Json } | { readonly ok: false; readonly fault: Fault };

const wrong = (code: string, address: string, problem: string, read: string, accepted: string): TypedValue => ({
  ok: false,
  fault: { code: `edit.${code}`, address, problem, read, accepted },
});

/** Entries of a list as typed: blanks, semicolons, line ends, or commas with a blank after them stand between. */
const entriesOf = (text: string): string[] =>
  text
    .split(/[;\n]|,\s|\s+/)
    .map((entry) => entry.replace(/,$/, '').trim())
    .filter((entry) => entry !== '');

/** A right example for the end of a message. */
export const exampleOf = (facts: FieldFacts | undefined, otherwise: string): string =>
  facts?.example === undefined ? otherwise : `For example ${facts.example}.`;

/**
 * Reads what was typed for one leaf of the build file. A quantity stays text; numbers and rows of numbers become JSON numbers; a list takes
 * several entries of its kind.
 */
export function typedValue(address: string, text: string, node: SchemaNode, facts: FieldFacts): TypedValue {
  if (facts.quantity) {
    const fault = quantityFault(address, text, facts);
    return fault ? { ok: false, fault } : { ok: true, value: text };
  }
  if (node.type === 'integer' || node.type === 'number') return typedNumber(address, text, node, facts);
  if (node.prefixItems) return typedRow(address, text, node.prefixItems.length, facts);
  if (node.items) return typedList(address, text, node.items, facts);
  if (node.enum && !node.enum.includes(text))
    return wrong(
      'choice',
      address,
      `${facts.name}: this word is not one of the choices.`,
      text,
      `One of ${node.enum.join(', ')}.`,
    );
  return { ok: true, value: text };
}

function typedNumber(address: string, text: string, node: SchemaNode, facts: FieldFacts): TypedValue {
  const whole = node.type === 'integer';
  const value = Number(text);
  if (!Number.isFinite(value) || (whole && !Number.isInteger(value)))
    return wrong(
      'number',
      address,
      `${facts.name} is a ${whole ? 'whole ' : ''}number.`,
      text,
      exampleOf(facts, whole ? 'For example 17.' : 'For example 0.4.'),
    );
  const least = facts.min ?? node.minimum;
  const most = facts.max ?? node.maximum;
  if ((least !== undefined && value < least) || (most !== undefined && value > most))
    return wrong(
      'limit',
      address,
      `${facts.name} is outside its limits.`,
      text,
      `From ${least ?? '…'} to ${most ?? '…'}.`,
    );
  return { ok: true, value };
}

function typedRow(address: string, text: string, length: number, facts: FieldFacts): TypedValue {
  const parts = text
    .replace(/^\[|\]$/g, '')
    .split(/[\s,;:]+/)
    .filter((part) => part !== '')
    .map(Number);
  if (parts.length !== length || !parts.every(Number.isFinite))
    return wrong(
      'row',
      address,
      `${facts.name}: ${length} numbers are wanted.`,
      text,
      exampleOf(facts, 'Numbers with blanks between.'),
    );
  return { ok: true, value: parts };
}

function typedList(address: string, text: string, item: SchemaNode, facts: FieldFacts): TypedValue {
  const entries = entriesOf(text);
  const values = entries.map((entry, k) => typedValue(`${address}/${k}`, entry, item, item['x-field'] ?? facts));
  const fault = values.find((value) => !value.ok);
  if (fault && !fault.ok) return { ok: false, fault: { ...fault.fault, address } };
  if (entries.length === 0)
    return wrong('list', address, `${facts.name}: at least one is wanted.`, text, exampleOf(item['x-field'], ''));
  return { ok: true, value: values.flatMap((value) => (value.ok ? [value.value] : [])) };
}
