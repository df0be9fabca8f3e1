import type { Vec3 } from '@oddwheel/quantity/quantity';

/** A part by its name and address. */
export interface Named {
  readonly name: string;
  readonly address: string;
}

/** What takes clearance away from two parts as they are drawn. */
export type Taker =
  | 'stroke of the arm'
  | 'axle slot'
  | 'largest sprocket'
  | 'growth of the tyre'
  | 'movement between bodies';

/** Two parts near each other; lengths in m. */
export interface ClearanceRow {
  readonly first: Named;
  readonly second: Named;
  /** Moving element that the pair is counted with: the earlier one on the path. */
  readonly element: string;
  /** As drawn; 0 where they overlap. */
  readonly drawn: number;
  /** Smallest over stroke, largest sprockets, growth and movement; 0 or less where they come to touch. */
  readonly smallest: number;
  readonly wanted: number;
  /** What makes the smallest smaller than drawn, most first; the parts add up to the difference. */
  readonly takes: readonly { readonly by: Taker; readonly length: number }[];
  /** Angle of the swinging arm at which it is smallest, up from where it is drawn; null where the arm does not matter. */
  readonly arm: number | null;
  /** Nearest points there. */
  readonly at: readonly [Vec3, Vec3];
  /** One line with the numbers, in the units of the build. */
  readonly text: string;
  /** Where it is, in words: forward, left and up from the wheel's centre. */
  readonly place: string;
}

/** Room for a tool, and what stands in it. */
export interface AccessRow extends Named {
  /** Part in the middle of the room, which the tool goes to. */
  readonly serves: Named | null;
  readonly blockedBy: readonly Named[];
  readonly text: string;
}

/** A size that is not known, so that a part or a piece of it stands in no row. The address is that of the missing input. */
export interface UnknownSize extends Named {
  /** Element that the part belongs to; null for what stands still. */
  readonly element: string | null;
  readonly says: string;
}

/** Room between what moves and what is near it. */
export interface Clearances {
  readonly wanted: number;
  /** Road speed at which the tyre's growth counts; null where it is not known. */
  readonly topSpeed: number | null;
  /** Smallest first: pairs nearer than three times what is wanted, and in any case the nearest dozen and the nearest of each element. */
  readonly rows: readonly ClearanceRow[];
  readonly access: readonly AccessRow[];
  readonly unknown: readonly UnknownSize[];
}
