/**
 * The axis of a part in space from offsets at several stations, against the line through its two datum seats.
 * Offsets are measured from whatever the part turned about; the chuck drops out because only the seats count.
 */
import { leastSquares } from '../numerics/least-squares.ts';
import type { Offset } from './adviser-types.ts';

/** Offset of one section as measured. */
export interface Section {
  /** Along the part, m. */
  readonly station: number;
  readonly offset: Offset;
  /** Standard uncertainty of either component, m. */
  readonly spread: number;
}

/** Run-out at a station against the datum line. */
export interface RunoutAt {
  readonly station: number;
  readonly offset: Offset;
  readonly tir: number;
  /** Angle of the high spot, rad. */
  readonly high: number;
  /** Standard uncertainty of either component of the offset, m. */
  readonly spread: number;
}

/** What shape of fault the sections show. */
export type FaultKind = 'straight' | 'bend' | 'tilt' | 'offset' | 'offset and tilt';

export interface Fault {
  readonly kind: FaultKind;
  /** Place of the kink or step, m; the ends within which it may lie as well. Left out for a straight part. */
  readonly at?: number;
  readonly from?: number;
  readonly to?: number;
  /** Step of the axis there, m, and change of its slope, rad; as vectors. */
  readonly step: Offset;
  readonly kink: Offset;
  /** Misfit of this kind, in units of the readings' own uncertainty for each free number; about 1 is as good as it gets. */
  readonly misfit: number;
}

export interface Diagnosis {
  readonly best: Fault;
  /** Another kind that explains the readings about as well. */
  readonly also?: Fault;
  /** What to measure so that the kinds can be told apart; left out when they can. */
  readonly missing?: string;
}

export interface Seats {
  readonly a: number;
  readonly b: number;
}

const ZERO: Offset = { x: 0, y: 0 };
/** Differences of this much in twice the log of likelihood are no reason to prefer either. */
const AS_GOOD = 4;
/** Stations tried for the place of a kink between neighbours. */
const PLACES = 12;

/**
 * Run-out at any station: by the straight line between its measured neighbours, or the last two beyond the end.
 * @throws RangeError when fewer than two sections are given, or the seats stand at one station.
 */
export function runoutAt(sections: readonly Section[], seats: Seats, station: number): RunoutAt {
  if (seats.a === seats.b)
    throw new RangeError('seats: both stand at one station; two different stations are accepted.');
  const sorted = [...sections].sort((one, two) => one.station - two.station);
  if (sorted.length < 2) throw new RangeError(`sections: ${sorted.length} read; two at least are accepted.`);
  const share = seatShare(seats, station);
  const weights = new Map<Section, number>();
  const addTo = (at: number, factor: number): void => {
    for (const [section, weight] of neighbours(sorted, at))
      weights.set(section, (weights.get(section) ?? 0) + factor * weight);
  };
  addTo(station, 1);
  addTo(seats.a, -(1 - share));
  addTo(seats.b, -share);
  let [x, y, variance] = [0, 0, 0];
  for (const [section, weight] of weights) {
    x += weight * section.offset.x;
    y += weight * section.offset.y;
    variance += (weight * section.spread) ** 2;
  }
  const angle = Math.atan2(y, x);
  return {
    station,
    offset: { x, y },
    tir: 2 * Math.hypot(x, y),
    high: angle < 0 ? angle + 2 * Math.PI : angle,
    spread: Math.sqrt(variance),
  };
}

/**
 * How far the axis leans at a station against the line through the seats, rad: the greater of the slopes of the straight lines to its
 * measured neighbours on either side. A bearing or a gear there wobbles by it in every turn.
 * @returns undefined with fewer than three sections, of which two alone make the line
 * @throws RangeError when the seats stand at one station.
 */
export function leanAt(sections: readonly Section[], seats: Seats, station: number): number | undefined {
  const sorted = [...sections].sort((one, two) => one.station - two.station);
  const stations = sorted.map((section) => section.station);
  if (sorted.length < 3) return undefined;
  const away = (at: number) => runoutAt(sorted, seats, at).offset;
  const slopes = stations.slice(1).flatMap((to, k) => {
    const from = stations[k] ?? to;
    const last = k === stations.length - 2;
    const beside = (station >= from || k === 0) && (station <= to || last);
    if (!beside || to === from) return [];
    const [one, two] = [away(from), away(to)];
    return [Math.hypot(two.x - one.x, two.y - one.y) / (to - from)];
  });
  return Math.max(...slopes);
}

const seatShare = ({ a, b }: Seats, station: number): number => (station - a) / (b - a);

/** The two sections that a station lies between, or the two nearest to it, with their shares. */
function neighbours(sorted: readonly Section[], at: number): [Section, number][] {
  let k = sorted.findIndex(({ station }) => station >= at);
  if (k < 0) k = sorted.length - 1;
  const high = sorted[Math.max(1, k)] as Section;
  const low = sorted[Math.max(1, k) - 1] as Section;
  const span = high.station - low.station;
  if (span === 0) return [[high, 1]];
  const part = (at - low.station) / span;
  return [
    [low, 1 - part],
    [high, part],
  ];
}

/** Terms that a kind of fault adds to a straight axis, at a place. */
const TERMS: Readonly<Record<Exclude<FaultKind, 'straight' | 'tilt'>, (z: number, at: number) => number[]>> = {
  bend: (z, at) => [Math.max(0, z - at)],
  offset: (z, at) => [z > at ? 1 : 0],
  'offset and tilt': (z, at) => [z > at ? 1 : 0, Math.max(0, z - at)],
};

/**
 * Tells bend, offset and tilt apart: a straight axis, one with a kink, with a step, or with both, each at the place that
 * fits best. A kink between the seats is a bend; one outside them, or at a joint, tilts what is beyond it.
 *
 * @param joints stations where parts are joined; steps are looked for there, or between all sections when none are given
 * @throws RangeError when fewer than three sections are given.
 */
export function diagnose(sections: readonly Section[], seats: Seats, joints: readonly number[] = []): Diagnosis {
  const sorted = [...sections].sort((one, two) => one.station - two.station);
  if (sorted.length < 3)
    throw new RangeError(`sections: ${sorted.length} read; three at least, both seats among them, are accepted.`);
  const straight = faultOf(sorted, seats, 'straight', 0, () => []);
  const tried = (Object.keys(TERMS) as (keyof typeof TERMS)[]).flatMap((kind) => placed(sorted, seats, joints, kind));
  const all = [...(straight ? [straight] : []), ...tried].sort((one, two) => one.cost - two.cost);
  const [first, ...others] = all;
  if (!first) throw new RangeError('sections: they stand at fewer than two stations.');
  const also = others.find(({ fault, cost }) => fault.kind !== first.fault.kind && cost - first.cost < AS_GOOD);
  return {
    best: first.fault,
    ...(also ? { also: also.fault } : {}),
    ...(also && first.fault.kind !== 'straight' ? { missing: missingFor(first.fault, also.fault) } : {}),
  };
}

interface Tried {
  readonly fault: Fault;
  /** Twice the negative log of likelihood, with its price for every free number. */
  readonly cost: number;
}

/** Best place of one kind, with the ends of the places that fit about as well. */
function placed(
  sorted: readonly Section[],
  seats: Seats,
  joints: readonly number[],
  kind: keyof typeof TERMS,
): Tried[] {
  const tried = placesFor(sorted, joints, kind).flatMap((at) => {
    const found = faultOf(sorted, seats, kind, at, (z) => TERMS[kind](z, at), joints.length === 0);
    return found ? [{ at, ...found }] : [];
  });
  const best = tried.reduce<(typeof tried)[number] | undefined>((a, b) => (a && a.cost <= b.cost ? a : b), undefined);
  if (!best) return [];
  const near = tried.filter(({ cost }) => cost - best.cost < AS_GOOD).map(({ at }) => at);
  return [{ cost: best.cost, fault: { ...best.fault, from: Math.min(...near), to: Math.max(...near) } }];
}

function placesFor(sorted: readonly Section[], joints: readonly number[], kind: keyof typeof TERMS): number[] {
  const stations = sorted.map(({ station }) => station);
  const inside = (at: number) => at > (stations[0] as number) && at < (stations.at(-1) as number);
  if (kind !== 'bend' && joints.length > 0) return joints.filter(inside);
  return stations.slice(1).flatMap((high, k) => {
    const low = stations[k] as number;
    if (kind !== 'bend') return high > low ? [(low + high) / 2] : [];
    return Array.from({ length: PLACES }, (_, p) => low + ((high - low) * (p + 1)) / PLACES).filter(inside);
  });
}

function faultOf(
  sorted: readonly Section[],
  seats: Seats,
  kind: keyof typeof TERMS | 'straight',
  at: number,
  terms: (z: number) => number[],
  placeIsFree = false,
): Tried | undefined {
  const origin = seats.a;
  const rows = sorted.map(({ station, spread }) => [1, station - origin, ...terms(station)].map((c) => c / spread));
  const fitX = leastSquares(
    rows,
    sorted.map(({ offset, spread }) => offset.x / spread),
  );
  const fitY = leastSquares(
    rows,
    sorted.map(({ offset, spread }) => offset.y / spread),
  );
  if (!fitX || !fitY) return undefined;
  const misfit = [...fitX.residuals, ...fitY.residuals].reduce((sum, r) => sum + r * r, 0);
  const count = 2 * sorted.length;
  const used = 2 * (fitX.values.length as number) + (placeIsFree || kind === 'bend' ? 1 : 0);
  const value = (k: number): Offset => ({ x: fitX.values[k] ?? 0, y: fitY.values[k] ?? 0 });
  const between = at > Math.min(seats.a, seats.b) && at < Math.max(seats.a, seats.b);
  const fault: Fault = {
    kind: kind === 'bend' && !between ? 'tilt' : kind,
    ...(kind === 'straight' ? {} : { at }),
    step: kind === 'offset' || kind === 'offset and tilt' ? value(2) : ZERO,
    kink: kind === 'bend' ? value(2) : kind === 'offset and tilt' ? value(3) : ZERO,
    misfit: misfit / Math.max(1, count - used),
  };
  return { fault, cost: misfit + used * Math.log(count) };
}

function missingFor(one: Fault, other: Fault): string {
  const place = one.at ?? other.at ?? 0;
  const low = Math.min(one.from ?? place, other.from ?? place);
  const high = Math.max(one.to ?? place, other.to ?? place);
  return low === high
    ? `one more station on either side of ${millimetres(place)}`
    : `one more station between ${millimetres(low)} and ${millimetres(high)}, and one beyond`;
}

const millimetres = (metres: number): string => `${Math.round(metres * 1000)} mm`;
