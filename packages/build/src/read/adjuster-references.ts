import type { Fault } from '../fault.ts';
import { isRecord, pointerKey, valueAt } from '../schema/describe.ts';
import { OUTPUT } from './path-references.ts';

interface Seat {
  readonly kind: unknown;
  readonly direction: readonly number[] | null;
}

const entries = (value: unknown): [string, Record<string, unknown>][] =>
  isRecord(value)
    ? Object.entries(value).filter((entry): entry is [string, Record<string, unknown>] => isRecord(entry[1]))
    : [];

const directionOf = (value: unknown): readonly number[] | null =>
  Array.isArray(value) && value.length === 3 && value.every((x) => typeof x === 'number') && value.some((x) => x !== 0)
    ? value
    : null;

/** Sine of the angle up to which a part counts as moved along its shaft. */
const ALONG = 0.01;

function sineBetween(a: readonly number[], b: readonly number[]): number {
  const [ax = 0, ay = 0, az = 0] = a;
  const [bx = 0, by = 0, bz = 0] = b;
  const square = Math.hypot(ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx);
  return square / (Math.hypot(ax, ay, az) * Math.hypot(bx, by, bz));
}

/** Stages, shafts and seats that adjusters name, and the directions they move in. */
export function adjusterFaults(root: unknown): Fault[] {
  const stages = new Map(entries(valueAt(root, '/path/stages')).map(([id, stage]) => [id, stage.kind]));
  const output = valueAt(root, '/brief/engine/output');
  const shafts = [
    ...(isRecord(output) ? [[OUTPUT, output] as const] : []),
    ...entries(valueAt(root, '/path/shafts')).filter(([id]) => id !== OUTPUT),
  ];
  const seats = new Map<string, Seat>();
  for (const [id, shaft] of shafts)
    for (const [seatId, seat] of entries(shaft.seats))
      seats.set(`${id}/${seatId}`, { kind: seat.kind, direction: directionOf(shaft.direction) });
  const shaftIds = shafts.map(([id]) => id);
  const driven = new Set(
    entries(valueAt(root, '/path/stages')).flatMap(([, stage]) => [stage.from, stage.to].map(String)),
  );

  const among = (ids: readonly string[], otherwise: string): string =>
    ids.length > 0 ? `One of ${ids.join(', ')}.` : otherwise;
  const seatsOf = (...kinds: readonly string[]): string[] =>
    [...seats].filter(([id, { kind }]) => kinds.includes(String(kind)) && driven.has(id)).map(([id]) => id);

  return entries(valueAt(root, '/path/adjusters')).flatMap(([id, adjuster]): Fault[] => {
    const address = `/path/adjusters/${pointerKey(id)}`;
    const { sets, of, moves, along } = adjuster;
    const faults: Fault[] = [];
    if (typeof of === 'string') {
      const right =
        sets === 'slack'
          ? [...stages].filter(([, kind]) => kind === 'chain' || kind === 'belt').map(([stageId]) => stageId)
          : sets === 'gear position'
            ? seatsOf('gear')
            : sets === 'sprocket line'
              ? seatsOf('sprocket', 'pulley')
              : null;
      if (right && !right.includes(of))
        faults.push({
          code: 'reference.adjuster-of',
          address: `${address}/of`,
          problem: `An adjuster of ${String(sets)} cannot set "${of}".`,
          read: of,
          accepted: among(
            right,
            sets === 'slack' ? 'First add a chain or belt.' : 'First add the part and the stage that sits on it.',
          ),
        });
    }
    const direction = directionOf(along);
    if (Array.isArray(along) && along.length === 3 && along.every((x) => x === 0))
      faults.push({
        code: 'geometry.direction',
        address: `${address}/along`,
        problem: 'A direction cannot be zero.',
        read: JSON.stringify(along),
        accepted: 'At least one part that is not zero, for example [1, 0, 0].',
      });
    if (typeof moves !== 'string') return faults;
    const seat = seats.get(moves);
    if (!shaftIds.includes(moves) && !seat)
      faults.push({
        code: 'reference.adjuster-moves',
        address: `${address}/moves`,
        problem: `There is no shaft and no seat "${moves}" to move.`,
        read: moves,
        accepted: `A shaft that moves whole (${shaftIds.join(', ')}), or a part that moves along its shaft, as shaft/seat.`,
      });
    else if (seat?.direction && direction && sineBetween(seat.direction, direction) > ALONG)
      faults.push({
        code: 'geometry.adjuster-along',
        address: `${address}/along`,
        problem: `"${moves}" sits on its shaft and can only move along it.`,
        read: JSON.stringify(along),
        accepted: `The direction of its shaft, ${JSON.stringify(seat.direction)}, or against it; or move the whole shaft.`,
      });
    return faults;
  });
}
