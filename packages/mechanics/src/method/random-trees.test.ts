import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluateNumber } from './evaluate.ts';
import {
  branch,
  type Comparison,
  choose,
  cross,
  dot,
  type Expr,
  type FunctionName,
  fn,
  norm,
  num,
  PI,
  product,
  sum,
  sym,
} from './expr.ts';
import { toMathML } from './mathml.ts';
import { toSentence } from './sentence.ts';
import { meaning } from './testing/meaning.ts';
import { readText } from './testing/read-text.ts';
import { checkMathML, readXml, seenText } from './testing/xml.ts';
import { toText } from './text.ts';

/** A random tree, and the same formula as plain arithmetic of the language. */
interface Both {
  readonly expr: Expr;
  readonly direct: (values: Readonly<Record<string, number>>) => number;
}

/** Symbols of the values that random trees name. */
const RANDOM_NAMES = {
  x: { symbol: 'x', form: 'value' },
  a: { symbol: 'α', form: 'value' },
  d: { symbol: 'd_1', form: 'value' },
  f: { symbol: 'F_max', form: 'value' },
  r: { symbol: 'r', form: 'vector' },
  q: { symbol: 'Q_2', form: 'vector' },
  list: { symbol: 'i', form: 'list' },
} as const;

const NUMBERS: readonly Expr[] = [
  num(2),
  num(0.5),
  num(-3),
  num(10),
  num(1e-9),
  num(2.5e21),
  PI,
  num(1 / 3, '1/3'),
  num(0),
];
const EXPONENTS = [2, 3, -1, 0.5, -2];
const ONE_ARGUMENT = [
  'sqrt',
  'sin',
  'cos',
  'tan',
  'asin',
  'acos',
  'atan',
  'ln',
  'exp',
  'abs',
  'floor',
  'ceil',
  'sign',
] as const;
const COMPARISONS: readonly Comparison[] = ['<', '<=', '>', '>=', '='];

const compare = (a: number, is: Comparison, b: number): boolean =>
  (is === '<' && a < b) ||
  (is === '<=' && a <= b) ||
  (is === '>' && a > b) ||
  (is === '>=' && a >= b) ||
  (is === '=' && a === b);

const plain: Readonly<Record<(typeof ONE_ARGUMENT)[number], (x: number) => number>> = {
  sqrt: Math.sqrt,
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
  asin: Math.asin,
  acos: Math.acos,
  atan: Math.atan,
  ln: Math.log,
  exp: Math.exp,
  abs: Math.abs,
  floor: Math.floor,
  ceil: Math.ceil,
  sign: Math.sign,
};

const literal = fc
  .constantFrom(...NUMBERS)
  .map((expr): Both => ({ expr, direct: () => (expr.op === 'num' ? expr.value : Number.NaN) }));
const named = fc
  .constantFrom('x', 'a', 'd', 'f')
  .map((key): Both => ({ expr: sym(key), direct: (values) => values[key] ?? Number.NaN }));

/** Trees of numbers and named numbers. */
const randomTree: fc.Arbitrary<Both> = fc.letrec<{ tree: Both }>((tie) => {
  const tree = tie('tree');
  const list = fc.array(tree, { minLength: 1, maxLength: 3 });
  const two = fc.tuple(tree, tree);
  return {
    tree: fc.oneof(
      { depthSize: 'small', withCrossShrink: true },
      fc.oneof(literal, named),
      list.map(
        (all): Both => ({
          expr: { op: 'add', args: all.map((one) => one.expr) },
          direct: (v) => all.map((one) => one.direct(v)).reduce((a, b) => a + b),
        }),
      ),
      list.map(
        (all): Both => ({
          expr: { op: 'mul', args: all.map((one) => one.expr) },
          direct: (v) => all.map((one) => one.direct(v)).reduce((a, b) => a * b),
        }),
      ),
      two.map(
        ([a, b]): Both => ({ expr: { op: 'sub', a: a.expr, b: b.expr }, direct: (v) => a.direct(v) - b.direct(v) }),
      ),
      two.map(
        ([a, b]): Both => ({ expr: { op: 'div', a: a.expr, b: b.expr }, direct: (v) => a.direct(v) / b.direct(v) }),
      ),
      tree.map((a): Both => ({ expr: { op: 'neg', a: a.expr }, direct: (v) => -a.direct(v) })),
      fc.tuple(tree, fc.constantFrom(...EXPONENTS)).map(
        ([a, n]): Both => ({
          expr: { op: 'pow', a: a.expr, b: num(n) },
          direct: (v) => a.direct(v) ** n,
        }),
      ),
      two.map(
        ([a, b]): Both => ({ expr: { op: 'pow', a: a.expr, b: b.expr }, direct: (v) => a.direct(v) ** b.direct(v) }),
      ),
      fc.tuple(tree, fc.constantFrom(...ONE_ARGUMENT)).map(
        ([a, name]): Both => ({
          expr: fn(name as FunctionName, a.expr),
          direct: (v) => plain[name](a.direct(v)),
        }),
      ),
      two.map(
        ([a, b]): Both => ({
          expr: fn('atan2', a.expr, b.expr),
          direct: (v) => Math.atan2(a.direct(v), b.direct(v)),
        }),
      ),
      list.map(
        (all): Both => ({
          expr: fn('max', ...all.map((one) => one.expr)),
          direct: (v) => Math.max(...all.map((one) => one.direct(v))),
        }),
      ),
      fc.tuple(tree, tree, tree, tree, fc.constantFrom(...COMPARISONS)).map(
        ([a, b, yes, no, is]): Both => ({
          expr: choose([branch({ a: a.expr, is, b: b.expr }, yes.expr)], no.expr),
          direct: (v) => (compare(a.direct(v), is, b.direct(v)) ? yes.direct(v) : no.direct(v)),
        }),
      ),
    ),
  };
}).tree;

/** As above, with vectors and lists among the parts; for printing only. */
const randomPrintable: fc.Arbitrary<Expr> = fc
  .tuple(
    fc.array(randomTree, { minLength: 3, maxLength: 3 }),
    fc.constantFrom<Expr>(
      dot('r', 'q'),
      norm(cross('r', 'q')),
      norm('r'),
      product('list'),
      sum('list'),
      sym('r', 1),
      sym('list', 0),
    ),
    fc.constantFrom('add', 'mul', 'sub', 'div', 'pow', 'neg', 'fn'),
  )
  .map(([[one, two, three], part, op]): Expr => {
    const [a, b, c] = [one?.expr ?? PI, two?.expr ?? PI, three?.expr ?? PI];
    if (op === 'add' || op === 'mul') return { op, args: [a, part, b, c] };
    if (op === 'sub' || op === 'div') return { op, a: { op, a: part, b: a }, b: { op, a: b, b: part } };
    if (op === 'pow') return { op, a: { op, a: part, b: num(2) }, b: a };
    return op === 'neg' ? { op, a: { op: 'mul', args: [part, a] } } : fn('cos', part);
  });

describe('random formulas', () => {
  const value = fc.oneof(fc.double({ min: -50, max: 50, noNaN: true }), fc.integer({ min: -4, max: 4 }));
  it('evaluate to the same double as the arithmetic of the language', () => {
    fc.assert(
      fc.property(randomTree, fc.record({ x: value, a: value, d: value, f: value }), ({ expr, direct }, values) => {
        // The first factor is multiplied by 1 and the sign of zero in a sum may differ: neither is seen in a number.
        expect(evaluateNumber(expr, values) + 0).toBe(direct(values) + 0);
      }),
      { seed: 21, numRuns: 3000 },
    );
  });
  const anyTree = fc.oneof(
    randomTree.map((both) => both.expr),
    randomPrintable,
  );
  it('mean the same when their text is read back', () => {
    fc.assert(
      fc.property(anyTree, (expr) => {
        expect(meaning(readText(toText(expr, RANDOM_NAMES)))).toBe(meaning(expr, RANDOM_NAMES));
      }),
      { seed: 11, numRuns: 3000 },
    );
  });
  it('give well-formed MathML that means the same when it is read back', () => {
    fc.assert(
      fc.property(anyTree, (expr) => {
        const root = readXml(toMathML(expr, RANDOM_NAMES, { display: 'block' }));
        checkMathML(root);
        expect(meaning(readText(seenText(root)))).toBe(meaning(expr, RANDOM_NAMES));
      }),
      { seed: 12, numRuns: 3000 },
    );
  });
  it('give a sentence with as many brackets opened as closed', () => {
    fc.assert(
      fc.property(anyTree, (expr) => {
        const words = toSentence(expr, RANDOM_NAMES);
        expect(words.split('open bracket').length).toBe(words.split('close bracket').length);
        expect(words).not.toMatch(/ {2}|undefined|NaN|[_·⁻]/);
      }),
      { seed: 13, numRuns: 1000 },
    );
  });
});
