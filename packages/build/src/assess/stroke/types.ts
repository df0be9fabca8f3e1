import type { Missing } from '../types.ts';

/** A chain at one place of the arm; SI. */
export interface StrokePlace {
  /** "full rebound", "as drawn", "full bump", or null between them. */
  readonly name: 'full rebound' | 'as drawn' | 'full bump' | null;
  /** From where the wheel is drawn, positive toward bump. */
  readonly angle: number;
  readonly centreDistance: number;
  /** Not rounded. */
  readonly linksNeeded: number;
  /** Total movement by hand at mid-span, from one side to the other, and the same over the span; null where the links fitted are not known. */
  readonly movement: number | null;
  readonly movementOverSpan: number | null;
  readonly wrapSmall: number;
}

export interface Tightest {
  readonly at: 'in line' | 'full rebound' | 'full bump' | 'everywhere alike';
  /** From where the wheel is drawn, positive toward bump. */
  readonly angle: number;
  readonly centreDistance: number;
  readonly linksNeeded: number;
  readonly text: string;
}

/** Slack to set by hand, where the vehicle stands while it is measured. */
export interface SlackSetting {
  /** Wanted where the chain is tightest. */
  readonly wanted: number;
  readonly onStand: number;
  readonly onWheels: number;
  /** Arm on the stand, down from where the wheel is drawn. */
  readonly stand: number;
  /** The stand was left blank and counts as full rebound. */
  readonly standAssumed: boolean;
  /** How far the axle has to go along the arm from where it is drawn; positive away from the pivot. */
  readonly shift: number;
  readonly text: string;
}

/** What one end of the axle slot does to the chain. */
export interface SlotEnd {
  /** Along the adjuster's direction, from where the axle is drawn. */
  readonly by: number;
  /** With the arm as drawn. */
  readonly centreDistance: number;
  /** Where the chain is then tightest over the stroke; negative: it is too short by so much. */
  readonly excess: number;
}

export interface AxleSlot {
  /** Adjuster. */
  readonly address: string;
  readonly name: string;
  readonly travel: number;
  /** The end with the centres nearer first. */
  readonly ends: readonly [SlotEnd, SlotEnd];
  /** The wanted slack lies between the two ends. */
  readonly reaches: boolean;
  readonly text: string;
}

/** Room between a span and the arm at one place; negative when they rub. */
export interface SpanRoom {
  readonly place: 'full rebound' | 'as drawn' | 'full bump';
  readonly span: 'upper' | 'lower';
  readonly pulling: number;
  /** With the span hanging or flapping as far as its slack lets it; null where the links fitted are not known. */
  readonly slack: number | null;
}

export interface Rise {
  /** Load case. */
  readonly case: string;
  readonly pull: number;
  readonly tightSpan: 'upper' | 'lower';
  /** Torque about the pivot, positive lifting the axle toward bump, and the same as a load on the axle. */
  readonly places: readonly {
    readonly place: 'full rebound' | 'as drawn' | 'full bump';
    readonly torqueChain: number;
    readonly torqueThrust: number;
    readonly torque: number;
    readonly sense: 'squats' | 'rises' | 'neither';
  }[];
  readonly text: string;
}

/** What a chain to a shaft on the swinging arm does over the stroke. */
export interface ChainOverStroke {
  readonly address: string;
  readonly name: string;
  /** From full rebound to full bump. */
  readonly places: readonly StrokePlace[];
  readonly tightest: Tightest | null;
  readonly slack: SlackSetting | null;
  readonly slot: AxleSlot | null;
  /** Empty where the height of the arm is not known, or 0: the chain runs clear beside it. */
  readonly room: readonly SpanRoom[];
  readonly rise: Rise | null;
  /** What could not be worked out, and what it wants. */
  readonly missing: readonly Missing[];
}

/** Chains over the stroke of the swinging arm. */
export interface Stroke {
  /** Full bump and full rebound from where the wheel is drawn. */
  readonly bump: number;
  readonly rebound: number;
  readonly chains: readonly ChainOverStroke[];
}
