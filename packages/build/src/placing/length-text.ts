import { parseInput } from '@oddwheel/quantity/range';
import { fromSi, requireUnit } from '@oddwheel/quantity/units';

/** Decimals that a moved length is written with, by its unit: a hundredth of a millimetre, or half a thou. */
const DECIMALS: Readonly<Record<string, number>> = { mm: 2, cm: 3, m: 5, µm: 0, in: 4, ft: 5, thou: 1 };
const INCHES = new Set(['in', 'ft', 'thou']);
const INCH = 0.0254;
const MM = 0.001;

/** Unit that a length is typed in; millimetres where it cannot be read. */
function unitOf(text: string): string {
  const parsed = parseInput(text, 'length');
  return parsed.ok ? parsed.unit : 'mm';
}

export type StepSize = 'plain' | 'coarse' | 'fine';

const STEPS = {
  inches: { plain: INCH / 16, coarse: INCH / 2, fine: INCH / 64 },
  metric: { plain: MM, coarse: 10 * MM, fine: MM / 10 },
} as const;

/** Step of a key, and of a drag, for a length that is typed like this: 1 mm, 10 mm, 0.1 mm; 1/16, 1/2, 1/64 in. SI. */
export function stepLike(text: string, size: StepSize): number {
  return STEPS[INCHES.has(unitOf(text)) ? 'inches' : 'metric'][size];
}

/** A length as it would be typed in the unit of another: decimals, or a fraction where the other has one and it comes out. */
export function writeLike(si: number, text: string): string {
  const unit = requireUnit('length', unitOf(text));
  if (unit.symbol === 'in' && text.includes('/')) {
    const parts = si / (INCH / 64);
    const whole = Math.round(parts);
    if (Math.abs(parts - whole) < 1e-4) return `${fraction(whole)} in`;
  }
  const decimals = DECIMALS[unit.symbol] ?? 3;
  const value = Number(fromSi('length', unit.symbol, si).toFixed(decimals));
  return `${value + 0} ${unit.typed}`;
}

/** So many 64ths: "8 15/16". */
function fraction(sixtyFourths: number): string {
  const size = Math.abs(sixtyFourths);
  const [whole, rest] = [Math.floor(size / 64), size % 64];
  const sign = sixtyFourths < 0 ? '-' : '';
  if (rest === 0) return `${sign}${whole}`;
  let [top, bottom] = [rest, 64];
  while (top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  return `${sign}${whole === 0 ? '' : `${whole} `}${top}/${bottom}`;
}
