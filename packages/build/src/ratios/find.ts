import { frontOf } from '@oddwheel/mechanics/ratio/search/pareto';
import { searchTrains } from '@oddwheel/mechanics/ratio/search/search';
import type { Level, Progress, Train } from '@oddwheel/mechanics/ratio/search/types';
import type { Session } from '../session-types.ts';
import { type Before, beforeOf, effectOf } from './effect.ts';
import { type Spaces, spacesOf } from './spaces.ts';
import {
  type OrderKey,
  type RankedTrain,
  type RatioAnswer,
  type RatioRequest,
  TERM_KEYS,
  type TermKey,
} from './types.ts';
import { windowsOf } from './windows.ts';

/** What counts first for most: the targets, then what can be built, then what is there, then what lasts and runs smoothly. */
export const USUAL_ORDER: readonly OrderKey[] = ['ratio', 'links', 'wrap', 'buy', 'wear', 'chordal', 'mass'];
export const USUAL_REQUEST: RatioRequest = {
  best: 10,
  order: USUAL_ORDER,
  targets: [],
  stages: {},
  prices: {},
  shelfOnly: false,
};
/** Ratios this near to each other count as equal: half a per cent, a fifth of a tooth in forty. */
const RATIO_STEP = 0.005;

/** A target window is needed, or a price is missing. */
export class RatiosError extends Error {}

function levelOf(key: OrderKey): Level {
  if (key === 'ratio') return { ratio: 1, terms: [], step: RATIO_STEP };
  return { ratio: 0, terms: [{ term: TERM_KEYS.indexOf(key), weight: 1 }], step: 0 };
}

/** The space that a request spans, or why there is none. */
function* prepared(session: Session, request: RatioRequest) {
  const { scene } = session.evaluation.middle;
  const windows = windowsOf(scene, request.targets);
  if (windows.band === null) {
    const why = windows.open.map(({ key, says }) => `${key}: ${says}`).join(' ');
    throw new RatiosError(
      `No target sets a ratio; cruising, top speed, pull, climb or a reference vehicle in the brief does. ${why}`.trim(),
    );
  }
  const before = beforeOf(session);
  const found = yield* spacesOf(before, request, windows.band);
  if (request.order.includes('price')) {
    const have = found.space.atHand?.have ?? [];
    const unpriced = found.parts.filter((part, k) => (have[k] ?? 0) === 0 && request.prices[part] === undefined);
    if (unpriced.length > 0)
      throw new RatiosError(
        `Ranked by price, but ${unpriced.length} parts have none, first ${unpriced[0]}; give a price for each part that is not on the shelf.`,
      );
  }
  return { before, windows, found };
}

const nothing = ({ stages }: Spaces): boolean => stages.some(({ choices }) => choices.length === 0);

function ranked(before: Before, found: Spaces, train: Train, roadSpeed: number): RankedTrain {
  const pairs = train.choices.flatMap((choice, k) => {
    const { stage, choices } = found.stages[k] ?? {};
    const one = choices?.[choice];
    return stage && one && 'teeth' in stage ? [{ stage: stage.id, driver: one.driver, driven: one.driven }] : [];
  });
  const need = new Map<number, number>();
  for (const [k, choice] of train.choices.entries())
    for (const part of found.space.stages[k]?.choices[choice]?.parts ?? []) need.set(part, (need.get(part) ?? 0) + 1);
  const have = found.space.atHand?.have ?? [];
  const { scene: _, ...effect } = effectOf(before, pairs, roadSpeed);
  return {
    ...effect,
    error: train.error,
    terms: Object.fromEntries(TERM_KEYS.map((key, k) => [key, train.terms[k] ?? 0])) as Record<TermKey, number>,
    toBuy: [...need].flatMap(([part, count]) =>
      Array.from({ length: Math.max(0, count - (have[part] ?? 0)) }, () => found.parts[part] ?? ''),
    ),
  };
}

const summary = ({ stages }: Spaces): RatioAnswer['stages'] =>
  stages.map(({ stage, choices, says }) => ({ stage: stage.id, name: stage.name, choices: choices.length, says }));

const WAITING: Progress = { round: 0, part: 0, found: 0 };

/** Road speed that engine speeds are told at: the one to cruise at, else the slider's. */
export const roadSpeedOf = (session: Session): number => {
  const { cruiseSpeed } = session.evaluation.model.targets;
  return cruiseSpeed ? cruiseSpeed.si : session.here.roadSpeed;
};

/**
 * The best trains of a build that fit its places, slots and room, exactly by the order asked for. Yields often.
 * @param roadSpeed speed that engine speeds are told at
 *
 * Errors: `RatiosError` where no target sets a ratio or a price is missing; `SearchError` for more than can be searched.
 */
export function* findTrains(
  session: Session,
  request: RatioRequest,
  roadSpeed: number = roadSpeedOf(session),
): Generator<Progress, RatioAnswer> {
  const steps = prepared(session, request);
  let step = steps.next();
  while (!step.done) {
    yield WAITING;
    step = steps.next();
  }
  const { before, windows, found } = step.value;
  const base = {
    windows,
    size: found.stages.reduce((n, { choices }) => n * choices.length, 1),
    stages: summary(found),
  };
  if (nothing(found)) return { ...base, trains: [] };
  const answer = yield* searchTrains(found.space, request.order.map(levelOf), request.best);
  const trains: RankedTrain[] = [];
  for (const train of answer.trains) {
    trains.push(ranked(before, found, train, roadSpeed));
    yield { round: 0, part: trains.length / answer.trains.length, found: trains.length };
  }
  return { ...base, trains };
}

/** The front of two things that count: no train on it can be bettered in one without loss in the other. */
export function* findFront(
  session: Session,
  request: RatioRequest,
  first: OrderKey,
  second: OrderKey,
): Generator<Progress, RatioAnswer & { readonly whole: boolean }> {
  const steps = prepared(session, request);
  let step = steps.next();
  while (!step.done) {
    yield WAITING;
    step = steps.next();
  }
  const { before, windows, found } = step.value;
  const base = {
    windows,
    size: found.stages.reduce((n, { choices }) => n * choices.length, 1),
    stages: summary(found),
  };
  if (nothing(found)) return { ...base, trains: [], whole: true };
  const rest = request.order.filter((key) => key !== first && key !== second).map(levelOf);
  const { trains, whole } = yield* frontOf(found.space, levelOf(first), levelOf(second), rest, request.best);
  return { ...base, trains: trains.map((train) => ranked(before, found, train, roadSpeedOf(session))), whole };
}
