/** What an edit of the build's structure is asked for, and what it gives. Plain data: the page's worker passes it on. */
import type { Patch } from '../document/patch.ts';
import type { Fault } from '../fault.ts';
import type { Field } from '../session-types.ts';

/** Something that can be added at an element. */
export interface Addition {
  /** Address of the missing group, of the map that gets an entry, or of the list that gets a row. */
  readonly at: string;
  /** "Idler", "Keep-out", "Gear ratio". */
  readonly name: string;
  readonly sort: 'group' | 'entry' | 'row';
  /** Kinds to choose from; null where there is only one. */
  readonly kinds: readonly string[] | null;
}

/** Something that can be taken out of an element. */
export interface Removal {
  readonly at: string;
  readonly name: string;
  readonly sort: 'group' | 'entry' | 'row';
}

/** What was typed in the form of an addition, by the address of each field in that form. */
export type Answers = Readonly<Record<string, string>>;

/** One change of a build's structure, as asked for. */
export type EditRequest =
  | {
      readonly do: 'add';
      readonly at: string;
      readonly kind: string | null;
      /** Key of a new entry of `/overrides`: the finding's id. Elsewhere ids are made from the name. */
      readonly id?: string;
      readonly answers: Answers;
    }
  | { readonly do: 'remove'; readonly at: string }
  | {
      readonly do: 'insert stage';
      /** Id of the stage beside which the new one stands. */
      readonly stage: string;
      /** Toward the engine or toward the wheel. */
      readonly side: 'before' | 'after';
      readonly kind: string;
      readonly answers: Answers;
    }
  | { readonly do: 'note'; readonly of: string; readonly text: string }
  | {
      readonly do: 'add picture';
      /** Address of what it shows; null for nothing in particular. */
      readonly of: string | null;
      readonly name: string;
      /** SHA-256 of its bytes, kept already. */
      readonly file: string;
    }
  | { readonly do: 'replace picture'; readonly at: string; readonly file: string }
  | { readonly do: 'paste curve'; readonly text: string }
  | { readonly do: 'add curve point'; readonly speed: number; readonly torque: number }
  | { readonly do: 'move curve point'; readonly row: number; readonly speed: number; readonly torque: number }
  | { readonly do: 'remove curve point'; readonly row: number };

/** A change of structure turned into a named edit. */
export type StructureEdit =
  | {
      readonly ok: true;
      /** "Add idler to Chain 1". */
      readonly name: string;
      readonly patches: readonly Patch[];
      /** What else the edit changes, one sentence each. */
      readonly also: readonly string[];
      /** Address of what to show next: what was added, or what joins up where a stage was taken out; null for where the page is. */
      readonly shows: string | null;
    }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** All that can be done to the structure of one element. */
export interface Structure {
  readonly additions: readonly Addition[];
  readonly removals: readonly Removal[];
  /** The notes on it and on what is in it; its own first. */
  readonly notes: readonly Noted[];
  readonly pictures: readonly Pictured[];
  /** Where new stages can stand beside it; null where it is no stage. */
  readonly stage: { readonly id: string; readonly kinds: readonly string[] } | null;
  /** Ids of the findings that have a design reserve of the builder's own. */
  readonly ownReserves: readonly string[];
  /** The build has it, so that notes and pictures can stand on it. */
  readonly present: boolean;
}

/** A note, and what it stands on. */
export interface Noted {
  readonly of: string;
  readonly name: string;
  readonly text: string;
}

/** A picture, with the fields that say what it is and shows. */
export interface Pictured {
  readonly at: string;
  readonly name: string;
  /** SHA-256 of its bytes, the name of its file. */
  readonly file: string;
  readonly fields: readonly Field[];
}

/** A form to fill before an addition is made; an empty list of fields needs no form. */
export interface Form {
  readonly title: string;
  readonly fields: readonly Field[];
}
