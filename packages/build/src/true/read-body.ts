import type { Kind } from '@oddwheel/quantity/kinds';
import { parseQuantity } from '@oddwheel/quantity/parse';
import { findUnit } from '@oddwheel/quantity/units';
import { isJsonObject, type Json } from '../document/json.ts';
import type { Fault } from '../fault.ts';
import { clockAngle } from './clock.ts';
import { SETUPS, TRUE_BEARINGS, WAYS } from './types.ts';

type Fields = { readonly [key: string]: Json };

/** Collects faults of one body; every check names its address, what was read and what is accepted. */
class Check {
  readonly faults: Fault[] = [];

  fault(address: string, problem: string, read: Json | undefined, accepted: string): void {
    const shown = read === undefined ? '' : String(JSON.stringify(read));
    this.faults.push({ code: 'true.body', address, problem, read: shown, accepted });
  }

  object(value: Json | undefined, address: string, accepted: string): Fields | undefined {
    if (value !== undefined && isJsonObject(value)) return value;
    this.fault(address, value === undefined ? 'It is missing.' : 'It is no object.', value, accepted);
    return undefined;
  }

  list(value: Json | undefined, address: string, accepted: string): readonly Json[] {
    if (Array.isArray(value)) return value;
    this.fault(address, value === undefined ? 'It is missing.' : 'It is no list.', value, accepted);
    return [];
  }

  keys(fields: Fields, address: string, known: readonly string[]): void {
    for (const key of Object.keys(fields))
      if (!known.includes(key))
        this.fault(`${address}/${key}`, 'There is no such key here.', key, `one of ${known.join(', ')}`);
  }

  text(value: Json | undefined, address: string, accepted: string): void {
    if (typeof value !== 'string' || value.trim() === '')
      this.fault(address, 'A text is wanted here.', value, accepted);
  }

  one(value: Json | undefined, address: string, choices: readonly string[]): void {
    if (typeof value !== 'string' || !choices.includes(value))
      this.fault(address, 'It is none of the choices.', value, choices.join(', '));
  }

  number(value: Json | undefined, address: string, accepted: string, fits: (n: number) => boolean = () => true): void {
    if (typeof value !== 'number' || !Number.isFinite(value) || !fits(value))
      this.fault(address, 'A number is wanted here.', value, accepted);
  }

  quantity(
    value: Json | undefined,
    address: string,
    kind: Kind,
    example: string,
    above = Number.NEGATIVE_INFINITY,
  ): void {
    if (typeof value !== 'string') {
      this.fault(address, 'A value with its unit is wanted here.', value, `such as "${example}"`);
      return;
    }
    const parsed = parseQuantity(value, kind);
    if (!parsed.ok) this.fault(address, parsed.problem, value, parsed.accepted);
    else if (parsed.si <= above)
      this.fault(address, 'It is too small.', value, `more than ${above}, such as "${example}"`);
  }

  clock(value: Json | undefined, address: string): void {
    if (typeof value !== 'string' || clockAngle(value) === undefined)
      this.fault(address, 'A place on the clock is wanted here.', value, 'hours and minutes, such as "6:30"');
  }
}

/** Faults of a body by the kind of its entry; none for kinds that are not known, which are kept as they are. */
export function bodyFaults(kind: string, body: Json): Fault[] {
  const check = new Check();
  const read = { 'true-part': partBody, 'true-set': setBody, 'true-round': roundBody }[kind];
  if (!read) return [];
  const fields = check.object(body, '', 'an object with "part"');
  if (fields) {
    check.text(fields.part, '/part', 'id of the part, such as "jackshaft"');
    read(check, fields);
  }
  return check.faults;
}

function partBody(check: Check, fields: Fields): void {
  check.keys(fields, '', ['part', 'name', 'shaft', 'seats', 'goal', 'joints', 'weld', 'serves', 'press', 'use']);
  const seats = check.object(fields.seats, '/seats', '{ "a": "20 mm", "b": "180 mm" }');
  if (seats) {
    check.quantity(seats.a, '/seats/a', 'length', '20 mm');
    check.quantity(seats.b, '/seats/b', 'length', '180 mm');
    if (typeof seats.a === 'string' && typeof seats.b === 'string' && sameLength(seats.a, seats.b))
      check.fault('/seats/b', 'Both seats stand at one station.', seats.b, 'another station than seat a');
  }
  const goal = check.object(fields.goal, '/goal', '{ "station": "260 mm", "tir": "3 thou" }');
  if (goal) {
    check.quantity(goal.station, '/goal/station', 'length', '260 mm');
    check.quantity(goal.tir, '/goal/tir', 'length', '3 thou', 0);
  }
  if (fields.name !== undefined) check.text(fields.name, '/name', 'a name');
  if (fields.shaft !== undefined) check.text(fields.shaft, '/shaft', 'id of a shaft of the build, such as "shaft-a"');
  if (fields.use !== undefined) check.one(fields.use, '/use', ['drive', 'steering', 'suspension', 'brake']);
  if (fields.joints !== undefined)
    for (const [k, entry] of check.list(fields.joints, '/joints', 'a list of joints').entries()) {
      const joint = check.object(entry, `/joints/${k}`, '{ "joint": "spline", "station": "200 mm", "positions": 6 }');
      if (!joint) continue;
      check.text(joint.joint, `/joints/${k}/joint`, 'a name, such as "spline"');
      check.quantity(joint.station, `/joints/${k}/station`, 'length', '200 mm');
      check.number(joint.positions, `/joints/${k}/positions`, 'a whole number from 1 to 120', whole(1, 120));
    }
  if (fields.weld !== undefined) weldBody(check, fields.weld);
  if (fields.press !== undefined) {
    const press = check.object(fields.press, '/press', '{ "diameter": "25 mm", "yield": "350 MPa" }');
    if (press) {
      check.quantity(press.diameter, '/press/diameter', 'length', '25 mm', 0);
      check.quantity(press.yield, '/press/yield', 'pressure', '350 MPa', 0);
    }
  }
  if (fields.serves !== undefined) servesBody(check, fields.serves);
}

function weldBody(check: Check, value: Json): void {
  const weld = check.object(value, '/weld', '{ "mode": "correct", … }');
  if (!weld) return;
  check.keys(weld, '/weld', ['mode', 'station', 'steel', 'hardness', 'coating', 'smallest', 'largest', 'owed']);
  check.one(weld.mode, '/weld/mode', ['weld-up', 'correct']);
  check.quantity(weld.station, '/weld/station', 'length', '220 mm');
  for (const key of ['steel', 'hardness', 'coating'] as const)
    check.text(weld[key], `/weld/${key}`, 'what it is, or "none"; it must be known before the first arc');
  check.quantity(weld.smallest, '/weld/smallest', 'length', '3 mm', 0);
  check.quantity(weld.largest, '/weld/largest', 'length', '25 mm', 0);
  if (weld.mode === 'weld-up' || weld.owed !== undefined) {
    const owed = check.list(weld.owed, '/weld/owed', 'the stretches of the full weld');
    if (owed.length === 0) check.fault('/weld/owed', 'Nothing is owed.', weld.owed, 'at least one stretch');
    for (const [k, entry] of owed.entries()) {
      const one = check.object(entry, `/weld/owed/${k}`, '{ "clock": "3:00", "length": "20 mm" }');
      if (!one) continue;
      check.clock(one.clock, `/weld/owed/${k}/clock`);
      check.quantity(one.length, `/weld/owed/${k}/length`, 'length', '20 mm', 0);
    }
  }
}

function servesBody(check: Check, value: Json): void {
  const serves = check.object(value, '/serves', '{ "sprocket": { "rootDiameter": "150 mm", "made": "turned" } }');
  if (!serves) return;
  check.keys(serves, '/serves', ['bearings', 'sprocket', 'gear', 'balance', 'stiffness', 'contributors']);
  if (serves.bearings !== undefined) check.one(serves.bearings, '/serves/bearings', TRUE_BEARINGS);
  const part = (key: string, example: string): Fields | undefined =>
    serves[key] === undefined ? undefined : check.object(serves[key], `/serves/${key}`, example);
  const sprocket = part('sprocket', '{ "rootDiameter": "150 mm", "made": "turned" }');
  if (sprocket) {
    check.quantity(sprocket.rootDiameter, '/serves/sprocket/rootDiameter', 'length', '150 mm', 0);
    check.one(sprocket.made, '/serves/sprocket/made', ['turned', 'welded']);
  }
  const gear = part('gear', '{ "bevel": true, "diameter": "120 mm", "module": "3 mm", "grade": 8 }');
  if (gear) {
    if (typeof gear.bevel !== 'boolean')
      check.fault('/serves/gear/bevel', 'Yes or no is wanted here.', gear.bevel, 'true, false');
    check.quantity(gear.diameter, '/serves/gear/diameter', 'length', '120 mm', 0);
    check.quantity(gear.module, '/serves/gear/module', 'length', '3 mm', 0);
    check.number(gear.grade, '/serves/gear/grade', 'tolerance class, a whole number from 1 to 12', whole(1, 12));
  }
  const balance = part('balance', '{ "mass": "4 kg", "topSpeed": "1800 rpm", "grade": "6.3 mm/s" }');
  if (balance) {
    check.quantity(balance.mass, '/serves/balance/mass', 'mass', '4 kg', 0);
    check.quantity(balance.topSpeed, '/serves/balance/topSpeed', 'angularSpeed', '1800 rpm', 0);
    check.quantity(balance.grade, '/serves/balance/grade', 'speed', '6.3 mm/s', 0);
  }
  if (serves.stiffness !== undefined) check.quantity(serves.stiffness, '/serves/stiffness', 'stiffness', '200 N/mm', 0);
  if (serves.contributors === undefined) return;
  for (const [k, entry] of check.list(serves.contributors, '/serves/contributors', 'a list').entries()) {
    const at = `/serves/contributors/${k}`;
    const one = check.object(entry, at, '{ "name": "bore clearance", "tir": "2 thou" }');
    if (!one) continue;
    check.text(one.name, `${at}/name`, 'a name, such as "bore clearance"');
    check.quantity(one.tir, `${at}/tir`, 'length', '2 thou', -1e-12);
    if (one.high !== undefined) check.quantity(one.high, `${at}/high`, 'angle', '140 deg');
  }
}

const SET_KEYS = [
  'part',
  'station',
  'setup',
  'vAngle',
  'face',
  'unit',
  'step',
  'side',
  'sign',
  'readings',
  'ends',
  'warm',
];

function setBody(check: Check, fields: Fields): void {
  check.keys(fields, '', [...SET_KEYS, 'clocking', 'turned', 'refit', 'note', 'picture']);
  check.quantity(fields.station, '/station', 'length', '260 mm');
  check.one(fields.setup, '/setup', SETUPS);
  if (fields.setup === 'V-blocks') check.quantity(fields.vAngle, '/vAngle', 'angle', '90 deg', 0);
  if (fields.face !== undefined) check.quantity(fields.face, '/face', 'length', '100 mm', 0);
  if (typeof fields.unit !== 'string' || !findUnit('length', fields.unit))
    check.fault('/unit', 'It is no unit of length.', fields.unit, 'thou, mm, µm');
  check.number(fields.step, '/step', 'smallest step of the dial in the unit, such as 0.5', (n) => n > 0);
  check.one(fields.sign, '/sign', ['out', 'in']);
  if ((fields.readings === undefined) === (fields.ends === undefined))
    check.fault('/readings', 'Either "readings" or "ends" is wanted.', fields.readings ?? null, 'one of both');
  if (fields.readings !== undefined) {
    const readings = check.list(fields.readings, '/readings', '4 to 72 readings');
    if (readings.length < 4 || readings.length > 72)
      check.fault('/readings', 'Too few or too many readings.', readings.length, '4 to 72 readings');
    for (const [k, one] of readings.entries()) dial(check, one, `/readings/${k}`);
  }
  if (fields.ends !== undefined) {
    const ends = check.object(fields.ends, '/ends', '{ "highest": …, "lowest": … }');
    if (ends) for (const key of ['highest', 'lowest'] as const) dial(check, ends[key], `/ends/${key}`);
  }
  if (fields.warm !== undefined) {
    const warm = check.object(fields.warm, '/warm', '{ "near": "40 °C", "far": "25 °C" }');
    if (warm)
      for (const key of ['near', 'far'] as const) check.quantity(warm[key], `/warm/${key}`, 'temperature', '40 °C');
  }
  if (fields.clocking !== undefined) {
    const clocking = check.object(fields.clocking, '/clocking', '{ "spline": 2 }');
    for (const [joint, mark] of Object.entries(clocking ?? {}))
      check.number(mark, `/clocking/${joint}`, 'a whole number, 0 at the match marks', whole(0, 120));
  }
  if (fields.picture !== undefined && !(typeof fields.picture === 'string' && /^[0-9a-f]{64}$/.test(fields.picture)))
    check.fault('/picture', 'It names no picture.', fields.picture, 'the SHA-256 of its bytes, 64 hex digits');
  for (const key of ['turned', 'refit'] as const)
    if (fields[key] !== undefined && typeof fields[key] !== 'boolean')
      check.fault(`/${key}`, 'Yes or no is wanted here.', fields[key], 'true, false');
  if (fields.turned === true && fields.setup !== 'chuck')
    check.fault('/turned', 'A part is turned half a turn in a chuck only.', fields.setup, '"setup": "chuck"');
  for (const key of ['note', 'side'] as const)
    if (fields[key] !== undefined) check.text(fields[key], `/${key}`, 'a text');
}

function roundBody(check: Check, fields: Fields): void {
  check.keys(fields, '', ['part', 'way', 'bead', 'note']);
  check.one(fields.way, '/way', WAYS);
  if (fields.way === 'bead') {
    const bead = check.object(fields.bead, '/bead', '{ "clock": "6:30", "length": "8 mm" }');
    if (bead) {
      check.clock(bead.clock, '/bead/clock');
      check.quantity(bead.length, '/bead/length', 'length', '8 mm', 0);
      if (bead.station !== undefined) check.quantity(bead.station, '/bead/station', 'length', '220 mm');
      if (bead.segment !== undefined) check.number(bead.segment, '/bead/segment', 'its number, from 0', whole(0, 500));
    }
  }
  if (fields.note !== undefined) check.text(fields.note, '/note', 'a text');
}

function dial(check: Check, value: Json | undefined, address: string): void {
  const reading = check.object(value, address, '{ "at": 90, "value": 4.5 }');
  if (!reading) return;
  check.number(reading.at, `${address}/at`, 'mark in degrees, such as 90', (n) => n >= -360 && n <= 720);
  check.number(reading.value, `${address}/value`, 'the dial, such as 4.5');
}

const whole = (least: number, most: number) => (n: number) => Number.isInteger(n) && n >= least && n <= most;

function sameLength(a: string, b: string): boolean {
  const [one, other] = [parseQuantity(a, 'length'), parseQuantity(b, 'length')];
  return one.ok && other.ok && one.si === other.si;
}
