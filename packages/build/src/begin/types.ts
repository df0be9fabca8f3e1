/** What the first page asks, and what comes of it. Plain data. */
import type { Fault } from '../fault.ts';

/** The six fields as typed. */
export interface SixFields {
  /** Peak power and the engine speed it comes at: "27 kW", "7500 rpm". */
  readonly power: string;
  readonly powerAt: string;
  /** Peak torque and the engine speed it comes at: "41 N.m", "5200 rpm". */
  readonly torque: string;
  readonly torqueAt: string;
  /** Gearbox ratios, first gear first: "2.75 1.78 1.36"; null for "don't know". */
  readonly gears: string | null;
  /** Ratio of the primary drive: "65:31"; blank when not known. */
  readonly primary: string;
  /** Size on the tyre's wall, or the measured roll-out: "110/85R36", "3.35 m". */
  readonly tyre: string;
  readonly mass: string;
  /** Wanted road speed at the speed of peak power in top gear. */
  readonly speed: string;
}

export type SixKey = keyof SixFields;

/** A fault of one field: what is wrong, and what is accepted. The address is the place in the file it would have had. */
export interface FieldFault extends Fault {
  readonly field: SixKey;
}

/** One thing that the layout chose, and why. */
export interface Choice {
  /** "Chain 1". */
  readonly what: string;
  /** "17:30 on 520, 76 links". */
  readonly chosen: string;
  readonly why: string;
}

/** Something that nobody typed and the layout stands on. */
export interface BeginAssumption {
  /** Address in the build where the builder puts the right value. */
  readonly address: string;
  readonly name: string;
  readonly text: string;
  readonly why: string;
  /** How many findings hang on it. */
  readonly findings: number;
}

/** What the fields typed so far come to. */
export interface SoFar {
  /** Faults of the fields that are not blank. */
  readonly faults: readonly FieldFault[];
  /** Engine speed over wheel speed in top gear; null until peak power's speed, tyre and road speed are known. */
  readonly overall: number | null;
  /** What of it is left for the path, after primary drive and top gear; null until these are known or told unknown. */
  readonly path: number | null;
}

export type BeginResult =
  | {
      readonly ok: true;
      /** Text of the build file. */
      readonly text: string;
      /** Engine speed over wheel speed in top gear. */
      readonly overall: number;
      /** What of it two chains and the bevel pair make. */
      readonly path: number;
      /** "chain 17:30, bevel 14:33, chain 15:48". */
      readonly train: string;
      readonly choices: readonly Choice[];
    }
  | { readonly ok: false; readonly faults: readonly FieldFault[] };
