import type { Kind } from '@oddwheel/quantity/kinds';
import { siUnit } from '@oddwheel/quantity/kinds';
import { misfit, rangeWords } from '../method/limits.ts';
import { MethodError, type Param, type Params, type Range } from '../method/method.ts';

/** More than zero. */
export const ABOVE_ZERO = { min: 0, open: true } as const satisfies Range;

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Why a number does not fit, as a sentence; undefined when it does. Words are made for a fault only: long lists are checked often. */
function problem(
  param: Param,
  entry: number | null,
  value: unknown,
  kind: Kind,
  range: Range | undefined,
): string | undefined {
  const wrong = typeof value === 'number' ? misfit(value, kind, range) : 'is not a number';
  if (wrong === undefined) return undefined;
  const unit = siUnit(kind);
  const read = unit === '' ? String(value) : `${String(value)} ${unit}`;
  return `${sentence(param.meaning)}${entry === null ? '' : `, entry ${entry}`}: ${read} ${wrong}.`;
}

function problemOf(param: Param, value: unknown): string | undefined {
  switch (param.form) {
    case 'value':
      return problem(param, null, value, param.kind, param.range);
    case 'integer': {
      if (Number.isInteger(value)) return problem(param, null, value, 'count', param.range);
      const words = rangeWords(param.range, 'count');
      return `${sentence(param.meaning)}: ${String(value)} is not a whole number${words === '' ? '' : `; it must be ${words}`}.`;
    }
    case 'vector':
    case 'list': {
      const least = param.form === 'vector' ? 3 : (param.atLeast ?? 0);
      if (!Array.isArray(value)) return `${sentence(param.meaning)}: ${String(value)} is not a list of numbers.`;
      if (value.length < least || (param.form === 'vector' && value.length > 3))
        return `${sentence(param.meaning)}: ${value.length} entries read; ${param.form === 'vector' ? 'three' : `at least ${least}`} are accepted.`;
      const range = param.form === 'list' ? param.range : undefined;
      for (let k = 0; k < value.length; k++) {
        const found = problem(param, k + 1, value[k], param.kind, range);
        if (found !== undefined) return found;
      }
      return undefined;
    }
    case 'choice':
      return param.choices.some((choice) => choice === value)
        ? undefined
        : `${sentence(param.meaning)}: ${String(value)} is none of ${param.choices.join(', ')}.`;
    case 'text':
      return typeof value === 'string' && value !== ''
        ? undefined
        : `${sentence(param.meaning)}: ${JSON.stringify(value)} is not a text such as "${param.example}".`;
  }
}

/** An input with limits between which, both left out, every number is accepted; no such numbers for other forms. */
interface Plain {
  readonly key: string;
  readonly param: Param;
  readonly low: number;
  readonly high: number;
}

const PLAIN = new WeakMap<Params, readonly Plain[]>();

function plainly(params: Params): readonly Plain[] {
  const known = PLAIN.get(params);
  if (known) return known;
  const made = Object.entries(params).map(([key, param]): Plain => {
    const none = { key, param, low: Number.POSITIVE_INFINITY, high: Number.NEGATIVE_INFINITY };
    if (param.form !== 'value') return none;
    const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = param.range ?? {};
    return { ...none, low: min, high: max };
  });
  PLAIN.set(params, made);
  return made;
}

/**
 * Refuses the first input that its declaration does not accept.
 *
 * @param method id of the method, for the error
 * @param params declared inputs
 * @param values inputs as given, SI
 * @throws MethodError naming the input, what was read, and what is accepted.
 */
export function refuseOutside(method: string, params: Params, values: Readonly<Record<string, unknown>>): void {
  for (const { key, param, low, high } of plainly(params)) {
    const value = values[key];
    // Most inputs are numbers within their range, and this runs a thousand times at every edit.
    if (typeof value === 'number' && value > low && value < high) continue;
    const found = problemOf(param, value);
    if (found !== undefined) throw new MethodError(method, key, found);
  }
}
