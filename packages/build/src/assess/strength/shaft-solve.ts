import type { FrameFactors } from '@oddwheel/mechanics/frame/factor';
import { memberForces, solveFrame, springForces } from '@oddwheel/mechanics/frame/solve';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { SeatLoad } from './seat-loads.ts';
import { OF_SECTION, type Sections } from './sections.ts';
import { across, type Reaction, type ShaftSolution, type ShaftStructure } from './shaft-structure.ts';

/** Numbers of one node: three movements, three turns. */
const MOVES = 6;
/** Numbers of one side of a stretch: forces and moments inside, in the stretch's own axes. */
const INSIDE = 6;
/** Part of the largest torque in a shaft below which a torque is rounding. */
const ROUNDING = 1e-9;

/** Answers of a shaft to one newton or newton metre at one node; made when first asked for, since every case is a sum of them. */
interface Units {
  readonly answers: Map<number, Float64Array>;
  readonly nodes: number;
  readonly members: number;
  readonly bearings: number;
  /** One for each bearing, and the one that holds the shaft from turning. */
  readonly springs: number;
  /** Direction of the shaft, and two square to it. */
  readonly axes: readonly [Vec3, Vec3, Vec3];
}

const UNITS = new WeakMap<FrameFactors, Units>();

function unitsOf(factors: FrameFactors, { shaft, stations, bearings }: ShaftStructure): Units {
  const known = UNITS.get(factors);
  if (known) return known;
  const { direction } = shaft;
  const made: Units = {
    answers: new Map(),
    nodes: stations.length,
    members: factors.members.length,
    bearings: bearings.length,
    springs: bearings.length + 1,
    axes: [direction, ...across(direction)],
  };
  UNITS.set(factors, made);
  return made;
}

/** Movements, then what is inside at both sides of each stretch, then force and moment of each spring. */
function unitAnswer(factors: FrameFactors, units: Units, component: number): Float64Array {
  const known = units.answers.get(component);
  if (known) return known;
  const { nodes } = units;
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

/** A class, since there are thousands of answers, each read in few of its numbers: what is not read is not made. */
class Solved implements ShaftSolution {
  readonly scaled = null;
  readonly sections: Sections;
  readonly residual: number;
  private readonly units: Units;

  constructor(sections: Sections, residual: number, units: Units) {
    this.sections = sections;
    this.residual = residual;
    this.units = units;
  }

  private get springs(): number {
    return this.units.nodes * MOVES + 2 * this.units.members * INSIDE;
  }

  reactionAt(bearing: number): Reaction | undefined {
    if (!(bearing >= 0 && bearing < this.units.bearings)) return undefined;
    return reactionIn(this.sections.numbers, this.springs + bearing * INSIDE, this.units.axes);
  }

  acrossAt(node: number): number | undefined {
    return this.square(node, 0);
  }

  slopeAt(node: number): number | undefined {
    return this.square(node, 3);
  }

  alongAt(node: number): number | undefined {
    if (!(node >= 0 && node < this.units.nodes)) return undefined;
    return along(this.sections.numbers, node * MOVES, this.units.axes[0]);
  }

  get moves(): Float64Array {
    return this.sections.numbers.subarray(0, this.units.nodes * MOVES);
  }

  get held(): number {
    return this.sections.numbers[this.springs + this.units.bearings * INSIDE + 3] as number;
  }

  private square(node: number, first: number): number | undefined {
    if (!(node >= 0 && node < this.units.nodes)) return undefined;
    const all = this.sections.numbers;
    const at = node * MOVES + first;
    const d = this.units.axes[0];
    const l = along(all, at, d);
    const [x, y, z] = [
      (all[at] as number) - l * d[0],
      (all[at + 1] as number) - l * d[1],
      (all[at + 2] as number) - l * d[2],
    ];
    return Math.sqrt(x * x + y * y + z * z);
  }
}

/** Part of three numbers along a direction. */
function along(all: Float64Array, at: number, d: Vec3): number {
  return (all[at] as number) * d[0] + (all[at + 1] as number) * d[1] + (all[at + 2] as number) * d[2];
}

const both = (a: number, b: number): number => Math.sqrt(a * a + b * b);

/** What a spring does to the shaft; its own forces are what it needs from the node. */
function reactionIn(all: Float64Array, at: number, [d, second, third]: Units['axes']): Reaction {
  const [a, b, c] = [all[at] as number, all[at + 1] as number, all[at + 2] as number];
  const force: Vec3 = [
    a * d[0] + b * second[0] + c * third[0],
    a * d[1] + b * second[1] + c * third[1],
    a * d[2] + b * second[2] + c * third[2],
  ];
  return { force, radial: both(b, c), axial: a };
}

/** Solves one load case of a shaft: its loads, each times the answer to one of it. */
export function solveShaft(structure: ShaftStructure, loads: readonly SeatLoad[]): ShaftSolution | null {
  const { factors, shaft, stations, bearings } = structure;
  if (!factors) return null;
  const { direction: d, origin } = shaft;
  const nodes = stations.length;
  const units = unitsOf(factors, structure);
  const solved = nodes * MOVES + units.members * 2 * INSIDE + units.springs * INSIDE;
  const all = new Float64Array(solved + units.members * 2 * OF_SECTION);
  const add = (component: number, size: number): void => {
    if (size === 0) return;
    const one = unitAnswer(factors, units, component);
    for (let i = 0; i < solved; i++) all[i] = (all[i] as number) + size * (one[i] as number);
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
  let mostTorque = 0;
  for (let k = 0; k < 2 * units.members; k++)
    mostTorque = Math.max(mostTorque, Math.abs(number(nodes * MOVES + k * INSIDE + 3)));
  for (let k = 0; k < 2 * units.members; k++) {
    const at = nodes * MOVES + k * INSIDE;
    const to = solved + k * OF_SECTION;
    all[to] = stations[(k + 1) >> 1] as number;
    all[to + 1] = both(number(at + 4), number(at + 5));
    all[to + 2] = both(number(at + 1), number(at + 2));
    // Where no torque passes, what is left of the sum is rounding.
    all[to + 3] = Math.abs(number(at + 3)) > ROUNDING * mostTorque ? number(at + 3) : 0;
    all[to + 4] = number(at);
  }
  const springs = nodes * MOVES + 2 * units.members * INSIDE;
  for (let k = 0; k < bearings.length; k++) {
    const { force } = reactionIn(all, springs + k * INSIDE, units.axes);
    sum[0] += force[0];
    sum[1] += force[1];
    sum[2] += force[2];
  }
  return new Solved(
    { numbers: all, first: solved, by: 1 },
    largest > 0 ? Math.sqrt(sum[0] ** 2 + sum[1] ** 2 + sum[2] ** 2) / largest : 0,
    units,
  );
}
