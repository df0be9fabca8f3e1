import { type FrameFactors, factorFrame } from '@oddwheel/mechanics/frame/factor';
import { FrameError, type Member, type Section, type Spring } from '@oddwheel/mechanics/frame/structure';
import { cross, plus, times, unit } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Seat, Shaft } from '../../model/model.ts';
import type { At } from '../geometry/types.ts';
import type { Missing } from '../types.ts';
import { diametersOf, reach, type Stretch, thinnestAt } from './diameters.ts';
import { notchesOf } from './notches.ts';
import type { Sections } from './sections.ts';

/** One shaft as a beam on its bearings, factored once. */
export interface ShaftStructure {
  readonly shaft: Shaft;
  readonly stretches: readonly Stretch[];
  /** Stations of the nodes, rising. */
  readonly stations: readonly number[];
  readonly bearings: readonly { readonly seat: Seat; readonly node: number }[];
  /** Bearing that takes the thrust in the structure: index in `bearings`. */
  readonly locating: number;
  readonly factors: FrameFactors | null;
  readonly missing: readonly Missing[];
}

/** What a bearing does to its shaft. */
export interface Reaction {
  readonly force: Vec3;
  readonly radial: number;
  readonly axial: number;
}

/** One shaft in one load case. */
export interface ShaftSolution {
  /** The answer that this one is so many times as large as; null where it was solved by itself. */
  readonly scaled: { readonly one: ShaftSolution; readonly by: number } | null;
  readonly sections: Sections;
  /** What a bearing does to the shaft, by its index; undefined where there is none. */
  readonly reactionAt: (bearing: number) => Reaction | undefined;
  /** At a node: movement across the shaft and slope, resultants of both planes; movement along it. Undefined where there is no such node. */
  readonly acrossAt: (node: number) => number | undefined;
  readonly slopeAt: (node: number) => number | undefined;
  readonly alongAt: (node: number) => number | undefined;
  /** Movements of the nodes, six by six. */
  readonly moves: Float64Array;
  /** Sum of all forces over their largest. */
  readonly residual: number;
  /** Torque about the shaft that no load holds, N·m: none but on the output, which the box drives. */
  readonly held: number;
}

const POISSON = 0.3;
/** Shear coefficient of a round bar (Cowper 1966, from memory). */
const SHEAR_PART = (6 * (1 + POISSON)) / (7 + 6 * POISSON);
const TOGETHER = 1e-7;
/** Stiffness along the shaft of the bearing that takes the thrust, against that across it. */
const AXIAL_PART = 0.5;
/** Young’s moduli of plates, Pa. */
const PLATE_YOUNGS = { steel: 205e9, aluminium: 70e9 } as const;

function roundSection(diameter: number, bore: number): Section {
  const area = (Math.PI * (diameter ** 2 - bore ** 2)) / 4;
  const second = (Math.PI * (diameter ** 4 - bore ** 4)) / 64;
  return { area, iy: second, iz: second, torsion: 2 * second, shearY: SHEAR_PART * area, shearZ: SHEAR_PART * area };
}

/** Two directions square to a shaft and to each other. */
export function across(direction: Vec3): readonly [Vec3, Vec3] {
  const [x, y, z] = direction.map(Math.abs) as [number, number, number];
  const off: Vec3 = x <= y && x <= z ? [1, 0, 0] : y <= z ? [0, 1, 0] : [0, 0, 1];
  const first = unit(cross(direction, off));
  return [first, cross(direction, first)];
}

/** The bearing that takes the thrust: one that is held both ways, else the first of the shaft. */
function locatingBearing(bearings: readonly { readonly seat: Seat }[]): number {
  const both = bearings.findIndex(
    ({ seat: { held, bearing } }) =>
      held !== null &&
      held.towardStart !== 'nothing' &&
      held.towardEnd !== 'nothing' &&
      bearing?.ring != null &&
      bearing.ring.towardStart !== 'nothing' &&
      bearing.ring.towardEnd !== 'nothing',
  );
  return Math.max(0, both);
}

/**
 * A shaft as members between its seats, ends of diameters, notches and joints; its bearings as springs to the ground.
 * Two bearings at least must carry it.
 */
export function shaftStructure(shaft: Shaft, at: At): ShaftStructure {
  const { stretches, missing } = diametersOf(shaft);
  const { first, last } = reach(shaft);
  const all = [
    first,
    last,
    ...shaft.seats.map((seat) => seat.station),
    ...stretches.flatMap(({ from, to }) => [from, to]),
    ...notchesOf(shaft).map((notch) => notch.station),
    ...shaft.joins.map((join) => join.station),
  ]
    .filter((station) => station >= first - TOGETHER && station <= last + TOGETHER)
    .sort((a, b) => a - b);
  const stations = all.filter((station, k) => k === 0 || station - (all[k - 1] as number) > TOGETHER);
  const nodeAt = (station: number): number =>
    stations.reduce(
      (best, one, k) => (Math.abs(one - station) < Math.abs((stations[best] as number) - station) ? k : best),
      0,
    );
  const bearings = shaft.seats
    .filter((seat) => seat.kind === 'bearing')
    .map((seat) => ({ seat, node: nodeAt(seat.station) }));
  const locating = locatingBearing(bearings);
  const needs: Missing[] = [...missing];
  if (new Set(bearings.map(({ node }) => node)).size < 2)
    needs.push({ address: `${shaft.address}/seats`, says: `two bearings on ${shaft.name}` });
  const base = { shaft, stretches, stations, bearings, locating };
  if (needs.length > 0) return { ...base, factors: null, missing: needs };
  const { direction, origin, steel } = shaft;
  const [second, third] = across(direction);
  const material = { youngs: steel.youngs, shear: steel.shear, density: steel.density };
  const members = stations.slice(1).flatMap((station, k): Member[] => {
    const before = stations[k] as number;
    const stretch = thinnestAt(stretches, (before + station) / 2);
    return stretch
      ? [{ from: k, to: k + 1, section: roundSection(stretch.diameter, stretch.bore), material, reference: third }]
      : [];
  });
  const springs = bearings.map(({ seat, node }, k): Spring => {
    const stiffness = seat.bearing ? at(seat.bearing.stiffness) : 0;
    const axial = k === locating ? inSeries(AXIAL_PART * stiffness, plateStiffness(seat, at)) : 0;
    return {
      a: node,
      b: null,
      axes: [direction, second, third],
      stiffness: [axial, stiffness, stiffness, 0, 0, 0],
    };
  });
  try {
    const factors = factorFrame({
      nodes: stations.map((station) => plus(origin, times(station, direction))),
      members,
      springs: [
        ...springs,
        // Nothing but the drive itself resists the torque; its loads balance, and one node keeps the count.
        { a: 0, b: null, axes: [direction, second, third], stiffness: [0, 0, 0, TWIST_HOLD, 0, 0] },
      ],
      supports: [],
    });
    return { ...base, factors, missing: [] };
  } catch (error) {
    if (!(error instanceof FrameError)) throw error;
    return {
      ...base,
      factors: null,
      missing: [{ address: shaft.address, says: `a shaft that stands still in its bearings (${error.message})` }],
    };
  }
}

/** N·m/rad; far stiffer than any shaft of this size, and the torque in it is the residual of the loads. */
const TWIST_HOLD = 1e9;

/**
 * Stiffness of the plate around a bearing against a push square to it, as a strip between its ties with the load at its
 * middle; null where the bearing names no plate.
 * Source: beam tables, load at the middle: F l³ / (48 E I) hinged, F l³ / (192 E I) built in.
 */
export function plateStiffness(seat: Seat, at: At): number | null {
  const plate = seat.bearing?.plate;
  if (!plate) return null;
  const second = (plate.width * plate.thickness ** 3) / 12;
  return (at(plate.ends) * PLATE_YOUNGS[plate.material] * second) / plate.span ** 3;
}

const inSeries = (a: number, b: number | null): number => (b === null ? a : 1 / (1 / a + 1 / b));
