import type { Kind } from '@oddwheel/quantity/kinds';

/** Something that has to be set when the vehicle is put together, and again later. */
export interface Setting {
  /** Kind and address: "slack:/path/stages/chain-1". */
  readonly key: string;
  readonly sets: 'slack' | 'gear position' | 'sprocket line';
  /** Stage for slack and line; seat for a gear. */
  readonly address: string;
  /** "slack of Chain 1". */
  readonly name: string;
  /** False: the drive does without, but the build names an adjuster for it. */
  readonly required: boolean;
  /** Addresses of the adjusters that set it. */
  readonly adjusters: readonly string[];
}

/** What one millimetre of an adjuster does to something that another adjuster sets. */
export interface Disturbance {
  /** Address of the adjuster. */
  readonly adjuster: string;
  /** Key of the setting that it disturbs. */
  readonly setting: string;
  /** What changes: "links needed". */
  readonly what: string;
  /** After less before, SI; null where the stage can no longer be computed. */
  readonly change: number | null;
  readonly kind: Kind;
  /** "Shims at the pinion, by 1 mm: line of Chain 1 shifts by 1 mm." */
  readonly text: string;
}

/** One stage that a shifted shaft upsets. */
export interface Upset {
  /** Stage. */
  readonly address: string;
  readonly name: string;
  readonly what: string;
  /** After less before, SI; null where the stage can no longer be computed. */
  readonly change: number | null;
  readonly kind: Kind;
  /** Shaft at the other end, which would have to follow by the same amount. */
  readonly follow: string;
  /** Adjuster whose travel makes it good instead; null when none does. */
  readonly takenUpBy: string | null;
  readonly text: string;
}

/** What else must move when one shaft is shifted whole, the others left where they are. */
export interface ShaftMove {
  readonly shaft: string;
  readonly name: string;
  /** Vehicle axis: x forward, y left, z up. */
  readonly axis: 'x' | 'y' | 'z';
  /** Shift, m. */
  readonly by: number;
  readonly upsets: readonly Upset[];
}

/** One step of the setting order. */
export interface SettingStep {
  readonly adjuster: string;
  readonly setting: string;
  readonly text: string;
}

/** What has to be set, by what, in which order, and what it disturbs. */
export interface Adjustment {
  readonly settings: readonly Setting[];
  readonly disturbances: readonly Disturbance[];
  /** An adjuster that disturbs a setting comes before the one that makes it; those in a ring stand in the order of the path. */
  readonly order: readonly SettingStep[];
  /** Adjusters that disturb each other's settings in a ring, by address; each ring once. */
  readonly rings: readonly (readonly string[])[];
  readonly moves: readonly ShaftMove[];
}
