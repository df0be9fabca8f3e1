import type { Expr } from '../expr.ts';
import type { Names } from '../names.ts';
import { toText } from '../text.ts';
import { readText } from './read-text.ts';

/**
 * The meaning of a tree as a number modulo a prime: the same for trees that are equal by algebra, and (but for one chance in 10^18) different for
 * others. Exact, so bracket faults cannot hide in rounding. Functions stand for nothing but themselves.
 */
const PRIME = 2n ** 61n - 1n;

const wrap = (n: bigint): bigint => ((n % PRIME) + PRIME) % PRIME;

function power(base: bigint, exponent: bigint): bigint {
  let [result, square, left] = [1n, wrap(base), exponent];
  for (; left > 0n; left >>= 1n) {
    if (left & 1n) result = wrap(result * square);
    square = wrap(square * square);
  }
  return result;
}

const inverse = (n: bigint): bigint => power(n, PRIME - 2n);

function hash(name: string, parts: readonly bigint[] = []): bigint {
  let h = 1469598103934665603n;
  for (const c of `${name}(${parts.join(',')})`) h = wrap((h ^ BigInt(c.codePointAt(0) ?? 0)) * 1099511628211n);
  return h;
}

function decimal(value: number): bigint {
  const [digits = '', tens = '0'] = String(value).split('e');
  const [whole = '', broken = ''] = digits.split('.');
  const size = BigInt(whole + broken);
  const shift = Number(tens) - broken.length;
  return wrap(size * (shift < 0 ? inverse(power(10n, BigInt(-shift))) : power(10n, BigInt(shift))));
}

/** A small whole number written as a literal, with its sign; undefined for all else. */
function whole(expr: Expr): number | undefined {
  if ((expr.op === 'add' || expr.op === 'mul') && expr.args.length === 1 && expr.args[0]) return whole(expr.args[0]);
  if (expr.op === 'neg') {
    const size = whole(expr.a);
    return size === undefined ? undefined : -size;
  }
  return expr.op === 'num' && expr.as === undefined && Number.isInteger(expr.value) && expr.value < 100
    ? expr.value
    : undefined;
}

/** @param names Symbols, for trees of keys; none for a tree that was read back, whose keys are symbols as printed. */
export function meaning(expr: Expr, names?: Names): bigint {
  const of = (part: Expr): bigint => meaning(part, names);
  switch (expr.op) {
    case 'num':
      return expr.as === undefined ? decimal(expr.value) : meaning(readText(expr.as));
    case 'sym':
      return hash(names === undefined ? expr.key : toText(expr, names));
    case 'add':
      return expr.args.map(of).reduce((a, b) => wrap(a + b), 0n);
    case 'mul':
      return expr.args.map(of).reduce((a, b) => wrap(a * b), 1n);
    case 'sub':
      return wrap(of(expr.a) - of(expr.b));
    case 'div':
      return wrap(of(expr.a) * inverse(of(expr.b)));
    case 'neg':
      return wrap(-of(expr.a));
    case 'pow': {
      const exponent = whole(expr.b);
      if (exponent === undefined) return hash('pow', [of(expr.a), of(expr.b)]);
      const raised = power(of(expr.a), BigInt(Math.abs(exponent)));
      return exponent < 0 ? inverse(raised) : raised;
    }
    case 'fn':
      return hash(expr.name, expr.args.map(of));
    case 'choose':
      return hash('choose', [
        ...expr.branches.flatMap(({ when, then }) => [of(when.a), hash(when.is), of(when.b), of(then)]),
        of(expr.otherwise),
      ]);
    case 'dot':
    case 'cross':
      return hash(expr.op, [of(expr.a), of(expr.b)]);
    case 'norm':
      return hash('norm', [of(expr.a)]);
    case 'product':
    case 'sum':
      return hash(expr.op + (names?.[expr.key]?.symbol ?? expr.key));
  }
}
