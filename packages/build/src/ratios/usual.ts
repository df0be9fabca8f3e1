import type { OrderKey, RatioRequest } from './types.ts';

/** What counts first for most: the targets, then what can be built, then what is there, then what lasts and runs smoothly. */
const USUAL_ORDER: readonly OrderKey[] = ['ratio', 'links', 'wrap', 'buy', 'wear', 'chordal', 'mass'];

export const USUAL_REQUEST: RatioRequest = {
  best: 10,
  order: USUAL_ORDER,
  targets: [],
  stages: {},
  prices: {},
  shelfOnly: false,
};
