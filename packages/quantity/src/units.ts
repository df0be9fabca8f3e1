import { decimal, type Exact, exact, fromDouble, minus, over, plus, times, toDouble } from './exact.ts';
import { KINDS, type Kind } from './kinds.ts';
import { type Row, SHOP_ROWS, SI_ROWS } from './unit-table.ts';

/** A unit of one kind, with its exact factor. */
export interface Unit {
  readonly kind: Kind;
  /** As printed: "N·m". Empty for a plain number. */
  readonly symbol: string;
  /** As typed on a keyboard: "N.m". */
  readonly typed: string;
  /** SI value of one unit. */
  readonly factor: Exact;
  /** SI value of the unit's zero; not zero only for thermometer scales. */
  readonly zero: Exact;
  /** All spellings read, the typed one first. */
  readonly spellings: readonly string[];
  /** Read in capitals or small letters alike; SI symbols are not, since m and M differ by a factor of a thousand million. */
  readonly anyCase: boolean;
}

/** The hardness scales, each kept as written. */
export const HARDNESS_SCALES = ['HRC', 'HRB', 'HB', 'HBW', 'HV', 'Shore A', 'Shore D'] as const;
export type HardnessScale = (typeof HARDNESS_SCALES)[number];

const SUPERSCRIPT: Readonly<Record<string, string>> = { '²': '2', '³': '3', '¹': '1', '⁻': '-', '^': '' };

/** A unit as compared: product marks (· . - * × or a space between letters) become ".", "m²" and "m^2" become "m2", µ becomes u. */
export function unitKey(spelling: string): string {
  return spelling
    .trim()
    .replace(/[²³¹⁻^]/g, (c) => SUPERSCRIPT[c] ?? '')
    .replace(/[µμ]/g, 'u')
    .replace(/[º˚]/g, '°')
    .replace(/℃/g, '°C')
    .replace(/℉/g, '°F')
    .replace(/′′|''|[″”“]/g, '"')
    .replace(/[′’‘]/g, "'")
    .replace(/ *[·⋅∙•×*] */g, '.')
    .replace(/\. *-? */g, '.')
    .replace(/([A-Za-z\d)]) *(?:-| ) *(?=[A-Za-z(])/g, '$1.')
    .replace(/(?<=[a-z"])\.$/, '');
}

function build(kind: Kind, rows: readonly Row[], anyCase: boolean): Unit[] {
  return rows.map(([symbol, factor, list, zero = exact(0n)]) => {
    const spellings = list.split('|');
    return { kind, symbol, typed: spellings[0] ?? '', factor, zero, spellings, anyCase };
  });
}

const kinds = Object.keys(KINDS) as Kind[];
const UNITS = new Map<Kind, readonly Unit[]>(
  kinds.map((kind) => [kind, [...build(kind, SI_ROWS[kind], false), ...build(kind, SHOP_ROWS[kind] ?? [], true)]]),
);

const exactKeys = new Map<Kind, Map<string, Unit>>();
const looseKeys = new Map<Kind, Map<string, Unit>>();
for (const kind of kinds) {
  const units = UNITS.get(kind) ?? [];
  const keys = (unit: Unit): string[] => [unit.symbol, ...unit.spellings].map(unitKey);
  exactKeys.set(kind, new Map(units.flatMap((unit) => keys(unit).map((key) => [key, unit] as const))));
  looseKeys.set(kind, new Map(units.flatMap((unit) => keys(unit).map((key) => [key.toLowerCase(), unit] as const))));
}

/** All units of a kind, SI units first. */
export function unitsOf(kind: Kind): readonly Unit[] {
  return UNITS.get(kind) ?? [];
}

/** The unit of this kind with this spelling, or undefined. */
export function findUnit(kind: Kind, spelling: string): Unit | undefined {
  const key = unitKey(spelling);
  const loose = looseKeys.get(kind)?.get(key.toLowerCase());
  return exactKeys.get(kind)?.get(key) ?? (loose?.anyCase === true ? loose : undefined);
}

/** The unit that would be meant if capitals and small letters were alike; for advice only, never for reading. */
export function nearUnit(kind: Kind, spelling: string): Unit | undefined {
  return looseKeys.get(kind)?.get(unitKey(spelling).toLowerCase());
}

/** The kinds that have a unit with this spelling. */
export function kindsWithUnit(spelling: string): Kind[] {
  return kinds.filter((kind) => findUnit(kind, spelling) !== undefined);
}

/**
 * The unit of this kind with this spelling.
 * @throws RangeError naming the kind, what was read and what is accepted.
 */
export function requireUnit(kind: Kind, spelling: string): Unit {
  const unit = findUnit(kind, spelling);
  if (unit !== undefined) return unit;
  const accepted = unitsOf(kind).map((u) => u.symbol || 'no unit');
  throw new RangeError(`"${spelling}" is not a unit of ${KINDS[kind].name}; accepted: ${accepted.join(', ')}.`);
}

/** SI value of an exact number of units, rounded once. */
export function siOf(unit: Unit, value: Exact): number {
  return toDouble(plus(times(value, unit.factor), unit.zero));
}

/**
 * SI value of a number given in a unit: the same as of its shortest decimal text, so 25.4 in "mm" is what "25.4 mm" reads as.
 * @param value Finite number in the unit.
 * @throws RangeError when the number is not finite or the unit is not of this kind.
 */
export function toSi(kind: Kind, unit: string, value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`A ${KINDS[kind].name} must be a finite number, not ${value}.`);
  return siOf(requireUnit(kind, unit), decimal(String(value)));
}

/** The exact number of units of an SI value. */
export function inUnit(unit: Unit, si: number): Exact {
  return over(plus(fromDouble(si), minus(unit.zero)), unit.factor);
}

/**
 * A number in a unit, from its SI value.
 * @param si Finite SI value.
 * @throws RangeError when the number is not finite or the unit is not of this kind.
 */
export function fromSi(kind: Kind, unit: string, si: number): number {
  return toDouble(inUnit(requireUnit(kind, unit), si));
}
