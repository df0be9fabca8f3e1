import type { Fault } from '../fault.ts';
import { isRecord, pointerKey, valueAt } from '../schema/describe.ts';

const entries = (value: unknown): [string, Record<string, unknown>][] =>
  isRecord(value)
    ? Object.entries(value).filter((entry): entry is [string, Record<string, unknown>] => isRecord(entry[1]))
    : [];

/** Kind of seat that each kind of stage sits on. */
export const SEAT_OF_STAGE: Readonly<Record<string, string>> = {
  chain: 'sprocket',
  belt: 'pulley',
  bevel: 'gear',
  spur: 'gear',
  coupling: 'joint',
  unit: 'joint',
};

/** Id under which the engine's output shaft is named in "shaft/seat". */
export const OUTPUT = 'output';

/** Seats that stages name, and the one path from the engine to the driven wheel. */
export function pathFaults(root: unknown): Fault[] {
  const faults: Fault[] = [];
  const shafts = new Map<string, { address: string; seats: Map<string, unknown> }>();
  const output = valueAt(root, '/brief/engine/output');
  if (isRecord(output))
    shafts.set(OUTPUT, {
      address: '/brief/engine/output',
      seats: new Map(entries(output.seats).map(([id, seat]) => [id, seat.kind])),
    });
  for (const [id, shaft] of entries(valueAt(root, '/path/shafts'))) {
    const address = `/path/shafts/${pointerKey(id)}`;
    if (id === OUTPUT) {
      faults.push({
        code: 'reference.reserved',
        address,
        problem: `"${OUTPUT}" names the engine's own output shaft.`,
        read: id,
        accepted: 'Another id, for example "shaft-a".',
      });
      continue;
    }
    shafts.set(id, {
      address,
      seats: new Map(entries(shaft.seats).map(([seatId, seat]) => [seatId, seat.kind])),
    });
  }
  for (const { address } of shafts.values()) {
    const direction = valueAt(root, `${address}/direction`);
    if (Array.isArray(direction) && direction.length === 3 && direction.every((x) => x === 0))
      faults.push({
        code: 'geometry.direction',
        address: `${address}/direction`,
        problem: 'A direction cannot be zero.',
        read: JSON.stringify(direction),
        accepted: 'At least one part that is not zero, for example [0, 1, 0].',
      });
  }

  const taken = new Map<string, string>();
  const links: { from: string; to: string; address: string }[] = [];
  for (const [id, stage] of entries(valueAt(root, '/path/stages'))) {
    const address = `/path/stages/${pointerKey(id)}`;
    const wanted = typeof stage.kind === 'string' ? SEAT_OF_STAGE[stage.kind] : undefined;
    const ends = (['from', 'to'] as const).map((end) => {
      const read = stage[end];
      if (typeof read !== 'string') return null;
      const at = `${address}/${end}`;
      const [shaftId = '', seatId, ...rest] = read.split('/');
      const shaft = shafts.get(shaftId);
      if (!shaft || seatId === undefined || rest.length > 0 || !shaft.seats.has(seatId)) {
        const fit = [...shafts].flatMap(([s, x]) =>
          [...x.seats].filter(([, kind]) => kind === wanted).map(([seat]) => `${s}/${seat}`),
        );
        faults.push({
          code: 'reference.seat',
          address: at,
          problem: `There is no seat "${read}".`,
          read,
          accepted:
            fit.length > 0
              ? `A ${wanted} seat as shaft/seat: ${fit.join(', ')}.`
              : `A seat as shaft/seat, for example "${OUTPUT}/sprocket".`,
        });
        return null;
      }
      const kind = shaft.seats.get(seatId);
      if (wanted !== undefined && kind !== wanted)
        faults.push({
          code: 'reference.seat-kind',
          address: at,
          problem: `A ${String(stage.kind)} sits on a ${wanted} seat, and "${read}" is a ${String(kind)} seat.`,
          read,
          accepted: `A seat of kind "${wanted}".`,
        });
      const other = taken.get(read);
      if (other !== undefined)
        faults.push({
          code: 'reference.seat-taken',
          address: at,
          problem: `The seat "${read}" already carries the stage at ${other}.`,
          read,
          accepted: 'A seat for each stage end.',
        });
      else taken.set(read, address);
      return shaftId;
    });
    const [from, to] = ends;
    if (from == null || to == null) continue;
    if (from === to)
      faults.push({
        code: 'reference.same-shaft',
        address: `${address}/to`,
        problem: 'Driver and driven sit on one shaft.',
        read: `${String(stage.to)}`,
        accepted: 'A seat on another shaft.',
      });
    else links.push({ from, to, address });
  }
  if (faults.length === 0 && links.length > 0) faults.push(...orderFaults(root, shafts, links));
  return faults;
}

function orderFaults(
  _root: unknown,
  shafts: ReadonlyMap<string, { address: string; seats: Map<string, unknown> }>,
  links: readonly { from: string; to: string; address: string }[],
): Fault[] {
  const faults: Fault[] = [];
  const wheels = [...shafts].flatMap(([id, shaft]) =>
    [...shaft.seats].filter(([, kind]) => kind === 'wheel').map(([seat]) => `${id}/${seat}`),
  );
  if (wheels.length !== 1)
    faults.push({
      code: 'reference.wheel',
      address: '/path/shafts',
      problem: wheels.length === 0 ? 'No shaft has a wheel seat.' : 'More than one seat carries the driven wheel.',
      read: wheels.join(', ') || 'none',
      accepted: 'Exactly one seat of kind "wheel".',
    });
  const out = new Map<string, string>();
  const into = new Map<string, string>();
  for (const { from, to, address } of links) {
    const twice = out.get(from);
    if (twice)
      faults.push({
        code: 'reference.fork',
        address: `${address}/from`,
        problem: `Two stages leave the shaft "${from}" (the other is ${twice}).`,
        read: from,
        accepted: 'One stage out of each shaft: the path does not fork.',
      });
    else out.set(from, address);
    const again = into.get(to);
    if (again)
      faults.push({
        code: 'reference.join',
        address: `${address}/to`,
        problem: `Two stages drive the shaft "${to}" (the other is ${again}).`,
        read: to,
        accepted: 'One stage into each shaft.',
      });
    else into.set(to, address);
  }
  if (faults.length > 0) return faults;
  const next = new Map(links.map((link) => [link.from, link]));
  const reached = new Set<string>([OUTPUT]);
  for (let at = OUTPUT; ; ) {
    const link = next.get(at);
    if (!link) {
      if (!wheels[0]?.startsWith(`${at}/`))
        faults.push({
          code: 'reference.open-path',
          address: '/path/stages',
          problem: `The path from the engine ends at the shaft "${at}", which does not carry the driven wheel.`,
          read: at,
          accepted: `Stages that lead on from "${at}" to ${wheels[0]}.`,
        });
      break;
    }
    if (reached.has(link.to)) {
      faults.push({
        code: 'reference.loop',
        address: `${link.address}/to`,
        problem: `The path comes back to the shaft "${link.to}".`,
        read: link.to,
        accepted: 'A shaft that is not passed yet.',
      });
      break;
    }
    reached.add(link.to);
    at = link.to;
  }
  if (faults.length === 0)
    for (const [id, shaft] of shafts)
      if (!reached.has(id))
        faults.push({
          code: 'reference.unreached',
          address: shaft.address,
          problem: `No stage leads from the engine to the shaft "${id}".`,
          read: id,
          accepted: 'A stage that drives it, or take the shaft out.',
        });
  return faults;
}
