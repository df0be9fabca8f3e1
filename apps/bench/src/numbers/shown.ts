import type { Severity, Spread, Use } from '@oddwheel/build/assess/types';
import { DEFAULT_UNITS, FRACTION_UNIT, THIN_SPACE, TRUE_MINUS } from '@oddwheel/quantity/format';
import type { Kind } from '@oddwheel/quantity/kinds';
import { fromSi } from '@oddwheel/quantity/units';

const MOST_FIGURES = 4;

/** A number as it stands on the page. */
export interface Shown {
  /** Digits grouped by thin spaces, with a true minus. */
  readonly number: string;
  /** Unit symbol; empty for a plain number. */
  readonly unit: string;
  /** Half of the uncertainty, in the same unit and decimals; null when it does not reach the last figure. */
  readonly give: string | null;
}

const KINDS_OF_USE: Readonly<Record<Use, Kind>> = {
  length: 'length',
  runOut: 'length',
  speed: 'speed',
  angularSpeed: 'angularSpeed',
  torque: 'torque',
  power: 'power',
  force: 'force',
  mass: 'mass',
  angle: 'angle',
  pressure: 'pressure',
  temperature: 'temperature',
  time: 'time',
  energy: 'energy',
  number: 'number',
  percent: 'fraction',
  distance: 'length',
};

const UNITS: Readonly<Record<string, string>> = { ...DEFAULT_UNITS, time: 's', energy: 'kJ', number: '', percent: '%' };

/** Unit symbol of a use in a build's units; lengths in fractions of an inch count as inches here. */
export function unitOf(use: Use, units: Readonly<Record<string, string>>): string {
  if (use === 'distance') return units.speed === 'mph' ? 'mi' : 'km';
  const chosen = units[use] ?? UNITS[use] ?? '';
  return chosen === FRACTION_UNIT ? 'in' : chosen;
}

/** SI value of one unit of a use. */
export function unitSize(use: Use, units: Readonly<Record<string, string>>): number {
  return 1 / fromSi(KINDS_OF_USE[use], unitOf(use, units), 1);
}

/** Stands where a number is not known. */
const UNKNOWN = '–';

/** Digits of a number with `decimals` decimals, thousands parted by a thin space; a dash where it is not known. */
export function digits(value: number, decimals: number): string {
  if (Number.isNaN(value)) return UNKNOWN;
  const fixed = Math.abs(value).toFixed(decimals);
  const [whole = '0', part] = fixed.split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, THIN_SPACE);
  const minus = value < 0 && Number(fixed) !== 0 ? TRUE_MINUS : '';
  return minus + grouped + (part === undefined ? '' : `.${part}`);
}

/** Decimals that give at most four figures, and none finer than the uncertainty. */
function decimalsFor(size: number, give: number, figures: number): number {
  const ofFigures = size === 0 ? 0 : figures - 1 - Math.floor(Math.log10(size));
  const ofGive = give === 0 ? Number.POSITIVE_INFINITY : -Math.floor(Math.log10(give));
  return Math.max(0, Math.min(ofFigures, ofGive, 4));
}

/**
 * A number with its uncertainty, in the units of the build, at most four figures.
 *
 * @param spread SI values
 * @param units unit choice of the build
 * @param figures most figures, when the uncertainty allows them
 */
export function show(
  spread: Spread,
  use: Use,
  units: Readonly<Record<string, string>>,
  figures: number = MOST_FIGURES,
): Shown {
  const unit = unitOf(use, units);
  const size = unitSize(use, units);
  const value = spread.value / size;
  const half = (spread.hi - spread.lo) / 2 / size;
  const decimals = decimalsFor(Math.max(Math.abs(value), half), half, Math.min(figures, MOST_FIGURES));
  const give = Number(half.toFixed(decimals)) === 0 ? null : digits(half, decimals);
  return { number: digits(value, decimals), unit, give };
}

/** A reserve: two decimals, at most four figures, and never rounded over the limit from either side. */
export function reserveText(reserve: number): string {
  const decimals = reserve < 100 ? 2 : reserve < 1000 ? 1 : 0;
  if (reserve < 1 && Number(reserve.toFixed(2)) >= 1) return '0.99';
  return digits(reserve, decimals);
}

/** What stands in place of a reserve where a check has none: it is met or not, or not known yet. */
export function withoutNumber(severity: Severity): string {
  return severity === 'unknown' ? 'not yet' : severity === 'holds' ? 'met' : 'not met';
}

/** "239 ± 5 N·m" with thin spaces; for a place where one text is wanted. */
export function shownText(shown: Shown): string {
  const give = shown.give === null ? '' : `${THIN_SPACE}±${THIN_SPACE}${shown.give}`;
  const unit = shown.unit === '' ? '' : shown.unit === '°' ? '°' : THIN_SPACE + shown.unit;
  return shown.number + give + unit;
}
