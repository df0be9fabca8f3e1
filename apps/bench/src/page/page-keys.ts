import { useEffect } from 'react';
import type { Actions } from '../state/actions.ts';
import { type BenchStore, elementInView, stripKind } from '../state/bench.ts';
import { STEPS } from '../steps/steps.ts';
import { moveFinding } from './focus.ts';
import { keyCommand } from './keys.ts';

/** Keys that mean the same anywhere on the page. */
export function usePageKeys(store: BenchStore, actions: Actions, show: (what: 'keys' | 'find') => void): void {
  useEffect(() => {
    const along = (by: 1 | -1): void => {
      const path = store.getState().assessment?.path ?? [];
      const now = path.findIndex((one) => one.address === elementInView(store.getState()));
      const next = path[Math.min(path.length - 1, Math.max(0, now + by))];
      if (next) actions.select(next.address);
    };
    const onKeyDown = (event: KeyboardEvent): void => {
      const command = keyCommand(event, store.getState().singleKeys);
      if (!command) return;
      event.preventDefault();
      if (typeof command === 'object') {
        const step = STEPS.find((one) => one.number === command.step);
        if (step) actions.goTo(step.id);
        return;
      }
      switch (command) {
        case 'keys':
        case 'find':
          show(command);
          break;
        case 'undo':
          actions.undo();
          break;
        case 'redo':
          actions.redo();
          break;
        case 'close':
          actions.close();
          break;
        case 'next element':
          along(1);
          break;
        case 'previous element':
          along(-1);
          break;
        case 'next finding':
          moveFinding(1);
          break;
        case 'previous finding':
          moveFinding(-1);
          break;
        case 'strip': {
          const { strip, look } = store.getState();
          actions.openStrip(!strip[stripKind(look.step)]);
          break;
        }
      }
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [store, actions, show]);
}
