/** What the vehicle does on the road, as plain data. SI throughout; curves are those of the middle of all inputs. */
import type { Missing, Spread } from '../types.ts';

/** A part that could not be worked out: the blank inputs, or why the vehicle cannot do it where none is blank. */
export interface NotKnown {
  readonly missing: readonly Missing[];
  readonly says: string;
}

export type Known<T> = T | NotKnown;

/** A road speed and the pull at the ground there. */
export type SpeedPull = readonly [speed: number, pull: number];

export interface GearPull {
  /** "1", "2" … */
  readonly gear: string;
  readonly name: string;
  readonly atIdle: Spread;
  readonly atPeakTorque: Spread;
  readonly atRedline: Spread;
  /** Equivalent mass over mass while this gear is in: wheels and engine turn with the vehicle. */
  readonly massFactor: Spread;
  /** Steepest slope at peak torque, rise over run, and what ends the climb; null where even the level is too much for the method. */
  readonly grade: Spread | null;
  readonly gradeEnds: 'pull' | 'grip' | 'front lift';
  readonly curve: readonly SpeedPull[];
}

/** What resists at one road speed; `climb` is the whole on the slope of the target. */
export interface LoadPoint {
  readonly speed: number;
  readonly rolling: number;
  readonly air: number;
  readonly level: number;
  readonly climb: number | null;
}

export interface Grip {
  readonly driven: 'rear' | 'front';
  /** Greatest pull, over all ends of what is not known. */
  readonly force: Spread;
  readonly governs: 'grip' | 'front lift';
  /** At the least and at the greatest friction, all else in the middle. */
  readonly low: { readonly friction: number; readonly force: number; readonly governs: 'grip' | 'front lift' };
  readonly high: { readonly friction: number; readonly force: number; readonly governs: 'grip' | 'front lift' };
}

export interface Lift {
  /** Acceleration and pull that lift the front on the level, and the friction that this takes. */
  readonly acceleration: Spread;
  readonly force: Spread;
  readonly friction: Spread;
}

export interface Sideways {
  readonly acceleration: Spread;
  /** The same over free fall. */
  readonly parts: Spread;
}

export interface Top {
  readonly speed: Spread;
  readonly gear: string;
  readonly limit: 'engine speed' | 'power';
  /** Pull left over there; zero where power limits. */
  readonly surplus: number;
  /** Growth of the roll-out at that speed, for a radial tyre faster than 60 km/h; else null. */
  readonly tyreGrowth: number | null;
}

export interface Sprint {
  readonly to: number;
  readonly time: Spread;
  readonly distance: Spread;
  readonly shifts: number;
  readonly lastGear: string;
  readonly shiftTime: number;
  /** The tyre's grip was known and could hold the pull back; without it more than can be is taken. */
  readonly gripKnown: boolean;
  readonly points: readonly { readonly time: number; readonly speed: number; readonly distance: number }[];
}

export interface Clutch {
  /** Heat in one level start, here and in the reference vehicle, and the one over the other. */
  readonly energy: Spread;
  readonly referenceEnergy: Spread;
  readonly ratio: Spread;
  readonly time: Spread;
  readonly syncSpeed: Spread;
}

export interface Gyroscopic {
  /** At the slider's road speed, the axle swung round at `turnRate`. */
  readonly moment: Spread;
  readonly turnRate: number;
}

export interface SpeedometerReading {
  readonly indicated: number;
  readonly speed: Spread;
  /** True speed over shown speed. */
  readonly factor: Spread;
  readonly mostIndicated: Spread;
  readonly verdict: string;
}

export interface CycleDriven {
  readonly cycle: string;
  readonly title: string;
  readonly duration: number;
  readonly distance: number;
  /** Standing or declutched, then each gear. */
  readonly gearTimes: readonly { readonly name: string; readonly time: number }[];
  readonly meanEngineSpeed: Spread;
  /** Energy that the drive gives at the wheel. */
  readonly energy: Spread;
  /** Seconds that the engine cannot follow, and where they begin. */
  readonly missed: Spread;
  readonly missedAt: readonly number[];
  /** Road speeds of the first shifts upwards by the rule of the world motorcycle test; empty for one gear. */
  readonly upSpeeds: readonly number[];
}

/** The road. Parts that do not apply are null: no reference, no speedometer, no cycle, nothing to tip. */
export interface Road {
  readonly laden: Spread;
  readonly pulls: Known<{ readonly gears: readonly GearPull[]; readonly efficiency: Spread }>;
  readonly load: Known<{ readonly points: readonly LoadPoint[]; readonly climb: number | null }>;
  readonly grip: Known<Grip>;
  readonly lift: Known<Lift> | null;
  readonly sideways: Known<Sideways> | null;
  readonly top: Known<Top>;
  /** Run at every corner that touches it, by the method itself: its ends are found, not estimated. */
  readonly sprint: Known<Sprint>;
  readonly clutch: Known<Clutch> | null;
  readonly gyroscopic: Known<Gyroscopic>;
  readonly speedometer: Known<SpeedometerReading> | null;
  readonly cycle: Known<CycleDriven> | null;
}
