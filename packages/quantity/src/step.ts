import { decimal, type Exact, exact, fromDouble, minus, nearestWhole, over, plus, shifted, times } from './exact.ts';
import { printExact } from './format.ts';
import { KINDS, type Kind } from './kinds.ts';
import type { NumberStyle } from './number.ts';
import { type ParseResult, parseQuantity } from './parse.ts';
import { type InputResult, isBareNumber, parseInput } from './range.ts';
import { failure, type Part, readQuantity } from './read.ts';
import { requireUnit, type Unit } from './units.ts';

/** Steps that a drag snaps to, in the unit itself; the last typed place where a unit is not listed. Common practice. */
const STEPS: Readonly<Partial<Record<Kind, Readonly<Record<string, string>>>>> = {
  length: { mm: '0.5', cm: '0.05', m: '0.0005', µm: '1', in: '0.01', ft: '0.01', thou: '1' },
  angle: { '°': '0.5', '′': '1' },
  angularSpeed: { rpm: '50' },
  speed: { 'km/h': '0.5', mph: '0.5' },
  torque: { N·m: '0.5', lbf·ft: '0.5' },
  force: { N: '10', kN: '0.01', lbf: '1' },
  power: { kW: '0.1', hp: '0.1', PS: '0.1' },
  mass: { kg: '0.1', lb: '0.1' },
  pressure: { bar: '0.05', psi: '1', MPa: '1' },
};

const tenth = (places: number): Exact => shifted(exact(1n), -places);

/** The step of a typed number: 1/64 for inches in fractions, else the typed denominator, the listed step or the last place. */
function stepOf(unit: Unit, style: NumberStyle): Exact {
  if (style.form === 'fraction') return exact(1n, unit.symbol === 'in' ? 64n : style.denominator);
  const listed = STEPS[unit.kind]?.[unit.symbol];
  return listed === undefined ? tenth(style.places) : decimal(listed);
}

/** A multiple of the step in the style of the number it replaces. */
function write(value: Exact, style: NumberStyle): string {
  const size = value.n < 0n ? minus(value) : value;
  const sign = value.n < 0n ? '-' : '';
  const whole = size.n / size.d;
  if (size.d === 1n) return `${sign}${whole}`;
  if (style.form === 'fraction') {
    const fraction = `${size.n % size.d}/${size.d}`;
    return whole === 0n ? `${sign}${fraction}` : `${sign}${whole}${style.joiner}${fraction}`;
  }
  let places = 0;
  while (shifted(size, places).d !== 1n) places += 1;
  const digits = shifted(size, places)
    .n.toString()
    .padStart(places + 1, '0');
  return `${sign}${digits.slice(0, -places)}${style.comma ? ',' : '.'}${digits.slice(-places)}`;
}

const snapped = (value: Exact, step: Exact): Exact => times(exact(nearestWhole(over(value, step))), step);

/** "5 ft 3 in" for a number of its last unit: whole numbers of the larger units, the rest in the last. */
function writeChain(parts: readonly Part[], last: Part, value: Exact): string {
  let left = value.n < 0n ? minus(value) : value;
  let text = value.n < 0n ? '-' : '';
  for (const part of parts.slice(0, -1)) {
    const size = over(part.unit.factor, last.unit.factor);
    const count = over(left, size);
    const whole = count.n / count.d;
    left = plus(left, minus(times(exact(whole), size)));
    text += `${whole}${part.after}`;
  }
  return `${text}${write(left, last.number.style)}${last.after}`;
}

function moved(parts: readonly Part[], last: Part, deltaSi: number): string {
  const sign = parts[0]?.number.negative === true ? minus : (value: Exact): Exact => value;
  const size = parts.reduce((sum, { number, unit }) => {
    const { value } = number;
    return plus(sum, times(value.n < 0n ? minus(value) : value, over(unit.factor, last.unit.factor)));
  }, exact(0n));
  const value = plus(sign(size), over(fromDouble(deltaSi), last.unit.factor));
  return writeChain(parts, last, snapped(value, stepOf(last.unit, last.number.style)));
}

/**
 * The text of a value after a drag: the changed value, snapped to a step that makes sense in the field's own unit (0.5 mm, 0.01 in,
 * 1/64 in when typed as a fraction) and written in the style it was typed in. No change leaves the text as it is.
 * @param text The value as typed; not a range.
 * @param kind Kind of the value.
 * @param deltaSi Finite change in SI units.
 * @returns The new value with its text, or why the text could not be read.
 * @throws RangeError when the change is not finite.
 */
export function snapStep<K extends Kind>(text: string, kind: K, deltaSi: number): ParseResult<K> {
  if (!Number.isFinite(deltaSi)) throw new RangeError(`A change must be a finite number, not ${deltaSi}.`);
  const before = parseQuantity(text, kind);
  const reading = readQuantity(text, kind);
  if (!before.ok || !reading.ok || deltaSi === 0) return before;
  if (reading.form === 'ratio') {
    const { driven, driver } = reading;
    const value = plus(driven.value, times(fromDouble(deltaSi), driver.value));
    const places = driven.style.form === 'decimal' ? driven.style.places : 0;
    return parseQuantity(`${write(snapped(value, tenth(places)), driven.style)}${text.slice(text.indexOf(':'))}`, kind);
  }
  const parts = [reading.first, ...reading.rest];
  const last = reading.rest.at(-1) ?? reading.first;
  const after = moved(parts, last, deltaSi);
  const result = parseQuantity(after, kind);
  // A decimal comma that would look like a thousands mark in the new number becomes a point.
  return !result.ok && result.code === 'comma-ambiguous' ? parseQuantity(after.replace(',', '.'), kind) : result;
}

/**
 * The text when a unit is picked for what is typed: a bare number or range takes the unit ("0.75" with "in" gives "0.75 in"); a value
 * that has a unit is turned into the other one, exactly. Hardness is never turned into another scale.
 * @param text A value or range, with or without unit.
 * @param kind Kind of the value.
 * @param unit Any spelling of a unit of that kind.
 * @returns The input with its new text, or why it was refused.
 * @throws RangeError when the unit is not of this kind.
 */
export function convertTyped<K extends Kind>(text: string, kind: K, unit: string): InputResult<K> {
  const wanted = requireUnit(kind, unit);
  if (text.split('..').every(isBareNumber)) return parseInput(`${text.trim()} ${wanted.typed}`.trim(), kind);
  const input = parseInput(text, kind);
  if (!input.ok) return input;
  if (input.scale !== undefined && input.scale !== wanted.symbol) {
    const problem = `A ${KINDS[kind].name} in ${input.scale} cannot be turned into ${wanted.symbol}: the scales have no exact relation.`;
    return failure(kind, 'unit-wrong-kind', problem, text);
  }
  const [low, high] = [printExact(input.lo, kind, unit), printExact(input.hi, kind, unit)];
  return parseInput(input.isRange ? `${low}..${high}` : high, kind);
}
