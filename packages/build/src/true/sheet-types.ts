/** The record of run-out as a sheet shows it: plain data, lengths in m, angles in rad clockwise from twelve. */
import type { DialReading, TruePart, Way } from './types.ts';
import type { WayWords } from './ways.ts';
import type { NextWords } from './words.ts';

export interface TrueSheet {
  readonly parts: readonly PartSheet[];
  /** What on the record cannot be used, in words. */
  readonly odd: readonly string[];
}

/** One part. */
export interface PartSheet {
  readonly id: string;
  readonly name: string;
  readonly part: TruePart;
  /** Unit that lengths are told in. */
  readonly unit: string;
  readonly goal: number;
  /** Goal in words: "3 thou". */
  readonly goalWords: string;
  /** Run-out at the station that matters, as it is known now. */
  readonly now?: StationSheet;
  /** Latest run-out at each measured station, against the line through both seats. */
  readonly stations: readonly StationSheet[];
  /** What shape of fault it is. */
  readonly diagnosis?: string;
  /** Place of a bend or step along the part. */
  readonly kink?: number;
  /** The latest set that can be drawn. */
  readonly drawn?: DrawnSet;
  readonly rounds: readonly RoundSheet[];
  readonly next: NextSheet;
  readonly ways: readonly WayWords[];
  readonly budget: readonly string[];
  /** All that was put on the record for this part, oldest first. */
  readonly entries: readonly EntrySheet[];
}

export interface StationSheet {
  readonly station: number;
  readonly name: string;
  /** Place that the part gives a name to. */
  readonly role: 'seat' | 'goal' | 'other';
  readonly tir: number;
  readonly spread: number;
  readonly high: number;
  readonly offset: { readonly x: number; readonly y: number };
  readonly words: string;
}

/** A set as it is drawn, with what it says by itself. */
export interface DrawnSet {
  readonly id: string;
  readonly station: string;
  readonly side: string;
  /** Dial in the set's unit, positive when the surface stands further out. */
  readonly readings: readonly DialReading[];
  readonly unit: string;
  readonly mean: number;
  readonly offset: { readonly x: number; readonly y: number };
  readonly high: number;
  /** The four numbers: name, what it means, value in words. */
  readonly numbers: readonly { readonly name: string; readonly means: string; readonly value: string }[];
  /** What to think of it before trusting it. */
  readonly doubts: readonly string[];
}

/** One point of the history: after the start, and after each round of correction. */
export interface RoundSheet {
  readonly id: string;
  readonly label: string;
  readonly tir: number;
  readonly words: string;
  readonly warm: boolean;
  /** What was done before this reading, and what came of it. */
  readonly did: string;
}

export interface NextSheet {
  readonly kind: 'refused' | 'measure' | 'bead' | 'wait' | 'stop' | 'other way';
  readonly words: NextWords;
  /** Where to measure, when that is next. */
  readonly station?: string;
  /** The bead that is advised. */
  readonly bead?: { readonly clock: string; readonly length: string; readonly segment?: number };
  /** TIR to expect. */
  readonly expected?: { readonly tir: number; readonly low: number; readonly high: number };
}

export interface EntrySheet {
  readonly id: string;
  readonly kind: 'part' | 'set' | 'round';
  readonly way?: Way;
  readonly taken: string;
  readonly says: string;
  /** Why it does not count now. */
  readonly why?: string;
  /** Struck out; the id of the strike, which can be struck out itself. */
  readonly struckBy?: string;
}
