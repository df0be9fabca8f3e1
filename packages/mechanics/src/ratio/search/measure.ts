import type { Choice, Sum, TrainSpace } from './types.ts';

/** Costs are counted in whole millionths, so that a sum does not depend on the order it is taken in. */
export const TICKS = 1e6;

/** Part by which a ratio misses the band; zero inside. */
export function ratioError(band: TrainSpace['band'], ratio: number): number {
  if (ratio < band.low) return 1 - ratio / band.low;
  return ratio > band.high ? ratio / band.high - 1 : 0;
}

/** A term's share in a sum, in millionths. */
export const ticksOf = (weight: number, cost: number): number => Math.round(weight * cost * TICKS);

/** A choice's share in a sum, ratio error left out, in millionths. */
export function choiceTicks(sum: Sum, choice: Choice): number {
  let ticks = 0;
  for (const { term, weight } of sum.terms) ticks += ticksOf(weight, choice.costs[term] ?? 0);
  return ticks;
}

/** The number by which a level compares: whole steps, or the sum itself. */
export const inSteps = (value: number, step: number): number => (step > 0 ? Math.floor(value / step) : value);

/** Top and bottom of a choice's ratio. Tooth counts stay whole, so that equal ratios compare equal. */
export const fractionOf = ({ driver, driven, ratio }: Choice): readonly [number, number] =>
  ratio === null ? [driven, driver] : [ratio, 1];

/** What lacking parts add to a sum, beyond what each choice lacks by itself, is found over the whole train. */
export function lackingTicks(space: TrainSpace, sum: Sum, parts: Iterable<number>): number {
  const { atHand } = space;
  if (atHand === null) return 0;
  const need = new Map<number, number>();
  for (const part of parts) need.set(part, (need.get(part) ?? 0) + 1);
  let ticks = 0;
  for (const [part, count] of need) {
    const lacks = count - (atHand.have[part] ?? 0);
    if (lacks <= 0) continue;
    for (const { term, each } of atHand.lacking)
      for (const share of sum.terms) if (share.term === term) ticks += lacks * ticksOf(share.weight, each[part] ?? 0);
  }
  return ticks;
}

/** Whether all parts are at hand. */
export function allAtHand(space: TrainSpace, parts: Iterable<number>): boolean {
  const need = new Map<number, number>();
  for (const part of parts) need.set(part, (need.get(part) ?? 0) + 1);
  return [...need].every(([part, count]) => count <= (space.atHand?.have[part] ?? 0));
}
