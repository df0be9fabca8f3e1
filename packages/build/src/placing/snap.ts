import { dot, minus, norm, plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import { stepLike } from './length-text.ts';
import { pointOf } from './point.ts';
import type { LinkCircle, MoveAids, Placed } from './types.ts';

/** A wanted move, as a pointer or a key gives it. */
export interface Wish {
  readonly placed: Placed;
  readonly aids: MoveAids;
  /** From where it stands in the file, m. */
  readonly by: Vec3;
  /** Directions of the view in which it is moved. */
  readonly right: Vec3;
  readonly up: Vec3;
  /** How near a place must come to be taken, m; 0 takes none. */
  readonly reach: number;
  /** Lengths stop at whole steps. */
  readonly whole: boolean;
  readonly held: LinkCircle | null;
}

/** The move that is made instead. */
export interface Snapped {
  readonly by: Vec3;
  /** What it was brought to: "84 links of Chain 2". */
  readonly to: readonly string[];
  /** The circle that it stands on. */
  readonly circle: LinkCircle | null;
}

type Axis = 0 | 1 | 2;
const AXES: readonly Axis[] = [0, 1, 2];
const ALIGNED = 1 - 1e-6;
/** Below this part of its length a direction cannot be followed in a view. */
const END_ON = 0.2;

const withAxis = (v: Vec3, axis: Axis, value: number): Vec3 => [
  axis === 0 ? value : v[0],
  axis === 1 ? value : v[1],
  axis === 2 ? value : v[2],
];

/** Whether a thing can be moved in a view at all: a seat can not where its shaft is seen end on. */
export function movesIn(placed: Placed, right: Vec3, up: Vec3): boolean {
  const { station } = placed;
  if (!station) return true;
  return Math.hypot(dot(station.along, right), dot(station.along, up)) > END_ON;
}

/** Brings the seat of what is moved onto the circle, its distance along the shaft as wished. Null at the very centre. */
function ontoCircle({ own, centre, along, radius }: LinkCircle, by: Vec3): Vec3 | null {
  const from = minus(plus(own, by), centre);
  const lengthways = dot(from, along);
  const across = minus(from, times(lengthways, along));
  const far = norm(across);
  if (far < 1e-6) return null;
  return minus(plus(plus(centre, times(lengthways, along)), times(radius / far, across)), own);
}

const offCircle = (circle: LinkCircle, by: Vec3): number => {
  const on = ontoCircle(circle, by);
  return on ? norm(minus(on, by)) : Number.POSITIVE_INFINITY;
};

/** Rounds of going from circle to circle until both hold. */
const ROUNDS = 40;

/** On both circles at once, near where it is; null where they do not meet. */
function ontoBoth(first: LinkCircle, second: LinkCircle, by: Vec3): Vec3 | null {
  let at: Vec3 | null = by;
  for (let k = 0; k < ROUNDS && at; k += 1) {
    at = ontoCircle(first, at);
    at = at && ontoCircle(second, at);
  }
  return at && offCircle(first, at) < 1e-6 ? at : null;
}

const label = ({ count, name }: LinkCircle): string => (count === '' ? `centres of ${name}` : `${count} of ${name}`);

/** The nearest circles within reach, one of each chain. */
function nearCircles(circles: readonly LinkCircle[], by: Vec3, reach: number): readonly LinkCircle[] {
  const near = circles
    .map((circle) => ({ circle, off: offCircle(circle, by) }))
    .filter(({ off }) => off < reach)
    .sort((a, b) => a.off - b.off)
    .map(({ circle }) => circle);
  return near.filter((circle, k) => near.findIndex(({ stage }) => stage === circle.stage) === k);
}

interface Candidate {
  /** Change along the axis. */
  readonly by: number;
  readonly to: string;
}

/** Places along one vehicle axis that a move may stop at. */
function candidates({ placed, aids }: Wish, by: Vec3, axis: Axis): readonly Candidate[] {
  const start = startOf(placed);
  const inLine =
    placed.kind === 'seat'
      ? []
      : aids.shafts
          .filter(({ along }) => Math.abs(along[axis]) < ALIGNED)
          .map(({ name, at }): Candidate => ({ by: at[axis] - start[axis], to: `in line with ${name}` }));
  const others = AXES.filter((one) => one !== axis);
  const clear = aids.walls.flatMap((wall) =>
    aids.boxes.flatMap((box): Candidate[] => {
      const beside = others.every(
        (one) => box.low[one] + by[one] < wall.high[one] && box.high[one] + by[one] > wall.low[one],
      );
      if (!beside) return [];
      return [
        { by: wall.high[axis] + aids.wanted - box.low[axis], to: `clear of ${wall.name} by what is wanted` },
        { by: wall.low[axis] - aids.wanted - box.high[axis], to: `clear of ${wall.name} by what is wanted` },
      ];
    }),
  );
  return [...inLine, ...clear];
}

/** Where the lengths of a thing are counted from: its first point, or its shaft’s beginning. */
const startOf = (placed: Placed): Vec3 => {
  const first = placed.points[0];
  return first ? pointOf(first) : (placed.station?.origin ?? [0, 0, 0]);
};

/** Stops the length along an axis at the nearest whole step of its own unit. */
function wholeAlong({ placed }: Wish, by: Vec3, axis: Axis): number {
  const first = placed.points[0]?.coordinates[axis];
  if (!first || Math.abs(by[axis]) < 1e-9) return by[axis];
  const step = stepLike(first.text, 'plain');
  return Math.round((first.si + by[axis]) / step) * step - first.si;
}

function snapSeat(wish: Wish): Snapped {
  const { station } = wish.placed;
  if (!station) return { by: wish.by, to: [], circle: null };
  const { along, coordinate } = station;
  const [a, b] = [dot(along, wish.right), dot(along, wish.up)];
  const size = a * a + b * b;
  if (size < END_ON ** 2) return { by: [0, 0, 0], to: [], circle: null };
  // What the view shows of the wish, along what it shows of the shaft.
  const wished = (dot(wish.by, wish.right) * a + dot(wish.by, wish.up) * b) / size;
  const axis = AXES.find((one) => Math.abs(along[one]) > ALIGNED);
  const sign = axis === undefined ? 1 : Math.sign(along[axis]);
  const near =
    axis === undefined || wish.reach === 0
      ? undefined
      : nearest(candidates(wish, times(wished, along), axis), wished * sign, wish.reach);
  if (near) return { by: times(near.by * sign, along), to: [near.to], circle: null };
  const step = stepLike(coordinate.text, 'plain');
  const stopped = wish.whole ? Math.round((coordinate.si + wished) / step) * step - coordinate.si : wished;
  return { by: times(stopped, along), to: [], circle: null };
}

function nearest(all: readonly Candidate[], at: number, reach: number): Candidate | undefined {
  return all
    .filter(({ by }) => Math.abs(by - at) < reach)
    .sort((one, other) => Math.abs(one.by - at) - Math.abs(other.by - at))[0];
}

/**
 * What a wished move comes to: on the circle of a held chain; else at the centres of whole even links, in line with another shaft, or clear of
 * something by what is wanted, where one is within reach; else at whole steps.
 */
export function snapMove(wish: Wish): Snapped {
  const { aids, by, reach, held, whole } = wish;
  if (wish.placed.station) return snapSeat(wish);
  if (held) {
    const on = ontoCircle(held, by);
    const other =
      reach > 0 ? nearCircles(aids.circles, on ?? by, reach).find(({ stage }) => stage !== held.stage) : undefined;
    const both = other && on ? ontoBoth(held, other, on) : null;
    return {
      by: both ?? on ?? [0, 0, 0],
      to: [label(held), ...(both && other ? [label(other)] : [])],
      circle: held,
    };
  }
  const [first, second] = reach > 0 ? nearCircles(aids.circles, by, reach) : [];
  const both = first && second ? ontoBoth(first, second, by) : null;
  if (first && second && both && norm(minus(both, by)) < 2 * reach)
    return { by: both, to: [label(first), label(second)], circle: first };
  const on = first ? ontoCircle(first, by) : null;
  if (first && on) return { by: on, to: [label(first)], circle: first };
  let result = by;
  const to: string[] = [];
  for (const axis of AXES) {
    const inView = Math.max(Math.abs(wish.right[axis]), Math.abs(wish.up[axis])) > ALIGNED;
    if (!inView) continue;
    const near = reach > 0 ? nearest(candidates(wish, by, axis), by[axis], reach) : undefined;
    if (near) to.push(near.to);
    result = withAxis(result, axis, near ? near.by : whole ? wholeAlong(wish, by, axis) : by[axis]);
  }
  return { by: result, to, circle: null };
}
