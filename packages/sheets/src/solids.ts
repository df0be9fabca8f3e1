/** The parts of a build as solids in vehicle axes, in millimetres: what every view and the picture in space are made from. */
import type { Vec3 } from '@oddwheel/quantity/quantity';

/** A body of revolution: radii at stations along an axis, from end to end. A radius may step: the same station twice. */
export interface Turned {
  readonly shape: 'turned';
  readonly at: Vec3;
  /** Unit vector. */
  readonly along: Vec3;
  readonly outline: readonly (readonly [station: number, radius: number])[];
  /** Radius of a hole through it, 0 for none. */
  readonly bore: number;
  readonly teeth: Teeth | null;
}

/** A toothed rim between two stations. */
export interface Teeth {
  readonly form: 'sprocket' | 'gear';
  readonly count: number;
  readonly from: number;
  readonly to: number;
  readonly pitch: number;
  readonly tip: number;
  readonly root: number;
  /** A direction square to the axis in which a gap lies. */
  readonly gap: Vec3;
}

/** A chain or toothed belt along its pitch line, closed, one point a pitch. */
export interface Loop {
  readonly shape: 'loop';
  readonly pins: readonly Vec3[];
  /** Square to the plane in which it runs; unit vector. */
  readonly across: Vec3;
  readonly pitch: number;
  readonly width: number;
  readonly height: number;
}

/** Eight corners, low before high in x, then y, then z: its sides need not lie along the axes. */
export interface Block {
  readonly shape: 'block';
  readonly corners: readonly Vec3[];
}

/** A straight bar of square or round section. */
export interface Bar {
  readonly shape: 'bar';
  readonly from: Vec3;
  readonly to: Vec3;
  readonly size: number;
}

/** Thin straight lines: spokes. */
export interface Wires {
  readonly shape: 'wires';
  readonly lines: readonly (readonly [Vec3, Vec3])[];
}

export type Shape = Turned | Loop | Block | Bar | Wires;

export type Role =
  | 'shaft'
  | 'bearing'
  | 'sprocket'
  | 'pulley'
  | 'gear'
  | 'joint'
  | 'tyre'
  | 'grown tyre'
  | 'rim'
  | 'spokes'
  | 'chain'
  | 'belt'
  | 'keep-out'
  | 'access'
  | 'tube'
  | 'arm'
  | 'unit';

export interface Solid {
  /** Address of what it shows. */
  readonly of: string;
  readonly name: string;
  readonly role: Role;
  /** Address of the shaft that places it; null where none does. */
  readonly moves: string | null;
  /** False: a size stands in for one that the build does not give, and it is drawn in thin lines. */
  readonly sized: boolean;
  readonly shape: Shape;
}
