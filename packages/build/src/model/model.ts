/** The model: a build with every field read, defaults taken from sourced rows, and references followed. Immutable. */
import type { UnitChoice } from '@oddwheel/quantity/format';
import type { Kind } from '@oddwheel/quantity/kinds';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Breaks, Oiled } from './chain-facts.ts';
import type { GearFacts } from './gears.ts';
import type { Hub } from './hub.ts';
import type { Shop } from './shop.ts';
import type {
  BearingSeat,
  Cush,
  Duty,
  Guard,
  Held,
  Join,
  Loads,
  Notch,
  Piece,
  Plate,
  Steel,
  StopOnShaft,
  Surface,
} from './strength.ts';

/** One input. `lo` < `hi` when it is uncertain: typed as a range, or blank with a bounding range. */
export interface Value {
  readonly address: string;
  /** "Chain 1, efficiency". */
  readonly name: string;
  readonly kind: Kind;
  /** SI. The middle of a range. */
  readonly si: number;
  readonly lo: number;
  readonly hi: number;
  readonly text: string;
  readonly origin: 'typed' | 'assumed';
  /** Name of the blanks that stand on one unknown and move together; null for a value that moves alone. */
  readonly together: string | null;
  /** Source of an assumed value. */
  readonly source: string | null;
  readonly recipe: string | null;
}

export interface Seat {
  readonly id: string;
  readonly address: string;
  readonly name: string;
  readonly kind: 'sprocket' | 'pulley' | 'gear' | 'joint' | 'wheel' | 'bearing';
  readonly station: number;
  /** In vehicle axes. */
  readonly at: Vec3;
  /** Body that carries a bearing. */
  readonly body: Body | null;
  readonly diameter: number | null;
  /** Width of the part that sits here. */
  readonly width: number | null;
  /** Of a bearing: its outside diameter, and the hole that is left in its plate when it is out. */
  readonly outside: number | null;
  readonly opening: number | null;
  /** What a bearing seat has besides; null for other seats. */
  readonly bearing: BearingSeat | null;
  /** What stops the part on its shaft; null where the build does not say. */
  readonly held: Held<StopOnShaft> | null;
  /** What passes the torque; null where the build does not say, and for bearings. */
  readonly hub: Hub | null;
}

export type Body = 'engine' | 'subframe' | 'vehicle frame' | 'swinging arm';

export interface Shaft {
  readonly id: string;
  readonly address: string;
  readonly name: string;
  readonly origin: Vec3;
  /** Unit vector. */
  readonly direction: Vec3;
  readonly seats: readonly Seat[];
  readonly stock: {
    readonly address: string;
    readonly name: string;
    readonly length: number;
    readonly diameter: number;
  } | null;
  readonly steel: Steel;
  readonly surface: Surface;
  /** Diameters as typed; null where the build leaves them to the seats. */
  readonly pieces: readonly Piece[] | null;
  readonly notches: readonly Notch[];
  readonly joins: readonly Join[];
}

interface StageBase {
  readonly id: string;
  readonly address: string;
  readonly name: string;
  readonly from: SeatRef;
  readonly to: SeatRef;
  readonly efficiency: Value;
  readonly guard: Guard | null;
}

export interface SeatRef {
  readonly shaft: string;
  readonly seat: string;
}

export interface ChainSize {
  readonly key: string;
  readonly pitch: number;
  readonly roller: number;
  readonly innerWidth: number;
  readonly minTensile: number;
  readonly source: string;
  /** Where its strength comes from: a row of the table, or the address of a typed one. */
  readonly strengthFrom: string;
}

/** A toothed wheel that guides or tensions a chain between its two sprockets. */
export interface Idler {
  readonly address: string;
  readonly at: Vec3;
  readonly teeth: number;
  readonly span: 'slack span' | 'tight span';
  readonly runs: 'inside the chain' | 'outside the chain';
  readonly sprung: boolean;
}

export interface Teeth {
  readonly driver: number;
  readonly driven: number;
}

export type Stage =
  | (StageBase & {
      readonly kind: 'chain';
      readonly size: ChainSize;
      readonly strands: Value;
      /** Part of its length, under a tenth of its least tensile strength. */
      readonly stretch: Value;
      readonly teeth: Teeth;
      readonly links: number | null;
      readonly tensioner: boolean | null;
      readonly joint: 'joining link' | 'riveted link' | 'endless' | null;
      readonly idler: Idler | null;
      /** Largest sprockets that shall go on in place of the drawn ones, in teeth. */
      readonly largest: { readonly driver: number | null; readonly driven: number | null };
      readonly oiled: Oiled | null;
      /** What a broken end would hit. */
      readonly breaks: Breaks | null;
    })
  | (StageBase & {
      readonly kind: 'belt';
      readonly pitch: number;
      readonly teeth: Teeth;
      readonly beltTeeth: number | null;
      readonly profile: string | null;
      readonly width: number | null;
    })
  | (StageBase & {
      readonly kind: 'bevel' | 'spur';
      readonly teeth: Teeth;
      readonly module: Value | null;
      readonly faceWidth: Value | null;
      /** Mean spiral angle and hand of the driver; null for straight teeth. */
      readonly spiral: Value | null;
      readonly hand: 'left' | 'right' | null;
      readonly backlash: Value | null;
      readonly gears: GearFacts;
    })
  | (StageBase & {
      readonly kind: 'coupling';
      readonly joint: 'rigid' | 'elastic' | 'universal joint' | 'two universal joints';
      /** What it takes up: angle, parallel offset, axial movement; null where not said. */
      readonly takes: { readonly angle: number | null; readonly offset: number | null; readonly axial: number | null };
    })
  | (StageBase & {
      readonly kind: 'unit';
      readonly ratio: Value;
      /** +1 when input and output turn positive together, each about its shaft's direction. */
      readonly sense: 1 | -1;
      readonly ratedTorque: Value | null;
      readonly ratedInputSpeed: Value | null;
    });

export interface Engine {
  readonly address: string;
  readonly name: string;
  /** Full-throttle rows, SI: rad/s and N·m. */
  readonly curve: { readonly speeds: readonly number[]; readonly torques: readonly number[] } | null;
  readonly peaks: {
    readonly torque: number;
    readonly torqueAt: number;
    readonly power: number;
    readonly powerAt: number;
  } | null;
  readonly idle: Value;
  /** Blank: the last row of the curve, or the speed of peak power; null without either. */
  readonly redline: Value | null;
  /** Place between the lower and upper bound of a curve known by its peaks only, 0 to 1; null with measured rows. */
  readonly torqueBand: Value | null;
  /** Engine speed held in a start; blank: the speed of peak torque. Null without either. */
  readonly launch: Value | null;
  readonly cylinders: number | null;
  readonly strokes: 2 | 4 | null;
  /** Torque at which the clutch slips; blank: 1.5 to 2.5 times the peak torque. Null without a torque curve. */
  readonly clutchTorque: Value | null;
  /** Torque that the closed engine takes at its redline; blank: a fifth to two fifths of the peak torque. */
  readonly drag: Value | null;
  readonly primary: Value;
  readonly gears: readonly Value[];
  readonly boxEfficiency: Value;
  readonly outputSense: 1 | -1;
  readonly madeFor: 'side pull' | 'torque only' | null;
}

export interface Wheel {
  readonly address: string;
  readonly tyre: string | null;
  readonly diameter: number | null;
  readonly width: number | null;
  /** Roll-out of one turn; null when neither measured nor to be had from the tyre size. */
  readonly rollOut: Value | null;
}

export interface Targets {
  readonly topSpeed: Value | null;
  readonly cruiseSpeed: Value | null;
  readonly cruiseEngine: Value | null;
  readonly pull: Value | null;
  readonly climb: Value | null;
  readonly sprintTo: Value | null;
  readonly sprintIn: Value | null;
  /** Key of a driving cycle. */
  readonly cycle: string | null;
}

export interface Vehicle {
  readonly mass: Value;
  readonly payload: Value;
  readonly contact:
    | 'two, rear driven'
    | 'three, single rear driven'
    | 'three, pair of rears driven'
    | 'four, rears driven'
    | 'front driven'
    | null;
  readonly wheelbase: Value | null;
  /** Laden mass on the driven axle, standing. */
  readonly drivenLoad: Value | null;
  readonly centreHeight: Value | null;
  readonly dragArea: Value;
  readonly rolling: Value;
  readonly friction: Value;
  readonly wheelInertia: Value;
  readonly engineInertia: Value;
  readonly otherInertia: Value;
  readonly track: Value | null;
}

/** A swinging arm about a cross axis through its pivot; angles from where the wheel is drawn, both positive. */
export interface Suspension {
  readonly address: string;
  readonly pivot: Vec3;
  readonly bump: number;
  readonly rebound: number;
  /** Angle on the stand below where the wheel is drawn; null where it is not said. */
  readonly stand: number | null;
  readonly armHeight: number | null;
}

/** A box with its sides along the vehicle axes: something solid, or room for a spanner or puller. */
export interface KeepOut {
  readonly address: string;
  readonly name: string;
  readonly kind: 'solid' | 'access';
  readonly least: Vec3;
  readonly most: Vec3;
  readonly body: Body;
}

export interface Tube {
  readonly address: string;
  readonly name: string;
  readonly from: Vec3;
  readonly to: Vec3;
  readonly size: number;
  readonly body: Body;
}

export interface Space {
  readonly keepOuts: readonly KeepOut[];
  readonly tubes: readonly Tube[];
  /** Clearance wanted between what moves and what stands still. */
  readonly wanted: Value;
}

/** A rubber that holds a body to the frame of the vehicle. */
export interface Mount {
  readonly address: string;
  readonly name: string;
  readonly body: 'engine' | 'subframe';
  readonly at: Vec3;
  /** In each direction; null where the build does not say. */
  readonly stiffness: Value | null;
}

export interface Adjuster {
  readonly id: string;
  readonly address: string;
  readonly name: string;
  readonly sets: 'slack' | 'gear position' | 'sprocket line';
  /** Id of a stage for slack; "shaft/seat" for a gear or sprocket. */
  readonly of: string;
  /** Id of the shaft that moves whole, or "shaft/seat" of the part that moves along its shaft. */
  readonly moves: string;
  /** Unit vector. */
  readonly along: Vec3;
  readonly travel: number;
}

export interface ReferenceVehicle {
  readonly name: string;
  readonly overall: readonly Value[];
  readonly rollOut: Value;
  readonly mass: Value | null;
  readonly at: Value;
}

export interface Speedometer {
  readonly address: string;
  readonly senses: 'gearbox output' | 'driven wheel';
  readonly madeRatio: Value;
  readonly madeRollOut: Value;
}

/** A kept picture; `under` lays it beneath a drawn view by two known points. */
export interface Picture {
  readonly id: string;
  readonly address: string;
  readonly name: string;
  /** SHA-256 of its bytes, the name of its file. */
  readonly file: string;
  /** Address of what it shows. */
  readonly of: string | null;
  readonly under: {
    readonly view: 'from above' | 'from the left' | 'from behind';
    readonly first: KnownPoint;
    readonly second: KnownPoint;
  } | null;
}

/** A point of a picture, as parts of its width and height from the upper left corner, and where it is on the vehicle. */
export interface KnownPoint {
  readonly right: number;
  readonly down: number;
  readonly at: Vec3;
}

export interface Override {
  readonly reserve: number;
  readonly why: string;
  readonly who: string;
  readonly when: string;
}

export interface Model {
  readonly name: string;
  readonly about: string;
  readonly engine: Engine;
  readonly vehicle: Vehicle;
  readonly wheel: Wheel;
  readonly suspension: Suspension | null;
  readonly mounts: readonly Mount[];
  readonly space: Space;
  readonly adjusters: readonly Adjuster[];
  readonly plates: readonly Plate[];
  readonly cush: Cush | null;
  readonly duty: Duty;
  readonly loads: Loads;
  readonly targets: Targets;
  readonly reference: ReferenceVehicle | null;
  readonly speedometer: Speedometer | null;
  readonly shop: Shop;
  /** In the order of power: output shaft first, wheel's shaft last. */
  readonly shafts: readonly Shaft[];
  /** stages[k] joins shafts[k] and shafts[k + 1]. */
  readonly stages: readonly Stage[];
  readonly units: UnitChoice;
  readonly notes: Readonly<Record<string, string>>;
  readonly pictures: readonly Picture[];
  readonly overrides: Readonly<Record<string, Override>>;
  /** Every input value, in the order of the path: those that are uncertain, and those assumed. */
  readonly values: readonly Value[];
}
