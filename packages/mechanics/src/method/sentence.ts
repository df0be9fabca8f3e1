import type { Comparison, Expr, FunctionName } from './expr.ts';
import type { Step } from './method.ts';
import { type Names, symbolParts } from './names.ts';
import { digitsOf } from './text.ts';
import { sidesOf, type Writer, writeExpr } from './write.ts';

const GREEK: Readonly<Record<string, string>> = {
  α: 'alpha',
  β: 'beta',
  γ: 'gamma',
  δ: 'delta',
  ε: 'epsilon',
  ζ: 'zeta',
  η: 'eta',
  θ: 'theta',
  ϑ: 'theta',
  κ: 'kappa',
  λ: 'lambda',
  μ: 'mu',
  µ: 'mu',
  ν: 'nu',
  ξ: 'xi',
  π: 'pi',
  ρ: 'rho',
  σ: 'sigma',
  τ: 'tau',
  φ: 'phi',
  ϕ: 'phi',
  χ: 'chi',
  ψ: 'psi',
  ω: 'omega',
  Γ: 'capital gamma',
  Δ: 'delta',
  Θ: 'capital theta',
  Λ: 'capital lambda',
  Π: 'capital pi',
  Σ: 'capital sigma',
  Φ: 'capital phi',
  Ψ: 'capital psi',
  Ω: 'capital omega',
};

const FUNCTIONS: Readonly<Record<FunctionName, string>> = {
  sqrt: 'root of',
  sin: 'sine',
  cos: 'cosine',
  tan: 'tangent',
  asin: 'arc sine',
  acos: 'arc cosine',
  atan: 'arc tangent',
  atan2: 'arc tangent from y and x',
  ln: 'natural logarithm of',
  exp: 'exponential of',
  abs: 'size of',
  min: 'the least of',
  max: 'the greatest of',
  floor: 'whole part of',
  ceil: 'next whole number up from',
  sign: 'sign of',
};

const COMPARISONS: Readonly<Record<Comparison, string>> = {
  '<': 'is less than',
  '<=': 'is at most',
  '>': 'is more than',
  '>=': 'is at least',
  '=': 'equals',
};

const spoken = (text: string): string =>
  text
    .replace(/[Α-Ωα-ωϑϕµ]/g, (letter) => ` ${GREEK[letter] ?? letter} `)
    .replace(/\//g, ' over ')
    .replace(/['′]/g, ' prime')
    .replace(/−/g, 'minus ')
    .replace(/\s+/g, ' ')
    .trim();

const bracketed = (inner: string): string => `open bracket ${inner} close bracket`;

function numberWords(value: number, as: string | undefined): string {
  if (as !== undefined) return spoken(as);
  const { digits, tens } = digitsOf(value);
  if (tens === null) return digits;
  return `${digits} times 10 to the power of ${tens < 0 ? 'minus ' : ''}${Math.abs(tens)}`;
}

function powerWords(base: string, exponent: string, tree: Expr): string {
  if (tree.op === 'num' && tree.as === undefined && tree.value === 2) return `${base} squared`;
  if (tree.op === 'num' && tree.as === undefined && tree.value === 3) return `${base} cubed`;
  const one = tree.op === 'sym' || (tree.op === 'num' && tree.as === undefined);
  return `${base} to the power of ${one ? exponent : bracketed(exponent)}`;
}

function symbolWords(names: Names, key: string, index?: number): string {
  const { base, subs } = symbolParts(names, key, index);
  return [base, ...subs].map(spoken).join(' ');
}

const wordWriter = (names: Names): Writer => ({
  stacked: false,
  symbol: (key, index) => symbolWords(names, key, index),
  number: numberWords,
  plus: ' plus ',
  minus: ' minus ',
  negative: (body) => `minus ${body}`,
  times: (clear) => (clear ? ' times ' : ' '),
  over: (a, b) => `${a} over ${b}`,
  power: powerWords,
  call: (name, args, bare) => {
    const [only] = args;
    if (bare && only !== undefined) return `${FUNCTIONS[name]} ${only}`;
    return `${FUNCTIONS[name]} ${bracketed(args.join(', and '))}`;
  },
  between: (a, op, b) => `${a} ${op === 'dot' ? 'dot' : 'cross'} ${b}`,
  norm: (a) => `length of vector ${bracketed(a)}`,
  all: (op, key) => `${op === 'product' ? 'product' : 'sum'} of all ${symbolWords(names, key)}`,
  cases: (cases) => {
    const lines = cases.map(({ value, when }) =>
      when ? `${value} if ${when.a} ${COMPARISONS[when.is]} ${when.b}` : `otherwise ${value}`,
    );
    return bracketed(lines.join(', '));
  },
  bracket: bracketed,
  join: (parts) => parts.join(''),
});

/**
 * A tree as a sentence, for use as accessible name: "2 C cosine a over p".
 * @param expr The tree.
 * @param names Symbols of the values it names; the parameters of a method will do.
 * @throws RangeError when the tree names a value that has no symbol.
 */
export function toSentence(expr: Expr, names: Names): string {
  return writeExpr(expr, wordWriter(names));
}

/** A step as a sentence: "L equals …". Symbols and errors as in `toSentence`. */
export function stepSentence(step: Step, names: Names): string {
  const { left, right } = sidesOf(step);
  return `${toSentence(left, names)} equals ${toSentence(right, names)}`;
}
