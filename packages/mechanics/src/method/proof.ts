import type { Kind } from '@oddwheel/quantity/kinds';
import { dimensionOfExpr, sameDimension, showDimension } from './dimension.ts';
import { evaluate, evaluateNumber, type Values } from './evaluate.ts';
import type { Expr, ExprValue } from './expr.ts';
import { misfit } from './limits.ts';
import type { Method, Param, Params, Range, Step, ValuesOf } from './method.ts';
import { type Names, paramsOf } from './names.ts';
import { stepText } from './text.ts';
import { keysIn } from './tree.ts';
import { sidesOf } from './write.ts';

/** Something that a method's record says and its `run` does not bear out. */
export interface Miss {
  /** Key of the parameter or step, or the method's id. */
  readonly at: string;
  readonly problem: string;
}

export interface CheckOptions {
  /** Largest difference allowed between a shown and a computed value, relative; 1e-9 when left out. */
  readonly relative?: number;
}

/** Rounding left by terms that cancel, relative to the largest of them. */
const ROUNDING = 1e-13;

/**
 * Runs a method and holds its record against what it returns: every step's tree gives the shown value, dimensions agree with the declared kinds,
 * every step is about a declared output, every intermediate stands in a step, and every value lies in its declared range.
 * @param method The method.
 * @param input Input of the right types, in its ranges.
 * @returns All misses; none when the record is true.
 * @throws what `run` throws.
 */
export function checkMethod<I extends Params, O extends Params>(
  method: Method<I, O>,
  input: ValuesOf<I>,
  options: CheckOptions = {},
): Miss[] {
  const relative = options.relative ?? 1e-9;
  const inputs: Values = { ...input };
  const outputs: Values = { ...method.run(input) };
  const values = { ...inputs, ...outputs };
  return [
    ...checkRecord(method),
    ...checkValues(method.inputs, inputs),
    ...checkValues(method.outputs, outputs),
    ...method.steps.flatMap((step) => checkStep(method, step, values, relative)),
  ];
}

function checkRecord(method: Method): Miss[] {
  const misses: Miss[] = [];
  const miss = (at: string, problem: string): void => void misses.push({ at, problem });
  const named = new Set(method.steps.flatMap((step) => [step.key, ...keysOfStep(step)]));
  for (const key of Object.keys(method.inputs))
    if (Object.hasOwn(method.outputs, key)) miss(key, 'The key stands among the inputs and the outputs.');
  for (const key of method.results)
    if (!Object.hasOwn(method.outputs, key)) miss(key, 'The result is not a declared output.');
  for (const key of Object.keys(method.outputs))
    if (!method.results.includes(key) && !named.has(key)) miss(key, 'The intermediate stands in no step.');
  for (const step of method.steps)
    if (!Object.hasOwn(method.outputs, step.key))
      miss(step.key, 'The step gives a value that is not a declared output.');
  if (method.results.length === 0) miss(method.id, 'The method has no result.');
  if (method.sources.length === 0) miss(method.id, 'The method names no source.');
  return misses;
}

function keysOfStep(step: Step): string[] {
  const { left, right } = sidesOf(step);
  return [...keysIn(left), ...keysIn(right)];
}

function checkValues(params: Params, values: Values): Miss[] {
  const undeclared = Object.keys(values)
    .filter((key) => !Object.hasOwn(params, key))
    .map((key) => ({ at: key, problem: 'The value is not declared.' }));
  const wrong = Object.entries(params).flatMap(([key, param]) => {
    const problem = Object.hasOwn(values, key) ? valueProblem(param, values[key]) : 'The value is missing.';
    return problem === undefined ? [] : [{ at: key, problem }];
  });
  return [...undeclared, ...wrong];
}

/** Why a value does not fit its parameter; undefined when it does. */
function valueProblem(param: Param, value: unknown): string | undefined {
  const read = JSON.stringify(value) ?? 'nothing';
  const number = (of: unknown, kind: Kind, range: Range | undefined): string | undefined => {
    const problem = typeof of === 'number' ? misfit(of, kind, range) : 'is not a number';
    return problem === undefined ? undefined : `The value ${String(of)} ${problem}.`;
  };
  switch (param.form) {
    case 'value':
      return number(value, param.kind, param.range);
    case 'integer':
      return Number.isInteger(value) ? number(value, 'count', param.range) : `The value ${read} is not whole.`;
    case 'vector':
    case 'list': {
      if (!Array.isArray(value)) return `The value ${read} is not a list of numbers.`;
      const least = param.form === 'vector' ? 3 : (param.atLeast ?? 0);
      if (value.length < least || (param.form === 'vector' && value.length > 3))
        return `The value has ${value.length} entries, not ${param.form === 'vector' ? '' : 'at least '}${least}.`;
      const range = param.form === 'list' ? param.range : undefined;
      return value.map((entry) => number(entry, param.kind, range)).find((problem) => problem !== undefined);
    }
    case 'choice':
      return param.choices.some((choice) => choice === value)
        ? undefined
        : `The value ${read} is none of ${param.choices.join(', ')}.`;
    case 'text':
      return typeof value === 'string' ? undefined : `The value ${read} is not a text.`;
  }
}

function checkStep(method: Method, step: Step, values: Values, relative: number): Miss[] {
  const params = paramsOf(method);
  const problems = [dimensionProblem(step, params), valueMismatch(step, params, values, relative)];
  return problems.flatMap((problem) => (problem === undefined ? [] : [{ at: step.key, problem }]));
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

function dimensionProblem(step: Step, params: Params): string | undefined {
  const { left, right } = sidesOf(step);
  try {
    const [a, b] = [dimensionOfExpr(left, params), dimensionOfExpr(right, params)];
    const isZero = (side: Expr): boolean => side.op === 'num' && side.value === 0;
    if (!sameDimension(a, b) && !isZero(left) && !isZero(right))
      return `${stepText(step, params)}: the left side is ${showDimension(a)}, the right side ${showDimension(b)}.`;
    return undefined;
  } catch (error) {
    return messageOf(error);
  }
}

function valueMismatch(step: Step, names: Names, values: Values, relative: number): string | undefined {
  const { left, right } = sidesOf(step);
  try {
    const [a, b] = [entriesOf(evaluate(left, values)), entriesOf(evaluate(right, values))];
    const terms = Math.max(scaleOf(left, values), scaleOf(right, values));
    const size = 'is' in step ? Math.max(...a.map(Math.abs), ...b.map(Math.abs)) : terms;
    const allowed = relative * size + ROUNDING * terms;
    const agree = a.length === b.length && a.every((x, i) => Math.abs(x - (b[i] ?? Number.NaN)) <= allowed);
    if (agree) return undefined;
    return `${stepText(step, names)}: the left side is ${a.join(', ')}, the right side ${b.join(', ')}; at most ${allowed} apart is allowed.`;
  } catch (error) {
    return messageOf(error);
  }
}

const entriesOf = (value: ExprValue): readonly number[] => (typeof value === 'number' ? [value] : value);

/** Largest term that a tree adds up: the size against which rounding must be judged where terms cancel. */
function scaleOf(expr: Expr, values: Values): number {
  const own = Math.max(...entriesOf(evaluate(expr, values)).map(Math.abs));
  const scales = (parts: readonly Expr[]): number[] => parts.map((part) => scaleOf(part, values));
  switch (expr.op) {
    case 'add':
      return Math.max(own, ...scales(expr.args));
    case 'sub':
      return Math.max(own, ...scales([expr.a, expr.b]));
    case 'neg':
    case 'norm':
      return Math.max(own, scaleOf(expr.a, values));
    case 'mul':
      return scales(expr.args).reduce((product, scale) => product * scale, 1);
    case 'div':
      return scaleOf(expr.a, values) / Math.abs(evaluateNumber(expr.b, values));
    case 'fn':
      return ['sin', 'cos', 'tan'].includes(expr.name) ? Math.max(own, 1) : own;
    case 'dot':
    case 'cross':
      return Math.max(own, scaleOf(expr.a, values) * scaleOf(expr.b, values));
    default:
      return own;
  }
}
