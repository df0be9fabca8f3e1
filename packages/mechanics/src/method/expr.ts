/**
 * Formulas as small trees. One tree is evaluated, checked for dimension, and printed as MathML or text, so a shown
 * formula cannot drift from the computed one.
 */

export type FunctionName =
  | 'sqrt'
  | 'sin'
  | 'cos'
  | 'tan'
  | 'asin'
  | 'acos'
  | 'atan'
  | 'atan2'
  | 'ln'
  | 'exp'
  | 'abs'
  | 'min'
  | 'max'
  | 'floor'
  | 'ceil'
  | 'sign';

export type Comparison = '<' | '<=' | '>' | '>=' | '=';

export type Expr =
  | {
      readonly op: 'num';
      readonly value: number;
      /** How it is printed when not as a decimal: "π", "1/3". */
      readonly as?: string;
    }
  /** A named value of the method: an input, an intermediate or an output. `index` picks one entry of a list or vector. */
  | { readonly op: 'sym'; readonly key: string; readonly index?: number }
  | { readonly op: 'add' | 'mul'; readonly args: readonly Expr[] }
  | { readonly op: 'sub' | 'div' | 'pow'; readonly a: Expr; readonly b: Expr }
  | { readonly op: 'neg'; readonly a: Expr }
  | { readonly op: 'fn'; readonly name: FunctionName; readonly args: readonly Expr[] }
  | {
      readonly op: 'choose';
      readonly branches: readonly Branch[];
      readonly otherwise: Expr;
    }
  /** Scalar product, vector product and norm of three-vectors; `vec` names a vector value. */
  | { readonly op: 'dot'; readonly a: Expr; readonly b: Expr }
  | { readonly op: 'cross'; readonly a: Expr; readonly b: Expr }
  | { readonly op: 'norm'; readonly a: Expr }
  /** Product or sum over all entries of a list value. */
  | { readonly op: 'product' | 'sum'; readonly key: string };

export interface Condition {
  readonly a: Expr;
  readonly is: Comparison;
  readonly b: Expr;
}

/** A value that a tree can name. */
export type ExprValue = number | readonly number[];

const lift = (x: Expr | number | string): Expr =>
  typeof x === 'number' ? { op: 'num', value: x } : typeof x === 'string' ? { op: 'sym', key: x } : x;

/** A tree, a number, or the key of a named value. */
export type Term = Expr | number | string;

export const num = (value: number, as?: string): Expr =>
  as === undefined ? { op: 'num', value } : { op: 'num', value, as };
export const PI: Expr = num(Math.PI, 'π');
export const sym = (key: string, index?: number): Expr =>
  index === undefined ? { op: 'sym', key } : { op: 'sym', key, index };
export const add = (...args: Term[]): Expr => ({ op: 'add', args: args.map(lift) });
export const sub = (a: Term, b: Term): Expr => ({ op: 'sub', a: lift(a), b: lift(b) });
export const mul = (...args: Term[]): Expr => ({ op: 'mul', args: args.map(lift) });
export const div = (a: Term, b: Term): Expr => ({ op: 'div', a: lift(a), b: lift(b) });
export const pow = (a: Term, b: Term): Expr => ({ op: 'pow', a: lift(a), b: lift(b) });
export const neg = (a: Term): Expr => ({ op: 'neg', a: lift(a) });
export const fn = (name: FunctionName, ...args: Term[]): Expr => ({ op: 'fn', name, args: args.map(lift) });
export const dot = (a: Term, b: Term): Expr => ({ op: 'dot', a: lift(a), b: lift(b) });
export const cross = (a: Term, b: Term): Expr => ({ op: 'cross', a: lift(a), b: lift(b) });
export const norm = (a: Term): Expr => ({ op: 'norm', a: lift(a) });
export const product = (key: string): Expr => ({ op: 'product', key });
export const sum = (key: string): Expr => ({ op: 'sum', key });
export const when = (a: Term, is: Comparison, b: Term): Condition => ({ a: lift(a), is, b: lift(b) });
/** One case of a choice: under this condition, this value. */
export interface Branch<T extends Term = Expr> {
  readonly when: Condition;
  readonly then: T;
}

export const branch = (condition: Condition, value: Term): Branch => {
  // biome-ignore lint/suspicious/noThenProperty: a tree, never a function, so nothing can await it
  return { when: condition, then: lift(value) };
};
/** The value of the first branch whose condition holds, else `otherwise`. */
export const choose = (branches: readonly Branch<Term>[], otherwise: Term): Expr => ({
  op: 'choose',
  branches: branches.map((one) => branch(one.when, one.then)),
  otherwise: lift(otherwise),
});
