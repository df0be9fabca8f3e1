/** What an assessment says: plain data for the page, the command line and the book alike. All numbers are SI. */

import type { Kind } from '@oddwheel/quantity/kinds';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Picture } from '../model/model.ts';
import type { Adjustment } from './adjusters/types.ts';
import type { Assembly } from './assembly/types.ts';
import type { Clearances } from './clearance/types.ts';
import type { Layout } from './layout/types.ts';
import type { Road } from './road/types.ts';
import type { TurningPlay } from './strength/turning-play.ts';
import type { Stroke } from './stroke/types.ts';

export type Severity = 'holds' | 'thin' | 'fails' | 'unknown';

/** What happens when a check is not met, worst first. */
export const CONSEQUENCES = [
  'locks the wheel',
  'loses braking',
  'throws parts',
  'loses drive',
  'wears out',
  'misses a target',
] as const;
export type Consequence = (typeof CONSEQUENCES)[number];

/** How a number is shown: the name of a unit choice in the build. */
export type Use =
  | 'length'
  | 'runOut'
  | 'speed'
  | 'angularSpeed'
  | 'torque'
  | 'power'
  | 'force'
  | 'mass'
  | 'angle'
  | 'pressure'
  | 'temperature'
  | 'time'
  | 'energy'
  | 'number'
  | 'percent'
  /** A length of road. */
  | 'distance';

/** A number with the ends it takes over the uncertain inputs; `lo` = `hi` = `value` when nothing is uncertain. */
export interface Spread {
  readonly value: number;
  readonly lo: number;
  readonly hi: number;
}

/** A derived fact of one element, for display. `text` is in the units chosen in the build. */
export interface Fact {
  readonly key: string;
  readonly name: string;
  readonly kind: Kind;
  readonly use: Use;
  readonly spread: Spread;
  readonly text: string;
  /** Id of the method that gave it. */
  readonly method: string;
}

export type ElementKind =
  | 'engine'
  | 'gearbox'
  | 'shaft'
  | 'chain'
  | 'belt'
  | 'bevel'
  | 'spur'
  | 'coupling'
  | 'unit'
  | 'ground';

/** One column of the path of power, from engine to ground. */
export interface PathElement {
  readonly address: string;
  readonly kind: ElementKind;
  readonly name: string;
  /** Tooth counts of a stage: "17 : 30". */
  readonly teeth: string | null;
  /** Input speed over output speed. */
  readonly ratio: Spread | null;
  /** At the slider. Shafts: speed of rotation (positive), torque, power. Ground: road speed, pull, power. */
  readonly here: {
    readonly angularSpeed: Spread | null;
    readonly torque: Spread | null;
    readonly power: Spread | null;
    /** Chain or belt speed, or road speed at the ground. */
    readonly lineSpeed: Spread | null;
    /** Chain pull, or pull at the ground. */
    readonly force: Spread | null;
  };
  /** Lowest reserve at the slider and over all cases, with the finding that sets it. */
  readonly reserveHere: ReserveMark | null;
  readonly worst: ReserveMark | null;
  readonly facts: readonly Fact[];
}

export interface ReserveMark {
  readonly finding: string;
  readonly severity: Severity;
  readonly reserve: number | null;
}

export interface LoadCase {
  /** "here", or gear and point: "1/peak-torque". */
  readonly id: string;
  readonly name: string;
  readonly gear: string;
  readonly engineSpeed: Spread;
  readonly engineTorque: Spread;
  readonly roadSpeed: Spread;
  /** `steady`: full throttle, or the slider. `rare`: a peak that strength must stand once. */
  readonly kind: 'steady' | 'rare';
  /** What ends the torque before the engine does. */
  readonly capped: 'grip' | 'clutch' | null;
  /** Torque in each shaft in the order of power, N·m, at the middle of all ranges. */
  readonly torques: readonly number[];
}

export interface GearSpan {
  /** "1", "2" … */
  readonly id: string;
  /** "1st", "2nd" … */
  readonly name: string;
  /** Engine speed over wheel speed. */
  readonly overall: Spread;
  readonly speedAtIdle: Spread;
  readonly speedAtRedline: Spread;
}

/** A demand or capacity of a check. */
export interface Measured {
  readonly name: string;
  readonly value: number;
  readonly kind: Kind;
  readonly text: string;
}

export interface Missing {
  readonly address: string;
  readonly says: string;
}

export interface Finding {
  /** Check and address: "chain.slack:/path/stages/chain-1". */
  readonly id: string;
  readonly check: string;
  /** Element that the finding stands on. */
  readonly address: string;
  readonly element: string;
  /** "slack of the chain". */
  readonly title: string;
  /** One sentence with the numbers, in the units of the build. */
  readonly says: string;
  /** "holds either way", "fails either way", or "depends on …"; null when nothing uncertain touches it. */
  readonly either: string | null;
  readonly severity: Severity;
  readonly consequence: Consequence;
  /** Case that governs; null when the check does not depend on a case. */
  readonly governing: string | null;
  readonly demand: Measured | null;
  readonly capacity: Measured | null;
  /** Capacity over demand, with its worse and better end; null for a yes-or-no check or an unknown. */
  readonly reserve: Spread | null;
  /** Design reserve and where it comes from. */
  readonly wanted: number;
  readonly wantedFrom: string;
  readonly missing: readonly Missing[];
  /** Addresses of the uncertain inputs whose ends change the severity. */
  readonly dependsOn: readonly string[];
  /** Addresses of assumed inputs that the check used. */
  readonly assumed: readonly string[];
  /** Row in `reserves`. */
  readonly row: number;
}

/** An input that was left blank and stands on a sourced row. */
export interface Assumed {
  readonly address: string;
  readonly name: string;
  readonly text: string;
  readonly source: string;
}

/** An uncertain input, ranked by how many findings it would settle. */
export interface FindOut {
  readonly address: string;
  readonly name: string;
  readonly text: string;
  readonly findings: readonly string[];
  readonly recipe: string;
}

/** Torques on each shaft, power from end to end, and forces on each shaft with its bearings, as the model checks itself. */
export interface Closure {
  /** Largest out-of-balance torque about any shaft, as a part of the torque through it. */
  readonly torque: number;
  /** Largest |power in − power out − losses| as a part of power in. */
  readonly power: number;
  /** Largest sum of forces or moments on a shaft and its bearings, as a part of the greatest; null where no shaft could be solved. */
  readonly shafts: number | null;
}

/** A part the path needs, against the shelf. */
export interface PartNeed {
  readonly address: string;
  readonly what: string;
  readonly need: number;
  readonly have: number;
}

/** How the reference vehicle compares in one gear. */
export interface ReferenceRow {
  readonly gear: string;
  /** Engine speed at the compared road speed. */
  readonly here: Spread;
  readonly reference: Spread;
  readonly text: string;
}

/** Where things are, for drawing. */
export interface ShaftPlace {
  readonly address: string;
  readonly name: string;
  readonly origin: Vec3;
  readonly direction: Vec3;
  /** +1: turns positive about its direction when the vehicle drives forward; null if not known. */
  readonly sense: 1 | -1 | null;
  readonly seats: readonly {
    readonly address: string;
    readonly name: string;
    readonly kind: string;
    readonly at: Vec3;
  }[];
}

export interface Here {
  readonly gear: string;
  readonly roadSpeed: number;
}

export interface Assessment {
  readonly name: string;
  readonly about: string;
  readonly path: readonly PathElement[];
  readonly gears: readonly GearSpan[];
  readonly cases: readonly LoadCase[];
  /** Ranked: fails, unknown, thin, holds; within one, worst consequence first, then lowest reserve. */
  readonly findings: readonly Finding[];
  /** Whether the ends of uncertain inputs were tried; while not, findings and ranges stand on their middle alone. */
  readonly ends: 'tried' | 'not yet';
  /** reserves[row * cases.length + case]; NaN where a check does not apply or is unknown. */
  readonly reserves: Float64Array;
  readonly assumed: readonly Assumed[];
  readonly findOut: readonly FindOut[];
  readonly closure: Closure | null;
  readonly parts: readonly PartNeed[];
  readonly reference: readonly ReferenceRow[];
  readonly shafts: readonly ShaftPlace[];
  /** What has to be set, by what, in which order, and what it disturbs. */
  readonly adjustment: Adjustment;
  /** How the drive goes together, and how parts that wear are changed. */
  readonly assembly: Assembly;
  /** Which bodies carry what, what passes between them, and what turns a backward wheel round. */
  readonly layout: Layout;
  /** Room between what moves and what is near it. */
  readonly clearance: Clearances;
  /** What the vehicle does on the road. */
  readonly road: Road;
  /** What chains to the swinging arm do over its stroke; null for a rigid wheel. */
  readonly stroke: Stroke | null;
  /** Natural swings of the drive, and the free play in it. */
  readonly turning: TurningPlay;
  readonly here: Here;
  /** The slider stood outside the gear's range: says which gear would do. */
  readonly hereNote: string | null;
  /** Unit choice in force. */
  readonly units: Readonly<Record<string, string>>;
  /** Notes by address. */
  readonly notes: Readonly<Record<string, string>>;
  /** Kept pictures, and those laid under a view. */
  readonly pictures: readonly Picture[];
}
