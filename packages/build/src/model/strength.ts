/** What strength asks of the model: steels, shapes, bearings, plates, duty and loads. Immutable, SI. */

import type { LoadTurns, PlateClass, ShaftClass } from '@oddwheel/tables/seat-fits';
import type { Locking } from './hub.ts';
import type { Value } from './model.ts';

/** Steel of a shaft. A blank one stands on the weakest usual bar. */
export interface Steel {
  /** Key of the table of steels; null where the build does not say. */
  readonly key: string | null;
  readonly tensile: Value;
  readonly yield: Value;
  readonly youngs: number;
  readonly shear: number;
  readonly density: number;
}

export type Surface = 'ground' | 'machined or cold drawn' | 'hot rolled' | 'as forged';

/** A stretch of a shaft of one diameter. */
export interface Piece {
  readonly address: string;
  readonly from: number;
  readonly to: number;
  readonly diameter: number;
  readonly bore: number;
}

export interface Notch {
  readonly address: string;
  readonly name: string;
  readonly kind:
    | 'shoulder'
    | 'ring groove'
    | 'keyway, end milled'
    | 'keyway, disc milled'
    | 'press fit'
    | 'cross hole'
    | 'spline'
    | 'thread'
    | 'weld toe';
  readonly station: number;
  readonly radius: Value | null;
}

/** A place where a shaft is built up of two parts. */
export interface Join {
  readonly id: string;
  readonly address: string;
  readonly name: string;
  readonly station: number;
  readonly torqueBy: 'spline' | 'key' | 'weld' | 'press fit' | 'bolts' | 'pin';
  readonly centredBy: 'spigot' | 'press fit' | 'spline' | 'bolts' | 'weld alone';
  readonly axialBy: 'draw bolt' | 'weld' | 'press fit' | 'retaining ring' | 'bolts' | 'nothing';
  readonly positions: number | null;
  readonly diameter: number | null;
  readonly length: number | null;
  readonly teeth: number | null;
  readonly height: number | null;
  readonly spigot: { readonly diameter: number; readonly length: number; readonly play: Value | null } | null;
}

export type StopOnShaft =
  | 'shoulder'
  | 'retaining ring'
  | 'nut'
  | 'sleeve'
  | 'setscrews'
  | 'press fit'
  | 'weld'
  | 'nothing';
export type StopInPlate = 'shoulder' | 'retaining ring' | 'cover' | 'press fit' | 'nothing';

/** What stops a part toward the start and toward the end of its shaft; null where the build does not say. */
export interface Held<S extends string> {
  readonly address: string;
  readonly towardStart: S | null;
  readonly towardEnd: S | null;
  /** What locks its nut or screws; null where the build does not say. */
  readonly locking: Locking | null;
}

/** A bearing by its number, or by typed ratings. */
export interface BearingFacts {
  readonly row: string | null;
  readonly kind: 'deep groove' | 'angular contact' | 'tapered';
  readonly bore: number | null;
  readonly outside: number | null;
  readonly width: number | null;
  readonly dynamic: number;
  readonly static: number;
  /** Fatigue load limit; from the static rating where no table gives it. */
  readonly fatigue: number;
  readonly f0: number | null;
  readonly kr: number | null;
  readonly referenceSpeed: number | null;
  readonly limitingSpeed: number | null;
  readonly e: number | null;
  readonly x: number | null;
  readonly y: number | null;
  readonly y0: number | null;
  /** Words for where the ratings come from. */
  readonly source: string;
}

export interface BearingSeat {
  /** Null where neither a number nor ratings are given. */
  readonly facts: BearingFacts | null;
  readonly clearance: 'normal' | 'C3' | 'C4' | null;
  readonly seal: 'open' | 'shields' | 'rubbing seals' | null;
  readonly stiffness: Value;
  readonly plate: Plate | null;
  readonly ring: Held<StopInPlate> | null;
  readonly seating: Seating | null;
}

/** How the rings of a bearing sit; null where the build does not say. */
export interface Seating {
  readonly address: string;
  readonly shaft: ShaftClass | null;
  readonly plate: PlateClass | null;
  readonly made: 'bored' | 'reamed' | CutBy | null;
  readonly sitsIn: 'the plate' | 'a steel ring' | 'an aluminium ring' | 'a split ring, clamped' | null;
  readonly keptBy: 'its fit alone' | 'retaining compound' | 'a pin or screw' | null;
  readonly turns: LoadTurns | null;
  readonly float: number | null;
}

export type CutBy = 'plasma cut' | 'laser cut' | 'waterjet cut' | 'oxy-fuel cut';

export interface Plate {
  readonly id: string;
  readonly address: string;
  readonly name: string;
  readonly thickness: number;
  readonly material: 'steel' | 'aluminium';
  readonly width: number;
  readonly span: number;
  /** E I over force times span cubed at its middle: 48 with hinged ends, 192 with ends built in. */
  readonly ends: Value;
  readonly sheets: number;
  readonly cut: CutBy | null;
  readonly runs: 'fore and aft' | 'from side to side' | 'up and down' | null;
  /** Its width was typed in inches. */
  readonly inches: boolean;
}

export interface Cush {
  readonly address: string;
  /** "shaft/seat". */
  readonly at: string;
  readonly stiffness: Value | null;
  readonly lash: number | null;
}

export interface DutyRow {
  readonly address: string;
  readonly name: string;
  /** Index of the gear, first gear 0. */
  readonly gear: number;
  readonly speed: number;
  readonly throttle: number;
  readonly share: number;
}

export interface Duty {
  readonly address: string;
  readonly distance: Value;
  /** Null: not typed; the cycle of the targets or a usual spectrum stands in. */
  readonly rows: readonly DutyRow[] | null;
  /** Stands for the usual spectrum where neither rows nor a cycle are given; else null. */
  readonly usual: Value | null;
}

export interface Loads {
  readonly grip: Value;
  readonly shock: Value;
  readonly brake: { readonly address: string; readonly at: string; readonly torque: number } | null;
  readonly criterion: 'Goodman' | 'Gerber' | 'ASME elliptic' | 'Soderberg';
  readonly reliability: '50' | '90' | '95' | '99' | '99.9';
  /** Viscosity in the bearings at work. */
  readonly oil: Value;
  /** Temperatures of seats and shafts at work. */
  readonly cold: Value;
  readonly hot: Value;
  readonly dirt: 'clean' | 'normal' | 'dirt from outside' | 'severe';
}
