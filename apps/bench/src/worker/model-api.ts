import type { BesideRow } from '@oddwheel/build/assess/beside';
import type { RoadCurves } from '@oddwheel/build/assess/road/curve-types';
import type { Known } from '@oddwheel/build/assess/road/types';
import type { Here } from '@oddwheel/build/assess/types';
import type { BeginAssumption, BeginResult, SixFields, SoFar } from '@oddwheel/build/begin/types';
import type { Patch } from '@oddwheel/build/document/patch';
import type { EditRequest, Form, Structure, StructureEdit } from '@oddwheel/build/edit/types';
import type { Fault } from '@oddwheel/build/fault';
import type { Measured, Readings } from '@oddwheel/build/measure/types';
import type { Explanation, Field, TypedEdit } from '@oddwheel/build/session-types';
import type { TrueSheet } from '@oddwheel/build/true/sheet-types';
import type { AssessmentChange } from './changes.ts';
import type { HoldApi } from './hold-api.ts';
import type { LayoutApi } from './layout-api.ts';
import type { RatiosApi } from './ratios-api.ts';
import type { ShaftApi } from './shaft-api.ts';

/** A part of the build that has fields but is no column of the path. */
export interface Part {
  readonly address: string;
  readonly name: string;
  /** The build says something of it. */
  readonly present: boolean;
}

/** Another build beside the open one, or what is wrong with it. */
export type Beside =
  | { readonly ok: true; readonly name: string; readonly rows: readonly BesideRow[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** What the model says after reading a build or an edit. */
export type Outcome =
  | {
      readonly ok: true;
      readonly change: AssessmentChange;
      /** Hash of the text that the model now holds. */
      readonly hash: string;
      readonly parts: readonly Part[];
    }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** What the model says after reading a build and then the edits that are not saved yet, one by one. */
export type Replayed = Outcome & {
  /** For each edit: what is wrong with it on this text; null where it was taken. Empty when the text itself is at fault. */
  readonly refused: readonly (readonly Fault[] | null)[];
};

/** The model of one build, as the page asks it. It holds the session; nothing of the mechanics runs outside of it. */
export interface ModelApi extends HoldApi, LayoutApi, RatiosApi, ShaftApi {
  /** Reads a text and applies edits to it; keeps the last good build when the text is at fault. */
  readonly open: (text: string, edits: readonly (readonly Patch[])[]) => Replayed;
  /** Forgets the build, before another one is opened. */
  readonly close: () => void;
  /** A first laid-out build from six fields; none need be open. */
  readonly begin: (six: SixFields) => BeginResult;
  /** What six fields come to while they are typed; no build need be open. */
  readonly soFar: (six: SixFields) => SoFar;
  /** What the open build stands on and nobody typed, what matters most first; null when the build changed meanwhile. */
  readonly standsOn: () => Promise<readonly BeginAssumption[] | null>;
  readonly apply: (patches: readonly Patch[]) => Outcome;
  /**
   * Tries the ends of all uncertain inputs, which `open` and `apply` leave for later; others are answered in between.
   * Null where there is nothing to try, or the build has changed meanwhile.
   */
  readonly ranges: () => Promise<AssessmentChange | null>;
  /** Puts another build, as the text of its file, beside the open one: the lowest reserve of each check in both. */
  readonly beside: (text: string) => Beside;
  /** Turns typed text into an edit without making it. */
  readonly typeField: (address: string, typed: string | null) => TypedEdit;
  /** Turns a wanted change of the build's structure into an edit without making it. */
  readonly structureEdit: (request: EditRequest) => StructureEdit;
  /** What can be added to an element and taken out of it, its notes and its pictures. */
  readonly structure: (address: string) => Structure;
  /** The form to fill before something is added at an address; for a stage that of its kind. */
  readonly form: (at: string, kind: string | null) => Form;
  readonly moveHere: (here: Here) => AssessmentChange;
  readonly fields: (address: string) => readonly Field[];
  /** Fields of several elements at once, in their order. */
  readonly fieldsOf: (addresses: readonly string[]) => readonly (readonly Field[])[];
  /** Does the sum of a measuring recipe; the address is that of the field that the result is for. */
  readonly measure: (id: string, address: string, readings: Readings) => Measured;
  /** The working of a finding, for the case asked for or the one that governs. */
  readonly explain: (findingId: string, caseId: string | null) => Explanation | null;
  /** Curves of pull, road load, engine speed and speeding up, for drawing. */
  readonly roadCurves: () => Known<RoadCurves>;
  /** What a record of run-out says of each part, and what comes next; no build need be open. */
  readonly runOutSheet: (text: string) => TrueSheet;
  /** Takes the weld that a record of run-out has on the shafts into the assessment; null where nothing of it changes. */
  readonly layBeads: (text: string) => AssessmentChange | null;
}
