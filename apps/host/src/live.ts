/** The build as pages see it, and the events that keep them up to date. */

import type { LogEntry } from '@oddwheel/build/document/log';
import type { Fault } from '@oddwheel/build/fault';
import type { BuildStore, SetAside } from '@oddwheel/store/store';
import type { Hub } from './hub.ts';

/** A build as `GET /api/build` gives it. */
export interface BuildState {
  readonly text: string;
  readonly hash: string;
  /** Name of the step that undo takes back, and of the one that redo does again; null when there is none. */
  readonly undo: string | null;
  readonly redo: string | null;
  readonly log: readonly LogEntry[];
  /** Record of run-out as it is stored. */
  readonly runOut: string;
  readonly setAside: readonly SetAside[];
  /** All faults of the text. */
  readonly faults: readonly Fault[];
  /** A text with faults, or of a newer format, is never rewritten. */
  readonly readOnly: boolean;
}

export interface Live {
  readonly state: () => Promise<BuildState>;
  /** Tells every page of a new text. `by` is the device that changed it, null for another program. */
  readonly tellBuild: (by: string | null) => Promise<void>;
  /** Tells every page of the log entries with these ids. */
  readonly tellLog: (ids: readonly string[]) => Promise<void>;
  /** Tells every page that the record of run-out has grown; pages read it then. */
  readonly tellRunOut: () => void;
  /** Stops to watch for other programs. */
  readonly stop: () => void;
}

/** The data of a 'build' event. */
export function buildEvent({ hash, text, undo, redo }: BuildState, by: string | null): object {
  return { hash, text, undo, redo, by };
}

/**
 * Follows a store for as long as the host runs.
 * @param validate all faults of a build text
 * @param failed called when a change by another program could not be read
 */
export function follow(
  store: BuildStore,
  validate: (text: string) => readonly Fault[],
  hub: Hub,
  failed: (error: unknown) => void,
): Live {
  const state = async (): Promise<BuildState> => {
    const { text, hash, history, log, runOut, setAside } = await store.read();
    const faults = validate(text);
    const undo = history.undo.at(-1)?.name ?? null;
    const redo = history.redo.at(-1)?.name ?? null;
    return { text, hash, undo, redo, log, runOut, setAside, faults, readOnly: faults.length > 0 };
  };
  const tellBuild = async (by: string | null): Promise<void> =>
    hub.broadcast({ event: 'build', data: buildEvent(await state(), by) });
  const tellRunOut = (): void => hub.broadcast({ event: 'runOut', data: {} });
  const stop = store.watch((change) => {
    const told = async (): Promise<void> => {
      if (change.build) await tellBuild(null);
      if (change.runOut) tellRunOut();
      if (change.log) hub.broadcast({ event: 'log', data: { entries: (await state()).log } });
    };
    told().catch(failed);
  });
  return {
    state,
    tellBuild,
    tellLog: async (ids) => {
      const { log } = await state();
      hub.broadcast({ event: 'log', data: { entries: log.filter(({ id }) => ids.includes(id)) } });
    },
    tellRunOut,
    stop,
  };
}
