import type { Patch } from '../document/patch.ts';
import type { Fault } from '../fault.ts';
import type { Session } from '../session-types.ts';
import { curveFromTable } from './curve-table.ts';
import { raised, setPatch } from './place.ts';
import type { StructureEdit } from './types.ts';

const AT = '/brief/engine/curve';
const ROWS = `${AT}/rows`;

const refuse = (problem: string, read: string, accepted: string, address = ROWS): StructureEdit => ({
  ok: false,
  faults: [{ code: 'curve.point', address, problem, read, accepted } satisfies Fault],
});

const curveOf = (session: Session) => session.build.brief.engine.curve;

const done = (
  session: Session,
  name: string,
  patches: readonly Patch[],
  also: readonly string[] = [],
): StructureEdit => ({
  ok: true,
  name: `Torque curve, ${name}`,
  patches: [...raised(session), ...patches],
  also,
  shows: null,
});

/** Puts a pasted table in the place of the torque curve. Faults name the lines of the table. */
export function pasteCurve(session: Session, text: string): StructureEdit {
  const read = curveFromTable(text);
  if (!read.ok) return read;
  const { units, rows } = read.curve;
  const value = { units: { ...units }, rows: rows.map((row) => [...row]) };
  return done(
    session,
    `${rows.length} points from a table`,
    [setPatch(session, AT, value)],
    read.fromPower ? ['Torque is worked out from power: power over angular speed.'] : [],
  );
}

const say = (session: Session, [speed, torque]: readonly [number, number]): string => {
  const units = curveOf(session)?.units;
  return `${torque} ${units?.torque ?? ''} at ${speed} ${units?.speed ?? ''}`;
};

/** Puts a point between the others; speeds and torques in the units of the curve. */
export function addCurvePoint(session: Session, speed: number, torque: number): StructureEdit {
  const curve = curveOf(session);
  if (!curve) return refuse('There is no torque curve yet.', '', 'Paste a table, or give two points.', AT);
  const wrong = pointFault(speed, torque);
  if (wrong) return wrong;
  const after = curve.rows.findIndex(([n]) => n >= speed);
  const index = after < 0 ? curve.rows.length : after;
  if (curve.rows[index]?.[0] === speed)
    return refuse(
      `A point stands at ${speed} ${curve.units.speed} already.`,
      String(speed),
      'Another speed, or move that point.',
    );
  return done(session, `add ${say(session, [speed, torque])}`, [
    { op: 'set', at: `${ROWS}/${index}`, value: [speed, torque], before: null },
  ]);
}

/** Moves a point; it stays between its neighbours. */
export function moveCurvePoint(session: Session, row: number, speed: number, torque: number): StructureEdit {
  const rows = curveOf(session)?.rows ?? [];
  const now = rows[row];
  if (!now) return refuse('There is no such point.', String(row + 1), `A point from 1 to ${rows.length}.`);
  const wrong = pointFault(speed, torque);
  if (wrong) return wrong;
  const [low, high] = [rows[row - 1]?.[0] ?? -1, rows[row + 1]?.[0] ?? Number.POSITIVE_INFINITY];
  if (speed <= low || speed >= high)
    return refuse(
      'A point stays between its neighbours.',
      String(speed),
      high === Number.POSITIVE_INFINITY ? `A speed above ${low}.` : `A speed between ${Math.max(low, 0)} and ${high}.`,
      `${ROWS}/${row}`,
    );
  return done(session, `point ${row + 1}, ${say(session, [now[0], now[1]])} → ${say(session, [speed, torque])}`, [
    { op: 'set', at: `${ROWS}/${row}`, value: [speed, torque] },
  ]);
}

/** Takes a point out; two stay. */
export function removeCurvePoint(session: Session, row: number): StructureEdit {
  const rows = curveOf(session)?.rows ?? [];
  const now = rows[row];
  if (!now) return refuse('There is no such point.', String(row + 1), `A point from 1 to ${rows.length}.`);
  if (rows.length <= 2) return refuse('Two points must stay.', '', 'Take the whole curve out instead.');
  return done(session, `take out ${say(session, [now[0], now[1]])}`, [{ op: 'remove', at: `${ROWS}/${row}` }]);
}

function pointFault(speed: number, torque: number): StructureEdit | null {
  if (Number.isFinite(speed) && Number.isFinite(torque) && speed >= 0 && torque >= 0) return null;
  return refuse('Speed and torque are numbers, zero or more.', `${speed} ${torque}`, 'For example 2500 and 32.5.');
}
