import { bevelApex } from '@oddwheel/mechanics/bevel/apex';
import { MethodError } from '@oddwheel/mechanics/method/method';
import { dot, minus, norm, plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { Kind } from '@oddwheel/quantity/kinds';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Adjuster, Model, Shaft, Stage } from '../../model/model.ts';
import { type Within, within } from '../../model/within.ts';
import { seatOf } from '../geometry/place.ts';
import { stageGeometry } from '../geometry/stage.ts';
import { parallelPlace } from '../geometry/tangent.ts';

/** What of a stage a movement can upset. */
export type What =
  | 'links needed'
  | 'belt teeth needed'
  | 'planes'
  | 'axes apart'
  | 'driver from the apex'
  | 'driven from the apex'
  | 'centre distance'
  | 'offset of the shafts'
  | 'gap along the shaft'
  | 'place of its housing';

/** One number that tells whether a stage still fits; null where its geometry cannot be had. */
export interface Measure {
  readonly what: What;
  readonly value: number | null;
  readonly kind: Kind;
}

/**
 * Smallest change that counts. A rigid-link chain asks for centres that swing by up to 0.004 pitch as it runs (derived, see chain.length),
 * so less is no change; of a part moved by 1 mm, a hundredth.
 */
export const least = (kind: Kind): number => (kind === 'length' ? 1e-5 : 0.004);

/** The shaft moved whole, with all that sits on it. */
export const shifted = (shaft: Shaft, by: Vec3): Shaft => ({
  ...shaft,
  origin: plus(shaft.origin, by),
  seats: shaft.seats.map((seat) => ({ ...seat, at: plus(seat.at, by) })),
});

/** The shaft with one part moved along it. */
const seatShifted = (shaft: Shaft, seatId: string, by: number): Shaft => ({
  ...shaft,
  seats: shaft.seats.map((seat) =>
    seat.id === seatId ? { ...seat, station: seat.station + by, at: plus(seat.at, times(by, shaft.direction)) } : seat,
  ),
});

/** All shafts after an adjuster has moved by `by` metres along its direction. */
export function moved(model: Model, adjuster: Adjuster, by: number): readonly Shaft[] {
  const [shaftId = '', seatId] = adjuster.moves.split('/');
  return model.shafts.map((shaft) => {
    if (shaft.id !== shaftId) return shaft;
    if (seatId === undefined) return shifted(shaft, times(by, adjuster.along));
    return seatShifted(shaft, seatId, by * dot(adjuster.along, shaft.direction));
  });
}

/** A millimetre: what a builder turns an adjuster by to see what it does. */
export const TRIAL = 0.001;

/** As `moved`, by the trial; a shaft that an edit leaves alone is not moved again. */
export function movedOnTrial(model: Model, adjuster: Adjuster): readonly Shaft[] {
  return model.shafts.map((shaft) =>
    adjuster.moves.split('/')[0] === shaft.id
      ? within(TRIED, [adjuster, shaft], () => moved({ ...model, shafts: [shaft] }, adjuster, TRIAL)[0] ?? shaft)
      : shaft,
  );
}

const TRIED: Within<Shaft> = new WeakMap();
const MEASURED: Within<readonly Measure[]> = new WeakMap();

/**
 * Numbers of a stage that tell whether it fits, with the shafts as given. Places are exact figures, so inputs stand at their middle.
 * The same parts are measured once.
 */
export function measuresOf(stage: Stage, from: Shaft, to: Shaft): readonly Measure[] {
  return within(MEASURED, [stage, from, to], () => measuredAnew(stage, from, to));
}

function measuredAnew(stage: Stage, from: Shaft, to: Shaft): readonly Measure[] {
  const [driver, driven] = [seatOf(from, stage.from), seatOf(to, stage.to)];
  const between = minus(driven.at, driver.at);
  const along = dot(between, from.direction);
  const length = (what: What, value: number | null): Measure => ({ what, value, kind: 'length' });
  switch (stage.kind) {
    case 'chain': {
      const { chain } = stageGeometry(stage, from, to, (value) => value.si);
      return [{ what: 'links needed', value: chain?.linksNeeded ?? null, kind: 'count' }, length('planes', along)];
    }
    case 'belt': {
      const used = stageGeometry(stage, from, to, (value) => value.si).used[0];
      const teeth = used ? Number(used.output.beltTeeth) : null;
      return [{ what: 'belt teeth needed', value: teeth, kind: 'count' }, length('planes', along)];
    }
    case 'spur':
      return [
        length('centre distance', parallelPlace(driver.at, driven.at, from.direction).centreDistance),
        length('planes', along),
      ];
    case 'bevel': {
      const apex = apexOf(from, to);
      return [
        length('axes apart', apex?.apart ?? null),
        length('driver from the apex', apex && Math.abs(driver.station - apex.driver)),
        length('driven from the apex', apex && Math.abs(driven.station - apex.driven)),
      ];
    }
    case 'coupling':
      return [
        length('offset of the shafts', norm(minus(between, times(along, from.direction)))),
        length('gap along the shaft', along),
      ];
    case 'unit':
      return between.map((part) => length('place of its housing', part));
  }
}

/** Where the axes of a bevel pair come nearest, as stations from each origin; null when they lie parallel. */
function apexOf(
  from: Shaft,
  to: Shaft,
): { readonly apart: number; readonly driver: number; readonly driven: number } | null {
  try {
    const found = bevelApex.run({
      originDriver: from.origin,
      originDriven: to.origin,
      directionDriver: from.direction,
      directionDriven: to.direction,
    });
    return { apart: found.axisDistance, driver: found.stationDriver, driven: found.stationDriven };
  } catch (error) {
    if (!(error instanceof MethodError)) throw error;
    return null;
  }
}

export interface Change {
  readonly what: What;
  readonly kind: Kind;
  /** Null: the stage could be computed before, and can no longer. */
  readonly change: number | null;
}

/** What changes at a stage between two states of its shafts, where it counts. */
export function changes(before: readonly Measure[], after: readonly Measure[]): readonly Change[] {
  return before.flatMap((was, k): Change[] => {
    const is = after[k];
    if (!is || was.value === null) return [];
    if (is.value === null) return [{ what: was.what, kind: was.kind, change: null }];
    const change = is.value - was.value;
    return Math.abs(change) > least(was.kind) ? [{ what: was.what, kind: was.kind, change }] : [];
  });
}
