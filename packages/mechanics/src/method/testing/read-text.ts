import { type Branch, branch, type Comparison, type Expr, type FunctionName } from '../expr.ts';

/**
 * Reads a formula printed as text back into a tree by the rules that a reader of mathematics would use: powers before products and quotients, from left
 * to right, before sums. It shares no code with the printer.
 */
export function readText(text: string): Expr {
  const tokens = tokensOf(text);
  const reader = { tokens, at: 0 };
  const expr = readSum(reader);
  if (reader.at < tokens.length) throw new Error(`"${text}": "${tokens[reader.at]}" is left over`);
  return expr;
}

interface Reader {
  readonly tokens: readonly string[];
  at: number;
}

const FUNCTIONS: Readonly<Record<string, FunctionName>> = {
  sin: 'sin',
  cos: 'cos',
  tan: 'tan',
  arcsin: 'asin',
  arccos: 'acos',
  arctan: 'atan',
  arctan2: 'atan2',
  ln: 'ln',
  exp: 'exp',
  min: 'min',
  max: 'max',
  sgn: 'sign',
  '√': 'sqrt',
};
const COMPARE: Readonly<Record<string, Comparison>> = { '<': '<', '≤': '<=', '>': '>', '≥': '>=', '=': '=' };
const ENCLOSED: Readonly<Record<string, readonly [string, FunctionName]>> = {
  '|': ['|', 'abs'],
  '⌊': ['⌋', 'floor'],
  '⌈': ['⌉', 'ceil'],
};

function tokensOf(text: string): string[] {
  const found = text.match(/\d+(?:\.\d+)?|[A-Za-zα-ω]+\d?(?:[₀-₉]+|_[A-Za-z0-9,]+)?|[⁻⁰¹²³⁴-⁹]+|\S/gu) ?? [];
  return found;
}

const peek = (r: Reader): string => r.tokens[r.at] ?? '';

function take(r: Reader, wanted?: string): string {
  const token = peek(r);
  if (token === '' || (wanted !== undefined && token !== wanted))
    throw new Error(`"${r.tokens.join(' ')}": "${token}" where "${wanted ?? 'something'}" is wanted`);
  r.at++;
  return token;
}

function readSum(r: Reader): Expr {
  let left: Expr;
  if (peek(r) === '−') {
    take(r);
    left = { op: 'neg', a: readProduct(r) };
  } else left = readProduct(r);
  while (peek(r) === '+' || peek(r) === '−') {
    const op = take(r);
    const right = readProduct(r);
    left = op === '+' ? { op: 'add', args: [left, right] } : { op: 'sub', a: left, b: right };
  }
  return left;
}

function readProduct(r: Reader): Expr {
  let left = readPower(r);
  while (['·', '/', '⋅', '×'].includes(peek(r))) {
    const op = take(r);
    const right = readPower(r);
    if (op === '·') left = { op: 'mul', args: [left, right] };
    else left = { op: op === '/' ? 'div' : op === '⋅' ? 'dot' : 'cross', a: left, b: right };
  }
  return left;
}

const superscript = (token: string): number =>
  Number(token.replace(/[⁰¹²³⁴-⁹]/g, (d) => String('⁰¹²³⁴⁵⁶⁷⁸⁹'.indexOf(d))).replace('⁻', '-'));

function readPower(r: Reader): Expr {
  const base = readPrimary(r);
  if (/^[⁻⁰¹²³⁴-⁹]/.test(peek(r))) return { op: 'pow', a: base, b: { op: 'num', value: superscript(take(r)) } };
  if (peek(r) !== '^') return base;
  take(r);
  return { op: 'pow', a: base, b: readPrimary(r) };
}

function readList(r: Reader, close: string): Expr[] {
  const list = [readSum(r)];
  while (peek(r) === ';') {
    take(r);
    list.push(readSum(r));
  }
  take(r, close);
  return list;
}

function readCall(r: Reader, name: FunctionName): Expr {
  let exponent: Expr | undefined;
  if (peek(r) === '^') {
    take(r);
    exponent = readPrimary(r);
  }
  let args: Expr[];
  if (peek(r) === '(') {
    take(r);
    args = readList(r, ')');
  } else args = [readPrimary(r)];
  const called: Expr = { op: 'fn', name, args };
  return exponent === undefined ? called : { op: 'pow', a: called, b: exponent };
}

function readCases(r: Reader): Expr {
  const branches: Branch[] = [];
  for (;;) {
    const value = readSum(r);
    if (take(r) === 'otherwise') {
      take(r, '}');
      return { op: 'choose', branches, otherwise: value };
    }
    const a = readSum(r);
    const is = COMPARE[take(r)];
    if (is === undefined) throw new Error('no comparison');
    const b = readSum(r);
    take(r, ';');
    branches.push(branch({ a, is, b }, value));
  }
}

function readPrimary(r: Reader): Expr {
  const token = take(r);
  const enclosed = ENCLOSED[token];
  const name = FUNCTIONS[token];
  if (token === '(') {
    const inner = readSum(r);
    take(r, ')');
    return inner;
  }
  if (token === '{') return readCases(r);
  if (token === '‖') {
    const a = readSum(r);
    take(r, '‖');
    return { op: 'norm', a };
  }
  if (enclosed) return { op: 'fn', name: enclosed[1], args: readList(r, enclosed[0]) };
  if (name) return readCall(r, name);
  if (token === '∏' || token === '∑')
    return { op: token === '∏' ? 'product' : 'sum', key: take(r).replace(/[_,][jk]$/, '') };
  if (/^\d/.test(token)) return { op: 'num', value: Number(token) };
  if (/^[A-Za-zα-ω]/u.test(token)) return { op: 'sym', key: token };
  throw new Error(`"${r.tokens.join(' ')}": "${token}" cannot begin a term`);
}
