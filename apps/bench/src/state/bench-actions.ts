import type { Here } from '@oddwheel/build/assess/types';
import { withChange } from '../worker/changes.ts';
import { latestWins } from '../worker/latest.ts';
import type { RemoteModel } from '../worker/remote.ts';
import type { Actions, KeepingActions } from './actions.ts';
import { type BenchState, type BenchStore, elementInView, elementOf, stripKind } from './bench.ts';
import { keepChoice } from './device.ts';
import type { Document } from './document.ts';
import { type Look, readLook, writeLook } from './look.ts';

const inspected = async (model: RemoteModel, address: string): Promise<BenchState['fields']> => {
  const [fields, structure] = await Promise.all([model.fields(address), model.structure(address)]);
  return { address, fields, structure };
};

/**
 * Brings what hangs on the build and on where the page looks up to date: the fields of the element in view, and the
 * working of the opened finding.
 */
export function createFollower(store: BenchStore, model: RemoteModel): () => Promise<void> {
  return async () => {
    const state = store.getState();
    const address = elementInView(state);
    const { workedCase } = state;
    const finding = state.look.finding;
    const fields = address === null ? null : await inspected(model, address);
    const explanation = finding === null ? null : await model.explain(finding, workedCase);
    // The page may have turned to another place meanwhile; then that turn brings its own.
    const now = store.getState();
    if (elementInView(now) === address && now.look.finding === finding && now.workedCase === workedCase)
      store.setState({ fields, explanation });
  };
}

/**
 * @param follow brings what hangs on the page's look up to date
 * @param reveal puts the focus into the field of an address once it is drawn
 */
export function createActions(
  store: BenchStore,
  model: RemoteModel,
  document: Document,
  follow: () => Promise<void>,
  reveal: (address: string) => void,
  keeping: KeepingActions,
): Actions {
  const trouble = (why: unknown): void =>
    store.setState({ trouble: `The page could not do that: ${why instanceof Error ? why.message : String(why)}` });
  const run = (work: Promise<unknown>): void => void work.catch(trouble);

  const look = async (next: Look): Promise<void> => {
    const before = store.getState().look;
    const url = writeLook(next);
    // Another step of the job, or going from the whole page into the inspector, is what Back takes back; moving about within it is not.
    if (before.step !== next.step || (before.element === null) !== (next.element === null))
      window.history.pushState(null, '', url);
    else window.history.replaceState(null, '', url);
    store.setState(
      next.finding === before.finding ? { look: next } : { look: next, explanation: null, workedCase: null },
    );
    await follow();
  };
  window.addEventListener('popstate', () => {
    store.setState({ look: readLook(window.location.hash), explanation: null, workedCase: null });
    run(follow());
  });

  const move = latestWins<Here>(async (here) => {
    const change = await model.moveHere(here);
    const { asked, assessment, look: looked, explanation } = store.getState();
    store.setState({ assessment: withChange(assessment, change), asked: asked === here ? null : asked });
    if (asked === here && looked.finding !== null && explanation?.caseId === 'here') await follow();
  }, trouble);

  const seen = (): Look => store.getState().look;

  const applyEdit: Actions['applyEdit'] = async (name, patches, whole = false) => {
    if (patches.length === 0) return null;
    try {
      return await document.edit({ name, patches, ...(whole ? { whole } : {}) });
    } catch (why) {
      trouble(why);
      return null;
    }
  };

  return {
    ...keeping,
    goTo: (step) => {
      const small = window.matchMedia('(max-width: 899px)').matches;
      run(look(small ? { step, element: null, finding: null } : { ...seen(), step }));
    },
    select: (address) => run(look({ ...seen(), element: address, finding: null })),
    reveal: (address) => {
      const element = elementOf(store.getState(), address);
      if (element !== null) run(look({ ...seen(), element }).then(() => reveal(address)));
    },
    openFinding: (id) => {
      const finding = store.getState().assessment?.findings.find((one) => one.id === id);
      const element = finding && elementOf(store.getState(), finding.address);
      if (element) run(look({ ...seen(), element, finding: id }));
    },
    workCase: (workedCase) => {
      store.setState({ workedCase });
      run(follow());
    },
    close: () => {
      const now = seen();
      run(look(now.finding === null ? { ...now, element: null } : { ...now, finding: null }));
    },
    commitField: async (address, typed) => {
      try {
        const edit = await model.typeField(address, typed);
        return edit.ok ? await applyEdit(edit.name, edit.patches) : edit.fault;
      } catch (why) {
        trouble(why);
        return null;
      }
    },
    applyEdit,
    moveHere: (here) => {
      store.setState({ asked: here });
      move(here);
    },
    undo: () => run(document.undo()),
    redo: () => run(document.redo()),
    keepMine: (address) => run(document.keepMine(address)),
    takeTheirs: document.takeTheirs,
    dismissToast: () => store.setState({ toast: null }),
    dismissTrouble: () => store.setState({ trouble: null }),
    openStrip: (open) => {
      const { look: now, strip } = store.getState();
      store.setState({ strip: { ...strip, [stripKind(now.step)]: open } });
    },
    setMode: (mode) => {
      keepChoice('mode', mode);
      store.setState({ mode });
    },
    setSingleKeys: (singleKeys) => {
      keepChoice('single-keys', singleKeys ? 'on' : 'off');
      store.setState({ singleKeys });
    },
  };
}
