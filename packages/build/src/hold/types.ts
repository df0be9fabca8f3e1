/** What would make a finding hold: plain data for the page and the command line. */
import type { Ends } from '../assess/evaluation.ts';
import type { Severity, Spread } from '../assess/types.ts';
import type { Patch } from '../document/patch.ts';

/** Work that a change asks for, the least first. */
export const EFFORTS = ['adjust', 're-cut', 'buy', 're-make'] as const;
export type Effort = (typeof EFFORTS)[number];

/** What a finding says before or after a change. */
export interface Told {
  readonly severity: Severity;
  readonly reserve: Spread | null;
  readonly says: string;
}

/** Another finding that a change moves. */
export interface SideEffect {
  readonly finding: string;
  readonly element: string;
  readonly title: string;
  /** Null where it is asked only after the change. */
  readonly before: Severity | null;
  /** Null where the change leaves nothing to ask. */
  readonly after: Severity | null;
  readonly reserveBefore: number | null;
  readonly reserveAfter: number | null;
}

/** One change, and the whole build assessed again with it. */
export interface Proposal {
  /** "Turn Shaft B at sprocket 15 to 50 mm instead of 45 mm"; also the name of the edit. */
  readonly what: string;
  readonly patches: readonly Patch[];
  readonly effort: Effort;
  /** Relative change, 0.1 for a tenth. */
  readonly size: number;
  /** Null where the change leaves nothing to ask. */
  readonly after: Told | null;
  /** The finding holds with it. */
  readonly reaches: boolean;
  /** Why the own shop does not do all of it; empty where it does, or where its machines are not told. */
  readonly boughtIn: readonly string[];
  /** Findings that come to hold by it, or stop failing. */
  readonly cures: readonly SideEffect[];
  /** Findings that are worse by it: another word first, then less reserve where it was short already. */
  readonly harms: readonly SideEffect[];
  /** How many others hold as before with less reserve than before. */
  readonly holdWithLess: number;
}

/** A change that would do, and why it is left out. */
export interface RuledOut {
  readonly what: string;
  readonly why: string;
}

/** Proposals for one finding, the smallest first; those that make something else fail come last. */
export interface Hold {
  readonly finding: string;
  readonly before: Told;
  readonly wanted: number;
  readonly proposals: readonly Proposal[];
  readonly ruledOut: readonly RuledOut[];
  /** Why there are none; null where there are. */
  readonly none: string | null;
  /** How often the whole build was assessed for this. */
  readonly trials: number;
  /** Whether the ends of all ranges stand behind what is told, or their middle alone. */
  readonly ends: Ends;
}

/** How far a search is. */
export interface HoldProgress {
  readonly done: number;
  readonly of: number;
  /** What is being tried. */
  readonly doing: string;
}
