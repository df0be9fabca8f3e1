/**
 * Parts joined in several positions: the positions of all joints at once that leave the least run-out.
 * Each part brings an offset and a tilt at its joint; both turn with the part.
 */
import type { Offset } from './adviser-types.ts';

/** One joint, from the driven end outward. What lies beyond it turns with its position. */
export interface ClockedJoint {
  /** m */
  readonly station: number;
  /** Positions it can be put together in, equally spaced. */
  readonly positions: number;
  /** What the part beyond adds at the joint, by its own marks at position 0: offset, m, and tilt, rad. */
  readonly offset: Offset;
  readonly tilt: Offset;
}

/** A station that matters, and how much: TIR is divided by its goal before stations are compared. */
export interface WatchedStation {
  readonly station: number;
  /** TIR that is good enough there, m. */
  readonly goal: number;
}

export interface Clocking {
  /** Position of each joint, 0 as it is now. */
  readonly positions: readonly number[];
  /** TIR at each watched station, m. */
  readonly tirs: readonly number[];
  /** Greatest TIR over its goal. */
  readonly worst: number;
}

export interface ReClock {
  readonly now: Clocking;
  readonly best: Clocking;
  /** Positions that were looked at, and all there are. */
  readonly looked: number;
  readonly all: number;
}

interface Leg {
  readonly offset: Offset;
  readonly tilt: Offset;
  readonly station: number;
}

const turned = ({ x, y }: Offset, angle: number): Offset => ({
  x: x * Math.cos(angle) - y * Math.sin(angle),
  y: x * Math.sin(angle) + y * Math.cos(angle),
});

/**
 * The positions with the least run-out, exactly: a branch is left only when the parts still free cannot bring it below
 * the best found, however they are turned.
 *
 * @param base offset and tilt of the first part at the first joint, which no joint turns
 * @throws RangeError when there is no joint or no watched station.
 */
export function reClock(base: Leg, joints: readonly ClockedJoint[], watched: readonly WatchedStation[]): ReClock {
  if (joints.length === 0) throw new RangeError('joints: none read; at least one is accepted.');
  if (watched.length === 0) throw new RangeError('watched: none read; at least one station is accepted.');
  const now = clockingOf(
    base,
    joints,
    watched,
    joints.map(() => 0),
  );
  let best = now;
  let looked = 0;
  const reach = joints.map((_, k) => watched.map(({ station }) => reachFrom(joints, k, station)));
  const visit = (k: number, angle: number, at: readonly Offset[], positions: readonly number[]): void => {
    const joint = joints[k];
    if (!joint) {
      looked++;
      const found = clockingOf(base, joints, watched, positions);
      if (found.worst < best.worst) best = found;
      return;
    }
    const free = reach[k] as readonly number[];
    const least = Math.max(
      ...watched.map(({ goal }, w) => {
        const { x, y } = at[w] as Offset;
        return (2 * Math.max(0, Math.hypot(x, y) - (free[w] as number))) / goal;
      }),
    );
    // Sums are taken in another order here, so rounding must not cut off an equal.
    if (least > best.worst * (1 + 1e-9)) return;
    for (let p = 0; p < joint.positions; p++) {
      const whole = angle + (2 * Math.PI * p) / joint.positions;
      visit(
        k + 1,
        whole,
        watched.map(({ station }, w) => plus(at[w] as Offset, legAt(joint, whole, station))),
        [...positions, p],
      );
    }
  };
  visit(
    0,
    0,
    watched.map(({ station }) => legAt(base, 0, station)),
    [],
  );
  return { now, best, looked, all: joints.reduce((product, { positions }) => product * positions, 1) };
}

const plus = (a: Offset, b: Offset): Offset => ({ x: a.x + b.x, y: a.y + b.y });

/** Offset that one part makes at a station beyond its joint. */
function legAt({ offset, tilt, station }: Leg, angle: number, at: number): Offset {
  if (at < station) return { x: 0, y: 0 };
  const far = at - station;
  return turned({ x: offset.x + tilt.x * far, y: offset.y + tilt.y * far }, angle);
}

/** How far the joints from this one on can move a station at most. */
function reachFrom(joints: readonly ClockedJoint[], from: number, station: number): number {
  return joints.slice(from).reduce((sum, joint) => {
    const { x, y } = legAt(joint, 0, station);
    return sum + Math.hypot(x, y);
  }, 0);
}

/** Run-out with the joints in these positions. */
export function clockingOf(
  base: Leg,
  joints: readonly ClockedJoint[],
  watched: readonly WatchedStation[],
  positions: readonly number[],
): Clocking {
  const angles: number[] = [];
  let whole = 0;
  for (const [k, { positions: of }] of joints.entries()) {
    whole += (2 * Math.PI * (positions[k] ?? 0)) / of;
    angles.push(whole);
  }
  const tirs = watched.map(({ station }) => {
    const sum = joints.reduce(
      (at, joint, k) => plus(at, legAt(joint, angles[k] as number, station)),
      legAt(base, 0, station),
    );
    return 2 * Math.hypot(sum.x, sum.y);
  });
  return { positions, tirs, worst: Math.max(...tirs.map((tir, w) => tir / (watched[w] as WatchedStation).goal)) };
}

/**
 * Spread of putting a joint together again, from the offsets measured after refits in one position.
 * @param offsets at least three, m
 * @returns standard deviation of either component, m
 * @throws RangeError when fewer than three are given.
 */
export function refitSpread(offsets: readonly Offset[]): number {
  if (offsets.length < 3) throw new RangeError(`offsets: ${offsets.length} refits read; three at least are accepted.`);
  const n = offsets.length;
  const mean = {
    x: offsets.reduce((sum, { x }) => sum + x, 0) / n,
    y: offsets.reduce((sum, { y }) => sum + y, 0) / n,
  };
  const squares = offsets.reduce((sum, { x, y }) => sum + (x - mean.x) ** 2 + (y - mean.y) ** 2, 0);
  return Math.sqrt(squares / (2 * (n - 1)));
}
