import type { Params } from '../method/method.ts';
import { ABOVE_ZERO } from '../numerics/refuse.ts';

export const GRAVITY_INPUT = {
  gravity: {
    form: 'value',
    kind: 'acceleration',
    symbol: 'g',
    meaning: 'acceleration of free fall',
    range: ABOVE_ZERO,
    default: 9.80665,
  },
} as const satisfies Params;

export const MASS_INPUT = {
  mass: { form: 'value', kind: 'mass', symbol: 'm', meaning: 'mass of the loaded vehicle', range: ABOVE_ZERO },
} as const satisfies Params;

/** Steeper than this no tyre stands. */
const STEEPEST = 1.5;

export const SLOPE_INPUT = {
  slope: {
    form: 'value',
    kind: 'angle',
    symbol: 'θ',
    meaning: 'slope of the road, up is positive',
    range: { min: -STEEPEST, max: STEEPEST },
    default: 0,
  },
} as const satisfies Params;

/** What resists a vehicle on the road, save its own inertia. */
export const LOAD_INPUTS = {
  ...MASS_INPUT,
  rollingCoefficient: {
    form: 'value',
    kind: 'fraction',
    symbol: 'f',
    meaning: 'rolling resistance over load',
    range: { min: 0, max: 1 },
  },
  dragArea: {
    form: 'value',
    kind: 'area',
    symbol: 'A_d',
    meaning: 'drag coefficient times frontal area',
    range: { min: 0 },
  },
  airDensity: {
    form: 'value',
    kind: 'density',
    symbol: 'ρ',
    meaning: 'density of the air',
    range: { min: 0 },
    default: 1.2,
  },
  headWind: { form: 'value', kind: 'speed', symbol: 'v_a', meaning: 'wind from ahead', default: 0 },
  ...SLOPE_INPUT,
  ...GRAVITY_INPUT,
} as const satisfies Params;

export interface Load {
  readonly mass: number;
  readonly rollingCoefficient: number;
  readonly dragArea: number;
  readonly airDensity: number;
  readonly headWind: number;
  readonly slope: number;
  readonly gravity: number;
}

/** Pull that rolling and grade take, N. */
export function groundLoad({ mass, gravity, rollingCoefficient, slope }: Load): number {
  return mass * gravity * (rollingCoefficient * Math.cos(slope) + Math.sin(slope));
}

/** Pull that the air takes, N; below zero when the wind pushes. */
export function airLoad({ airDensity, dragArea, headWind }: Load, speed: number): number {
  const against = speed + headWind;
  return 0.5 * airDensity * dragArea * against * Math.abs(against);
}

/** Pull that steady speed takes, N. */
export function steadyLoad(load: Load, speed: number): number {
  return groundLoad(load) + airLoad(load, speed);
}
