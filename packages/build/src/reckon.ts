import { METHODS } from '@oddwheel/mechanics/catalogue';
import { type Method, MethodError } from '@oddwheel/mechanics/method/method';
import { type InputFault, readInput } from '@oddwheel/mechanics/method/read-input';
import { inputSchema, outputSchema } from '@oddwheel/mechanics/method/schema';
import { type Working, workingOf } from '@oddwheel/mechanics/method/working';
import { siUnit } from '@oddwheel/quantity/kinds';
import { tableRow } from '@oddwheel/tables/catalogue';
import { OffTableError } from '@oddwheel/tables/table';

/** Ids of all methods with one line each, in order of id. */
export function listMethods(): { readonly id: string; readonly gives: string }[] {
  return METHODS.map(({ id, gives }) => ({ id, gives })).sort((a, b) => (a.id < b.id ? -1 : 1));
}

const find = (id: string) => METHODS.find((method) => method.id === id);

/** JSON Schemas of a method's input and output; null when there is no such method. */
export function reckonSchema(id: string): { readonly input: unknown; readonly output: unknown } | null {
  const method = find(id);
  return method ? { input: inputSchema(method), output: outputSchema(method) } : null;
}

/** Ids that share the first word, or all that contain it; for "did you mean". */
export function nearestMethods(id: string): readonly string[] {
  const word = id.split('.')[0]?.toLowerCase() ?? '';
  return listMethods()
    .map((m) => m.id)
    .filter((name) => word !== '' && name.toLowerCase().includes(word))
    .sort((a, b) => sameStart(b, id) - sameStart(a, id))
    .slice(0, 8);
}

/** Letters that two names begin with alike. */
function sameStart(a: string, b: string): number {
  const [x, y] = [a.toLowerCase(), b.toLowerCase()];
  let k = 0;
  while (k < x.length && x[k] === y[k]) k += 1;
  return k;
}

export interface Reckoned {
  readonly method: string;
  /** Results and intermediates, SI. */
  readonly values: Readonly<Record<string, unknown>>;
  /** SI unit of each value that has one. */
  readonly units: Readonly<Record<string, string>>;
  /** Inputs that stood on their default. */
  readonly assumed: readonly string[];
  readonly sources: readonly unknown[];
}

export type ReckonResult =
  | { readonly ok: true; readonly output: Reckoned }
  | { readonly ok: false; readonly faults: readonly InputFault[] };

/** Looks a row up for an input given as {"row": "table/key"}; null where there is none. */
function lookup(name: string): Readonly<Record<string, number>> | null {
  try {
    const row = tableRow(name);
    return row && Object.fromEntries(Object.entries(row).flatMap(([key, x]) => (x === undefined ? [] : [[key, x]])));
  } catch (error) {
    if (error instanceof OffTableError) return null;
    throw error;
  }
}

type Values = Readonly<Record<string, unknown>>;

type Run =
  | {
      readonly ok: true;
      readonly method: Method;
      readonly input: Values;
      readonly values: Values;
      readonly defaults: readonly string[];
    }
  | { readonly ok: false; readonly faults: readonly InputFault[] };

function runMethod(id: string, json: unknown): Run {
  const method = find(id);
  if (!method)
    return {
      ok: false,
      faults: [
        {
          input: 'method',
          problem: `There is no method "${id}".`,
          read: id,
          accepted: nearestMethods(id).join(', ') || 'a name from --list',
        },
      ],
    };
  const read = readInput(method, json, lookup);
  if (!read.ok) return read;
  try {
    // The reader has made every input of the kind that the record declares.
    return { ok: true, method, input: read.input, values: method.run(read.input), defaults: read.defaults };
  } catch (error) {
    if (!(error instanceof MethodError)) throw error;
    const given =
      typeof json === 'object' && json !== null ? JSON.stringify((json as Record<string, unknown>)[error.input]) : '';
    return {
      ok: false,
      faults: [
        {
          input: error.input,
          problem: error.message,
          read: given ?? 'nothing',
          accepted: 'a value for which the formula has an answer',
        },
      ],
    };
  }
}

/**
 * Runs one method on JSON: unit strings, plain SI numbers, or table rows. All faults of the input at once.
 * An id that is no method is one fault, under the input "method".
 */
export function reckon(id: string, json: unknown): ReckonResult {
  const run = runMethod(id, json);
  if (!run.ok) return run;
  const { method, values, defaults } = run;
  const units = Object.entries(method.outputs).flatMap(([key, param]) =>
    'kind' in param && siUnit(param.kind) !== '' ? [[key, siUnit(param.kind)]] : [],
  );
  return {
    ok: true,
    output: { method: id, values, units: Object.fromEntries(units), assumed: defaults, sources: method.sources },
  };
}

/** As `reckon`, with the working instead of bare values; inputs that stood on their default say so. */
export function reckonWorking(
  id: string,
  json: unknown,
):
  | { readonly ok: true; readonly values: Values; readonly working: Working }
  | { readonly ok: false; readonly faults: readonly InputFault[] } {
  const run = runMethod(id, json);
  if (!run.ok) return run;
  const origins = Object.fromEntries(run.defaults.map((key) => [key, 'usual value']));
  return { ok: true, values: run.values, working: workingOf(run.method, run.input, run.values, origins) };
}
