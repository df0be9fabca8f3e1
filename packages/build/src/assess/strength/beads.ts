import { formatQuantity } from '@oddwheel/quantity/format';
import { type Cache, reuse } from '../../model/cache.ts';
import type { Model, Shaft } from '../../model/model.ts';
import type { Notch } from '../../model/strength.ts';
import { reach } from './diameters.ts';
import { notchesOf } from './notches.ts';

/** Weld that was laid on a shaft while it was made to run true. */
export interface LaidBeads {
  /** Id of the shaft in the build. */
  readonly shaft: string;
  /** Along the shaft, m. */
  readonly station: number;
  /** Numbers of the rounds that laid it. */
  readonly rounds: readonly number[];
  /** The weld that the joint owes anyway, not extra beads. */
  readonly owed: boolean;
  /** Bearing seats that the station was measured along with, m. */
  readonly seats: readonly [number, number];
}

/** Seats measured on the part and drawn in the build within this are the same. */
const SAME_SEAT = 3e-3;
/** Weld within this of another leaves one notch. */
const SAME_WELD = 3e-3;

const mm = (metres: number): string => formatQuantity(metres, 'length', 'mm', { digits: 4 });

/** What the beads of one place are called: "beads of rounds 2 and 4 at 140 mm". */
export function beadsName({ rounds, station, owed }: Pick<LaidBeads, 'rounds' | 'station' | 'owed'>): string {
  const [last = 0, ...before] = rounds.toReversed();
  const which = before.length === 0 ? `round ${last}` : `rounds ${before.toReversed().join(', ')} and ${last}`;
  return `the ${owed ? 'weld' : before.length === 0 ? 'bead' : 'beads'} of ${which} at ${mm(station)}`;
}

/** Why the beads do not count in the strength of a build; null where they do. */
export function beadsUnplaced(
  { shafts }: Model,
  { shaft: id, station, seats }: Omit<LaidBeads, 'rounds' | 'owed'>,
): string | null {
  const shaft = shafts.find((one) => one.id === id);
  if (!shaft) return `the build has no shaft “${id}”`;
  const bearings = shaft.seats.filter(({ kind }) => kind === 'bearing').map((seat) => seat.station);
  const stray = seats.find((seat) => !bearings.some((one) => Math.abs(one - seat) <= SAME_SEAT));
  if (stray !== undefined)
    return `${shaft.name} has no bearing at ${mm(stray)} in the build: measure stations from the end that the build does`;
  const { first, last } = reach(shaft);
  return station < first || station > last ? `${shaft.name} does not reach to ${mm(station)} in the build` : null;
}

/** A model with a weld-toe notch wherever beads were laid on its shafts. Without beads it is the very same. */
export function withBeads(model: Model, beads: readonly LaidBeads[], cache: Cache | null): Model {
  const placed = beads.filter((one) => beadsUnplaced(model, one) === null);
  if (placed.length === 0) return model;
  const shafts = model.shafts.map((shaft) => {
    const own = placed.filter((one) => one.shaft === shaft.id);
    return own.length === 0 ? shaft : reuse(cache, `beads:${shaft.id}`, [shaft, beads], () => notched(shaft, own));
  });
  return { ...model, shafts };
}

/** The weld that a joint owes is left out where the build has it already: it counts once. */
function notched(shaft: Shaft, beads: readonly LaidBeads[]): Shaft {
  const welds = notchesOf(shaft).filter(({ sort }) => sort === 'weld-toe');
  const known = (station: number): boolean => welds.some((weld) => Math.abs(weld.station - station) <= SAME_WELD);
  const laid = beads
    .filter(({ owed, station }) => !(owed && known(station)))
    .map((one): Notch => {
      const name = beadsName(one);
      return { address: name, name, kind: 'weld toe', station: one.station, radius: null };
    });
  return { ...shaft, notches: [...shaft.notches, ...laid] };
}
