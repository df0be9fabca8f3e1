import type { Here } from '@oddwheel/build/assess/types';
import type { Patch } from '@oddwheel/build/document/patch';
import type { Fault } from '@oddwheel/build/fault';
import type { BuildActions } from '../link/build-actions.ts';
import type { HostClient } from '../link/host-client.ts';
import type { StepId } from '../steps/steps.ts';
import type { RunOut } from '../true/run-out.ts';

/** What the page can be told to do with whole builds and their pictures. */
export interface KeepingActions extends Pick<HostClient, 'putPicture' | 'pictureUrl'> {
  readonly builds: BuildActions;
  readonly runOut: RunOut;
}

/** What the page can be told to do. */
export interface Actions extends KeepingActions {
  /** Opens a step; what is selected stays selected, but the inspector leaves a small screen to the step. */
  readonly goTo: (step: StepId) => void;
  /** Shows an element in the inspector. */
  readonly select: (address: string) => void;
  /** Shows the element that an address of the build belongs to, and puts the focus into its field. */
  readonly reveal: (address: string) => void;
  /** Opens a finding with its working. */
  readonly openFinding: (id: string) => void;
  /** Works the opened finding for another load case; null for the one that governs. */
  readonly workCase: (caseId: string | null) => void;
  /** Closes the opened finding; with none open, leaves the inspector. */
  readonly close: () => void;
  /** Edits a field; gives what is wrong with the typed text, or null when it was taken. */
  readonly commitField: (address: string, typed: string | null) => Promise<Fault | null>;
  /**
   * Makes a named edit; gives what is wrong with it, or null when it was taken.
   *
   * @param whole its patches hold only together: where it meets a change made elsewhere, all of it waits for the choice
   */
  readonly applyEdit: (name: string, patches: readonly Patch[], whole?: boolean) => Promise<Fault | null>;
  readonly moveHere: (here: Here) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly keepMine: (address: string) => void;
  readonly takeTheirs: (address: string) => void;
  readonly dismissToast: () => void;
  readonly dismissTrouble: () => void;
  /** Opens or folds the path strip, for steps like the one in view. */
  readonly openStrip: (open: boolean) => void;
  readonly setMode: (mode: Mode) => void;
  readonly setSingleKeys: (on: boolean) => void;
}

export type Mode = 'desk' | 'shop';
