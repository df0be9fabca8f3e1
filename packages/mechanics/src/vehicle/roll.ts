import type { Params, Source } from '../method/method.ts';
import { ABOVE_ZERO } from '../numerics/refuse.ts';

/** Inputs between a shaft and the road. */
export const ROLL_INPUTS = {
  overallRatio: {
    form: 'value',
    kind: 'ratio',
    symbol: 'i',
    meaning: 'speed of the shaft over speed of the wheel; 1 for the wheel itself',
    range: ABOVE_ZERO,
    default: 1,
  },
  rollOut: {
    form: 'value',
    kind: 'length',
    symbol: 'U',
    meaning: 'roll-out of one turn of the wheel',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

export const ROLL_SOURCES: readonly Source[] = [
  { title: 'Gear-ratio handout: rpm = mph × ratio × 336 / tyre diameter in inches', how: 'read' },
];
