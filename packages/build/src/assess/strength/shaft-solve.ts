import type { FrameFactors } from '@oddwheel/mechanics/frame/factor';
import { memberForces, solveFrame, springForces } from '@oddwheel/mechanics/frame/solve';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { SeatLoad } from './seat-loads.ts';
import { across, type SectionForces, type ShaftSolution, type ShaftStructure } from './shaft-structure.ts';

/** Numbers of one node: three movements, three turns. */
const MOVES = 6;
/** Numbers of one side of a stretch: forces and moments inside, in the stretch's own axes. */
const INSIDE = 6;
/** Part of the largest torque in a shaft below which a torque is rounding. */
const ROUNDING = 1e-9;

/** Answers of a shaft to one newton or newton metre at one node; made when first asked for, since every case is a sum of them. */
interface Units {
  readonly answers: Map<number, Float64Array>;
  readonly members: number;
  readonly springs: number;
}

const UNITS = new WeakMap<FrameFactors, Units>();

function unitsOf(factors: FrameFactors, springs: number): Units {
  const known = UNITS.get(factors);
  if (known) return known;
  const made = { answers: new Map(), members: factors.members.length, springs };
  UNITS.set(factors, made);
  return made;
}

/** Movements, then what is inside at both sides of each stretch, then force and moment of each spring. */
function unitAnswer(factors: FrameFactors, units: Units, nodes: number, component: number): Float64Array {
  const known = units.answers.get(component);
  if (known) return known;
  const load = new Float64Array(nodes * MOVES);
  load[component] = 1;
  const moves = solveFrame(factors, { nodes: load });
  const answer = new Float64Array(nodes * MOVES + units.members * 2 * INSIDE + units.springs * INSIDE);
  answer.set(moves);
  let at = moves.length;
  for (let k = 0; k < units.members; k++) {
    const f = memberForces(factors, k, moves);
    // What the node does to the first end is the other way round inside.
    for (let i = 0; i < INSIDE; i++) answer[at + i] = -(f[i] as number);
    for (let i = 0; i < INSIDE; i++) answer[at + INSIDE + i] = f[INSIDE + i] as number;
    at += 2 * INSIDE;
  }
  for (let k = 0; k < units.springs; k++) {
    answer.set(springForces(factors, k, moves), at);
    at += INSIDE;
  }
  units.answers.set(component, answer);
  return answer;
}

/** Node nearest to a station. */
function nearest(stations: readonly number[], station: number): number {
  let best = 0;
  for (let k = 1; k < stations.length; k++)
    if (Math.abs((stations[k] as number) - station) < Math.abs((stations[best] as number) - station)) best = k;
  return best;
}

/** Solves one load case of a shaft: its loads, each times the answer to one of it. */
export function solveShaft(structure: ShaftStructure, loads: readonly SeatLoad[]): ShaftSolution | null {
  const { factors, shaft, stations, bearings } = structure;
  if (!factors) return null;
  const { direction: d, origin } = shaft;
  const nodes = stations.length;
  const units = unitsOf(factors, bearings.length + 1);
  const all = new Float64Array(nodes * MOVES + units.members * 2 * INSIDE + units.springs * INSIDE);
  const add = (component: number, size: number): void => {
    if (size === 0) return;
    const one = unitAnswer(factors, units, nodes, component);
    for (let i = 0; i < all.length; i++) all[i] = (all[i] as number) + size * (one[i] as number);
  };
  let largest = 0;
  const sum: [number, number, number] = [0, 0, 0];
  for (const { at, force, moment } of loads) {
    const [x, y, z] = [at[0] - origin[0], at[1] - origin[1], at[2] - origin[2]];
    const node = nearest(stations, x * d[0] + y * d[1] + z * d[2]);
    const s = stations[node] as number;
    const [ax, ay, az] = [x - s * d[0], y - s * d[1], z - s * d[2]];
    const [fx, fy, fz] = force;
    add(node * MOVES, fx);
    add(node * MOVES + 1, fy);
    add(node * MOVES + 2, fz);
    add(node * MOVES + 3, moment[0] + ay * fz - az * fy);
    add(node * MOVES + 4, moment[1] + az * fx - ax * fz);
    add(node * MOVES + 5, moment[2] + ax * fy - ay * fx);
    largest = Math.max(largest, Math.sqrt(fx * fx + fy * fy + fz * fz));
    sum[0] += fx;
    sum[1] += fy;
    sum[2] += fz;
  }
  const number = (at: number): number => all[at] as number;
  const both = (a: number, b: number): number => Math.sqrt(a * a + b * b);
  const sections: SectionForces[] = [];
  let mostTorque = 0;
  for (let k = 0; k < 2 * units.members; k++)
    mostTorque = Math.max(mostTorque, Math.abs(number(nodes * MOVES + k * INSIDE + 3)));
  for (let k = 0; k < 2 * units.members; k++) {
    const at = nodes * MOVES + k * INSIDE;
    sections.push({
      station: stations[(k + 1) >> 1] as number,
      bending: both(number(at + 4), number(at + 5)),
      shear: both(number(at + 1), number(at + 2)),
      // Where no torque passes, what is left of the sum is rounding.
      torque: Math.abs(number(at + 3)) > ROUNDING * mostTorque ? number(at + 3) : 0,
      axial: number(at),
    });
  }
  const [second, third] = across(d);
  const springs = nodes * MOVES + 2 * units.members * INSIDE;
  const reactions = bearings.map((_, k) => {
    const at = springs + k * INSIDE;
    const [a, b, c] = [number(at), number(at + 1), number(at + 2)];
    const force: Vec3 = [
      a * d[0] + b * second[0] + c * third[0],
      a * d[1] + b * second[1] + c * third[1],
      a * d[2] + b * second[2] + c * third[2],
    ];
    // A spring's own forces are what it needs from the node; the bearing does the same to the shaft.
    sum[0] += force[0];
    sum[1] += force[1];
    sum[2] += force[2];
    return { force, radial: both(b, c), axial: a };
  });
  const along = (at: number): number => number(at) * d[0] + number(at + 1) * d[1] + number(at + 2) * d[2];
  const square = (at: number): number => {
    const l = along(at);
    const [x, y, z] = [number(at) - l * d[0], number(at + 1) - l * d[1], number(at + 2) - l * d[2]];
    return Math.sqrt(x * x + y * y + z * z);
  };
  return {
    scaled: null,
    sections,
    reactions,
    across: stations.map((_, node) => square(node * MOVES)),
    slope: stations.map((_, node) => square(node * MOVES + 3)),
    along: stations.map((_, node) => along(node * MOVES)),
    twist: stations.map((_, node) => along(node * MOVES + 3)),
    moves: all.subarray(0, nodes * MOVES),
    residual: largest > 0 ? Math.sqrt(sum[0] ** 2 + sum[1] ** 2 + sum[2] ** 2) / largest : 0,
    held: number(springs + bearings.length * INSIDE + 3),
  };
}
