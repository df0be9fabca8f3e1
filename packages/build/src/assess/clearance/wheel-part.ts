import type { Solid } from '@oddwheel/mechanics/clearance/solid';
import { MethodError } from '@oddwheel/mechanics/method/method';
import { tyreGrowth } from '@oddwheel/mechanics/vehicle/tyre-growth';
import { rowInSi } from '@oddwheel/tables/table';
import { TYRE_GROWTH } from '@oddwheel/tables/tyre-growth';
import type { Model, Seat } from '../../model/model.ts';
import { readTyre } from '../../model/tyre.ts';
import { disc } from './loop.ts';
import type { Envelopes, Part } from './part.ts';
import type { OnLine } from './shaft-parts.ts';
import type { UnknownSize } from './types.ts';

/** The shoulder of a flat tread is rounded by no more than this part of the width (common practice). */
const SHOULDER = 0.15;

const ROWS = Object.keys(TYRE_GROWTH.rows).map((key) => rowInSi(TYRE_GROWTH, key));
const SPEEDS = ROWS.map(({ speed = Number.NaN }) => speed);
const GROWTHS = ROWS.map(({ growth = Number.NaN }) => growth);

/** Highest road speed, all uncertain inputs at the end that makes it highest; null where redline or roll-out is not known. */
export function topSpeedOf({ engine, wheel, stages }: Model): number | null {
  if (!engine.redline || !wheel.rollOut) return null;
  const box = engine.primary.lo * Math.min(...engine.gears.map(({ lo }) => lo));
  const path = stages.reduce((ratio, stage) => {
    if (stage.kind === 'coupling') return ratio;
    return ratio * (stage.kind === 'unit' ? stage.ratio.lo : stage.teeth.driven / stage.teeth.driver);
  }, box);
  return ((engine.redline.hi / path) * wheel.rollOut.hi) / (2 * Math.PI);
}

/** What speed adds to the radius of a radial tyre; a text where the table does not say. */
function growthAt(radius: number, speed: number): number | string {
  if (speed <= (SPEEDS[0] ?? 0)) return 0;
  try {
    return radius * tyreGrowth.run({ rollOut: 1, speed, rowSpeeds: SPEEDS, rowGrowths: GROWTHS }).growth;
  } catch (error) {
    if (error instanceof MethodError) return 'how much the tyre grows at top speed: the table of growth ends below it';
    throw error;
  }
}

/** Radius and width of the driven wheel, m; null where one is not known. */
function wheelSize({ wheel }: Model, seat: Seat): { readonly radius: number; readonly width: number } | null {
  const width = wheel.width ?? seat.width;
  const rolling = wheel.rollOut && wheel.rollOut.hi / (2 * Math.PI);
  const radius = wheel.diameter === null ? rolling : wheel.diameter / 2;
  return radius === null || width === null ? null : { radius, width };
}

const wheelSeat = ({ shaft }: OnLine): Seat | undefined => shaft.seats.find(({ kind }) => kind === 'wheel');

/** The driven wheel as it stands still, its tyre as the size says; null where its size is not known. */
export function wheelSolid(model: Model, on: OnLine): Solid | null {
  const seat = wheelSeat(on);
  const size = seat && wheelSize(model, seat);
  if (!size) return null;
  const { radius, width } = size;
  const { tyre } = model.wheel;
  const rounding = tyre !== null && readTyre(tyre).ok ? Math.min(SHOULDER * width, radius) : 0;
  return { ...disc(seat.at, on.shaft.direction, radius, width / 2), rounding };
}

/**
 * The driven wheel on its shaft.
 * @param at where `wheelSolid` is; null where its size is not known
 */
export function wheelParts(
  model: Model,
  on: OnLine,
  swings: boolean,
  at: Part['at'] | null,
  topSpeed: number | null,
): Envelopes {
  const { wheel } = model;
  const seat = wheelSeat(on);
  if (!seat) return { parts: [], unknown: [] };
  const name = wheel.tyre === null ? seat.name : 'tyre';
  const unknown: UnknownSize[] = [];
  const missing = (address: string, says: string): void => {
    unknown.push({ name, element: wheel.address, address, says });
  };
  if (wheel.width === null && seat.width === null) missing(`${seat.address}/width`, `the width of ${seat.name}`);
  if (wheel.diameter === null)
    missing(
      `${wheel.address}/tyre`,
      wheel.rollOut
        ? `the size of the tyre: the roll-out stands in for it, and what stands beyond its tread is not known`
        : 'the size of the tyre',
    );
  const measures = wheelSize(model, seat);
  if (measures === null || at === null) return { parts: [], unknown };
  const { radius } = measures;
  const size = wheel.tyre === null ? null : readTyre(wheel.tyre);
  let growth = 0;
  if (size?.ok && size.construction !== 'radial')
    missing(
      `${wheel.address}/tyre`,
      `how much a ${size.construction} tyre grows at speed: it grows more than a radial`,
    );
  if (size?.ok && topSpeed === null) missing('/brief/engine/redline', 'the top speed, which makes the tyre grow');
  if (size?.ok && topSpeed !== null) {
    const found = growthAt(radius, topSpeed);
    if (typeof found === 'string') missing(`${wheel.address}/tyre`, found);
    else growth = found;
  }
  return {
    parts: [
      {
        role: 'wheel',
        name,
        address: seat.address,
        element: wheel.address,
        bodies: on.bodies,
        lines: [on.line],
        stage: null,
        at,
        largest: null,
        swings,
        growth,
      },
    ],
    unknown,
  };
}
