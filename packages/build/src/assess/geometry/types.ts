import type { Method } from '@oddwheel/mechanics/method/method';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Shaft, Stage, Value } from '../../model/model.ts';

/** Chooses the number of an input: its middle, or the end that the corner names. */
export type At = (value: Value) => number;

/** One method as it was used: what a working is built from. */
export interface Used {
  readonly method: Method;
  readonly input: Readonly<Record<string, unknown>>;
  readonly output: Readonly<Record<string, unknown>>;
  /** Where each input came from: an address of the build, or a row of a table. */
  readonly origins: Readonly<Record<string, string>>;
}

/** Action on the shaft at a seat, in vehicle axes: force, and moment about the seat point. It stands still in space. */
export interface Action {
  readonly force: Vec3;
  readonly moment: Vec3;
}

/** What a stage's place and shape give at one corner of the uncertain inputs. */
export interface StageGeometry {
  readonly stage: Stage;
  readonly from: Shaft;
  readonly to: Shaft;
  /** Input speed over output speed, positive. */
  readonly ratio: number;
  readonly efficiency: number;
  /** +1 when both shafts turn positive together, each about its own direction; null when the place of the parts leaves it open. */
  readonly relation: 1 | -1 | null;
  /** Why the geometry cannot be had, with the addresses at fault. */
  readonly trouble: readonly { readonly address: string; readonly says: string }[];
  /**
   * Actions at driver and driven seat per newton metre through each of them, when the driver turns in the sense given. The forces are null where
   * the size of the part is not known: then only the torque about the shaft passes.
   */
  readonly actions: (driverSense: 1 | -1) => {
    readonly from: Action;
    readonly to: Action;
    readonly forcesKnown: boolean;
  };
  /** Angle between the two shafts' directions, taken as lines. */
  readonly skew: number;
  /** Radius on which a chain or belt runs at the driver; null for other kinds. */
  readonly pitchRadiusDriver: number | null;
  readonly chain: ChainGeometry | null;
  readonly bevel: BevelGeometry | null;
  readonly coupling: CouplingGeometry | null;
  readonly used: readonly Used[];
}

export interface ChainGeometry {
  readonly centreDistance: number;
  /** Distance of the two sprocket planes. */
  readonly planeOffset: number;
  /** Links that the centres ask for, not rounded. */
  readonly linksNeeded: number;
  /** Straight span, longest on the slack side where an idler divides it. */
  readonly span: number;
  readonly wrapSmall: number;
  readonly pitchRadiusDriver: number;
  readonly pitchRadiusDriven: number;
  /** Slope of the line of centres against the level ground. */
  readonly slope: number;
  readonly outsideDriver: number;
  readonly outsideDriven: number;
  readonly chordal: number;
  /** Unit vector from driver to driven, square to the driver's shaft. */
  readonly u: Vec3;
  readonly idler: IdlerGeometry | null;
}

export interface IdlerGeometry {
  /** Unit vector from the line of centres toward the span that the idler touches. */
  readonly span: Vec3;
  readonly teethInMesh: number;
  readonly wrap: number;
  readonly links: number;
  readonly wrapDriver: number;
  readonly wrapDriven: number;
  /** Straight span without the idler, and the longer part of the one that it touches. */
  readonly spanOther: number;
  readonly spanLonger: number;
  /** Distance of the idler from the driver's plane. */
  readonly planeOffset: number;
}

/** Two shafts joined end to end, or by one or two universal joints. */
export interface CouplingGeometry {
  /** Angle between the two shafts, taken as lines. */
  readonly angle: number;
  /** How far the driven shaft's end stands off the driver's axis. */
  readonly offset: number;
  /** Angles of the joints, first and second; empty for a coupling. */
  readonly joints: readonly number[];
  /** Angle of the one joint that would turn the output as unevenly, and highest less lowest speed over the speed in. */
  readonly residual: number;
  readonly unevenness: number;
}

export interface BevelGeometry {
  readonly axisDistance: number;
  readonly shaftAngle: number;
  readonly apex: Vec3;
  readonly coneDistance: number | null;
  readonly meanDriver: number | null;
  readonly meanDriven: number | null;
}
