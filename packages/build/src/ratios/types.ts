/** What the ratios of a build say: plain data for the page, the command line and the book. SI, at the middle of uncertain inputs. */
import type { Finding } from '../assess/types.ts';
import type { Patch } from '../document/patch.ts';

/** Ratio of the path, from gearbox output to wheel, that a target asks for. */
export interface TargetWindow {
  readonly key: TargetKey;
  /** "4500 rpm to 6000 rpm at 40 km/h in 5th gear". */
  readonly says: string;
  readonly address: string;
  readonly least: number;
  /** Infinite where more ratio always does. */
  readonly most: number;
}

export const TARGET_KEYS = ['cruise', 'top speed', 'pull', 'climb', 'feel'] as const;
export type TargetKey = (typeof TARGET_KEYS)[number];

/** Two targets that no one ratio meets. */
export interface Clash {
  readonly first: TargetKey;
  readonly second: TargetKey;
  /** How far the least of the one lies above the most of the other, as a part. */
  readonly apart: number;
  readonly says: string;
}

export interface Windows {
  readonly targets: readonly TargetWindow[];
  readonly clashes: readonly Clash[];
  /** Ratios that meet all; where targets clash, the one ratio that misses the worst of them least. Null: no target could be worked out. */
  readonly band: { readonly low: number; readonly high: number } | null;
  /** Why a target of the build has no window. */
  readonly open: readonly { readonly key: TargetKey; readonly says: string }[];
}

/** Terms a train is ranked by, besides the ratio error. */
export const TERM_KEYS = ['wear', 'links', 'wrap', 'chordal', 'mass', 'buy', 'price'] as const;
export type TermKey = (typeof TERM_KEYS)[number];
export type OrderKey = 'ratio' | TermKey;

/** Teeth that a stage may have. */
export type Asked =
  | { readonly from: 'as drawn' }
  | { readonly from: 'shelf' }
  | { readonly from: 'range'; readonly driver: readonly [number, number]; readonly driven: readonly [number, number] }
  | { readonly from: 'pairs'; readonly pairs: readonly (readonly [number, number])[] };

export interface RatioRequest {
  readonly best: number;
  /** What counts first, second, and so on. */
  readonly order: readonly OrderKey[];
  /** Targets that set the window; empty: all that the build has. */
  readonly targets: readonly TargetKey[];
  /** By stage id; a stage that is not named takes its usual choices. */
  readonly stages: Readonly<Record<string, Asked>>;
  /** Price of a part that has to be bought, by "sprocket 60 17" or "bevel pair 14:33"; any money. */
  readonly prices: Readonly<Record<string, number>>;
  /** Only trains whose parts are on the shelf. */
  readonly shelfOnly: boolean;
}

/** A stage with its new teeth. */
export interface StagePair {
  readonly stage: string;
  readonly driver: number;
  readonly driven: number;
}

/** A stage after the change: links, and what its adjuster has to do. */
export interface SettledStage extends StagePair {
  readonly name: string;
  readonly address: string;
  readonly kind: string;
  readonly ratio: number;
  /** Links or belt teeth fitted after the change; null for gears. */
  readonly links: number | null;
  /** Links to add; below zero to take out; null where the build does not say how many are fitted. */
  readonly linksChange: number | null;
  /** Movement of the adjuster along its direction, its travel each way, and whether it reaches; null without one. */
  readonly move: { readonly adjuster: string; readonly by: number; readonly travel: number } | null;
  /** Whether links and adjuster can make it fit. */
  readonly fits: boolean;
  readonly says: string;
}

export interface GearAt {
  readonly gear: string;
  readonly overall: number;
  /** At the road speed asked for. */
  readonly engineSpeed: number;
  /** At the ground, at peak torque; null without a torque curve. */
  readonly force: number | null;
}

/** What a change stops that held before, or leaves failing. */
export interface Stop {
  readonly finding: string;
  readonly check: string;
  readonly title: string;
  readonly severity: Finding['severity'];
  readonly says: string;
  /** It was so before the change too. */
  readonly before: boolean;
}

/** What one change of teeth does. */
export interface Effect {
  readonly pairs: readonly StagePair[];
  readonly stages: readonly SettledStage[];
  /** Ratio from gearbox output to wheel. */
  readonly path: number;
  readonly gears: readonly GearAt[];
  /** Whether parts pass the openings and their seats. */
  readonly openings: 'pass' | 'do not pass' | 'unknown';
  readonly stops: readonly Stop[];
  /** Edit that makes the change. */
  readonly patches: readonly Patch[];
  /** "Chain, driver teeth 17 → 18". */
  readonly name: string;
}

export interface SwapRow extends Effect {
  readonly end: 'driver' | 'driven';
  readonly teeth: number;
  readonly onShelf: number;
  /** The sprocket that is drawn. */
  readonly drawn: boolean;
}

export interface RankedTrain extends Effect {
  /** Part by which it misses the window; zero inside. */
  readonly error: number;
  readonly terms: Readonly<Record<TermKey, number>>;
  readonly toBuy: readonly string[];
}

export interface RatioAnswer {
  readonly windows: Windows;
  readonly trains: readonly RankedTrain[];
  /** Trains that were weighed against each other, and choices of each stage. */
  readonly size: number;
  readonly stages: readonly {
    readonly stage: string;
    readonly name: string;
    readonly choices: number;
    readonly says: string;
  }[];
}
