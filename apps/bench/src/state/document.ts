import type { Assessment } from '@oddwheel/build/assess/types';
import type { Fault } from '@oddwheel/build/fault';
import type { HostAnswer, HostClient } from '../link/host-client.ts';
import * as sync from '../link/sync.ts';
import { type AssessmentChange, withChange } from '../worker/changes.ts';
import type { Outcome, Replayed } from '../worker/model-api.ts';
import type { RemoteModel } from '../worker/remote.ts';
import { sayChange } from './announce.ts';
import type { BenchStore } from './bench.ts';
import { writeLook } from './look.ts';
import { markSlow } from './slow.ts';

/** The build on the page and its way to the disk and back. */
export interface Document {
  /** Reads the build from the host and follows it from then on. */
  readonly start: () => Promise<void>;
  /** Makes an edit here and sends it; gives what is wrong with it, or null. */
  readonly edit: (edit: sync.Edit) => Promise<Fault | null>;
  readonly undo: () => Promise<void>;
  readonly redo: () => Promise<void>;
  readonly keepMine: (address: string) => Promise<void>;
  readonly takeTheirs: (address: string) => void;
  /** Waits until every edit is kept; gives how many cannot be just now. */
  readonly settle: () => Promise<number>;
  /** Turns to the build that is open now instead of the one on the page, or to none. */
  readonly reopen: () => Promise<void>;
}

const RETRY_AFTER = 2000;

/**
 * @param changed is called after each change of the build on the page, to bring what depends on it up to date
 * @param clock hours and minutes now, "14:07"
 */
export function createDocument(
  store: BenchStore,
  model: RemoteModel,
  host: HostClient,
  changed: () => Promise<void>,
  clock: () => string,
): Document {
  const state = (): sync.Sync => {
    const now = store.getState().sync;
    if (!now) throw new Error('No build is read yet.');
    return now;
  };
  const slow = markSlow(store);
  const setSync = (next: sync.Sync): void => store.setState({ sync: next });
  // Everything that changes the model's build goes one after the other, so that none works on an overtaken text.
  let last: Promise<unknown> = Promise.resolve();
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const run = last.then(work);
    last = run.catch(() => undefined);
    return run;
  };

  const take = async (outcome: Outcome & { readonly ok: true }): Promise<void> => {
    const before = store.getState().assessment;
    const assessment = withChange(before, outcome.change);
    store.setState({ assessment, hash: outcome.hash, parts: outcome.parts, fileFaults: [] });
    if (before && assessment.ends === 'tried')
      store.setState({ said: sayChange(before.findings, assessment.findings) });
    await changed();
    void tryEnds(before);
  };

  /** Asks for the ends of all ranges, once the numbers at their middle are on the page. */
  const tryEnds = async (before: Assessment | null): Promise<void> => {
    const { hash } = store.getState();
    const change = await slow<AssessmentChange | null>(model.ranges());
    const now = store.getState().assessment;
    if (!change || !now) return;
    const assessment = withChange(now, change);
    store.setState({ assessment });
    if (before) store.setState({ said: sayChange(before.findings, assessment.findings) });
    await changed().catch((why) => {
      // A build that was left meanwhile has nothing to follow any more.
      if (store.getState().hash === hash) throw why;
    });
  };

  /** Reads what the host holds with what is pending here; an edit that no longer fits is dropped and told. */
  const replay = async (): Promise<void> => {
    const { saved, pending } = state();
    if (saved.hash === store.getState().hash && pending.length === 0) return;
    const outcome = await slow<Replayed>(
      model.open(
        saved.text,
        pending.map((edit) => edit.patches),
      ),
    );
    if (!outcome.ok) {
      store.setState({ fileFaults: outcome.faults });
      return;
    }
    const unfit = pending.filter((_, index) => outcome.refused[index] != null);
    if (unfit.length > 0) {
      setSync({ ...state(), pending: state().pending.filter((edit) => !unfit.includes(edit)) });
      store.setState({
        trouble: `No longer possible after a change made elsewhere: ${unfit.map((edit) => edit.name).join('; ')}.`,
      });
    }
    await take(outcome);
  };

  // Hash of the file as an event told it last; null once the page has caught up.
  let heard: string | null = null;
  const refresh = async (): Promise<void> => {
    heard = null;
    const saved = await host.read();
    if (!saved) {
      setSync(sync.disconnected(state()));
      return;
    }
    if (saved.hash !== state().saved.hash || !state().online) setSync(sync.refreshed(state(), saved));
    await replay();
  };

  const settle = async (answer: HostAnswer, isEdit: boolean): Promise<void> => {
    if (answer.kind === 'saved') {
      setSync(
        isEdit
          ? sync.accepted(state(), answer.saved, clock())
          : { ...sync.refreshed(state(), answer.saved), savedAt: clock() },
      );
      await replay();
    } else if (answer.kind === 'unreached') {
      setSync(sync.disconnected(state()));
      if (answer.says !== null) store.setState({ trouble: answer.says });
    } else if (answer.kind === 'refused') {
      const first = answer.faults[0];
      store.setState({ trouble: first ? `Not saved: ${answer.says} ${first.address}: ${first.problem}` : answer.says });
      if (isEdit) setSync(sync.dropped(state()));
      await refresh();
    } else {
      const theirs = await host.read();
      if (!theirs) setSync(sync.disconnected(state()));
      else {
        setSync(isEdit ? sync.collided(state(), theirs, answer.conflicts) : sync.refreshed(state(), theirs));
        if (!isEdit) store.setState({ trouble: 'Not taken back: the file was changed at the same place elsewhere.' });
        await replay();
      }
    }
  };

  const catchUp = async (): Promise<void> => {
    if (heard !== null && heard !== state().saved.hash && !state().sending) await inTurn(refresh);
  };

  let sending: Promise<void> = Promise.resolve();
  /** Sends what is pending, one edit after the other. */
  const send = (): Promise<void> => {
    sending = Promise.all([sending, sendAll()]).then(() => undefined);
    return sending;
  };
  const sendAll = async (): Promise<void> => {
    for (;;) {
      const edit = sync.nextToSend(state());
      if (!edit) return catchUp();
      setSync(sync.sendingStarted(state()));
      const answer = await host.edit(state().saved.hash, edit);
      await inTurn(() => settle(answer, true));
    }
  };

  /** Makes an edit on the page at once, and sends it. */
  const make = async (edit: sync.Edit): Promise<Fault | null> => {
    const fault = await inTurn(async () => {
      const outcome = await slow<Outcome>(model.apply(edit.patches));
      if (!outcome.ok) return outcome.faults[0] ?? null;
      setSync(sync.edited(state(), edit));
      await take(outcome);
      return null;
    });
    if (fault === null) void send();
    return fault;
  };

  const step = (ask: (base: string) => Promise<HostAnswer>): Promise<void> =>
    inTurn(async () => settle(await ask(state().saved.hash), false));

  /** Shows what is open; false when there is nothing to read. */
  const open = async (): Promise<boolean> => {
    const saved = await host.read();
    const shown = saved ?? (await host.lastSeen());
    if (!shown) return false;
    setSync(saved ? sync.startSync(shown) : sync.disconnected(sync.startSync(shown)));
    await replay();
    return true;
  };

  return {
    start: async () => {
      const { shelf } = store.getState();
      if (!(await inTurn(open)) && (!shelf || shelf.open !== null)) {
        store.setState({
          trouble: shelf
            ? 'The browser does not give the build out. Load this page again.'
            : 'The host does not answer. Start it with npm start, then load this page again.',
        });
        if (!shelf) return;
      }
      host.listen(
        (hash) => {
          heard = hash;
          if (store.getState().sync) void catchUp();
        },
        (up) => {
          if (up && !state().online) void inTurn(refresh).then(send);
          if (!up && state().online) setSync(sync.disconnected(state()));
        },
      );
      window.addEventListener('beforeunload', (event) => {
        const { sync: now, shelf: kept, savedAs } = store.getState();
        const lost = kept?.place === 'page' && now !== null && savedAs !== now.saved.hash;
        if (lost || (now && now.pending.length > 0)) event.preventDefault();
      });
      setInterval(() => {
        const now = store.getState().sync;
        if (now && !now.online && now.pending.length > 0) void inTurn(refresh).then(send);
      }, RETRY_AFTER);
    },
    edit: async (edit) => {
      const fault = await make(edit);
      if (fault === null) store.setState({ toast: { id: (store.getState().toast?.id ?? 0) + 1, text: edit.name } });
      return fault;
    },
    undo: async () => {
      if (!store.getState().sync) return;
      store.setState({ toast: null });
      // An edit that is just being kept can be taken back only after the answer; without one it waits here again.
      if (state().sending && state().pending.length === 1) await sending;
      const cancelled = sync.cancelLast(state());
      if (!cancelled) return sync.undoName(state()) === null ? undefined : step(host.undo);
      setSync(cancelled.sync);
      await inTurn(replay);
    },
    redo: async () => {
      if (store.getState().sync && sync.redoName(state()) !== null) await step(host.redo);
    },
    keepMine: async (address) => {
      const kept = sync.keptEdit(state(), address);
      const fault = kept && (await make(kept));
      // What cannot be kept on top of theirs still waits: it may be possible once something else is changed.
      if (fault) store.setState({ trouble: `${kept.name}: ${fault.problem} ${fault.accepted}`.trim() });
      else setSync(sync.takeTheirs(state(), address));
    },
    takeTheirs: (address) => setSync(sync.takeTheirs(state(), address)),
    settle: async () => {
      await sending;
      await last;
      return store.getState().sync?.pending.length ?? 0;
    },
    reopen: () =>
      inTurn(async () => {
        heard = null;
        await model.close();
        const none = { assessment: null, parts: [], hash: '', fileFaults: [], sync: null, asked: null } as const;
        const look = { ...store.getState().look, element: null, finding: null };
        window.history.replaceState(null, '', writeLook(look));
        store.setState({
          ...none,
          look,
          fields: null,
          explanation: null,
          workedCase: null,
          toast: null,
          trouble: null,
          said: '',
        });
        await open();
      }),
  };
}
