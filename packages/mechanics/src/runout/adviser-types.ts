/**
 * What the adviser of beads is given and what it gives. SI units; no clock, no chance, no file.
 *
 * Angles are clock angles on the part, rad: 0 at twelve o'clock (mark 0), growing clockwise as seen from the stated end;
 * three o'clock is π/2. An offset is a vector in those axes; its length is half the TIR it makes.
 */

/** Offset of a section from the datum axis, m: `x` towards twelve o'clock, `y` towards three o'clock. */
export interface Offset {
  readonly x: number;
  readonly y: number;
}

/** One stretch of the full weld that a joint owes. */
export interface OwedSegment {
  /** Clock angle of its middle. */
  readonly clock: number;
  /** Bead length still owed there, all passes added, m. */
  readonly length: number;
}

/** Which beads can be laid. */
export interface BeadLimits {
  /** Shortest bead, m. */
  readonly smallest: number;
  /** Longest sensible bead of one round, m. */
  readonly largest: number;
  /** Lengths go up in this step from the shortest, m. */
  readonly step: number;
  /** Places round the part that a bead can be laid at, equally spaced from twelve o'clock: 24 for half hours. */
  readonly places: number;
}

/** What is known of the part's answer before its first bead. */
export interface ResponsePrior {
  /** Offset of the watched section per length of bead, m/m: the middle guess. */
  readonly pull: number;
  /** The real one is taken to lie within the middle guess divided and multiplied by this, four times in five. */
  readonly pullFactor: number;
  /** How far the movement may point aside from the expected direction, rad, one standard deviation. */
  readonly lag: number;
  /** Round-to-round scatter of the movement, as a fraction of it, one standard deviation. */
  readonly scatter: number;
  /** Part of a movement that cooling takes back, as a fraction, and its standard deviation. */
  readonly relaxation: { readonly mean: number; readonly spread: number };
}

/** A part before its next bead. */
export interface BeadPart {
  /** `weld-up`: the joint still owes a full weld, and every bead is part of it. `correct`: extra beads on a finished part. */
  readonly mode: 'weld-up' | 'correct';
  /** Offset of the watched section as measured, cold. */
  readonly measured: Offset;
  /** Standard uncertainty of either component of a measured offset, m. */
  readonly readingSpread: number;
  /** TIR of the watched section that is good enough, m. */
  readonly goal: number;
  /** `beyond`: the watched section stands out beyond the bead and moves towards it. `between`: it lies between the seats and moves away from it. */
  readonly lies: 'beyond' | 'between';
  readonly beads: BeadLimits;
  readonly prior: ResponsePrior;
  /** Rounds that are worth spending on this part. */
  readonly rounds: number;
  /** What the joint owes; needed in `weld-up`, empty otherwise. A weld-up bead names one segment by its index here. */
  readonly owed: readonly OwedSegment[];
}

/** What can be expected of an action, in TIR of the watched section, m. */
export interface Expected {
  /** As likely to come out above as below. */
  readonly tir: number;
  /** Nine in ten come out above `low`, nine in ten below `high`. */
  readonly low: number;
  readonly high: number;
  /** Chance that it comes out within the goal, 0..1. */
  readonly within: number;
}

/** One bead. */
export interface BeadAction {
  /** Clock angle of the middle of the bead, rad, 0..2π. */
  readonly clock: number;
  /** m */
  readonly length: number;
  /** Index of the owed segment it belongs to; left out for an extra bead. */
  readonly segment?: number;
}

export type Warning =
  /** The response is not known well yet. */
  | 'uncertain'
  /** Beads pile up at this place and pull less. */
  | 'piled-up'
  /** The last bead moved the part the wrong way or far from what was expected. */
  | 'surprise'
  /** The last reading was taken on a warm part. */
  | 'warm'
  /** The movement pointed away from where beads are expected to pull: check marks and sense. */
  | 'sense';

export type StopReason =
  /** Within the goal, and the reading is sure enough of it. */
  | 'good'
  /** The goal cannot be reached in the rounds left with what this part answers. */
  | 'hopeless'
  /** All rounds are spent. */
  | 'spent'
  /** No bead that can be laid is expected to make it better. */
  | 'no-gain';

export type Advice =
  | {
      readonly do: 'bead';
      readonly bead: BeadAction;
      /** A small bead to learn from, because the response is too uncertain for a full one. */
      readonly trial: boolean;
      /** The first of two beads that nearly cancel: it makes the part worse alone; `expected` is after both. */
      readonly pair?: true;
      readonly expected: Expected;
      /** The next best bead at another place or of another length, when there is one. */
      readonly otherwise?: { readonly bead: BeadAction; readonly expected: Expected };
      readonly warnings: readonly Warning[];
      /** Weld length still owed after this bead, m. */
      readonly owedAfter: number;
    }
  | {
      /** Let it cool and measure again. `expected` is the cold reading. */
      readonly do: 'wait';
      readonly expected: Expected;
      readonly warnings: readonly Warning[];
    }
  | {
      readonly do: 'stop';
      readonly because: StopReason;
      /** Of the part as it is. */
      readonly expected: Expected;
      readonly warnings: readonly Warning[];
    };

/** The part's response as far as it is known. */
export interface LearnedResponse {
  /** Pull, m/m: middle, and the ends that hold four times in five. */
  readonly pull: number;
  readonly pullLow: number;
  readonly pullHigh: number;
  /** Direction lag, rad, clockwise positive, and its standard deviation. */
  readonly lag: number;
  readonly lagSpread: number;
}
