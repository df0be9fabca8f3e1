import type { Comparison, Condition, Expr, ExprValue, FunctionName } from './expr.ts';

/** A tree cannot be evaluated with the values given; the message names the key or the function at fault. */
export class ExprError extends Error {
  override readonly name = 'ExprError';
}

/** Values by key. Words (choices and texts of a method) may stand among them, but a tree cannot name them. */
export type Values = Readonly<Record<string, unknown>>;

interface FunctionFacts {
  readonly least: number;
  readonly most: number;
  readonly apply: (...args: number[]) => number;
}

const one = (apply: (x: number) => number): FunctionFacts => ({
  least: 1,
  most: 1,
  apply: (x = Number.NaN) => apply(x),
});
const many = (apply: (...args: number[]) => number): FunctionFacts => ({
  least: 1,
  most: Number.POSITIVE_INFINITY,
  apply,
});

const FUNCTIONS: Readonly<Record<FunctionName, FunctionFacts>> = {
  sqrt: one(Math.sqrt),
  sin: one(Math.sin),
  cos: one(Math.cos),
  tan: one(Math.tan),
  asin: one(Math.asin),
  acos: one(Math.acos),
  atan: one(Math.atan),
  atan2: { least: 2, most: 2, apply: (y = Number.NaN, x = Number.NaN) => Math.atan2(y, x) },
  ln: one(Math.log),
  exp: one(Math.exp),
  abs: one(Math.abs),
  min: many(Math.min),
  max: many(Math.max),
  floor: one(Math.floor),
  ceil: one(Math.ceil),
  sign: one(Math.sign),
};

const COMPARE: Readonly<Record<Comparison, (a: number, b: number) => boolean>> = {
  '<': (a, b) => a < b,
  '<=': (a, b) => a <= b,
  '>': (a, b) => a > b,
  '>=': (a, b) => a >= b,
  '=': (a, b) => a === b,
};

function namedValue(key: string, values: Values): ExprValue {
  const value = Object.hasOwn(values, key) ? values[key] : undefined;
  if (value === undefined) throw new ExprError(`There is no value "${key}".`);
  if (typeof value === 'number') return value;
  if (Array.isArray(value) && value.every((entry) => typeof entry === 'number')) return value;
  throw new ExprError(
    `The value "${key}" is ${JSON.stringify(value)}; a number, a vector or a list of numbers is wanted.`,
  );
}

function listOf(key: string, values: Values): readonly number[] {
  const value = namedValue(key, values);
  if (typeof value === 'number') throw new ExprError(`The value "${key}" is one number; a list is wanted.`);
  return value;
}

function entryOf(key: string, index: number, values: Values): number {
  const list = listOf(key, values);
  const entry = list[index];
  if (entry === undefined)
    throw new ExprError(`The value "${key}" has ${list.length} entries; entry ${index + 1} is wanted.`);
  return entry;
}

/** Entry by entry; both must be numbers, or both of the same length. */
function pairwise(a: ExprValue, b: ExprValue, what: string, apply: (x: number, y: number) => number): ExprValue {
  if (typeof a === 'number' && typeof b === 'number') return apply(a, b);
  if (typeof a === 'number' || typeof b === 'number') throw new ExprError(`A number and a vector cannot be ${what}.`);
  if (a.length !== b.length) throw new ExprError(`Vectors of ${a.length} and ${b.length} entries cannot be ${what}.`);
  return a.map((x, i) => apply(x, b[i] ?? Number.NaN));
}

function scaled(a: ExprValue, b: ExprValue): ExprValue {
  if (typeof a === 'number') return typeof b === 'number' ? a * b : b.map((y) => a * y);
  if (typeof b === 'number') return a.map((x) => x * b);
  throw new ExprError('Two vectors are multiplied by "dot" or "cross".');
}

function total(terms: readonly number[]): number {
  return terms.reduce((sum, term) => sum + term, 0);
}

/**
 * Evaluates a tree to a number.
 * @param expr Tree whose value is a number.
 * @param values Values by key, SI.
 * @throws ExprError when a key has no value, or the tree gives a vector.
 */
export function evaluateNumber(expr: Expr, values: Values): number {
  const value = evaluate(expr, values);
  if (typeof value === 'number') return value;
  throw new ExprError(`A number is wanted where a vector of ${value.length} entries stands.`);
}

function evaluateVector(expr: Expr, values: Values): readonly number[] {
  const value = evaluate(expr, values);
  if (typeof value !== 'number') return value;
  throw new ExprError('A vector is wanted where a number stands.');
}

function crossed(a: readonly number[], b: readonly number[]): readonly number[] {
  const [ax, ay, az] = a;
  const [bx, by, bz] = b;
  if (
    ax === undefined ||
    ay === undefined ||
    az === undefined ||
    bx === undefined ||
    by === undefined ||
    bz === undefined
  )
    throw new ExprError(`A vector product wants three entries each, not ${a.length} and ${b.length}.`);
  return [ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx];
}

function dotted(a: readonly number[], b: readonly number[]): number {
  const products = pairwise(a, b, 'multiplied', (x, y) => x * y);
  return typeof products === 'number' ? products : total(products);
}

function called(name: FunctionName, args: readonly number[]): number {
  const { least, most, apply } = FUNCTIONS[name];
  if (args.length < least || args.length > most)
    throw new ExprError(
      `"${name}" wants ${least === most ? '' : 'at least '}${least} ${least === 1 ? 'argument' : 'arguments'}, not ${args.length}.`,
    );
  return apply(...args);
}

/** Whether a condition holds for the values given. */
function holds(condition: Condition, values: Values): boolean {
  return COMPARE[condition.is](evaluateNumber(condition.a, values), evaluateNumber(condition.b, values));
}

/**
 * Evaluates a tree. Sums and products go from left to right, as written; a division by zero gives what IEEE 754 says.
 * @param expr The tree.
 * @param values Values by key, SI.
 * @returns A number, or the entries of a vector.
 * @throws ExprError naming the key without a value, the function with the wrong count of arguments, or vectors that do not fit.
 */
export function evaluate(expr: Expr, values: Values): ExprValue {
  switch (expr.op) {
    case 'num':
      return expr.value;
    case 'sym':
      return expr.index === undefined ? namedValue(expr.key, values) : entryOf(expr.key, expr.index, values);
    case 'add': {
      const terms = expr.args.map((arg) => evaluate(arg, values));
      return terms.length === 0 ? 0 : terms.reduce((a, b) => pairwise(a, b, 'added', (x, y) => x + y));
    }
    case 'mul':
      return expr.args.map((arg) => evaluate(arg, values)).reduce<ExprValue>(scaled, 1);
    case 'sub':
      return pairwise(evaluate(expr.a, values), evaluate(expr.b, values), 'subtracted', (x, y) => x - y);
    case 'div': {
      const a = evaluate(expr.a, values);
      const b = evaluateNumber(expr.b, values);
      return typeof a === 'number' ? a / b : a.map((x) => x / b);
    }
    case 'pow':
      return evaluateNumber(expr.a, values) ** evaluateNumber(expr.b, values);
    case 'neg': {
      const a = evaluate(expr.a, values);
      return typeof a === 'number' ? -a : a.map((x) => -x);
    }
    case 'fn':
      return called(
        expr.name,
        expr.args.map((arg) => evaluateNumber(arg, values)),
      );
    case 'choose':
      return evaluate(expr.branches.find((branch) => holds(branch.when, values))?.then ?? expr.otherwise, values);
    case 'dot':
      return dotted(evaluateVector(expr.a, values), evaluateVector(expr.b, values));
    case 'cross':
      return crossed(evaluateVector(expr.a, values), evaluateVector(expr.b, values));
    case 'norm':
      return Math.hypot(...evaluateVector(expr.a, values));
    case 'product':
      return listOf(expr.key, values).reduce((product, entry) => product * entry, 1);
    case 'sum':
      return total(listOf(expr.key, values));
  }
}
