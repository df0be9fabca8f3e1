/** Types shared by everything that drives a session: the page's worker, the command line and the host. */
import type { Working } from '@oddwheel/mechanics/method/working';
import type { Kind } from '@oddwheel/quantity/kinds';
import type { Evaluation } from './assess/evaluation.ts';
import type { LaidBeads } from './assess/strength/beads.ts';
import type { Assessment, Finding, Here, Measured } from './assess/types.ts';
import type { Patch } from './document/patch.ts';
import type { Fault } from './fault.ts';
import type { BuildFile } from './schema/build-file.ts';
import type { Sign } from './signs/sign.ts';

/** One build, read and assessed. Immutable: an edit gives a new session that shares what did not change. */
export interface Session {
  /** The text of `build.json`. */
  readonly text: string;
  /** SHA-256 of the text. */
  readonly hash: string;
  /** The file as read, brought to the present format. */
  readonly build: BuildFile;
  /** Format of the text; an edit of an older one raises it. */
  readonly from: number;
  readonly here: Here;
  /** Weld laid on its shafts while they were made to run true; it is no part of the text. */
  readonly beads: readonly LaidBeads[];
  readonly assessment: Assessment;
  /** The parsed and resolved build with what was reused; opaque to callers. */
  readonly evaluation: Evaluation;
}

export type Opened =
  | { readonly ok: true; readonly session: Session }
  | { readonly ok: false; readonly faults: readonly Fault[] };

export type Edited =
  | { readonly ok: true; readonly session: Session; readonly inverse: readonly Patch[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** A finding's working, built on request. */
export interface Explanation {
  readonly finding: Finding;
  /** How the failure that it judges announces itself, and the service check for it. */
  readonly signs: readonly Sign[];
  /** Case explained; null when the check depends on none. */
  readonly caseId: string | null;
  readonly caseName: string | null;
  /** Workings in the order they are used; the last one ends in the reserve or the answer. */
  readonly workings: readonly Working[];
  readonly demand: Measured | null;
  readonly capacity: Measured | null;
  /** Equal, bit for bit, to the number the assessment holds for this case. */
  readonly reserve: number | null;
}

/** One editable field of an element, made from the schema of the build file. */
export interface Field {
  readonly address: string;
  /** Label, without unit. */
  readonly name: string;
  /** Heading of the group that it stands in, e.g. "Teeth"; null at the top of the element. */
  readonly group: string | null;
  /** Address of that group; null at the top of the element. */
  readonly groupAddress: string | null;
  readonly entry: 'quantity' | 'integer' | 'number' | 'text' | 'choice' | 'key';
  readonly quantity: Kind | null;
  /** Takes a range `low..high` as well as a value. */
  readonly range: boolean;
  /** As typed in the file; null when blank. */
  readonly text: string | null;
  /** The value in the units of the build when that says more than the text: "is 1.19 mm". */
  readonly resolved: string | null;
  readonly optional: boolean;
  /** A row of a list that can be taken out. */
  readonly row: boolean;
  /** Accepted words of a choice or key. */
  readonly choices: readonly string[] | null;
  /** What each of them is called; null where the words speak for themselves. */
  readonly choiceNames: readonly string[] | null;
  readonly example: string | null;
  readonly recipe: string | null;
  /** What a blank field stands on. */
  readonly assumed: { readonly text: string; readonly source: string } | null;
}

/** A typed field turned into an edit. */
export type TypedEdit =
  | {
      readonly ok: true /** "Chain 1, driver teeth 17 → 16" */;
      readonly name: string;
      readonly patches: readonly Patch[];
    }
  | { readonly ok: false; readonly fault: Fault };
