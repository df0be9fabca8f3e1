import type { Expr, FunctionName } from './expr.ts';
import type { Step } from './method.ts';
import { countingLetter, type Names, symbolParts } from './names.ts';
import { COMPARISONS, digitsOf, ENCLOSING, FUNCTION_NAMES } from './text.ts';
import { sidesOf, type Writer, type WrittenCase, writeExpr } from './write.ts';

/** How a formula stands on the page. */
export interface MathMLOptions {
  /** On a line of its own, or in a line of text. */
  readonly display: 'block' | 'inline';
}

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escapeXml = (text: string): string => text.replace(/[&<>"]/g, (c) => ESCAPES[c] ?? c);

/** Between a number or symbol and the next one: thin, 1/6 em (SI Brochure, 9th edition, 2019, 5.4.1: a space or a half-high dot). */
const TIMES = '<mo lspace="0" rspace="0.1667em">\u2062</mo>';
const DOT = '<mo>⋅</mo>';
const APPLY = '<mo>\u2061</mo>';
const APPLY_BARE = '<mo lspace="0" rspace="0.1667em">\u2061</mo>';

const row = (...parts: readonly string[]): string => `<mrow>${parts.join('')}</mrow>`;
const operator = (sign: string): string => `<mo>${escapeXml(sign)}</mo>`;
const enclosed = (open: string, inner: string, close: string): string =>
  row(`<mo form="prefix">${open}</mo>`, inner, `<mo form="postfix">${close}</mo>`);

/** One letter is italic by itself and several are upright, as ISO 80000-1:2022 wants quantities and words. */
function letters(text: string): string {
  const [first, second, ...more] = [...text];
  if (first === 'Δ' && second !== undefined && more.length === 0)
    return row('<mi mathvariant="normal">Δ</mi>', `<mi>${escapeXml(second)}</mi>`);
  return `<mi>${escapeXml(text)}</mi>`;
}

/** Subscripts that number or describe are upright; axes and counters are italic (ISO 80000-1:2022, 7.1). */
function subscript(text: string): string {
  if (/^\d+$/.test(text)) return `<mn>${text}</mn>`;
  const upright = [...text].length === 1 && !/[ijknxyz]/.test(text);
  return `<mi${upright ? ' mathvariant="normal"' : ''}>${escapeXml(text)}</mi>`;
}

function withSubscripts(base: string, subs: readonly string[]): string {
  if (subs.length === 0) return base;
  const [only] = subs;
  const written = subs.map(subscript).join('<mo>,</mo>');
  return `<msub>${base}${subs.length === 1 && only !== undefined ? written : row(written)}</msub>`;
}

function symbol(names: Names, key: string, index?: number): string {
  const { base, subs, vector } = symbolParts(names, key, index);
  const letter = letters(base);
  return withSubscripts(vector ? `<mover>${letter}<mo stretchy="false">→</mo></mover>` : letter, subs);
}

function figure(text: string): string {
  if (/^\d[\d.\s]*$/.test(text)) return `<mn>${text}</mn>`;
  const mixed = /^(\d[\d.]*)(\D.*)$/.exec(text);
  return mixed ? row(`<mn>${mixed[1]}</mn>`, letters(mixed[2] ?? '')) : letters(text);
}

function number(value: number, as: string | undefined): string {
  if (as !== undefined) {
    const [above = '', below] = as.split('/');
    return below === undefined ? figure(as) : `<mfrac>${figure(above)}${figure(below)}</mfrac>`;
  }
  const { digits, tens } = digitsOf(value);
  if (tens === null) return `<mn>${digits}</mn>`;
  const exponent = tens < 0 ? row(operator('−'), `<mn>${-tens}</mn>`) : `<mn>${tens}</mn>`;
  return row(`<mn>${digits}</mn>`, DOT, `<msup><mn>10</mn>${exponent}</msup>`);
}

const functionName = (name: FunctionName): string => `<mi>${FUNCTION_NAMES[name]}</mi>`;
const argumentList = (args: readonly string[]): string => enclosed('(', args.join('<mo>;</mo>'), ')');

function call(name: FunctionName, args: readonly string[], bare: boolean): string {
  const inner = args.join('<mo>;</mo>');
  const signs = ENCLOSING[name];
  if (signs) return enclosed(signs[0], inner, signs[1]);
  if (name === 'sqrt') return `<msqrt>${inner}</msqrt>`;
  if (name === 'exp') return `<msup><mi mathvariant="normal">e</mi>${row(inner)}</msup>`;
  return bare ? row(functionName(name), APPLY_BARE, inner) : row(functionName(name), APPLY, argumentList(args));
}

function casesTable(cases: readonly WrittenCase[]): string {
  const lines = cases.map(({ value, when }) => {
    const condition = when
      ? row('<mtext>if\u00a0</mtext>', when.a, operator(COMPARISONS[when.is]), when.b)
      : '<mtext>otherwise</mtext>';
    return `<mtr><mtd class="case">${value}</mtd><mtd class="case">${condition}</mtd></mtr>`;
  });
  return row('<mo form="prefix" fence="true" stretchy="true">{</mo>', `<mtable>${lines.join('')}</mtable>`);
}

function listSign(names: Names, op: 'product' | 'sum', key: string): string {
  const parts = symbolParts(names, key);
  const letter = countingLetter(parts);
  const sign = `<mo>${op === 'product' ? '∏' : '∑'}</mo>`;
  return row(
    `<munder>${sign}<mi>${letter}</mi></munder>`,
    withSubscripts(letters(parts.base), [...parts.subs, letter]),
  );
}

const mathWriter = (names: Names): Writer => ({
  stacked: true,
  symbol: (key, index) => symbol(names, key, index),
  number,
  plus: operator('+'),
  minus: operator('−'),
  negative: (body) => row('<mo form="prefix">−</mo>', body),
  times: (clear) => (clear ? DOT : TIMES),
  over: (a, b) => `<mfrac>${row(a)}${row(b)}</mfrac>`,
  power: (base, exponent) => `<msup>${row(base)}${row(exponent)}</msup>`,
  calledPower: (name, exponent, args) =>
    row(`<msup>${functionName(name)}${row(exponent)}</msup>`, APPLY, argumentList(args)),
  call,
  between: (a, op, b) => row(a, operator(op === 'dot' ? '·' : '×'), b),
  norm: (a) => enclosed('‖', a, '‖'),
  all: (op, key) => listSign(names, op, key),
  cases: casesTable,
  bracket: (inner) => enclosed('(', inner, ')'),
  join: (parts) => row(...parts),
});

const math = (inner: string, { display }: MathMLOptions): string =>
  `<math xmlns="http://www.w3.org/1998/Math/MathML" display="${display}">${row(inner)}</math>`;

/**
 * A tree as MathML Core (W3C): fractions stacked, single letters italic, names of functions upright.
 * @param expr The tree.
 * @param names Symbols of the values it names; the parameters of a method will do.
 * @returns One `math` element; text in it is escaped.
 * @throws RangeError when the tree names a value that has no symbol.
 */
export function toMathML(expr: Expr, names: Names, options: MathMLOptions = { display: 'inline' }): string {
  return math(writeExpr(expr, mathWriter(names)), options);
}

/** A step as an equation in MathML, on a line of its own unless told otherwise. Symbols and errors as in `toMathML`. */
export function stepMathML(step: Step, names: Names, options: MathMLOptions = { display: 'block' }): string {
  const writer = mathWriter(names);
  const { left, right } = sidesOf(step);
  return math(`${writeExpr(left, writer)}${operator('=')}${writeExpr(right, writer)}`, options);
}
