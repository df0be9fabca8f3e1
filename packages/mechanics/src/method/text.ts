import type { Comparison, Expr, FunctionName } from './expr.ts';
import type { Step } from './method.ts';
import { countingLetter, type Names, symbolParts } from './names.ts';
import { sidesOf, type Writer, writeExpr } from './write.ts';

/** Names of functions as printed in formulas (ISO 80000-2:2019, clauses 13 and 14). */
export const FUNCTION_NAMES: Readonly<Record<FunctionName, string>> = {
  sqrt: '√',
  sin: 'sin',
  cos: 'cos',
  tan: 'tan',
  asin: 'arcsin',
  acos: 'arccos',
  atan: 'arctan',
  atan2: 'arctan2',
  ln: 'ln',
  exp: 'exp',
  abs: 'abs',
  min: 'min',
  max: 'max',
  floor: 'floor',
  ceil: 'ceil',
  sign: 'sgn',
};

/** Signs that enclose an argument. */
export const ENCLOSING: Readonly<Partial<Record<FunctionName, readonly [string, string]>>> = {
  abs: ['|', '|'],
  floor: ['⌊', '⌋'],
  ceil: ['⌈', '⌉'],
};

/** Comparisons as printed. */
export const COMPARISONS: Readonly<Record<Comparison, string>> = { '<': '<', '<=': '≤', '>': '>', '>=': '≥', '=': '=' };

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const SUBSCRIPTS = '₀₁₂₃₄₅₆₇₈₉';

const raised = (digits: string): string => digits.replace(/\d/g, (d) => SUPERSCRIPTS[Number(d)] ?? d).replace('-', '⁻');

/** Digits of a literal and its power of ten, where it is written with one. */
export function digitsOf(value: number): { readonly digits: string; readonly tens: number | null } {
  const [digits = '', tens] = String(value).split('e');
  return { digits, tens: tens === undefined ? null : Number(tens) };
}

function textNumber(value: number, as: string | undefined): string {
  if (as !== undefined) return as;
  const { digits, tens } = digitsOf(value);
  return tens === null ? digits : `${digits}·10${raised(String(tens))}`;
}

function textSymbol(names: Names, key: string, index?: number): string {
  const { base, subs } = symbolParts(names, key, index);
  const sub = subs.join(',');
  if (sub === '') return base;
  return `${base}${/^\d+$/.test(sub) ? sub.replace(/\d/g, (d) => SUBSCRIPTS[Number(d)] ?? d) : `_${sub}`}`;
}

function textPower(base: string, exponent: string, tree: Expr): string {
  if (tree.op === 'num' && tree.as === undefined && /^-?\d+$/.test(String(tree.value)))
    return `${base}${raised(String(tree.value))}`;
  return `${base}^${tree.op === 'sym' ? exponent : `(${exponent})`}`;
}

function textCall(name: FunctionName, args: readonly string[], bare: boolean): string {
  const enclosing = ENCLOSING[name];
  const inner = args.join('; ');
  if (enclosing) return `${enclosing[0]}${inner}${enclosing[1]}`;
  if (!bare) return `${FUNCTION_NAMES[name]}(${inner})`;
  return `${FUNCTION_NAMES[name]}${name === 'sqrt' ? '' : ' '}${inner}`;
}

const textWriter = (names: Names): Writer => ({
  stacked: false,
  symbol: (key, index) => textSymbol(names, key, index),
  number: textNumber,
  plus: ' + ',
  minus: ' − ',
  negative: (body) => `−${body}`,
  times: () => '·',
  over: (a, b) => `${a} / ${b}`,
  power: textPower,
  call: textCall,
  between: (a, op, b) => `${a} ${op === 'dot' ? '⋅' : '×'} ${b}`,
  norm: (a) => `‖${a}‖`,
  all: (op, key) => {
    const parts = symbolParts(names, key);
    const sub = [...parts.subs, countingLetter(parts)].join(',');
    return `${op === 'product' ? '∏' : '∑'} ${parts.base}_${sub}`;
  },
  cases: (cases) => {
    const lines = cases.map(({ value, when }) =>
      when ? `${value} if ${when.a} ${COMPARISONS[when.is]} ${when.b}` : `${value} otherwise`,
    );
    return `{ ${lines.join('; ')} }`;
  },
  bracket: (inner) => `(${inner})`,
  join: (parts) => parts.join(''),
});

/**
 * A tree on one line of plain Unicode text: "2·C·cos α / p".
 * @param expr The tree.
 * @param names Symbols of the values it names; the parameters of a method will do.
 * @throws RangeError when the tree names a value that has no symbol.
 */
export function toText(expr: Expr, names: Names): string {
  return writeExpr(expr, textWriter(names));
}

/** A step as an equation on one line of text. Symbols and errors as in `toText`. */
export function stepText(step: Step, names: Names): string {
  const { left, right } = sidesOf(step);
  return `${toText(left, names)} = ${toText(right, names)}`;
}
