import type { Seat, Shaft } from '../../model/model.ts';
import type { Missing } from '../types.ts';

/** A stretch of a shaft of one diameter, from lower to higher station. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly diameter: number;
  readonly bore: number;
  /** Where the diameter is written. */
  readonly address: string;
  /**
   * Diameter that counts for strength where the build does not say it. Between two bearings a shaft is turned down for its seats and not in between,
   * so there the thicker neighbour counts; it bends as the thinner one.
   */
  readonly strong?: number;
}

/** Lengths below this are rounding. */
const NOTHING = 1e-9;

/** Width of what sits at a seat: as typed, or of the bearing by its number; 0 where neither says. */
export function widthOf({ width, bearing }: Seat): number {
  return width ?? bearing?.facts?.width ?? 0;
}

/** First and last station of anything on a shaft. */
export function reach(shaft: Shaft): { readonly first: number; readonly last: number } {
  const ends = [
    ...shaft.seats.flatMap((seat) => {
      const half = widthOf(seat) / 2;
      return [seat.station - half, seat.station + half];
    }),
    ...(shaft.pieces ?? []).flatMap((piece) => [piece.from, piece.to]),
  ];
  return { first: Math.min(...ends), last: Math.max(...ends) };
}

/**
 * Diameters along a shaft, without a gap: as typed, else from the seats, where between two seats the thinner one counts.
 * @returns the stretches in order, or what is missing
 */
export function diametersOf(shaft: Shaft): {
  readonly stretches: readonly Stretch[];
  readonly missing: readonly Missing[];
} {
  const { first, last } = reach(shaft);
  if (shaft.pieces) return fromPieces(shaft, first, last);
  const seats = shaft.seats.filter((seat) => seat.diameter !== null).sort((a, b) => a.station - b.station);
  const unknown: Missing = {
    address: `${shaft.address}/pieces`,
    says: `the diameters of ${shaft.name} along its length, or of its seats`,
  };
  if (seats.length === 0) return { stretches: [], missing: [unknown] };
  const stretches: Stretch[] = [];
  const put = (from: number, to: number, diameter: number, address: string, strong = diameter): void => {
    if (to - from > NOTHING) stretches.push({ from, to, diameter, bore: 0, address, strong });
  };
  const carried = seats.filter(({ kind }) => kind === 'bearing').map(({ station }) => station);
  const inside = (a: number, b: number): boolean => a >= Math.min(...carried) && b <= Math.max(...carried);
  let at = first;
  seats.forEach((seat, k) => {
    const half = widthOf(seat) / 2;
    const own = seat.diameter ?? 0;
    const [low, high] = [Math.max(at, seat.station - half), seat.station + half];
    const before = seats[k - 1];
    const thinner = before?.diameter !== undefined && before.diameter !== null && before.diameter < own ? before : seat;
    const strong = before && inside(before.station, seat.station) ? Math.max(before.diameter ?? 0, own) : undefined;
    put(at, low, thinner.diameter ?? own, `${thinner.address}/diameter`, strong);
    put(low, Math.max(low, high), own, `${seat.address}/diameter`);
    at = Math.max(low, high);
  });
  const end = seats.at(-1);
  if (end) put(at, last, end.diameter ?? 0, `${end.address}/diameter`);
  return { stretches, missing: [] };
}

function fromPieces(shaft: Shaft, first: number, last: number): ReturnType<typeof diametersOf> {
  const pieces = [...(shaft.pieces ?? [])].sort((a, b) => a.from - b.from);
  const missing: Missing[] = [];
  const gap = (from: number, to: number): void => {
    missing.push({
      address: `${shaft.address}/pieces`,
      says: `the diameter of ${shaft.name} from station ${(from * 1000).toFixed(1)} to ${(to * 1000).toFixed(1)} mm`,
    });
  };
  let at = first;
  for (const piece of pieces) {
    if (piece.from - at > NOTHING) gap(at, piece.from);
    at = Math.max(at, piece.to);
  }
  if (last - at > NOTHING) gap(at, last);
  return {
    stretches: pieces.map(({ from, to, diameter, bore, address }) => ({
      from,
      to,
      diameter,
      bore,
      address: `${address}/diameter`,
    })),
    missing,
  };
}

/** The thinner of the stretches that meet at a station. */
export function thinnestAt(stretches: readonly Stretch[], station: number): Stretch | null {
  const here = stretches.filter(({ from, to }) => from - NOTHING <= station && station <= to + NOTHING);
  return here.reduce<Stretch | null>(
    (least, one) => (least === null || one.diameter < least.diameter ? one : least),
    null,
  );
}
