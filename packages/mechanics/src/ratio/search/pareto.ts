import { inSteps } from './measure.ts';
import { searchTrains } from './search.ts';
import type { Level, Limit, Progress, Train, TrainSpace } from './types.ts';

/** Trains of which no other is better in one measure and no worse in the other. */
export interface Front {
  readonly trains: readonly Train[];
  /** False: the front goes on; as many were found as were asked for. */
  readonly whole: boolean;
}

/**
 * The front of two measures, exactly, best in the first one first: one train for each pair of values, by the order's later levels and the
 * teeth. Each is found by a search of its own with what the last one reached as a limit.
 * @param rest levels that choose between trains alike in both
 *
 * Errors: as `searchTrains`.
 */
export function* frontOf(
  space: TrainSpace,
  first: Level,
  second: Level,
  rest: readonly Level[],
  most: number,
): Generator<Progress, Front> {
  const trains: Train[] = [];
  let limit: Limit | null = null;
  for (;;) {
    const narrowed: TrainSpace = limit === null ? space : { ...space, limits: [...space.limits, limit] };
    const search: Generator<Progress, { readonly trains: readonly Train[] }> = searchTrains(
      narrowed,
      [first, second, ...rest],
      1,
    );
    let step = search.next();
    while (!step.done) {
      yield { ...step.value, found: trains.length };
      step = search.next();
    }
    const [train] = step.value.trains;
    if (!train) return { trains, whole: true };
    if (trains.length === most) return { trains, whole: false };
    trains.push(train);
    const reached = train.levels[1] as number;
    limit = { ratio: second.ratio, terms: second.terms, below: belowStep(reached, second.step) };
  }
}

/** Sums below this stand in an earlier step; rounding must not let the same step in again. */
function belowStep(reached: number, step: number): number {
  if (step === 0) return reached;
  let below = reached * step;
  while (inSteps(below, step) >= reached && below > 0) below -= Math.max(below * 2 ** -52, Number.MIN_VALUE);
  while (inSteps(below, step) < reached) below += Math.max(Math.abs(below) * 2 ** -52, Number.MIN_VALUE);
  return below;
}
