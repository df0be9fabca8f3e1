import type { Kind } from '@oddwheel/quantity/kinds';
import type { Method, Param, Source, Step } from './method.ts';
import type { Names } from './names.ts';

/** A value as a working shows it: SI numbers, or the word of a choice or text. */
export type WorkingValue = number | readonly number[] | string;

/** One line of a working's list of symbols. */
export interface WorkingSymbol {
  readonly key: string;
  readonly symbol: string;
  readonly meaning: string;
  readonly form: Param['form'];
  /** Null for words. */
  readonly kind: Kind | null;
  readonly role: 'input' | 'intermediate' | 'result';
  readonly value: WorkingValue;
  /** Where an input came from: an address of the build, a row of a table, or "assumed". */
  readonly origin?: string;
}

/** A step with the value that `run` returned. */
export type WorkingStep = Step & { readonly value: WorkingValue };

/** How a method came to its results in one case: plain data, ready to be printed. */
export interface Working {
  readonly methodId: string;
  readonly title: string;
  /** Inputs first, then intermediates, then results. */
  readonly symbols: readonly WorkingSymbol[];
  readonly steps: readonly WorkingStep[];
  /** Keys of the results, the main one first. */
  readonly results: readonly string[];
  readonly sources: readonly Source[];
  readonly holds: readonly string[];
}

type Data = Readonly<Record<string, unknown>>;

/** Kind of a parameter's value: whole numbers are counts, words have none. */
export function kindOfParam(param: Param): Kind | null {
  if (param.form === 'integer') return 'count';
  return param.form === 'choice' || param.form === 'text' ? null : param.kind;
}

function shownValue(method: Method, key: string, values: Data): WorkingValue {
  const value = Object.hasOwn(values, key) ? values[key] : undefined;
  if (typeof value === 'number' || typeof value === 'string') return value;
  if (Array.isArray(value) && value.every((entry) => typeof entry === 'number')) return value;
  throw new RangeError(`${method.id}: the value "${key}" of the working is ${JSON.stringify(value) ?? 'missing'}.`);
}

/**
 * The working of one run of a method. Its values are the very numbers given, not computed again.
 * @param method The method.
 * @param input What `run` was given, SI.
 * @param output What `run` returned, SI.
 * @param origins Where inputs came from, by key; those left out show no origin.
 * @throws RangeError naming the method and the key when a declared value is missing.
 */
export function workingOf(
  method: Method,
  input: Data,
  output: Data,
  origins: Readonly<Record<string, string>> = {},
): Working {
  const line = (key: string, param: Param, role: WorkingSymbol['role'], values: Data): WorkingSymbol => {
    const origin = Object.hasOwn(origins, key) ? origins[key] : undefined;
    return {
      key,
      symbol: param.symbol,
      meaning: param.meaning,
      form: param.form,
      kind: kindOfParam(param),
      role,
      value: shownValue(method, key, values),
      ...(origin === undefined ? {} : { origin }),
    };
  };
  const outputs = Object.entries(method.outputs);
  const isResult = (key: string): boolean => method.results.includes(key);
  return {
    methodId: method.id,
    title: method.gives,
    symbols: [
      ...Object.entries(method.inputs).map(([key, param]) => line(key, param, 'input', input)),
      ...outputs.filter(([key]) => !isResult(key)).map(([key, param]) => line(key, param, 'intermediate', output)),
      ...outputs.filter(([key]) => isResult(key)).map(([key, param]) => line(key, param, 'result', output)),
    ],
    steps: method.steps.map((step) => ({ ...step, value: shownValue(method, step.key, output) })),
    results: method.results,
    sources: method.sources,
    holds: method.holds ?? [],
  };
}

/** The symbols of a working by key, as printing its steps wants them. */
export function namesOf(working: Working): Names {
  return Object.fromEntries(working.symbols.map((symbol) => [symbol.key, symbol]));
}
