import type { Comparison, Expr, FunctionName } from './expr.ts';
import type { Step } from './method.ts';
import { plainest, splitSign } from './tree.ts';

/** One branch of a choice, already written; the last one has no condition. */
export interface WrittenCase {
  readonly value: string;
  readonly when?: { readonly a: string; readonly is: Comparison; readonly b: string };
}

/** How one form of print writes the parts of a formula. Arguments that are strings are written already and need no more brackets. */
export interface Writer {
  /** Fractions stand one above the other and need no brackets around their parts. */
  readonly stacked: boolean;
  symbol(key: string, index: number | undefined): string;
  /** `as` is how the number is to be printed when not as a decimal. The value is not negative. */
  number(value: number, as: string | undefined): string;
  plus: string;
  minus: string;
  negative(body: string): string;
  /** `clear`: a visible sign is needed, since figures follow. */
  times(clear: boolean): string;
  over(a: string, b: string): string;
  power(base: string, exponent: string, tree: Expr): string;
  /** Power of a called function, where the form puts the exponent behind the name: sin² x. */
  calledPower?(name: FunctionName, exponent: string, args: readonly string[]): string;
  call(name: FunctionName, args: readonly string[], bare: boolean): string;
  between(a: string, op: 'dot' | 'cross', b: string): string;
  norm(a: string): string;
  all(op: 'product' | 'sum', key: string): string;
  cases(cases: readonly WrittenCase[]): string;
  bracket(inner: string): string;
  join(parts: readonly string[]): string;
}

/** How tightly a tree holds together; brackets go around it where more is wanted. */
const CASES = 0;
const SUM = 1;
const OPERATOR = 2;
const PRODUCT = 3;
const BARE_CALL = 4;
const FACTOR = 5;
const ATOM = 6;

const WIDE_NUMBER = /[e×·]/;

function isBare(args: readonly Expr[]): boolean {
  const [arg, ...more] = args;
  if (arg === undefined || more.length > 0) return false;
  return arg.op === 'sym' || (arg.op === 'num' && !splitSign(arg).negative && hold(arg, false) === ATOM);
}

/** Functions whose own sign encloses the argument, in both forms. */
const ENCLOSED: readonly FunctionName[] = ['abs', 'floor', 'ceil'];

function holdOfCall(name: FunctionName, args: readonly Expr[], stacked: boolean): number {
  if (ENCLOSED.includes(name) || (stacked && name === 'sqrt')) return ATOM;
  if (stacked && name === 'exp') return FACTOR;
  return isBare(args) ? BARE_CALL : FACTOR;
}

function hold(tree: Expr, stacked: boolean): number {
  const { negative, body } = splitSign(tree);
  if (negative) return SUM;
  switch (body.op) {
    case 'num':
      if (body.as?.includes('/')) return stacked ? FACTOR : PRODUCT;
      return WIDE_NUMBER.test(body.as ?? String(body.value)) ? PRODUCT : ATOM;
    case 'sym':
      return ATOM;
    case 'add':
    case 'sub':
    case 'neg':
      return SUM;
    case 'mul':
      return PRODUCT;
    case 'div':
      return stacked ? FACTOR : PRODUCT;
    case 'pow':
      return FACTOR;
    case 'fn':
      return holdOfCall(body.name, body.args, stacked);
    case 'choose':
      return stacked ? CASES : ATOM;
    case 'norm':
      return ATOM;
    default:
      return OPERATOR;
  }
}

/** Whether the print begins with a minus sign. */
function leadsWithMinus(tree: Expr): boolean {
  const { negative, body } = splitSign(tree);
  if (negative) return true;
  if (body.op === 'add') return body.args[0] !== undefined && leadsWithMinus(body.args[0]);
  return body.op === 'sub' && leadsWithMinus(body.a);
}

function leadsWithFigure(tree: Expr): boolean {
  const expr = plainest(tree);
  if (expr.op === 'num') return expr.as === undefined || /^\d/.test(expr.as);
  if (expr.op === 'mul') return expr.args[0] !== undefined && leadsWithFigure(expr.args[0]);
  return (expr.op === 'pow' || expr.op === 'div') && leadsWithFigure(expr.a);
}

/**
 * Writes a tree in one form of print, with the fewest brackets that keep its meaning.
 * @throws RangeError when the tree names a value that has no symbol.
 */
export function writeExpr(tree: Expr, writer: Writer): string {
  const { negative, body } = splitSign(tree);
  return negative ? writer.negative(within(body, PRODUCT, writer)) : writeBody(body, writer);
}

function within(tree: Expr, least: number, writer: Writer): string {
  const inner = writeExpr(tree, writer);
  return hold(tree, writer.stacked) >= least ? inner : writer.bracket(inner);
}

function writeBody(expr: Expr, writer: Writer): string {
  switch (expr.op) {
    case 'num':
      return writer.number(expr.value, expr.as);
    case 'sym':
      return writer.symbol(expr.key, expr.index);
    case 'add':
      return writer.join(expr.args.flatMap((arg, i) => (i === 0 ? [within(arg, SUM, writer)] : term(arg, writer))));
    case 'sub':
      return writer.join([
        within(expr.a, SUM, writer),
        writer.minus,
        within(expr.b, leadsWithMinus(expr.b) ? ATOM : OPERATOR, writer),
      ]);
    case 'neg':
      return writer.negative(within(expr.a, PRODUCT, writer));
    case 'mul':
      return writeProduct(expr.args, writer);
    case 'div':
      return writer.stacked
        ? writer.over(writeExpr(expr.a, writer), writeExpr(expr.b, writer))
        : writer.over(
            plainest(expr.a).op === 'div' ? writer.bracket(writeExpr(expr.a, writer)) : within(expr.a, PRODUCT, writer),
            within(expr.b, BARE_CALL, writer),
          );
    case 'pow':
      return writePower(expr.a, expr.b, writer);
    case 'fn':
      return writeCall(expr.name, expr.args, isBare(expr.args), writer);
    case 'choose':
      return writer.cases([
        ...expr.branches.map(({ when, then }) => ({
          value: writeExpr(then, writer),
          when: { a: writeExpr(when.a, writer), is: when.is, b: writeExpr(when.b, writer) },
        })),
        { value: writeExpr(expr.otherwise, writer) },
      ]);
    case 'dot':
    case 'cross':
      return writer.between(within(expr.a, BARE_CALL, writer), expr.op, within(expr.b, BARE_CALL, writer));
    case 'norm':
      return writer.norm(writeExpr(expr.a, writer));
    case 'product':
    case 'sum':
      return writer.all(expr.op, expr.key);
  }
}

/** A term of a sum that is not the first, with its sign. */
function term(tree: Expr, writer: Writer): string[] {
  const { negative, body } = splitSign(tree);
  if (negative) return [writer.minus, within(body, leadsWithMinus(body) ? ATOM : OPERATOR, writer)];
  return [writer.plus, within(body, leadsWithMinus(body) ? ATOM : SUM, writer)];
}

/** Factors of a product, products among them opened. */
function factorsOf(args: readonly Expr[]): readonly Expr[] {
  return args.flatMap((arg) => {
    const factor = plainest(arg);
    return factor.op === 'mul' && !splitSign(factor).negative ? factorsOf(factor.args) : [factor];
  });
}

/** A called function before the end of a product has brackets, so that its argument ends there. */
function writeFactor(factor: Expr, last: boolean, writer: Writer): string {
  if (factor.op === 'fn' && hold(factor, writer.stacked) === BARE_CALL)
    return writeCall(factor.name, factor.args, last, writer);
  if (factor.op === 'num' && factor.as === undefined && !splitSign(factor).negative) return writeExpr(factor, writer);
  return within(factor, FACTOR, writer);
}

function writeProduct(args: readonly Expr[], writer: Writer): string {
  const factors = factorsOf(args);
  const parts = factors.flatMap((factor, i) => {
    const before = factors[i - 1];
    const written = writeFactor(factor, i === factors.length - 1, writer);
    if (before === undefined) return [written];
    const mixed = before.op === 'num' && factor.op === 'div';
    return [writer.times(mixed || leadsWithFigure(factor)), written];
  });
  return writer.join(parts);
}

function writePower(base: Expr, exponent: Expr, writer: Writer): string {
  const raised = writeExpr(exponent, writer);
  const called = plainest(base);
  const plainExponent = exponent.op === 'num' && Number.isInteger(exponent.value) && exponent.value >= 2;
  const named = called.op === 'fn' && !ENCLOSED.includes(called.name) && !['sqrt', 'exp'].includes(called.name);
  if (writer.calledPower && called.op === 'fn' && named && plainExponent)
    return writer.calledPower(
      called.name,
      raised,
      called.args.map((arg) => writeExpr(arg, writer)),
    );
  return writer.power(within(base, ATOM, writer), raised, exponent);
}

function writeCall(name: FunctionName, args: readonly Expr[], bare: boolean, writer: Writer): string {
  return writer.call(
    name,
    args.map((arg) => writeExpr(arg, writer)),
    bare,
  );
}

/** Both sides of a step as trees: the value and what it equals, or the two sides that agree. */
export function sidesOf(step: Step): { readonly left: Expr; readonly right: Expr } {
  return 'is' in step ? { left: { op: 'sym', key: step.key }, right: step.is } : { left: step.left, right: step.right };
}
