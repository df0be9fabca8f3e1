/** The search for trains, as the page asks for it. Long work: others are answered in between, and it can be stopped. */
import type { Compared } from '@oddwheel/build/ratios/compare';
import type {
  OrderKey,
  RatioAnswer,
  RatioChoices,
  RatioRequest,
  StagePair,
  SwapRow,
} from '@oddwheel/build/ratios/types';

/** How far it is, in plain words' numbers: trains found, and the part of this round that is done. */
export interface RatioProgress {
  readonly round: number;
  readonly part: number;
  readonly found: number;
}

/** Done, refused in words, or null: stopped, or the build has changed meanwhile. */
export type RatioOutcome<T> =
  | { readonly ok: true; readonly answer: T }
  | { readonly ok: false; readonly says: string }
  | null;

export type FrontAnswer = RatioAnswer & { readonly whole: boolean };

export interface SwapRequest {
  readonly stage: string;
  readonly end: 'driver' | 'driven';
  readonly teeth: 'shelf' | readonly [number, number];
}

export interface SwapAnswer {
  readonly rows: readonly SwapRow[];
  readonly roadSpeed: number;
}

export interface RatiosApi {
  readonly ratioChoices: () => RatioChoices;
  readonly findTrains: (
    request: RatioRequest,
    tell: (progress: RatioProgress) => void,
  ) => Promise<RatioOutcome<RatioAnswer & { readonly roadSpeed: number }>>;
  readonly findFront: (
    request: RatioRequest,
    first: OrderKey,
    second: OrderKey,
    tell: (progress: RatioProgress) => void,
  ) => Promise<RatioOutcome<FrontAnswer>>;
  readonly swapTable: (request: SwapRequest) => Promise<RatioOutcome<SwapAnswer>>;
  /** An empty list of pairs is the build as drawn. */
  readonly compareTrains: (trains: readonly (readonly StagePair[])[]) => Promise<RatioOutcome<readonly Compared[]>>;
  /** Ends the search that is under way. */
  readonly stopTrains: () => void;
}
