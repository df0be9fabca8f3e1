import { dot, minus, norm, plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Hub } from '../../../model/hub.ts';
import type { Model, Seat, Shaft } from '../../../model/model.ts';
import type { CaseLoads } from '../../loads.ts';
import type { Missing } from '../../types.ts';
import type { Check, Outcome, Subject } from '../check.ts';

/** A seat through which torque passes between its shaft and the part that sits on it. */
export interface TorqueSeat {
  readonly seat: Seat;
  readonly shaft: Shaft;
  /** Stages that end on it: index, and the end. */
  readonly ends: readonly { readonly stage: number; readonly end: 'from' | 'to' }[];
  /** The driven wheel: what its shaft carries passes here. */
  readonly wheel: boolean;
  /** The brake of the drive sits here. */
  readonly brake: boolean;
}

const KNOWN = new WeakMap<Model, readonly TorqueSeat[]>();

/** Seats of the path that pass torque, in the order of power. */
export function torqueSeats(model: Model): readonly TorqueSeat[] {
  const known = KNOWN.get(model);
  if (known) return known;
  const last = model.shafts.at(-1);
  const found = model.shafts.flatMap((shaft) =>
    shaft.seats.flatMap((seat): TorqueSeat[] => {
      if (seat.kind === 'bearing') return [];
      const ends = model.stages.flatMap(({ from, to }, stage) =>
        ([['from', from] as const, ['to', to] as const] as const)
          .filter(([, ref]) => ref.shaft === shaft.id && ref.seat === seat.id)
          .map(([end]) => ({ stage, end })),
      );
      const wheel = seat.kind === 'wheel' && shaft === last;
      const brake = model.loads.brake?.at === `${shaft.id}/${seat.id}`;
      return ends.length > 0 || wheel || brake ? [{ seat, shaft, ends, wheel, brake }] : [];
    }),
  );
  KNOWN.set(model, found);
  return found;
}

const subjectOf = ({ seat }: TorqueSeat): Subject => ({ address: seat.address, element: seat.name, stage: null });

/** Torque seats without a torque joint. */
export const seatsWithout: Check['subjects'] = (model) =>
  torqueSeats(model)
    .filter(({ seat }) => seat.hub === null)
    .map(subjectOf);

/** Torque seats whose joint fits. */
export const seatsWith =
  (fits: (hub: Hub, seat: Seat) => boolean): Check['subjects'] =>
  (model) =>
    torqueSeats(model)
      .filter(({ seat }) => seat.hub !== null && fits(seat.hub, seat))
      .map(subjectOf);

/** The torque seat of a subject, with its joint. */
export function torqueSeatOf(model: Model, { address }: Subject): (TorqueSeat & { readonly hub: Hub }) | null {
  return jointedOf(model).get(address) ?? null;
}

const JOINTED = new WeakMap<Model, ReadonlyMap<string, TorqueSeat & { readonly hub: Hub }>>();

/** Torque seats with a joint, by address: they are asked for in every case. */
function jointedOf(model: Model): ReadonlyMap<string, TorqueSeat & { readonly hub: Hub }> {
  const known = JOINTED.get(model);
  if (known) return known;
  const found = new Map(
    torqueSeats(model).flatMap((one) => {
      const { address, hub } = one.seat;
      return hub ? [[address, { ...one, hub }] as const] : [];
    }),
  );
  JOINTED.set(model, found);
  return found;
}

/** N·m: a case that passes nothing here says nothing of the joint. */
export const NOTHING = 1e-6;

/** Torque through a seat in a case, as a size: of two stages that end here the greater, and the brake where it sits here. */
export function torqueThrough({ ends, wheel, brake }: TorqueSeat, load: CaseLoads): number {
  let most = 0;
  for (const { stage, end } of ends) {
    const one = load.stages[stage];
    most = Math.max(most, Math.abs((end === 'from' ? one?.torqueIn : one?.torqueOut) ?? 0));
  }
  if (wheel) most = Math.max(most, Math.abs(load.shafts.at(-1)?.torque ?? 0));
  if (brake && load.point.brake) most = Math.max(most, load.point.brake.torque);
  return most;
}

/** Force across the shaft that the part brings to its seat in a case, as a size; the wheel's own load is not among it. */
export function pushAcross({ ends, shaft }: TorqueSeat, load: CaseLoads): number {
  let sum: Vec3 = [0, 0, 0];
  for (const { stage, end } of ends) {
    const force = load.stages[stage]?.[end].force;
    if (force) sum = plus(sum, force);
  }
  return norm(minus(sum, times(dot(sum, shaft.direction), shaft.direction)));
}

/** Force along the shaft that the part brings to its seat in a case, as a size. */
export function pushAlong({ ends, shaft }: TorqueSeat, load: CaseLoads): number {
  let along = 0;
  for (const { stage, end } of ends) {
    const force = load.stages[stage]?.[end].force;
    if (force) along += dot(force, shaft.direction);
  }
  return Math.abs(along);
}

export const unknown = (...missing: readonly Missing[]): Outcome => ({ kind: 'unknown', missing });

export const plainly = (holds: boolean, says: () => string): Outcome => ({
  kind: 'plain',
  holds,
  says,
  uses: [],
  used: () => [],
});

/** Values that a check needs; those that the build leaves out, as what is missing. */
export function needed<K extends string>(
  values: Readonly<Record<K, number | null>>,
  where: string,
  words: Readonly<Record<K, string>>,
): { readonly ok: true; readonly of: Readonly<Record<K, number>> } | { readonly ok: false; readonly outcome: Outcome } {
  const keys = Object.keys(words) as K[];
  const missing = keys
    .filter((key) => values[key] === null)
    .map((key) => ({ address: `${where}/${key}`, says: words[key] }));
  if (missing.length > 0) return { ok: false, outcome: unknown(...missing) };
  return { ok: true, of: Object.fromEntries(keys.map((key) => [key, values[key] ?? 0])) as Record<K, number> };
}
