import { acceptedFor } from '@oddwheel/quantity/accepted';
import { type Kind, siUnit } from '@oddwheel/quantity/kinds';
import { parseQuantity } from '@oddwheel/quantity/parse';
import { misfit, rangeWords } from './limits.ts';
import type { Method, Param, Params, Range, ValuesOf } from './method.ts';
import { isRequired } from './schema.ts';

/** One thing wrong with an input: where, what, what was read, what is accepted. */
export interface InputFault {
  /** Key of the input; an entry of a list as "key/0"; empty for the whole. */
  readonly input: string;
  readonly problem: string;
  readonly read: string;
  readonly accepted: string;
}

/** Gives the SI numbers of a table row, "<table>/<key>", by field; null when there is no such row. */
export type RowLookup = (row: string) => Readonly<Record<string, number>> | null;

export type InputRead<I extends Params = Params> =
  | {
      readonly ok: true;
      readonly input: ValuesOf<I>;
      /** Keys of the inputs that were left out and have their default. */
      readonly defaults: readonly string[];
      /** The row that an input came from, by key. */
      readonly rows: Readonly<Record<string, string>>;
    }
  | { readonly ok: false; readonly faults: readonly InputFault[] };

type Read<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly faults: readonly InputFault[] };
type Fields = Readonly<Record<string, unknown>>;

const refuse = (
  input: string,
  problem: string,
  read: unknown,
  accepted: string,
): { ok: false; faults: InputFault[] } => ({
  ok: false,
  faults: [{ input, problem, read: read === undefined ? 'nothing' : (JSON.stringify(read) ?? String(read)), accepted }],
});

const isFields = (json: unknown): json is Fields => typeof json === 'object' && json !== null && !Array.isArray(json);

function acceptedNumber(kind: Kind, range: Range | undefined): string {
  const limits = rangeWords(range, kind);
  const unit = siUnit(kind);
  const plain = unit === '' ? '' : `, or a plain number in ${unit}`;
  return `${acceptedFor(kind)}${plain}${limits === '' ? '' : `; ${limits}`}`;
}

function acceptedWhole(range: Range | undefined): string {
  const limits = rangeWords(range, 'count');
  return `a whole number${limits === '' ? '' : `, ${limits}`}`;
}

function checked(
  input: string,
  value: number,
  kind: Kind,
  range: Range | undefined,
  json: unknown,
  accepted: string,
): Read<number> {
  const problem = misfit(value, kind, range);
  if (problem === undefined) return { ok: true, value };
  return refuse(input, `${typeof json === 'string' ? `"${json}"` : value} ${problem}.`, json, accepted);
}

function readNumber(input: string, json: unknown, kind: Kind, range: Range | undefined): Read<number> {
  const accepted = acceptedNumber(kind, range);
  if (typeof json === 'number') return checked(input, json, kind, range, json, accepted);
  if (typeof json !== 'string') return refuse(input, 'A quantity is wanted here.', json, accepted);
  // A count that is declared as a value need not be whole: links that a length asks for.
  const parsed = parseQuantity(json, kind === 'count' ? 'number' : kind);
  if (!parsed.ok) return { ok: false, faults: [{ input, problem: parsed.problem, read: parsed.read, accepted }] };
  return checked(input, parsed.si, kind, range, json, accepted);
}

function readWhole(input: string, json: unknown, range: Range | undefined): Read<number> {
  const accepted = acceptedWhole(range);
  if (typeof json !== 'number' || !Number.isInteger(json))
    return refuse(input, 'A whole number is wanted here.', json, accepted);
  return checked(input, json, 'count', range, json, accepted);
}

function readEntries(
  input: string,
  json: unknown,
  param: Extract<Param, { form: 'vector' | 'list' }>,
): Read<readonly number[]> {
  const range = param.form === 'list' ? param.range : undefined;
  const least = param.form === 'list' ? (param.atLeast ?? 0) : 3;
  const most = param.form === 'list' ? Number.POSITIVE_INFINITY : 3;
  const count = most === least ? 'three entries' : `a list of ${least === 0 ? '' : `at least ${least} `}entries`;
  const accepted = `${count}, each ${acceptedNumber(param.kind, range)}`;
  if (!Array.isArray(json)) return refuse(input, 'A list is wanted here.', json, accepted);
  const entries = json.map((entry, i) => readNumber(`${input}/${i}`, entry, param.kind, range));
  const faults = entries.flatMap((entry) => (entry.ok ? [] : entry.faults));
  if (json.length < least || json.length > most)
    faults.unshift(...refuse(input, `There are ${json.length} entries.`, json, accepted).faults);
  if (faults.length > 0) return { ok: false, faults };
  return { ok: true, value: entries.flatMap((entry) => (entry.ok ? [entry.value] : [])) };
}

function readRow(input: string, json: Fields, param: Param, lookup: RowLookup | undefined): Read<number> {
  const accepted = '{"row": "<table>/<key>"}, or with "field" beside it';
  const { row, field = input, ...more } = json;
  if (typeof row !== 'string' || typeof field !== 'string' || Object.keys(more).length > 0)
    return refuse(input, 'This is not a row of a table.', json, accepted);
  const found = lookup?.(row) ?? null;
  if (found === null) return refuse(input, `There is no table row "${row}".`, json, accepted);
  const value = Object.hasOwn(found, field) ? found[field] : undefined;
  if (value === undefined)
    return refuse(
      input,
      `The row "${row}" has no field "${field}".`,
      json,
      `one of the fields ${Object.keys(found).join(', ')}`,
    );
  if (param.form === 'integer') return readWhole(input, value, param.range);
  return param.form === 'value'
    ? readNumber(input, value, param.kind, param.range)
    : refuse(input, 'A row gives one number; it cannot stand here.', json, accepted);
}

function readOne(input: string, json: unknown, param: Param, lookup: RowLookup | undefined): Read<unknown> {
  switch (param.form) {
    case 'value':
      return isFields(json) ? readRow(input, json, param, lookup) : readNumber(input, json, param.kind, param.range);
    case 'integer':
      return isFields(json) ? readRow(input, json, param, lookup) : readWhole(input, json, param.range);
    case 'vector':
    case 'list':
      return readEntries(input, json, param);
    case 'choice':
      return typeof json === 'string' && param.choices.includes(json)
        ? { ok: true, value: json }
        : refuse(input, 'This is none of the choices.', json, param.choices.map((choice) => `"${choice}"`).join(', '));
    case 'text':
      return typeof json === 'string' && json !== ''
        ? { ok: true, value: json }
        : refuse(input, 'A text is wanted here.', json, `a text, such as "${param.example}"`);
  }
}

function acceptedFirst(param: Param): string {
  switch (param.form) {
    case 'value':
      return acceptedNumber(param.kind, param.range);
    case 'integer':
      return acceptedWhole(param.range);
    case 'vector':
      return `three entries, each ${acceptedNumber(param.kind, undefined)}`;
    case 'list':
      return `a list, each entry ${acceptedNumber(param.kind, param.range)}`;
    case 'choice':
      return param.choices.map((choice) => `"${choice}"`).join(', ');
    case 'text':
      return `a text, such as "${param.example}"`;
  }
}

/**
 * Reads the input of a method from JSON: unit texts, plain SI numbers, lists, vectors, choices, and rows of tables
 * (`{"row": "<table>/<key>", "field": "…"}`; without a field the one named like the input).
 * @param method The method.
 * @param json An object with the method's input keys.
 * @param lookup Finds table rows; without it none is known.
 * @returns Typed values in SI units with the defaults that were used, or all faults at once. Never throws.
 */
export function readInput<I extends Params, O extends Params>(
  method: Method<I, O>,
  json: unknown,
  lookup?: RowLookup,
): InputRead<I> {
  const keys = Object.keys(method.inputs);
  if (!isFields(json)) return refuse('', 'An object is wanted.', json, `an object with the keys ${keys.join(', ')}`);
  const values: Record<string, unknown> = {};
  const rows: Record<string, string> = {};
  const defaults: string[] = [];
  const faults: InputFault[] = [];
  for (const [key, param] of Object.entries<Param>(method.inputs)) {
    const given = Object.hasOwn(json, key) ? json[key] : undefined;
    if (given === undefined && !isRequired(param)) {
      values[key] = 'default' in param ? param.default : undefined;
      defaults.push(key);
      continue;
    }
    const read =
      given === undefined
        ? refuse(key, `The ${param.meaning} is missing.`, given, acceptedFirst(param))
        : readOne(key, given, param, lookup);
    if (!read.ok) faults.push(...read.faults);
    else values[key] = read.value;
    if (read.ok && isFields(given)) rows[key] = String(given.row);
  }
  for (const key of Object.keys(json))
    if (!keys.includes(key))
      faults.push(
        ...refuse(key, `${method.id} has no input "${key}".`, json[key], `the keys ${keys.join(', ')}`).faults,
      );
  if (faults.length > 0) return { ok: false, faults };
  return { ok: true, input: values as ValuesOf<I>, defaults, rows };
}
