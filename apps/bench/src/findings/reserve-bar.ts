import type { Severity, Spread } from '@oddwheel/build/assess/types';

/** Ends of the reserve scale. It is logarithmic, so a shortfall and a reserve of the same part are equally long. */
export const RESERVE_LOW = 0.5;
export const RESERVE_HIGH = 8;

/** Labelled places of the reserve scale. */
export const RESERVE_TICKS = [0.5, 1, 1.5, 2, 3, 4, 6, 8] as const;

/** A reserve bar in parts of the scale's width, 0 at the low end and 1 at the high end. */
export interface ReserveBar {
  /** The bar runs between these; one of them is the limit. */
  readonly from: number;
  readonly to: number;
  /** End that the reserve lies beyond, where an arrowhead stands. */
  readonly past: 'low' | 'high' | null;
  /** Place of the design reserve. */
  readonly wanted: number;
  /** Ends of the uncertainty; null when the reserve is certain. */
  readonly whisker: { readonly from: number; readonly to: number } | null;
}

/**
 * Place of a reserve on the scale, 0 to 1; a reserve beyond an end is put at that end.
 *
 * @param reserve capacity over demand, above 0
 */
export function reservePlace(reserve: number): number {
  const part = Math.log(reserve / RESERVE_LOW) / Math.log(RESERVE_HIGH / RESERVE_LOW);
  return Math.min(1, Math.max(0, part));
}

/** Place of the limit, where every bar starts. */
export const LIMIT_PLACE = reservePlace(1);

/** The bar of a reserve; null when there is none. */
export function reserveBar(reserve: Spread | null, wanted: number): ReserveBar | null {
  if (reserve === null || Number.isNaN(reserve.value)) return null;
  const end = reservePlace(reserve.value);
  return {
    from: Math.min(end, LIMIT_PLACE),
    to: Math.max(end, LIMIT_PLACE),
    past: reserve.value < RESERVE_LOW ? 'low' : reserve.value > RESERVE_HIGH ? 'high' : null,
    wanted: reservePlace(wanted),
    whisker: reserve.lo === reserve.hi ? null : { from: reservePlace(reserve.lo), to: reservePlace(reserve.hi) },
  };
}

/** Height of the fill in px: it differs with the severity as the colour does. */
export const FILL_HEIGHT: Record<Severity, number> = { holds: 5, thin: 7, fails: 8, unknown: 3 };
