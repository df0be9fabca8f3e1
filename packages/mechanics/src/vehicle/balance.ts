import type { Params } from '../method/method.ts';
import { ABOVE_ZERO } from '../numerics/refuse.ts';
import { GRAVITY_INPUT, MASS_INPUT, SLOPE_INPUT } from './load.ts';

/** Where the mass of a vehicle sits over its wheels. */
export const BALANCE_INPUTS = {
  ...MASS_INPUT,
  wheelbase: {
    form: 'value',
    kind: 'length',
    symbol: 'L',
    meaning: 'distance between front and rear axle',
    range: ABOVE_ZERO,
  },
  aheadOfRear: {
    form: 'value',
    kind: 'length',
    symbol: 'b',
    meaning: 'centre of mass ahead of the rear axle',
    range: ABOVE_ZERO,
  },
  height: {
    form: 'value',
    kind: 'length',
    symbol: 'h',
    meaning: 'height of the centre of mass above the ground',
    range: ABOVE_ZERO,
  },
  ...SLOPE_INPUT,
  ...GRAVITY_INPUT,
} as const satisfies Params;

/** Why the centre of mass does not lie between the axles; undefined when it does. */
export function beyondAxles(aheadOfRear: number, wheelbase: number): string | undefined {
  return aheadOfRear < wheelbase
    ? undefined
    : `Centre of mass ahead of the rear axle: ${aheadOfRear} m read; less than the wheelbase, ${wheelbase} m, is accepted.`;
}
