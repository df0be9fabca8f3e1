import type { Body } from '../../model/model.ts';

/** Shafts joined by rigid couplings, which turn and lie as one. */
export interface ShaftLine {
  /** Addresses of its shafts, in the order of power. */
  readonly shafts: readonly string[];
  readonly name: string;
  /** Its bearings that the build names. */
  readonly bearings: readonly { readonly address: string; readonly name: string; readonly body: Body }[];
  /** Bodies that carry it; the engine carries its own output whether or not its bearings are named. */
  readonly bodies: readonly Body[];
}

/** A stage between two bodies that move against each other, with the movement to take up; SI. */
export interface Crossing {
  readonly address: string;
  readonly name: string;
  readonly from: Body;
  readonly to: Body;
  /** Null where it is not known: a swinging arm whose pivot and travel are blank. */
  readonly movement: { readonly offset: number; readonly angle: number; readonly axial: number } | null;
  readonly text: string;
}

/** A change after which the wheel rolls forward, tried out. */
export interface SenseFix {
  /** Stage or part to change. */
  readonly address: string;
  readonly text: string;
  /** Edits of the build that make it; empty where new parts have to be drawn first. */
  readonly edits: readonly { readonly address: string; readonly text: string }[];
}

/** Which bodies carry what, what passes between them, and what turns a backward wheel round. */
export interface Layout {
  readonly lines: readonly ShaftLine[];
  readonly crossings: readonly Crossing[];
  /** Empty where the wheel rolls forward or its sense is not known. */
  readonly senseFixes: readonly SenseFix[];
}
