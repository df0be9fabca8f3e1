// A shaft of the build as a stepped round bar on its bearings, with its loads in the two planes across it.
import { bendPlane } from './beam.mjs';
import * as g from './geometry.mjs';
import { middle } from './units.mjs';

const YOUNGS = 207e9;
const SHEAR = 79.3e9;

/**
 * Pieces of the bar: each seat over its width. A build does not say how thick the bar is between two seats: the thinner one of them
 * counts, which bends most.
 * @param {object} shaft @returns {{ from: number, to: number, d: number }[]}
 */
export function profile(shaft) {
  const seats = Object.values(shaft.seats)
    .map((s) => {
      const half = s.width === undefined ? 0 : middle(s.width) / 2;
      return { from: middle(s.station) - half, to: middle(s.station) + half, d: middle(s.diameter) };
    })
    .sort((a, b) => a.from - b.from);
  /** @type {{ from: number, to: number, d: number }[]} */
  const out = [];
  seats.forEach((seat, i) => {
    const before = seats[i - 1];
    if (before !== undefined && seat.from > before.to + 1e-9) {
      out.push({ from: before.to, to: seat.from, d: Math.min(before.d, seat.d) });
    }
    if (seat.to > seat.from) out.push(seat);
  });
  return out;
}

/**
 * @param {object} shaft @param {{ at: g.Vec, force: g.Vec }[]} forces @param {number} stiffness of each bearing @param {number[]} extra stations
 */
export function bend(shaft, forces, stiffness, extra = []) {
  const origin = g.point(shaft.origin);
  const ax = g.axis(shaft);
  const helper = Math.abs(ax[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  const p = g.unit(g.cross(helper, ax));
  const q = g.cross(ax, p);
  const bar = profile(shaft);
  const bearings = Object.values(shaft.seats).filter((s) => s.kind === 'bearing');
  const local = forces.map(({ at, force }) => {
    const arm = g.minus(at, origin);
    const station = g.dot(arm, ax);
    const across = g.minus(arm, g.times(ax, station));
    const along = g.dot(force, ax);
    return { station, force, across, along };
  });
  const marks = [
    ...bar.flatMap((s) => [s.from, s.to]),
    ...Object.values(shaft.seats).map((s) => middle(s.station)),
    ...local.map((l) => l.station),
    ...extra,
  ].sort((a, b) => a - b);
  const nodes = marks.filter((x, i) => i === 0 || x - marks[i - 1] > 1e-9);
  const first = bar[0];
  const last = bar[bar.length - 1];
  const diameter = (/** @type {number} */ from, /** @type {number} */ to) => {
    const mid = (from + to) / 2;
    return (bar.find((s) => s.from <= mid && mid <= s.to) ?? (mid < first.from ? first : last)).d;
  };
  const springs = bearings.map((s) => ({ at: middle(s.station), stiffness }));
  const planes = [p, q].map((e) =>
    bendPlane({
      nodes,
      diameter,
      youngs: YOUNGS,
      shear: SHEAR,
      springs,
      loads: local.map((l) => ({
        at: l.station,
        force: g.dot(l.force, e),
        // A force along the shaft, off its middle, turns the shaft away from the side where it pushes.
        couple: -l.along * g.dot(l.across, e),
      })),
    }),
  );
  const both = (/** @type {(plane: ReturnType<typeof bendPlane>) => number} */ take) =>
    Math.hypot(take(planes[0]), take(planes[1]));
  return {
    slope: (/** @type {number} */ at) => both((plane) => plane.slope(at)),
    move: (/** @type {number} */ at) => both((plane) => plane.move(at)),
    moment: (/** @type {number} */ at) =>
      Math.max(
        both((plane) => plane.moment(at, 'before')),
        both((plane) => plane.moment(at, 'after')),
      ),
    reaction: (/** @type {number} */ at) => both((plane) => plane.reaction({ at, stiffness })),
  };
}
