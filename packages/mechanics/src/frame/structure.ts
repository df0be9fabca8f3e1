import type { Vec3 } from '@oddwheel/quantity/quantity';

/** Cross section of a member, SI. Local x runs along the member; y and z are its main axes. */
export interface Section {
  readonly area: number;
  /** Second moments: `iy` resists bending in the x-z plane, `iz` in the x-y plane. */
  readonly iy: number;
  readonly iz: number;
  /** Torsion constant; for a closed tube not the sum of the second moments. */
  readonly torsion: number;
  /** Areas that carry shear along y and z, shear coefficient times area; 0 leaves shear bending out. */
  readonly shearY: number;
  readonly shearZ: number;
}

export interface Material {
  /** Young's modulus and shear modulus, Pa; density, kg/m³. */
  readonly youngs: number;
  readonly shear: number;
  readonly density: number;
}

/** A straight member between two nodes. */
export interface Member {
  readonly from: number;
  readonly to: number;
  readonly section: Section;
  readonly material: Material;
  /** A direction in the local x-z plane, not along the member: local y is this times x, as vectors. */
  readonly reference: Vec3;
  /** Where the member's end stands off its node, m; a rigid arm. */
  readonly fromOffset?: Vec3;
  readonly toOffset?: Vec3;
}

/** A spring between two nodes, or from a node to the ground: a bearing, a mount. */
export interface Spring {
  readonly a: number;
  /** Null: the ground. */
  readonly b: number | null;
  /** Three unit directions square to each other. */
  readonly axes: readonly [Vec3, Vec3, Vec3];
  /** N/m along each axis, then N·m/rad about each axis. */
  readonly stiffness: readonly [number, number, number, number, number, number];
  /** Where the spring takes hold, off the node, m. */
  readonly aOffset?: Vec3;
  readonly bOffset?: Vec3;
}

/** Which of the six movements of a node are held: along x, y, z, then about x, y, z. */
export type Held = readonly [boolean, boolean, boolean, boolean, boolean, boolean];

/** Movements of one node that follow another node at the same place: a hinge or ball joint leaves some out. */
export interface Tie {
  readonly node: number;
  readonly to: number;
  readonly moves: Held;
}

/** A mass at a node, kg and kg·m² about x, y, z. */
export interface PointMass {
  readonly node: number;
  readonly mass: number;
  readonly inertia: Vec3;
}

/** A frame of members and springs. Loads are not part of it: it is factored once and then asked for many. */
export interface Structure {
  readonly nodes: readonly Vec3[];
  readonly members: readonly Member[];
  readonly springs: readonly Spring[];
  readonly supports: readonly { readonly node: number; readonly held: Held }[];
  readonly ties?: readonly Tie[];
}

/** What is wrong with a structure: words, and the node, member or spring at fault. */
export class FrameError extends Error {
  override readonly name = 'FrameError';
  readonly part: 'node' | 'member' | 'spring';
  readonly index: number;
  constructor(part: 'node' | 'member' | 'spring', index: number, says: string) {
    super(says);
    this.part = part;
    this.index = index;
  }
}
