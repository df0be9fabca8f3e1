/** The drawing of the layout and what is moved in it, as the page asks for them. */
import type { ClearanceRow } from '@oddwheel/build/assess/clearance/types';
import type { Severity } from '@oddwheel/build/assess/types';
import type { Patch } from '@oddwheel/build/document/patch';
import type { Fault } from '@oddwheel/build/fault';
import type { MoveAids, Placing } from '@oddwheel/build/placing/types';
import type { Drawing, DrawnPart, ViewId } from '@oddwheel/sheets/drawing';
import type { Frame } from '@oddwheel/sheets/fit';
import type { SpacePart } from '@oddwheel/sheets/space-parts';

export interface DrawingRequest {
  /** Swinging arm, rad from where the wheel is drawn, positive with the wheel up. */
  readonly armAngle: number;
  readonly projection: Drawing['projection'];
  readonly frame: Frame;
}

/** A chain or belt while one of its shafts is moved. */
export interface MovedChain {
  readonly address: string;
  readonly name: string;
  /** "653.2 mm". */
  readonly centres: string;
  /** "84 fitted, 83.97 asked for"; empty for a belt. */
  readonly links: string;
  readonly slack: { readonly severity: Severity; readonly says: string } | null;
}

/** A check that a move changes. */
export interface MovedCheck {
  readonly id: string;
  readonly element: string;
  readonly title: string;
  readonly before: { readonly severity: Severity; readonly reserve: number | null };
  readonly now: { readonly severity: Severity; readonly reserve: number | null };
}

/** What a move comes to, at the middle of every range. */
export type Moved =
  | {
      readonly ok: true;
      readonly chains: readonly MovedChain[];
      /** Those that it changes, smallest first. */
      readonly clearances: readonly ClearanceRow[];
      readonly checks: readonly MovedCheck[];
      /** Chains and belts drawn anew, by view. */
      readonly loops: readonly { readonly view: ViewId; readonly parts: readonly DrawnPart[] }[];
      /** The same in space; empty where it is not asked for. */
      readonly inSpace: readonly SpacePart[];
    }
  | { readonly ok: false; readonly fault: Fault };

export interface LayoutApi {
  /** The layout drawn to scale, lettered for the frame that it is shown in. */
  readonly drawing: (request: DrawingRequest) => Drawing;
  /** The same as a file that prints at 1 : 5, as the text of an SVG. */
  readonly drawingFile: (armAngle: number, projection: Drawing['projection']) => string;
  /** Everything that can be moved, and what positions can be told from. */
  readonly placing: () => Placing;
  /** What a move of the thing at an address can be held to. */
  readonly moveAids: (address: string) => MoveAids;
  /** All parts in space, the arm at an angle from where the wheel is drawn, rad. */
  readonly inSpace: (armAngle: number) => readonly SpacePart[];
  /**
   * What an edit would come to, without making it: for every move of a drag.
   *
   * @param inSpace its chains and belts are wanted in space too
   */
  readonly preview: (patches: readonly Patch[], inSpace: boolean) => Moved;
}
