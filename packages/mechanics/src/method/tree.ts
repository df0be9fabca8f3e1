import type { Expr } from './expr.ts';

/** The parts of a tree, conditions of cases included. */
function partsOf(expr: Expr): readonly Expr[] {
  switch (expr.op) {
    case 'num':
    case 'sym':
    case 'product':
    case 'sum':
      return [];
    case 'add':
    case 'mul':
    case 'fn':
      return expr.args;
    case 'neg':
    case 'norm':
      return [expr.a];
    case 'choose':
      return [...expr.branches.flatMap((branch) => [branch.when.a, branch.when.b, branch.then]), expr.otherwise];
    default:
      return [expr.a, expr.b];
  }
}

/** Keys of all values that a tree names, in the order of first use. */
export function keysIn(expr: Expr): ReadonlySet<string> {
  const keys = new Set<string>();
  const visit = (part: Expr): void => {
    if (part.op === 'sym' || part.op === 'product' || part.op === 'sum') keys.add(part.key);
    partsOf(part).forEach(visit);
  };
  visit(expr);
  return keys;
}

/** A sum or product of one term is that term; of none it is 0 or 1. */
export function plainest(expr: Expr): Expr {
  if (expr.op !== 'add' && expr.op !== 'mul') return expr;
  const [first, ...more] = expr.args;
  if (first === undefined) return { op: 'num', value: expr.op === 'add' ? 0 : 1 };
  return more.length === 0 ? plainest(first) : expr;
}

/**
 * A tree as a sign and a body: −2·x is minus and 2·x. Only signs in front are taken out, so the body may hold others.
 */
export function splitSign(tree: Expr): { readonly negative: boolean; readonly body: Expr } {
  const expr = plainest(tree);
  if (expr.op === 'neg') return { negative: true, body: plainest(expr.a) };
  if (expr.op === 'num' && expr.as === undefined && (expr.value < 0 || Object.is(expr.value, -0)))
    return { negative: true, body: { op: 'num', value: -expr.value } };
  if (expr.op === 'mul') {
    const [first, ...rest] = expr.args;
    const lead = first && splitSign(first);
    if (lead?.negative) return { negative: true, body: { op: 'mul', args: [lead.body, ...rest] } };
  }
  if (expr.op === 'div') {
    const lead = splitSign(expr.a);
    if (lead.negative) return { negative: true, body: { op: 'div', a: lead.body, b: expr.b } };
  }
  return { negative: false, body: expr };
}
