import type { Here } from './types.ts';

/** Crank speed and torque of one load case. */
export interface CasePoint {
  readonly id: string;
  readonly name: string;
  /** Index of the gear, first gear 0. */
  readonly gear: number;
  readonly engineSpeed: number;
  /** Below zero when the vehicle drives the engine. */
  readonly engineTorque: number;
  /** `steady`: full throttle in a gear. `rare`: a peak that strength must stand once; life and pull over the road leave it out. */
  readonly kind: 'steady' | 'rare';
  /** What ended the torque before the engine side did: the tyre’s grip, or the clutch. */
  readonly capped: 'grip' | 'clutch' | null;
  /** A brake that takes torque out of a shaft of the drive; index of the shaft, output shaft 0. */
  readonly brake: { readonly shaft: number; readonly seat: string; readonly torque: number } | null;
}

/** A case of full throttle, and the slider. */
export const STEADY = { kind: 'steady', capped: null, brake: null } as const;

/** Full-throttle torque of the engine at one corner of its uncertain inputs. */
export interface EngineCurve {
  /** N·m at a crank speed in rad/s; null outside the speeds that the curve covers. */
  readonly torqueAt: (speed: number) => number | null;
  readonly peakTorque: { readonly speed: number; readonly torque: number };
  readonly peakPower: { readonly speed: number; readonly torque: number };
  readonly idle: number;
  readonly redline: number;
}

/** "1st", "2nd", "3rd", "4th". */
export function ordinal(n: number): string {
  const tens = n % 100;
  if (tens >= 11 && tens <= 13) return `${n}th`;
  return `${n}${['th', 'st', 'nd', 'rd'][n % 10] ?? 'th'}`;
}

/** The standing cases: each gear at peak torque and at peak power, full throttle. */
export function standingCases(curve: EngineCurve, gears: number): CasePoint[] {
  return Array.from({ length: gears }, (_, gear) => [
    {
      id: `${gear + 1}/peak-torque`,
      name: `${ordinal(gear + 1)} gear at peak torque`,
      gear,
      engineSpeed: curve.peakTorque.speed,
      engineTorque: curve.peakTorque.torque,
      ...STEADY,
    },
    {
      id: `${gear + 1}/peak-power`,
      name: `${ordinal(gear + 1)} gear at peak power`,
      gear,
      engineSpeed: curve.peakPower.speed,
      engineTorque: curve.peakPower.torque,
      ...STEADY,
    },
  ]).flat();
}

export interface Slider {
  readonly here: Here;
  readonly note: string | null;
}

/**
 * Puts the slider inside its gear: at the end it stops, and the note says which gear would do.
 * @param spans road speed at idle and at redline of each gear, m/s
 * @param show prints a road speed in the units of the build
 */
export function placeSlider(
  wanted: { readonly gear?: string | undefined; readonly roadSpeed?: number | undefined },
  spans: readonly { readonly id: string; readonly name: string; readonly low: number; readonly high: number }[],
  show: (speed: number) => string,
): Slider {
  const middle = spans[Math.min(1, spans.length - 1)];
  const gear = spans.find((span) => span.id === wanted.gear) ?? middle;
  if (!gear) return { here: { gear: '1', roadSpeed: 0 }, note: null };
  const speed = wanted.roadSpeed ?? (gear.low + gear.high) / 2;
  if (speed >= gear.low && speed <= gear.high) return { here: { gear: gear.id, roadSpeed: speed }, note: null };
  const fits = spans.filter((span) => speed >= span.low && speed <= span.high).map((span) => span.name);
  const side = speed < gear.low ? 'below idle' : 'past the redline';
  const would = fits.length === 0 ? 'no gear reaches it' : `${fits.join(' or ')} gear would do`;
  return {
    here: { gear: gear.id, roadSpeed: speed < gear.low ? gear.low : gear.high },
    note: `${show(speed)} is ${side} in ${gear.name} gear: ${would}.`,
  };
}
