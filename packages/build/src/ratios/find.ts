import { frontOf } from '@oddwheel/mechanics/ratio/search/pareto';
import { searchTrains } from '@oddwheel/mechanics/ratio/search/search';
import type { Level, Progress, Train } from '@oddwheel/mechanics/ratio/search/types';
import type { Session } from '../session-types.ts';
import { blanksOf } from './blanks.ts';
import { buyingOf } from './buying.ts';
import { type Before, beforeOf, effectOf } from './effect.ts';
import { partNames, shelfOf } from './parts.ts';
import { type Spaces, spacesOf } from './spaces.ts';
import { strengthOf } from './strength.ts';
import {
  type OrderKey,
  type RankedTrain,
  type RatioAnswer,
  type RatioRequest,
  TERM_KEYS,
  type TermKey,
} from './types.ts';
import { windowsOf } from './windows.ts';

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
    const unpriced = found.parts.filter((part, k) => (have[k] ?? 0) === 0 && !found.prices.has(part));
    if (unpriced.length > 0)
      throw new RatiosError(
        `Ranked by price, but ${unpriced.length} parts have none, first ${unpriced[0]}; put each on the shelf with its price and how many there are, 0 for none, or narrow the teeth.`,
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
  const { scene, ...effect } = effectOf(before, pairs, roadSpeed);
  // Of the stages as settled: a slot that one chain uses may ask for another belt elsewhere.
  const need = new Map<string, number>();
  for (const { stage: id, driver, driven, links } of effect.stages) {
    const stage = before.model.stages.find((one) => one.id === id);
    for (const part of stage ? partNames(stage, driver, driven, links) : []) need.set(part, (need.get(part) ?? 0) + 1);
  }
  const shelf = shelfOf(before.model);
  const toBuy = [...need].flatMap(([part, count]) =>
    Array.from({ length: Math.max(0, count - (shelf.get(part) ?? 0)) }, () => part),
  );
  return {
    ...effect,
    error: train.error,
    terms: Object.fromEntries(TERM_KEYS.map((key, k) => [key, train.terms[k] ?? 0])) as Record<TermKey, number>,
    toBuy,
    blanks: blanksOf(scene, toBuy),
    strength: strengthOf(scene.model, before.session.here),
  };
}

/** Trains as they are told, one after the other: each is fitted and assessed as a whole. */
function* rankedAll(
  before: Before,
  found: Spaces,
  trains: readonly Train[],
  roadSpeed: number,
): Generator<Progress, readonly RankedTrain[]> {
  const all: RankedTrain[] = [];
  for (const train of trains) {
    all.push(ranked(before, found, train, roadSpeed));
    yield { round: 0, part: all.length / trains.length, found: all.length };
  }
  return all;
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
    buying: buyingOf(before.model),
  };
  if (nothing(found)) return { ...base, trains: [] };
  const answer = yield* searchTrains(found.space, request.order.map(levelOf), request.best);
  const trains = yield* rankedAll(before, found, answer.trains, roadSpeed);
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
    buying: buyingOf(before.model),
  };
  if (nothing(found)) return { ...base, trains: [], whole: true };
  const rest = request.order.filter((key) => key !== first && key !== second).map(levelOf);
  const { trains, whole } = yield* frontOf(found.space, levelOf(first), levelOf(second), rest, request.best);
  return { ...base, trains: yield* rankedAll(before, found, trains, roadSpeedOf(session)), whole };
}
