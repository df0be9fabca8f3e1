import { ratioChoices } from '@oddwheel/build/ratios/choices';
import { compareTrains } from '@oddwheel/build/ratios/compare';
import { findFront, findTrains, RatiosError, roadSpeedOf } from '@oddwheel/build/ratios/find';
import { SwapError, swapTable } from '@oddwheel/build/ratios/swap';
import type { Session } from '@oddwheel/build/session-types';
import { SearchError } from '@oddwheel/mechanics/ratio/search/search';
import type { RatioOutcome, RatioProgress, RatiosApi } from './ratios-api.ts';

/** Longest that a search keeps the worker from answering, and how often it tells how far it is, ms. */
const STRETCH = 8;
const TELL_EVERY = 100;

const letOthersIn = (): Promise<void> => new Promise((done) => setTimeout(done, 0));

/**
 * @param current gives the session, and throws when no build is open
 * @param held the session, or null when none is open
 */
export function createRatiosModel(current: () => Session, held: () => Session | null): RatiosApi {
  // A search ends when the next one begins; tables and comparisons are short and go on.
  let search = 0;

  /** Does long work in short stretches; null once it is not wanted any more. */
  async function run<T, P>(
    make: (session: Session) => Generator<P, T>,
    wanted: () => boolean,
    tell: ((progress: P) => void) | null,
  ): Promise<RatioOutcome<T>> {
    const session = current();
    let [since, told] = [performance.now(), 0];
    try {
      const steps = make(session);
      for (;;) {
        const step = steps.next();
        if (step.done) return { ok: true, answer: step.value };
        const now = performance.now();
        if (now - since < STRETCH) continue;
        if (tell && now - told > TELL_EVERY) {
          told = now;
          tell(step.value);
        }
        await letOthersIn();
        since = performance.now();
        if (!wanted() || held()?.build !== session.build) return null;
      }
    } catch (why) {
      if (why instanceof RatiosError || why instanceof SearchError || why instanceof SwapError)
        return { ok: false, says: why.message };
      throw why;
    }
  }

  function searched<T>(
    make: (session: Session) => Generator<RatioProgress, T>,
    tell: (progress: RatioProgress) => void,
  ): Promise<RatioOutcome<T>> {
    search += 1;
    const mine = search;
    return run(make, () => search === mine, tell);
  }
  const always = (): boolean => true;

  return {
    ratioChoices: () => ratioChoices(current()),
    findTrains: (request, tell) =>
      searched(function* (session) {
        const roadSpeed = roadSpeedOf(session);
        return { ...(yield* findTrains(session, request, roadSpeed)), roadSpeed };
      }, tell),
    findFront: (request, first, second, tell) =>
      searched((session) => findFront(session, request, first, second), tell),
    swapTable: ({ stage, end, teeth }) =>
      run(
        function* (session) {
          const roadSpeed = roadSpeedOf(session);
          return { rows: yield* swapTable(session, stage, end, teeth, roadSpeed), roadSpeed };
        },
        always,
        null,
      ),
    compareTrains: (trains) =>
      run(
        function* (session) {
          const all = [];
          for (const train of trains) {
            all.push(...compareTrains(session, [train]));
            yield;
          }
          return all;
        },
        always,
        null,
      ),
    stopTrains: () => {
      search += 1;
    },
  };
}
