import type { Actions } from '../state/actions.ts';
import type { BenchState } from '../state/bench.ts';
import type { RemoteModel } from '../worker/remote.ts';

/** What the screen of a step is given: everything on the page, what the page can be told, and the model to ask. */
export interface ScreenProps {
  readonly state: BenchState;
  readonly actions: Actions;
  readonly model: RemoteModel;
}
