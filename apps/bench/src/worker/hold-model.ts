import { holdSteps } from '@oddwheel/build/hold/hold';
import { trialsOf } from '@oddwheel/build/hold/trials';
import type { Session } from '@oddwheel/build/session-types';
import type { HoldApi } from './hold-api.ts';

type Trials = ReturnType<typeof trialsOf>;

/** Longest that the search keeps the worker from answering, but for one trial, ms. */
const STRETCH = 8;
/** Least between two tellings, ms. */
const TELLING = 100;

const letOthersIn = (): Promise<void> => new Promise((done) => setTimeout(done, 0));

/** @param current gives the session, and throws when no build is open */
export function createHoldModel(current: () => Session): HoldApi {
  // What was tried on a build is kept for its next finding.
  let kept: { readonly hash: string; readonly trials: Trials } | null = null;
  let running: object | null = null;
  return {
    hold: async (finding, tell) => {
      const own = {};
      running = own;
      const session = current();
      const { hash } = session;
      if (kept?.hash !== hash) kept = { hash, trials: trialsOf(session) };
      const steps = holdSteps(session, finding, { trials: kept.trials });
      let since = performance.now();
      let told = since;
      for (;;) {
        const step = steps.next();
        if (step.done) return step.value;
        if (performance.now() - told > TELLING) {
          tell(step.value);
          told = performance.now();
        }
        if (performance.now() - since < STRETCH) continue;
        await letOthersIn();
        since = performance.now();
        if (running !== own || current().hash !== hash) return null;
      }
    },
    stopHold: () => {
      running = null;
    },
  };
}
