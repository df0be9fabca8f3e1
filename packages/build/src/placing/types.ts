/** What can be moved in a view, and what a move is held to. Lengths in m, in vehicle axes. */

import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Patch } from '../document/patch.ts';

/** One length of the file that says where something stands. */
export interface Coordinate {
  /** Address of the length. */
  readonly address: string;
  /** As typed in the file. */
  readonly text: string;
  /** SI value. */
  readonly si: number;
}

/** A point of the file, a length for each axis. */
export interface PlacedPoint {
  /** "Origin"; empty where there is one point only. */
  readonly name: string;
  readonly coordinates: readonly [Coordinate, Coordinate, Coordinate];
}

export type PlacedKind = 'shaft' | 'seat' | 'keep-out' | 'tube' | 'pivot' | 'idler';

/** Something that can be moved: as a whole by its points, or along its shaft by its station. */
export interface Placed {
  readonly address: string;
  readonly name: string;
  readonly kind: PlacedKind;
  /** All of them move together. Empty for a seat. */
  readonly points: readonly PlacedPoint[];
  readonly station: {
    readonly coordinate: Coordinate;
    readonly shaft: string;
    /** Where the shaft begins, and its unit direction. */
    readonly origin: Vec3;
    readonly along: Vec3;
  } | null;
}

/** A place in the shop that positions are told from. Null where it says nothing of an axis. */
export interface Datum {
  readonly id: 'wheel centre' | 'floor' | 'centreline' | 'pivot';
  /** "the floor". */
  readonly name: string;
  readonly at: readonly [number | null, number | null, number | null];
  /** What its place stands on; empty where it is typed. */
  readonly from: string;
}

/** A datum that this build cannot have yet, and why. */
export interface NoDatum {
  readonly name: string;
  readonly why: string;
}

export interface Placing {
  readonly placed: readonly Placed[];
  readonly datums: readonly Datum[];
  readonly without: readonly NoDatum[];
  /** Patches that every edit of a file of an older format begins with. */
  readonly raise: readonly Patch[];
}

/** Centres that a chain or belt asks for: the moved seat stands on a circle about the other one. */
export interface LinkCircle {
  /** Address of the chain or belt. */
  readonly stage: string;
  readonly name: string;
  /** "84 links"; empty for the centres as they are drawn. */
  readonly count: string;
  /** The seat of what is moved, where it stands now. */
  readonly own: Vec3;
  /** The other seat. */
  readonly centre: Vec3;
  readonly along: Vec3;
  readonly radius: number;
}

/** Something with sides along the vehicle axes that a moved part keeps clear of. */
export interface Wall {
  readonly name: string;
  readonly low: Vec3;
  readonly high: Vec3;
}

/** What a move of one thing can be held to. */
export interface MoveAids {
  readonly address: string;
  /** Whole even links of each chain, whole teeth of each belt, near where it stands. */
  readonly circles: readonly LinkCircle[];
  /** The present centres of each chain and belt on it, to be held. */
  readonly held: readonly LinkCircle[];
  /** Axes of the other shafts. */
  readonly shafts: readonly { readonly name: string; readonly at: Vec3; readonly along: Vec3 }[];
  readonly walls: readonly Wall[];
  /** Box around each part that moves. */
  readonly boxes: readonly Omit<Wall, 'name'>[];
  /** Clearance wanted. */
  readonly wanted: number;
}
