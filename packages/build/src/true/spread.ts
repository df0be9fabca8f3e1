import { fromSi } from '@oddwheel/quantity/units';

/** Decimals that a dial of this unit has a use for. */
const DECIMALS: Readonly<Record<string, number>> = { thou: 1, mm: 3, µm: 0 };

/** A length to the decimals of a dial, without its unit. */
export function dialText(value: number, unit: string): string {
  return fromSi('length', unit, value).toFixed(DECIMALS[unit] ?? 3);
}

/** A length with its uncertainty, both to the decimals of a dial: "13.9 ± 0.1 thou". A spread of nothing is left out. */
export function withSpread(value: number, spread: number, unit: string): string {
  const about = dialText(spread, unit);
  return Number(about) === 0
    ? `${dialText(value, unit)}\u2009${unit}`
    : `${dialText(value, unit)} ± ${about}\u2009${unit}`;
}
