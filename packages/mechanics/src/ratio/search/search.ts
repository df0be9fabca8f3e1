import { cutOf, entryBounds, leastOf, promising } from './bounds.ts';
import { meet } from './halves.ts';
import { keeperOf } from './keeper.ts';
import { merged, pick, type Row, rowsOf, type Slot, slotOf } from './rows.ts';
import type { Found, Level, Progress, TrainSpace } from './types.ts';

/** Choices of each stage that the first round takes, and how much more each further one does. */
const FIRST = 48;
const FURTHER = 4;
/** Slots that the two halves hold. */
const SLOTS = 4;
/** Most pairs of two stages that are taken as one. */
const MOST_MERGED = 2e6;

/** Asked for something that cannot be searched. */
export class SearchError extends Error {}

/** Stages with one choice never part trains, and stages beyond four are taken together, the shortest first. */
function slotsOf(space: TrainSpace, rows: readonly Row[]): Slot[] {
  const slots = space.stages.map((_, stage) => slotOf(space, rows, stage));
  while (slots.length > SLOTS || (slots.length > 1 && slots.some(({ count }) => count === 1))) {
    slots.sort((a, b) => b.count - a.count);
    const [last, before] = [slots.pop(), slots.pop()];
    if (!last || !before) break;
    if (last.count * before.count > MOST_MERGED)
      throw new SearchError(
        `${space.stages.length} stages read, the two shortest with ${before.count} and ${last.count} choices; their product may be up to ${MOST_MERGED}. Narrow their teeth.`,
      );
    slots.push(merged(last, before));
  }
  return slots;
}

/** The named entries of a slot, still sorted by ratio. */
const inRatioOrder = (slot: Slot, entries: Uint32Array): Slot => pick(slot, entries.slice().sort());

function refuse(space: TrainSpace, order: readonly Level[], most: number): void {
  if (space.stages.length === 0) throw new SearchError('No stage read; at least one is accepted.');
  const empty = space.stages.findIndex(({ choices }) => choices.length === 0);
  if (empty >= 0) throw new SearchError(`Stage ${empty + 1} has no choice left; at least one is accepted.`);
  if (!(space.band.low > 0 && space.band.high >= space.band.low && Number.isFinite(space.band.high)))
    throw new SearchError(
      `Ratio wanted ${space.band.low} to ${space.band.high} read; two numbers above zero, low first, are accepted.`,
    );
  if (!(Number.isInteger(most) && most >= 1 && most <= 10_000))
    throw new SearchError(`${most} trains asked for; 1 to 10000 are accepted.`);
  const sums = [...order, ...space.limits];
  if (sums.some((sum) => sum.ratio < 0 || sum.terms.some(({ weight }) => !(weight >= 0))))
    throw new SearchError('A weight below zero read; weights of at least zero are accepted.');
  for (const [stage, { choices }] of space.stages.entries())
    for (const { driver, driven, ratio, costs } of choices) {
      if (!((ratio ?? driven / driver) > 0))
        throw new SearchError(
          `Stage ${stage + 1}: a ratio of ${ratio ?? driven / driver} read; more than zero is accepted.`,
        );
      if (costs.length !== space.terms || costs.some((cost) => !(cost >= 0 && cost < 1e9)))
        throw new SearchError(
          `Stage ${stage + 1}, ${driver}:${driven}: ${costs.length} terms read; ${space.terms} numbers from zero to 1e9 are accepted.`,
        );
    }
}

/**
 * The best trains of a space, exactly: by the levels of the order, then by the teeth of the first stage, the second, and so on.
 *
 * Each round takes the choices that may do best by their lower bounds, and meets two halves of the stages in the middle. It ends when the
 * bounds show that no choice left out can belong to a train as good as the last one kept. Yields often, so that a caller can show progress
 * or give up.
 *
 * Errors: `SearchError` for an empty space, a weight or cost below zero, or too many long stages.
 */
export function* searchTrains(space: TrainSpace, order: readonly Level[], most: number): Generator<Progress, Found> {
  refuse(space, order, most);
  const rows = rowsOf(space, order);
  const keeper = keeperOf(space, rows, most);
  const size = space.stages.reduce((product, { choices }) => product * choices.length, 1);
  let slots = slotsOf(space, rows);
  for (let round = 1, take = FIRST; ; round++, take *= FURTHER) {
    const held = keeper.ceiling();
    const { window } = cutOf(space, rows, leastOf(rows, slots), held);
    const bounds = entryBounds(space, rows, slots, window);
    const left = slots.map((slot, s) => promising(rows, bounds[s] ?? [], slot.count, held));
    if (left.some(({ length }) => length === 0)) break;
    const whole = left.every(({ length }) => length <= take);
    const taken = slots.map((slot, s) => inRatioOrder(slot, (left[s] as Uint32Array).subarray(0, take)));
    slots = slots.map((slot, s) => inRatioOrder(slot, left[s] as Uint32Array));
    keeper.again();
    for (const part of meet(space, rows, taken, keeper)) yield { round, part, found: keeper.found() };
    if (whole) break;
  }
  return { trains: keeper.trains(), size };
}
