import type { Seat, Shaft } from '@oddwheel/build/model/model';
import { times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Solid, Turned } from './solids.ts';

export const MM = 1000;
export const inMm = (at: Vec3): Vec3 => times(MM, at);

/** Sizes that stand in for what the build does not give, mm; drawn thin, never dimensioned. */
const STAND_IN = { shaft: 24, bearingWidth: 15, seatWidth: 16, overhang: 6 } as const;

export const widthOf = (seat: Seat): number => (seat.width === null ? STAND_IN.seatWidth : seat.width * MM);

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly radius: number;
}

/** Seats at their own diameters; between two seats the larger one goes on, as a shoulder would. */
function stretches(shaft: Shaft): { readonly all: readonly Stretch[]; readonly sized: boolean } {
  const seats = [...shaft.seats].sort((a, b) => a.station - b.station);
  const known = seats.filter((seat) => seat.diameter !== null);
  const ends = seats.map((seat) => {
    const [at, half] = [seat.station * MM, widthOf(seat) / 2];
    return { from: at - half, to: at + half };
  });
  const start = Math.min(0, ...ends.map(({ from }) => from - STAND_IN.overhang));
  const end = Math.max(0, ...ends.map(({ to }) => to + STAND_IN.overhang));
  if (known.length === 0) return { all: [{ from: start, to: end, radius: STAND_IN.shaft / 2 }], sized: false };
  const edges = known.map((seat) => {
    const [at, half] = [seat.station * MM, widthOf(seat) / 2];
    return { from: at - half, to: at + half, radius: ((seat.diameter ?? 0) * MM) / 2 };
  });
  const all = edges.map((edge, k): Stretch => {
    const [before, after] = [edges[k - 1], edges[k + 1]];
    return {
      radius: edge.radius,
      from: before ? (before.radius >= edge.radius ? Math.max(edge.from, before.to) : before.to) : start,
      to: after ? (after.radius > edge.radius ? edge.to : Math.max(edge.to, after.from)) : end,
    };
  });
  return { all: all.filter(({ from, to }) => to > from), sized: true };
}

const turnedAlong = (shaft: Shaft, outline: Turned['outline'], bore: number): Turned => ({
  shape: 'turned',
  at: inMm(shaft.origin),
  along: shaft.direction,
  outline,
  bore,
  teeth: null,
});

/** The shaft itself, stepped as its seats ask. */
export function shaftSolid(shaft: Shaft): Solid {
  const { all, sized } = stretches(shaft);
  const outline = all.flatMap(({ from, to, radius }): (readonly [number, number])[] => [
    [from, radius],
    [to, radius],
  ]);
  return {
    of: shaft.address,
    name: shaft.name,
    role: 'shaft',
    moves: shaft.address,
    sized,
    shape: turnedAlong(shaft, outline, 0),
  };
}

/** A plain disc or ring about a shaft. */
export function ring(shaft: Shaft, station: number, width: number, radius: number, bore: number): Turned {
  return turnedAlong(
    shaft,
    [
      [station - width / 2, radius],
      [station + width / 2, radius],
    ],
    bore,
  );
}

/** Bearings of a shaft; one whose outside is not given is drawn at twice its bore. */
export function bearingSolids(shaft: Shaft): readonly Solid[] {
  return shaft.seats
    .filter((seat) => seat.kind === 'bearing')
    .map((seat): Solid => {
      const bore = seat.diameter === null ? STAND_IN.shaft : seat.diameter * MM;
      const width = seat.width === null ? STAND_IN.bearingWidth : seat.width * MM;
      const outside = seat.outside === null ? 2 * bore : seat.outside * MM;
      return {
        of: seat.address,
        name: `${seat.name} of ${shaft.name}`,
        role: 'bearing',
        moves: shaft.address,
        sized: seat.outside !== null && seat.width !== null,
        shape: ring(shaft, seat.station * MM, width, outside / 2, bore / 2),
      };
    });
}
