/**
 * Exact fractions of whole numbers. Unit factors and typed numbers stay exact until the last step, so that a typed value
 * reaches its SI number with one rounding, and a printed one can be proved to read back bit for bit.
 */

/** A fraction in lowest terms; `d` is positive. */
export interface Exact {
  readonly n: bigint;
  readonly d: bigint;
}

function gcd(a: bigint, b: bigint): bigint {
  let [x, y] = [a < 0n ? -a : a, b];
  while (y !== 0n) [x, y] = [y, x % y];
  return x;
}

/**
 * The fraction n/d in lowest terms.
 * @throws RangeError when d is zero.
 */
export function exact(n: bigint, d = 1n): Exact {
  if (d === 0n) throw new RangeError('A fraction cannot have zero below the line.');
  const sign = d < 0n ? -1n : 1n;
  const common = gcd(n, d * sign);
  return common === 0n ? { n: 0n, d: 1n } : { n: (sign * n) / common, d: (sign * d) / common };
}

/** Product of all factors; 1 for none. */
export function times(...factors: readonly Exact[]): Exact {
  return factors.reduce((a, b) => exact(a.n * b.n, a.d * b.d), { n: 1n, d: 1n });
}

/**
 * The quotient a / b.
 * @throws RangeError when b is zero.
 */
export function over(a: Exact, b: Exact): Exact {
  return exact(a.n * b.d, a.d * b.n);
}

/** The sum a + b. */
export function plus(a: Exact, b: Exact): Exact {
  return exact(a.n * b.d + b.n * a.d, a.d * b.d);
}

/** The same size with the opposite sign. */
export function minus(a: Exact): Exact {
  return { n: -a.n, d: a.d };
}

/** The value of a × 10^power. */
export function shifted(a: Exact, power: number): Exact {
  return power < 0 ? exact(a.n, a.d * 10n ** BigInt(-power)) : exact(a.n * 10n ** BigInt(power), a.d);
}

/**
 * The value of a decimal such as "0.45359237", "-3" or "1e-6".
 * @throws RangeError when the text is anything else.
 */
export function decimal(text: string): Exact {
  const m = /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]?\d{1,4}))?$/i.exec(text);
  if (m === null) throw new RangeError(`"${text}" is not a decimal number.`);
  const places = m[3] ?? '';
  const size = exact(BigInt(`${m[2]}${places}`));
  return shifted(m[1] === '-' ? minus(size) : size, Number(m[4] ?? 0) - places.length);
}

/** The whole number nearest to n/d; a tie goes to the even one. */
function nearestEven(n: bigint, d: bigint): bigint {
  const down = n / d;
  const rest = 2n * (n - down * d);
  return rest > d || (rest === d && down % 2n === 1n) ? down + 1n : down;
}

/** The whole number nearest to the value; a tie goes away from zero. */
export function nearestWhole(a: Exact): bigint {
  const size = a.n < 0n ? -a.n : a.n;
  const whole = (2n * size + a.d) / (2n * a.d);
  return a.n < 0n ? -whole : whole;
}

const bits = (whole: bigint): number => whole.toString(2).length;

/** The double nearest to the value, ties to even (IEEE 754-2019, 4.3.1); infinite when it is too large. */
export function toDouble(a: Exact): number {
  if (a.n === 0n) return 0;
  const size = a.n < 0n ? -a.n : a.n;
  // Scale so that the whole part has 53 bits, or fewer below the smallest normal number.
  let shift = 53 - (bits(size) - bits(a.d));
  const scaled = (s: number): bigint => (s < 0 ? size : size << BigInt(s)) / (s < 0 ? a.d << BigInt(-s) : a.d);
  if (bits(scaled(shift)) > 53) shift -= 1;
  if (shift > 1074) shift = 1074;
  if (shift < -971) return a.n < 0n ? -Infinity : Infinity;
  const whole = shift < 0 ? nearestEven(size, a.d << BigInt(-shift)) : nearestEven(size << BigInt(shift), a.d);
  // Both factors are exact, and their product is a double or overflows to infinity.
  const value = shift > 1000 ? Number(whole) * 2 ** -1000 * 2 ** (1000 - shift) : Number(whole) * 2 ** -shift;
  return a.n < 0n ? -value : value;
}

/**
 * The exact value of a double.
 * @throws RangeError when it is not finite.
 */
export function fromDouble(value: number): Exact {
  if (!Number.isFinite(value)) throw new RangeError(`A quantity must be a finite number, not ${value}.`);
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, value);
  const raw = view.getBigUint64(0);
  const power = Number((raw >> 52n) & 0x7ffn);
  const fraction = raw & 0xfffffffffffffn;
  const whole = power === 0 ? fraction : fraction | 0x10000000000000n;
  const two = (power === 0 ? 1 : power) - 1075;
  const signed = raw >> 63n === 1n ? -whole : whole;
  return two < 0 ? exact(signed, 1n << BigInt(-two)) : exact(signed << BigInt(two));
}

/**
 * π to 80 decimal places: far beyond what one rounding to a double can see.
 * Source: NIST Digital Library of Mathematical Functions, 3.12; digits from memory, checked in the tests by Machin's formula.
 */
export const PI: Exact = decimal('3.14159265358979323846264338327950288419716939937510582097494459230781640628620900');
