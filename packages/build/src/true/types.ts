/** What the record of run-out holds: parts, sets of readings, rounds of correction, as the lines of `true.ndjson` give them. */

/** File beside build.json that the record is kept in, only ever added to. */
export const TRUE_FILE = 'true.ndjson';

/** A part and what is wanted of it. Dimensional values are texts with their unit. */
export interface TruePart {
  /** Id, such as "jackshaft". */
  readonly part: string;
  readonly name?: string;
  /** Id of the shaft of the build that it is; its stations are then those of the build. */
  readonly shaft?: string;
  /** Stations of the two seats that its bearings sit on. */
  readonly seats: { readonly a: string; readonly b: string };
  /** Station that matters most, and the TIR that is good enough there. */
  readonly goal: { readonly station: string; readonly tir: string };
  /** Stations where parts are joined. */
  readonly joints?: readonly { readonly joint: string; readonly station: string; readonly positions: number }[];
  readonly weld?: TrueWeld;
  readonly serves?: TrueServes;
  /** Needed for pressing: diameter at the bend, and yield strength of the steel. */
  readonly press?: { readonly diameter: string; readonly yield: string };
  /** Not for steering, suspension or brakes. */
  readonly use?: 'drive' | 'steering' | 'suspension' | 'brake';
}

/** Kinds of bearings whose lean has a published limit. */
export type TrueBearings = 'deep-groove' | 'tapered' | 'angular-contact';
export const TRUE_BEARINGS: readonly TrueBearings[] = ['deep-groove', 'tapered', 'angular-contact'];

/** What sits at the station that matters, for the budget. */
export interface TrueServes {
  /** Kind of the bearings on its seats. */
  readonly bearings?: TrueBearings;
  readonly sprocket?: { readonly rootDiameter: string; readonly made: 'turned' | 'welded' };
  readonly gear?: {
    readonly bevel: boolean;
    readonly diameter: string;
    readonly module: string;
    readonly grade: number;
  };
  readonly balance?: { readonly mass: string; readonly topSpeed: string; readonly grade: string };
  /** Of the mounts that are dragged along. */
  readonly stiffness?: string;
  /** Run-out that others bring: bore clearance, the sprocket itself. */
  readonly contributors?: readonly { readonly name: string; readonly tir: string; readonly high?: string }[];
}

/** The joint that beads are laid at, and what must be known before the first arc. */
export interface TrueWeld {
  readonly mode: 'weld-up' | 'correct';
  readonly station: string;
  readonly steel: string;
  readonly hardness: string;
  readonly coating: string;
  readonly smallest: string;
  readonly largest: string;
  /** Weld up: stretches of the full weld, all passes added. */
  readonly owed?: readonly { readonly clock: string; readonly length: string }[];
}

export type Setup = 'between centres' | 'chuck' | 'V-blocks' | 'own bearings';
export const SETUPS: readonly Setup[] = ['between centres', 'chuck', 'V-blocks', 'own bearings'];

/** One dial reading: mark on the part in degrees, clockwise from twelve o'clock, and the dial in the set's unit. */
export interface DialReading {
  readonly at: number;
  readonly value: number;
}

/** One set of readings at one station. */
export interface TrueSet {
  readonly part: string;
  readonly station: string;
  readonly setup: Setup;
  /** Opening of the V-blocks. */
  readonly vAngle?: string;
  /** Radial run-out, or that of a face at a diameter. */
  readonly face?: string;
  readonly unit: string;
  /** Smallest step of the dial, in the unit. */
  readonly step: number;
  /** Where the indicator stood. */
  readonly side?: string;
  /** Whether the dial counts up when the surface comes out or goes in. */
  readonly sign: 'out' | 'in';
  readonly readings?: readonly DialReading[];
  readonly ends?: { readonly highest: DialReading; readonly lowest: DialReading };
  /** Temperature on two opposite sides, after heat. */
  readonly warm?: { readonly near: string; readonly far: string };
  /** Position of each joint, by its id. */
  readonly clocking?: Readonly<Record<string, number>>;
  /** In a chuck: the part was turned half a turn in its jaws since the sets before, to tell chuck from part. */
  readonly turned?: boolean;
  /** The joint was taken apart and put together again in the same position since the set before. */
  readonly refit?: boolean;
  readonly note?: string;
  /** SHA-256 of a picture. */
  readonly picture?: string;
}

export const WAYS = ['bead', 're-clock', 'shim', 'turn', 'press', 'peen', 'heat spot'] as const;
export type Way = (typeof WAYS)[number];

/** One round of correction. */
export interface TrueRound {
  readonly part: string;
  readonly way: Way;
  /** The bead as it was laid; its station where it is not that of the part's weld as it is now. */
  readonly bead?: {
    readonly clock: string;
    readonly length: string;
    readonly station?: string;
    readonly segment?: number;
  };
  readonly note?: string;
}

/** An entry with its typed body. */
export interface Kept<Body> {
  readonly id: string;
  readonly taken: string;
  readonly body: Body;
}
