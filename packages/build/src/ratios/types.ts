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
export const ORDER_KEYS = ['ratio', ...TERM_KEYS] as const;
export type OrderKey = (typeof ORDER_KEYS)[number];

/** Teeth that a stage may have. */
export type Asked =
  | { readonly from: 'as drawn' }
  | { readonly from: 'shelf' }
  | { readonly from: 'range'; readonly driver: readonly [number, number]; readonly driven: readonly [number, number] }
  | { readonly from: 'pairs'; readonly pairs: readonly (readonly [number, number])[] };

/** What may be chosen before a search. */
export interface RatioChoices {
  readonly targets: readonly TargetWindow[];
  readonly open: Windows['open'];
  readonly stages: readonly {
    readonly stage: string;
    readonly address: string;
    readonly name: string;
    readonly kind: 'chain' | 'belt' | 'bevel' | 'spur';
    /** Teeth as drawn. */
    readonly driver: number;
    readonly driven: number;
    /** Teeth that are sold from stock and run well; null for gears, which are looked for on the shelf. */
    readonly usual: { readonly driver: readonly [number, number]; readonly driven: readonly [number, number] } | null;
  }[];
}

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

/** A sprocket to buy as a blank, and what to look at. SI. */
export interface Blank {
  /** "sprocket 60 17". */
  readonly part: string;
  readonly stage: string;
  readonly end: 'driver' | 'driven';
  /** Largest hub that clears the chain. */
  readonly hub: number;
  /** Largest bore that leaves such a hub wall enough for a key. */
  readonly largestBore: number;
  /** Diameter of its seat; null where the build does not say. */
  readonly bore: number | null;
  /** Largest pilot hole that can be bored out to it. */
  readonly pilot: number | null;
  /** Sides of the plate with a hub. */
  readonly sides: 0 | 1;
  /** Whether its teeth should be hardened; null where its speed is not known. */
  readonly hardened: boolean | null;
  readonly says: string;
}

/** The check of strength that a train leaves nearest to its limit. */
export interface Weakest {
  readonly finding: string;
  readonly title: string;
  readonly element: string;
  readonly severity: Finding['severity'];
  readonly reserve: number;
}

/** What a build's strength comes to with a train, at the middle of the ranges. */
export interface TrainStrength {
  /** Null where no check of strength has a number. */
  readonly weakest: Weakest | null;
  /** Checks of strength that fail, and that cannot be told. */
  readonly fails: number;
  readonly unknown: number;
}

export interface RankedTrain extends Effect {
  /** Part by which it misses the window; zero inside. */
  readonly error: number;
  readonly terms: Readonly<Record<TermKey, number>>;
  /** With every chain and belt as it is then fitted; the order counts stage by stage, each from the build as drawn. */
  readonly toBuy: readonly string[];
  /** What to look at in the sprockets to buy. */
  readonly blanks: readonly Blank[];
  /** Shown beside it; it never ranks. */
  readonly strength: TrainStrength;
}

/** What a chain or belt of the build is easily taken for, and which sprockets on the shelf run on its chains. */
export interface Buying {
  readonly nearMisses: readonly NearMiss[];
  readonly shelf: readonly {
    readonly stage: string;
    readonly chain: string;
    readonly sprocket: string;
    readonly agreement: readonly Agreement[];
  }[];
  /** Of the facts of blanks. */
  readonly sources: readonly string[];
}

/** Chain and sprocket agree in each of three things, or not: a chain can run on a sprocket only when all three do. */
export interface Agreement {
  readonly what: 'pitch' | 'roller' | 'inner width';
  /** Of the chain and of the chain that the sprocket is cut for, m. */
  readonly chain: number;
  readonly sprocket: number;
  readonly agrees: boolean;
}

/** A size that is easily taken for another one. */
export interface NearMiss {
  readonly size: string;
  readonly other: string;
  readonly why: 'pitch differs a little' | 'same pitch, other roller' | 'same pitch, other width';
  readonly says: string;
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
  readonly buying: Buying;
}
