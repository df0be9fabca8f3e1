import type { Kind } from '@oddwheel/quantity/kinds';
import { readNumber } from '@oddwheel/quantity/number';
import { plainText } from '@oddwheel/quantity/read';
import { findUnit } from '@oddwheel/quantity/units';

/** Units that a shop uses for each kind of quantity, as they are typed. */
const UNITS: Partial<Readonly<Record<Kind, readonly string[]>>> = {
  fraction: ['%'],
  angle: ['deg', 'rad'],
  length: ['mm', 'in', 'thou', 'm'],
  area: ['m2', 'ft2'],
  time: ['s'],
  speed: ['km/h', 'mph'],
  angularSpeed: ['rpm'],
  mass: ['kg', 'lb'],
  inertia: ['kg.m2', 'lb.in2'],
  force: ['N', 'kN', 'lbf'],
  torque: ['N.m', 'lbf.ft'],
  power: ['kW', 'hp'],
  pressure: ['bar', 'psi', 'MPa'],
  stiffness: ['N/mm', 'lbf/in'],
  temperature: ['degC', 'degF'],
};

/** One unit to tap. */
export interface UnitTap {
  /** As typed on a keyboard, and so as it comes into the text: "N.m". */
  readonly unit: string;
  /** As printed: "N·m". */
  readonly label: string;
  /** The text has this unit now. */
  readonly chosen: boolean;
}

/** The text before its unit, and the unit; null where the text does not begin with one number. */
function parts(text: string): { readonly number: string; readonly unit: string } | null {
  const plain = plainText(text);
  const start = plain.length - plain.trimStart().length;
  const number = readNumber(plain.slice(start));
  if (!number.ok) return null;
  const end = start + number.length;
  return { number: text.slice(start, end).trimEnd(), unit: text.slice(end).trim() };
}

/** Low and high end of a range, or the one value. */
const ends = (text: string): readonly string[] => {
  const at = text.indexOf('..');
  return at < 0 ? [text] : [text.slice(0, at), text.slice(at + 2)];
};

/** The units to tap beside a field, with the one that its text has. Empty for kinds that have no unit to choose. */
export function unitTaps(kind: Kind, text: string, only: readonly string[] = UNITS[kind] ?? []): readonly UnitTap[] {
  const typed = parts(ends(text).at(-1) ?? '')?.unit ?? '';
  const now = typed === '' ? undefined : findUnit(kind, typed);
  return only.map((unit) => {
    const found = findUnit(kind, unit);
    return { unit, label: found?.symbol ?? unit, chosen: now !== undefined && found?.symbol === now.symbol };
  });
}

/**
 * The text with this unit: "0.75" becomes "0.75 in", "0.75 mm" becomes "0.75 in", "1/8..3/16" becomes "1/8..3/16 in". The
 * number stays as it was typed; nothing is converted. A text that is no number with at most one unit stays as it is.
 */
export function withTappedUnit(text: string, unit: string): string {
  const read = ends(text).map(parts);
  // "5 ft 3 in" has two units: which of them would be meant is not to be guessed.
  if (read.some((one) => one === null || /\d/.test(one.unit.replace(/[a-z]\d/gi, '')))) return text;
  return `${read.map((one) => one?.number ?? '').join('..')} ${unit}`;
}
