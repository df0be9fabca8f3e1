import type { Solid } from '@oddwheel/mechanics/clearance/solid';
import type { Model, Seat } from '../../model/model.ts';
import { lineOf, linesOf } from '../layout/lines.ts';
import { playBetween } from '../layout/movement.ts';
import { disc } from './loop.ts';
import { nearestOf, type Placed, placed } from './nearest.ts';
import { type Part, type Role, still } from './part.ts';
import type { Arm } from './pose.ts';

const MOVING: ReadonlySet<Role> = new Set(['shaft', 'sprocket', 'pulley', 'gear', 'wheel', 'idler', 'chain', 'belt']);
const ROUND_LOOP: ReadonlySet<Role> = new Set(['sprocket', 'pulley', 'idler']);
/** Parts that turn or stand with a line of shafts. */
const ON_LINE: ReadonlySet<Role> = new Set(['shaft', 'bearing', 'sprocket', 'pulley', 'gear', 'wheel']);

const isLoop = ({ role }: Part): boolean => role === 'chain' || role === 'belt';
const share = (a: readonly number[], b: readonly number[]): boolean => a.some((one) => b.includes(one));

/** Parts that belong together by nature: what is between them is no clearance. */
function joinedByNature(a: Part, b: Part): boolean {
  if (ON_LINE.has(a.role) && ON_LINE.has(b.role) && share(a.lines, b.lines)) return true;
  if (isLoop(a) || isLoop(b)) {
    const [loop, other] = isLoop(a) ? [a, b] : [b, a];
    if (other.role === 'shaft') return share(loop.lines, other.lines);
    return loop.stage === other.stage && ROUND_LOOP.has(other.role);
  }
  if (a.stage === null || a.stage !== b.stage) return false;
  if (a.role === 'gear' && b.role === 'gear') return true;
  // Sprockets as drawn have a check of their own; larger ones are counted here.
  return a.role === 'sprocket' && b.role === 'sprocket' && a.largest === null && b.largest === null;
}

/** What is joined in this build: by nature, end to end by a coupling, or a shaft and what holds its bearings. */
export function joining(model: Model, parts: readonly Placed[]): (a: Placed, b: Placed) => boolean {
  const lines = linesOf(model);
  const number = (shaft: number): number => {
    const line = lineOf(lines, shaft);
    return line === null ? -1 : lines.indexOf(line);
  };
  const coupled = new Set(
    model.stages.flatMap(({ kind }, k) =>
      kind === 'coupling' || kind === 'unit' ? [`${number(k)}:${number(k + 1)}`] : [],
    ),
  );
  const endToEnd = (a: Part, b: Part): boolean =>
    a.role === 'shaft' &&
    b.role === 'shaft' &&
    (coupled.has(`${a.lines[0]}:${b.lines[0]}`) || coupled.has(`${b.lines[0]}:${a.lines[0]}`));
  const held = new Set<string>();
  const obstacles = parts.filter(({ part }) => part.role === 'tube' || part.role === 'solid');
  lines.forEach(({ first, bearings, shafts }, line) => {
    for (const obstacle of obstacles) {
      const inCase = first === 0 && obstacle.part.bodies[0] === 'engine';
      const holds = (seat: Seat): boolean => {
        const axis = shafts.find(({ seats }) => seats.includes(seat))?.direction;
        if (!axis || seat.body !== obstacle.part.bodies[0]) return false;
        const ring = bearingPart([
          disc(seat.at, axis, (seat.outside ?? seat.diameter ?? 0) / 2, Math.max(seat.width ?? 0, 0.001) / 2),
        ]);
        return nearestOf(placed(ring, [0]).at(0, false), obstacle.at(0, false), 0.001) !== null;
      };
      if (inCase || bearings.some(holds)) held.add(`${line}:${obstacle.part.address}`);
    }
  });
  const holding = (a: Part, b: Part): boolean => a.role === 'shaft' && held.has(`${a.lines[0]}:${b.address}`);
  return ({ part: a }, { part: b }) => joinedByNature(a, b) || endToEnd(a, b) || holding(a, b) || holding(b, a);
}

const bearingPart = (solids: readonly Solid[]): Part => ({
  ...{ role: 'bearing', name: '', address: '', element: null, bodies: [], lines: [], stage: null },
  ...{ at: still(solids), largest: null, swings: false, growth: 0 },
});

/** Whether a part reaches the axis of the arm's pivot, where it is held. */
function atPivot({ at }: Part, arm: Arm): boolean {
  return at(0).some((solid) => {
    if (solid.shape === 'box') return straddles(solid.low, solid.high, arm);
    const size = solid.shape === 'bar' ? 2 * solid.halfHeight : 0;
    return arm.fromPivot(solid.from) <= size || arm.fromPivot(solid.to) <= size;
  });
}

function straddles(low: readonly number[], high: readonly number[], { pivot }: Arm): boolean {
  return [0, 2].every((k) => (low[k] ?? 0) <= (pivot[k] ?? 0) && (pivot[k] ?? 0) <= (high[k] ?? 0));
}

/** Whether the room between two parts counts: one turns, or the arm moves one against the other. */
export function matters(a: Part, b: Part, arm: Arm | null): boolean {
  if (a.role === 'access' || b.role === 'access') return false;
  if (MOVING.has(a.role) || MOVING.has(b.role)) return true;
  return arm !== null && a.swings !== b.swings && !atPivot(a, arm) && !atPivot(b, arm);
}

/** How far what carries two parts may bring them together, m: offset and movement along the shaft at once. */
export function movementOf(a: Part, b: Part): { readonly length: number; readonly row: string } | null {
  let most: { readonly length: number; readonly row: string } | null = null;
  for (const first of a.bodies)
    for (const second of b.bodies) {
      if (first === second) continue;
      const { offset, axial, row } = playBetween(first, second);
      const length = Math.hypot(offset, axial);
      if (most === null || length > most.length) most = { length, row };
    }
  return most;
}
