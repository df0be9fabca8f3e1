import type { Solid } from '@oddwheel/mechanics/clearance/solid';
import { plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Body, Seat, Shaft } from '../../model/model.ts';
import { disc } from './loop.ts';
import { type Envelopes, type Part, still } from './part.ts';
import type { UnknownSize } from './types.ts';

/** A shaft, the line that it belongs to, and what carries it. */
export interface OnLine {
  readonly shaft: Shaft;
  readonly line: number;
  readonly bodies: readonly Body[];
}

interface Piece {
  readonly from: number;
  readonly to: number;
  readonly diameter: number;
}

/** Half the length that a seat takes up; a seat of no given width counts as a place. */
const half = ({ width }: Seat): number => (width ?? 0) / 2;

/**
 * A shaft between its end seats: each seat over its width, and between two seats the bar that it is turned from, or without one the thicker of both.
 */
function pieces(seats: readonly Seat[], bar: number | null): readonly Piece[] {
  const found: Piece[] = [];
  const put = (from: number, to: number, diameter: number | null): void => {
    if (diameter === null || !(to > from)) return;
    const last = found.at(-1);
    if (last && last.diameter === diameter && last.to >= from) found[found.length - 1] = { ...last, to };
    else found.push({ from, to, diameter });
  };
  seats.forEach((seat, k) => {
    const before = seats[k - 1];
    if (before) {
      const known = [before.diameter, seat.diameter].filter((d) => d !== null);
      const between = bar ?? (known.length === 2 ? Math.max(...known) : null);
      put(before.station + half(before), seat.station - half(seat), between);
    }
    put(seat.station - half(seat), seat.station + half(seat), seat.diameter ?? bar);
  });
  return found;
}

/** A shaft and its bearings. */
export function shaftParts(
  { shaft, line, bodies }: OnLine,
  swings: boolean,
  at: (solids: readonly Solid[]) => Part['at'],
): Envelopes {
  const seats = [...shaft.seats].sort((a, b) => a.station - b.station);
  const point = (station: number): Vec3 => plus(shaft.origin, times(station, shaft.direction));
  const common = { element: shaft.address, stage: null, largest: null, growth: 0 };
  const solids = pieces(seats, shaft.stock?.diameter ?? null).map(
    ({ from, to, diameter }): Solid => ({
      shape: 'cylinder',
      from: point(from),
      to: point(to),
      radius: diameter / 2,
      rounding: 0,
    }),
  );
  const unknown: UnknownSize[] = [];
  const missing = (name: string, address: string, says: string): void => {
    unknown.push({ name, element: shaft.address, address, says });
  };
  for (const seat of seats)
    if (seat.diameter === null && shaft.stock === null)
      missing(shaft.name, `${seat.address}/diameter`, `the diameter of ${shaft.name} under ${seat.name}`);
  const bearings = seats.flatMap((seat): Part[] => {
    if (seat.kind !== 'bearing') return [];
    const name = `${seat.name} of ${shaft.name}`;
    if (seat.outside === null) missing(name, `${seat.address}/outside`, `the outside diameter of ${name}`);
    if (seat.width === null) missing(name, `${seat.address}/width`, `the width of ${name}`);
    if (seat.outside === null || seat.width === null) return [];
    const onArm = seat.body === 'swinging arm';
    const ring = [disc(seat.at, shaft.direction, seat.outside / 2, seat.width / 2)];
    return [
      {
        ...common,
        role: 'bearing',
        name,
        address: seat.address,
        bodies: seat.body === null ? [] : [seat.body],
        lines: [line],
        at: onArm && swings ? at(ring) : still(ring),
        swings: onArm && swings,
      },
    ];
  });
  const own: Part[] =
    solids.length === 0
      ? []
      : [
          {
            ...common,
            role: 'shaft',
            name: shaft.name,
            address: shaft.address,
            bodies,
            lines: [line],
            at: swings ? at(solids) : still(solids),
            swings,
          },
        ];
  return { parts: [...own, ...bearings], unknown };
}
