/** Parts of the model as the ways ask for them. */
import { dot } from '@oddwheel/mechanics/numerics/vector';
import { widthOf } from '../../assess/strength/diameters.ts';
import type { Model, Seat, SeatRef, Shaft, Stage } from '../../model/model.ts';
import type { Ground } from '../ladder.ts';

/** Shaft that a finding stands on, by itself or by one of its parts. */
export const shaftOf = ({ model, finding }: Ground): Shaft | undefined =>
  model.shafts.find(({ address }) => finding.address === address || finding.address.startsWith(`${address}/`));

/** The gearbox's own shaft, which is left as it is. */
export const isDonors = ({ model }: Ground, shaft: Shaft): boolean => model.shafts[0] === shaft;

export const seatAt = ({ model }: Ground, address: string): Seat | undefined =>
  model.shafts.flatMap(({ seats }) => seats).find((seat) => seat.address === address);

export const bearingsOf = ({ seats }: Shaft): readonly Seat[] => seats.filter(({ kind }) => kind === 'bearing');

export const loadsOf = ({ seats }: Shaft): readonly Seat[] => seats.filter(({ kind }) => kind !== 'bearing');

/** Shafts of the stage that a finding stands on. */
export function shaftsOfStage({ model, finding }: Ground): readonly Shaft[] {
  const k = model.stages.findIndex(({ address }) => address === finding.address);
  return [model.shafts[k], model.shafts[k + 1]].filter((shaft) => k >= 0 && shaft !== undefined) as readonly Shaft[];
}

export const stageOf = ({ model, finding }: Ground): Stage | undefined =>
  model.stages.find(({ address }) => finding.address === address || finding.address.startsWith(`${address}/`));

const refTo = (shaft: Shaft, { seat }: SeatRef): Seat | undefined => shaft.seats.find(({ id }) => id === seat);

/** A stage by its index, with its two seats. */
export interface Meshed {
  readonly stage: Stage;
  readonly driver: Seat;
  readonly driven: Seat;
  readonly from: Shaft;
  readonly to: Shaft;
}

export function meshed({ shafts, stages }: Model, index: number): Meshed | null {
  const [stage, from, to] = [stages[index], shafts[index], shafts[index + 1]];
  if (!stage || !from || !to) return null;
  const [driver, driven] = [refTo(from, stage.from), refTo(to, stage.to)];
  return driver && driven ? { stage, driver, driven, from, to } : null;
}

/** Stages that put a force on a shaft: the one that drives it, and the one that it drives. */
export function stagesOn({ model }: Ground, shaft: Shaft): readonly Meshed[] {
  const k = model.shafts.indexOf(shaft);
  return [k - 1, k].flatMap((index) => meshed(model, index) ?? []);
}

/** +1 or −1 where two shafts lie parallel, by whether they point the same way; null else. */
export function alike(a: Shaft, b: Shaft): 1 | -1 | null {
  const cosine = dot(a.direction, b.direction);
  return Math.abs(Math.abs(cosine) - 1) < 1e-6 ? (cosine > 0 ? 1 : -1) : null;
}

/** Half of what a part takes along its shaft. */
export const half = (seat: Seat): number => widthOf(seat) / 2;

/** Between two parts on a shaft, at the least: room for a sleeve or ring. */
export const BETWEEN = 2e-3;

/** How far a seat may go along its shaft toward a station before it meets its neighbour. */
export function wayToward({ seats }: Shaft, seat: Seat, toward: number): number {
  const sign = Math.sign(toward - seat.station);
  const gaps = seats
    .filter((other) => other !== seat && Math.sign(other.station - seat.station) === sign)
    .map((other) => Math.abs(other.station - seat.station) - half(other) - half(seat) - BETWEEN);
  return Math.max(0, Math.min(Math.abs(toward - seat.station), ...gaps));
}

/** Names of what is moved or turned, for a sentence. */
export const and = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/** Length of a shaft over its parts, with a little to face off at each end. */
export function lengthOf(shaft: Shaft): number {
  const ends = shaft.seats.flatMap((seat) => [seat.station - half(seat), seat.station + half(seat)]);
  return ends.length > 0 ? Math.max(...ends) - Math.min(...ends) + 0.02 : 0;
}
