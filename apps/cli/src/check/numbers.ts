/** Numbers of an assessment for the terminal: units of the build, at most four figures, none finer than the uncertainty. */
import type { Spread, Use } from '@oddwheel/build/assess/types';
import { THIN_SPACE, TRUE_MINUS } from '@oddwheel/quantity/format';
import type { Kind } from '@oddwheel/quantity/kinds';
import { fromSi } from '@oddwheel/quantity/units';

/** Kind of quantity and unit of the uses that the report prints, where the build chooses no unit. */
const USES = {
  speed: ['speed', 'km/h'],
  angularSpeed: ['angularSpeed', 'rpm'],
  torque: ['torque', 'N·m'],
  power: ['power', 'kW'],
  force: ['force', 'N'],
  number: ['number', ''],
} as const satisfies Partial<Record<Use, readonly [Kind, string]>>;

export type PrintedUse = keyof typeof USES;

export type Units = Readonly<Record<string, string>>;

function digits(value: number, decimals: number): string {
  const fixed = Math.abs(value).toFixed(decimals);
  const [whole = '0', rest] = fixed.split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, THIN_SPACE);
  return `${value < 0 && Number(fixed) !== 0 ? TRUE_MINUS : ''}${grouped}${rest === undefined ? '' : `.${rest}`}`;
}

/** Decimals that give at most four figures of `size`, and none finer than `give`. */
function decimalsFor(size: number, give: number): number {
  const ofFigures = size === 0 ? 0 : 3 - Math.floor(Math.log10(size));
  const ofGive = give === 0 ? Number.POSITIVE_INFINITY : -Math.floor(Math.log10(give));
  return Math.max(0, Math.min(ofFigures, ofGive, 4));
}

/**
 * A number with half its uncertainty: "239 ±5 N·m".
 * @param spread SI values; null prints as nothing, an unknown as a dash
 * @param units unit choice of the build, by use
 */
export function spreadText(spread: Spread | null, use: PrintedUse, units: Units): string {
  if (spread === null) return '';
  if (Number.isNaN(spread.value)) return '–';
  const [kind, usual] = USES[use];
  const unit = units[use] ?? usual;
  const value = fromSi(kind, unit, spread.value);
  const half = fromSi(kind, unit, (spread.hi - spread.lo) / 2);
  const decimals = decimalsFor(Math.max(Math.abs(value), half), half);
  const give = Number(half.toFixed(decimals)) === 0 ? '' : `${THIN_SPACE}±${digits(half, decimals)}`;
  return `${digits(value, decimals)}${give}${unit === '' ? '' : `${THIN_SPACE}${unit}`}`;
}

/** A reserve to two decimals, never rounded over the limit 1 from below. */
export function reserveText(reserve: number | null): string {
  if (reserve === null) return '';
  if (!Number.isFinite(reserve)) return '∞';
  if (reserve < 1 && Number(reserve.toFixed(2)) >= 1) return '0.99';
  return digits(reserve, reserve < 100 ? 2 : reserve < 1000 ? 1 : 0);
}
