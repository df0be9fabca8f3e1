import { type Dimension, dimensionOf } from '@oddwheel/quantity/kinds';
import { evaluateNumber } from './evaluate.ts';
import type { Expr, FunctionName } from './expr.ts';
import type { Param, Params } from './method.ts';
import { toText } from './text.ts';
import { keysIn } from './tree.ts';

/** A tree mixes dimensions; the message names both and the part of the formula. */
export class DimensionError extends Error {
  override readonly name = 'DimensionError';
}

const PLAIN: Dimension = [0, 0, 0, 0];
const BASE_UNITS = ['m', 'kg', 's', 'K'];

/** A literal zero can be added to and compared with anything. */
type Found = Dimension | 'any';

const close = (a: number, b: number): boolean => Math.abs(a - b) < 1e-9;

/** Whether two dimensions are the same. Exponents may be broken numbers, as in a square root. */
export function sameDimension(a: Dimension, b: Dimension): boolean {
  return a.every((exponent, i) => close(exponent, b[i] ?? 0));
}

/** A dimension in base units, e.g. "kg·m^2·s^-2", or "plain number". */
export function showDimension(dimension: Dimension): string {
  const order = [1, 0, 2, 3];
  const shown = order
    .map((i) => ({ unit: BASE_UNITS[i], exponent: dimension[i] ?? 0 }))
    .filter(({ exponent }) => !close(exponent, 0))
    .map(({ unit, exponent }) => (close(exponent, 1) ? unit : `${unit}^${Number(exponent.toFixed(4))}`));
  return shown.length === 0 ? 'plain number' : shown.join('·');
}

/** Dimension of a named value; undefined for words. */
export function dimensionOfParam(param: Param): Dimension | undefined {
  if (param.form === 'integer') return PLAIN;
  return param.form === 'choice' || param.form === 'text' ? undefined : dimensionOf(param.kind);
}

const fixed = (found: Found): Dimension => (found === 'any' ? PLAIN : found);
const combine = (a: Found, b: Found, sign: 1 | -1): Dimension => {
  const [al, am, at, ak] = fixed(a);
  const [bl, bm, bt, bk] = fixed(b);
  return [al + sign * bl, am + sign * bm, at + sign * bt, ak + sign * bk];
};
const raise = ([l, m, t, k]: Dimension, n: number): Dimension => [l * n, m * n, t * n, k * n];

/** What each function wants of its arguments and gives back. */
const FUNCTION_RULES: Readonly<
  Record<FunctionName, 'plain' | 'root' | 'keep' | 'like' | 'like-to-plain' | 'any-to-plain'>
> = {
  sqrt: 'root',
  sin: 'plain',
  cos: 'plain',
  tan: 'plain',
  asin: 'plain',
  acos: 'plain',
  atan: 'plain',
  atan2: 'like-to-plain',
  ln: 'plain',
  exp: 'plain',
  abs: 'keep',
  min: 'like',
  max: 'like',
  floor: 'plain',
  ceil: 'plain',
  sign: 'any-to-plain',
};

/**
 * Dimension of a tree, checked on the way: terms of a sum must be alike, angles and logarithms want plain numbers. Number literals are plain
 * numbers, save that 0 goes with everything.
 * @param expr The tree.
 * @param params The named values with their kinds.
 * @throws DimensionError naming both dimensions, or the key that has none.
 */
export function dimensionOfExpr(expr: Expr, params: Params): Dimension {
  return fixed(find(expr, params));
}

function find(expr: Expr, params: Params): Found {
  switch (expr.op) {
    case 'num':
      return expr.value === 0 ? 'any' : PLAIN;
    case 'sym':
    case 'sum':
      return ofKey(expr.key, params);
    case 'product': {
      const entry = ofKey(expr.key, params);
      if (!sameDimension(entry, PLAIN))
        throw new DimensionError(
          `The product over "${expr.key}" (${showDimension(entry)}) has no dimension of its own; its entries must be plain numbers.`,
        );
      return PLAIN;
    }
    case 'add':
      return alike(expr.args, params, 'added');
    case 'sub':
      return alike([expr.a, expr.b], params, 'subtracted');
    case 'mul':
      return expr.args.map((arg) => find(arg, params)).reduce<Dimension>((a, b) => combine(a, b, 1), PLAIN);
    case 'dot':
    case 'cross':
      return combine(find(expr.a, params), find(expr.b, params), 1);
    case 'div':
      return combine(find(expr.a, params), find(expr.b, params), -1);
    case 'neg':
    case 'norm':
      return find(expr.a, params);
    case 'pow':
      return ofPower(expr.a, expr.b, params);
    case 'fn':
      return ofFunction(expr.name, expr.args, params);
    case 'choose':
      for (const { when } of expr.branches) alike([when.a, when.b], params, 'compared');
      return alike([...expr.branches.map((branch) => branch.then), expr.otherwise], params, 'cases of one value');
  }
}

function ofKey(key: string, params: Params): Dimension {
  const param = Object.hasOwn(params, key) ? params[key] : undefined;
  if (param === undefined) throw new DimensionError(`There is no value "${key}".`);
  const dimension = dimensionOfParam(param);
  if (dimension === undefined) throw new DimensionError(`The value "${key}" is a word; a formula cannot use it.`);
  return dimension;
}

function alike(terms: readonly Expr[], params: Params, what: string): Found {
  let known: { readonly term: Expr; readonly dimension: Dimension } | undefined;
  for (const term of terms) {
    const dimension = find(term, params);
    if (dimension === 'any') continue;
    if (known && !sameDimension(known.dimension, dimension))
      throw new DimensionError(
        `${toText(known.term, params)} (${showDimension(known.dimension)}) and ${toText(term, params)} (${showDimension(dimension)}) cannot be ${what}.`,
      );
    known ??= { term, dimension };
  }
  return known?.dimension ?? 'any';
}

function wantPlain(expr: Expr, params: Params, where: string): void {
  const dimension = fixed(find(expr, params));
  if (!sameDimension(dimension, PLAIN))
    throw new DimensionError(`${where} wants a plain number; ${toText(expr, params)} is ${showDimension(dimension)}.`);
}

function ofPower(base: Expr, exponent: Expr, params: Params): Dimension {
  wantPlain(exponent, params, 'An exponent');
  const dimension = fixed(find(base, params));
  if (sameDimension(dimension, PLAIN)) return PLAIN;
  if (keysIn(exponent).size > 0)
    throw new DimensionError(
      `${toText(base, params)} (${showDimension(dimension)}) is raised to ${toText(exponent, params)}; only a fixed number keeps the dimension known.`,
    );
  return raise(dimension, evaluateNumber(exponent, {}));
}

function ofFunction(name: FunctionName, args: readonly Expr[], params: Params): Found {
  const rule = FUNCTION_RULES[name];
  if (rule === 'plain') for (const arg of args) wantPlain(arg, params, `"${name}"`);
  if (rule === 'plain') return PLAIN;
  const dimension = alike(args, params, `arguments of one "${name}"`);
  if (rule === 'root') return dimension === 'any' ? 'any' : raise(dimension, 1 / 2);
  return rule === 'keep' || rule === 'like' ? dimension : PLAIN;
}
