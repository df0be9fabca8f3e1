/** Curves of the road for drawing, as plain data; SI, at the middle of all inputs. */
import type { Known, SpeedPull } from './types.ts';

/** What resists on one slope. */
export interface GradeLoad {
  /** Rise over run; 0 is the level. */
  readonly grade: number;
  /** The slope of the target. */
  readonly wanted: boolean;
  readonly points: readonly SpeedPull[];
}

/** One gear, from the least speed that the engine is known at to its most. */
export interface GearCurve {
  /** "1", "2" … */
  readonly gear: string;
  readonly name: string;
  /** Engine speed over road speed, rad/m. */
  readonly turns: number;
  readonly pulls: readonly SpeedPull[];
  /** Road speeds at marks of the engine. */
  readonly atIdle: number;
  readonly atPeakTorque: number;
  readonly atPeakPower: number;
  readonly atRedline: number;
  /** Shift into the next gear that loses no pull: where the next pulls as much, else at the redline; null in the last gear. */
  readonly shift: { readonly speed: number; readonly engineBefore: number; readonly engineAfter: number } | null;
}

/** A gear of the reference vehicle. */
export interface ReferenceGear {
  readonly name: string;
  readonly turns: number;
}

export interface RunPoint {
  readonly time: number;
  readonly speed: number;
}

export interface RoadCurves {
  readonly idle: number;
  readonly redline: number;
  readonly peakTorque: number;
  readonly peakPower: number;
  readonly gears: readonly GearCurve[];
  readonly loads: readonly GradeLoad[];
  /** Name and gears of the reference vehicle; null without one. */
  readonly reference: { readonly name: string; readonly gears: readonly ReferenceGear[] } | null;
  /** At full throttle from standstill, on past the speed of the target where the drive can. */
  readonly run: Known<{
    readonly points: readonly RunPoint[];
    /** Time that the target allows; null where it asks for none. */
    readonly wanted: number | null;
  }>;
}
