/** Measuring recipes with a sum: what they ask for, and what they give. Plain data: the page's worker passes it on. */
import type { Working } from '@oddwheel/mechanics/method/working';
import type { Kind } from '@oddwheel/quantity/kinds';

/** One thing to write down while measuring. */
export interface Ask {
  /** Key of the method's input. */
  readonly key: string;
  readonly name: string;
  /** Null for a whole number. */
  readonly kind: Kind | null;
  /** Several values, with semicolons between. */
  readonly list?: true;
  readonly example: string;
  /** What stands there until something else is typed; without it the answer is wanted. */
  readonly usual?: string;
  /** Address of the build whose value is taken where it has one. */
  readonly from?: string;
}

/** How something is measured in a workshop, and the method that does the sum. */
export interface Measure {
  readonly id: string;
  /** Short name, to choose by where an input can be measured in several ways. */
  readonly name: string;
  readonly method: string;
  /** What to do, in order. */
  readonly steps: readonly string[];
  /** What can hurt someone while doing it; null where nothing out of the common can. */
  readonly caution: string | null;
  readonly asks: readonly Ask[];
  /** Output of the method that is looked for, and the one that says how far it may be off. */
  readonly result: string;
  readonly spread: string;
  readonly kind: Kind;
  /** Unit of the result where the build's lengths are in millimetres, and where they are in inches; as typed. */
  readonly units: { readonly metric: string; readonly inch: string };
}

/** What was written down, by key. */
export type Readings = Readonly<Record<string, string>>;

/** A fault of one thing written down; an empty key for the whole. */
export interface ReadingFault {
  readonly key: string;
  readonly problem: string;
  readonly accepted: string;
}

export type Measured =
  | {
      readonly ok: true;
      /** As it goes into the field: "3.348..3.352 m". */
      readonly text: string;
      /** For reading: "3.35 ± 0.002 m". */
      readonly says: string;
      readonly working: Working;
    }
  | {
      readonly ok: false;
      /** Keys that are wanted and still empty. */
      readonly wanted: readonly string[];
      readonly faults: readonly ReadingFault[];
    };
