import { type Exact, nearestWhole } from './exact.ts';

/** Significant decimal digits of a number: 0.d₁d₂d₃… × 10^`point`, no trailing zeros; zero is digits "0", point 1. */
export interface Digits {
  readonly negative: boolean;
  readonly digits: string;
  readonly point: number;
}

/** The value × 10^power. Left unreduced: lowest terms would cost more than everything else here. */
function scaled(value: Exact, power: number): Exact {
  const ten = 10n ** BigInt(Math.abs(power));
  return power < 0 ? { n: value.n, d: value.d * ten } : { n: value.n * ten, d: value.d };
}

/** The value rounded to `count` significant digits (at least 1); a tie goes away from zero. */
export function roundDigits(value: Exact, count: number): Digits {
  if (value.n === 0n) return { negative: false, digits: '0', point: 1 };
  const negative = value.n < 0n;
  const size = negative ? { n: -value.n, d: value.d } : value;
  // The lengths of numerator and denominator give the decimal point within one place.
  let point = size.n.toString().length - size.d.toString().length + 1;
  const lead = scaled(size, 1 - point);
  if (lead.n < lead.d) point -= 1;
  const whole = nearestWhole(scaled(size, count - point)).toString();
  return { negative, digits: whole.replace(/0+$/, ''), point: point + whole.length - count };
}

/** Digits of a double, written out. */
const WRITTEN = 16;
/** Units of the last written digit that the double may be off the number that it stands for: it came of three roundings. */
const OFF = 50;

/**
 * As `roundDigits`, of a number that a double stands for within a few roundings.
 * @param count 1 to 12
 * @returns null where those roundings may change the answer
 */
export function roundNear(value: number, count: number): Digits | null {
  const size = Math.abs(value);
  // Far out a double has fewer digits, and so has zero.
  if (!(size > 1e-290 && size < 1e290) || count > 12) return null;
  const negative = value < 0;
  const text = size.toExponential(WRITTEN - 1);
  const all = text.slice(0, 1) + text.slice(2, WRITTEN + 1);
  const rest = Number(all.slice(count)) - 5 * 10 ** (WRITTEN - count - 1);
  if (Math.abs(rest) <= OFF) return null;
  const whole = String(Number(all.slice(0, count)) + (rest > 0 ? 1 : 0));
  const point = Number(text.slice(WRITTEN + 2)) + 1;
  return { negative, digits: whole.replace(/0+$/, ''), point: point + whole.length - count };
}

/** How digits are laid out. */
export interface Layout {
  readonly minus: string;
  /** Put between groups of three digits of the whole part. */
  readonly thousands: string;
  /** Numbers from 10^`above` up, and below 10^-`below`, are written with a power of ten. */
  readonly above: number;
  readonly below: number;
}

/** Digits as text: plain between the limits of the layout, else like "1.5e-9". */
export function layOut(value: Digits, layout: Layout): string {
  const { digits, point } = value;
  const sign = value.negative ? layout.minus : '';
  if (point > layout.above || point <= -layout.below) {
    const power = point - 1;
    const size = power < 0 ? `${layout.minus}${-power}` : `${power}`;
    return `${sign}${digits.slice(0, 1)}${digits.length > 1 ? `.${digits.slice(1)}` : ''}e${size}`;
  }
  const whole = point > 0 ? digits.slice(0, point).padEnd(point, '0') : '0';
  const places = point > 0 ? digits.slice(point) : digits.padStart(digits.length - point, '0');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, layout.thousands);
  return `${sign}${grouped}${places === '' ? '' : `.${places}`}`;
}
