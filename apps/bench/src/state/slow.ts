import type { BenchStore } from './bench.ts';

const SLOW_AFTER = 300;

/** Marks the numbers on the page as of before while a piece of work takes longer than a moment. */
export function markSlow(store: BenchStore): <T>(work: Promise<T>) => Promise<T> {
  return async (work) => {
    const timer = setTimeout(() => store.setState({ working: true }), SLOW_AFTER);
    try {
      return await work;
    } finally {
      clearTimeout(timer);
      if (store.getState().working) store.setState({ working: false });
    }
  };
}
