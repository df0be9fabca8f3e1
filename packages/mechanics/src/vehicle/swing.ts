import type { Params } from '../method/method.ts';
import { ABOVE_ZERO } from '../numerics/refuse.ts';
import { GRAVITY_INPUT } from './load.ts';

/** Timing of a swinging wheel. */
export const SWING_INPUTS = {
  mass: { form: 'value', kind: 'mass', symbol: 'm', meaning: 'mass of the wheel as it swings', range: ABOVE_ZERO },
  time: { form: 'value', kind: 'time', symbol: 't', meaning: 'time of all swings', range: ABOVE_ZERO },
  swings: {
    form: 'integer',
    symbol: 'n',
    meaning: 'swings timed, there and back counting as one',
    range: { min: 1 },
    default: 20,
  },
  timing: {
    form: 'value',
    kind: 'time',
    symbol: 'δt',
    meaning: 'how far the time may be off, either way',
    range: { min: 0 },
    default: 0.3,
  },
  ...GRAVITY_INPUT,
} as const satisfies Params;
