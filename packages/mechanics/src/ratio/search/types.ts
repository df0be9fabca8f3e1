/** What a search for trains is asked, and what it answers. A train is one choice from each stage. */

/** One way to make a stage: a pair of toothed wheels, or something with a ratio of its own. */
export interface Choice {
  readonly driver: number;
  readonly driven: number;
  /** Ratio of a stage that has no teeth to count; null: driven over driver. */
  readonly ratio: number | null;
  /** What it adds to each term of the space, in the order of the terms; not below zero. */
  readonly costs: readonly number[];
  /** Numbers of the parts that it takes; a part taken twice stands twice. */
  readonly parts: readonly number[];
}

export interface TrainStage {
  readonly choices: readonly Choice[];
}

/** Parts at hand. Two stages may want the same part, so what is lacking is counted over the whole train. */
export interface PartsAtHand {
  /** How many there are of each part. */
  readonly have: readonly number[];
  /** Refuse trains that lack a part. */
  readonly only: boolean;
  /** Terms to which each lacking part adds. */
  readonly lacking: readonly { readonly term: number; readonly each: readonly number[] }[];
}

/** A weighted sum: `ratio` times the ratio error, and weights times terms. */
export interface Sum {
  readonly ratio: number;
  readonly terms: readonly { readonly term: number; readonly weight: number }[];
}

/** One level of an order: sums in the same step count as equal; step 0 compares them as they are. */
export interface Level extends Sum {
  readonly step: number;
}

/** Trains whose sum is not below this are refused. */
export interface Limit extends Sum {
  readonly below: number;
}

export interface TrainSpace {
  readonly stages: readonly TrainStage[];
  /** Number of terms that each choice gives. */
  readonly terms: number;
  /** Ratio wanted: the error is zero inside, else the part of the nearer end by which it misses. */
  readonly band: { readonly low: number; readonly high: number };
  /** Trains outside are refused; null: none. */
  readonly within: { readonly least: number; readonly most: number } | null;
  readonly limits: readonly Limit[];
  readonly atHand: PartsAtHand | null;
}

export interface Train {
  /** Number of the choice in each stage. */
  readonly choices: readonly number[];
  readonly ratio: number;
  readonly error: number;
  /** Terms, over all stages, with what is lacking. */
  readonly terms: readonly number[];
  /** What it was ranked by, level by level. */
  readonly levels: readonly number[];
}

export interface Progress {
  /** Round of the search, from 1; each takes more choices into account. */
  readonly round: number;
  /** Part of this round that is done. */
  readonly part: number;
  /** Trains found so far. */
  readonly found: number;
}

export interface Found {
  readonly trains: readonly Train[];
  /** Trains in the space before anything is refused. */
  readonly size: number;
}
