import type { BuildFile } from '../schema/build-file.ts';
import type { Engine, Value } from './model.ts';
import { type Reader, typedNumber, value, valueOrNull } from './value.ts';

/** The engine with its gearbox; a blank redline, launch speed and torque between known points stand on stated rules. */
export function resolveEngine(reader: Reader, file: BuildFile['brief']['engine']): Engine {
  const address = '/brief/engine';
  const read = (key: string) => value(reader, `${address}/${key}`, file, key, 'Engine');
  const scale = (word: string, kind: 'angularSpeed' | 'torque') => typedNumber(kind, `1 ${word}`);
  const { curve, peaks } = file;
  return {
    address,
    name: file.name,
    curve: curve
      ? {
          speeds: curve.rows.map(([n]) => n * scale(curve.units.speed, 'angularSpeed')),
          torques: curve.rows.map(([, t]) => t * scale(curve.units.torque, 'torque')),
        }
      : null,
    peaks: peaks
      ? {
          torque: typedNumber('torque', peaks.torque),
          torqueAt: typedNumber('angularSpeed', peaks.torqueAt),
          power: typedNumber('power', peaks.power),
          powerAt: typedNumber('angularSpeed', peaks.powerAt),
        }
      : null,
    idle: read('idle'),
    redline: valueOrNull(reader, `${address}/redline`, file, 'redline', 'Engine') ?? blankRedline(address, file),
    torqueBand: curve || !peaks ? null : torqueBand(address),
    launch: valueOrNull(reader, `${address}/launch`, file, 'launch', 'Engine') ?? blankLaunch(address, file),
    cylinders: file.cylinders ?? null,
    strokes: file.strokes === undefined ? null : file.strokes === 'two' ? 2 : 4,
    clutchTorque:
      valueOrNull(reader, `${address}/clutchTorque`, file, 'clutchTorque', 'Engine') ??
      partOfPeak(address, file, 'clutchTorque', 'torque at which the clutch slips', [1.5, 2.5]),
    drag:
      valueOrNull(reader, `${address}/drag`, file, 'drag', 'Engine') ??
      partOfPeak(address, file, 'drag', 'torque that it takes with the throttle closed', [0.2, 0.4]),
    primary: read('primary'),
    gears: file.gears.map((_, k) => value(reader, `${address}/gears/${k}`, file.gears, String(k), `Gear ${k + 1}`)),
    boxEfficiency: read('boxEfficiency'),
    outputSense: file.output.sense === 'positive' ? 1 : -1,
    madeFor: file.output.madeFor ?? null,
  };
}

/** Without a redline, the last speed that the engine is known to reach at full throttle. */
function blankRedline(address: string, file: BuildFile['brief']['engine']): Value | null {
  const row = file.curve?.rows.at(-1);
  const si =
    row && file.curve
      ? typedNumber('angularSpeed', `${row[0]} ${file.curve.units.speed}`)
      : file.peaks
        ? typedNumber('angularSpeed', file.peaks.powerAt)
        : null;
  if (si === null) return null;
  const text = row && file.curve ? `${row[0]} ${file.curve.units.speed}` : (file.peaks?.powerAt ?? '');
  return {
    address: `${address}/redline`,
    name: 'Engine, redline',
    kind: 'angularSpeed',
    si,
    lo: si,
    hi: si,
    text,
    origin: 'assumed',
    together: null,
    source: 'common practice: without a redline, stop at the last speed of the curve, or at peak power',
    recipe: null,
  };
}

/** Without a word on how the builder starts off, the clutch slips at the speed of the greatest torque. */
function blankLaunch(address: string, file: BuildFile['brief']['engine']): Value | null {
  const { curve, peaks } = file;
  const rows = curve?.rows ?? [];
  const best = rows.reduce<readonly [number, number] | null>(
    (most, row) => (most === null || row[1] > most[1] ? row : most),
    null,
  );
  const text = best && curve ? `${best[0]} ${curve.units.speed}` : peaks?.torqueAt;
  if (text === undefined) return null;
  const si = typedNumber('angularSpeed', text);
  return {
    address: `${address}/launch`,
    name: 'Engine, engine speed held in a start',
    kind: 'angularSpeed',
    si,
    lo: si,
    hi: si,
    text,
    origin: 'assumed',
    together: null,
    source: 'common practice: a loaded start at the speed of the greatest torque',
    recipe: 'Start off as you will with a load and read the tachometer while the clutch still slips.',
  };
}

/** A curve known by two points only lies between bounds; where between them is not known. */
function torqueBand(address: string): Value {
  return {
    address: `${address}/curve`,
    name: 'Engine, torque between the known points',
    kind: 'fraction',
    si: 0.5,
    lo: 0,
    hi: 1,
    text: 'between its bounds',
    origin: 'assumed',
    together: null,
    source: 'derived: torque never above its peak, power never above its peak',
    recipe: 'A rolling road gives the curve; failing that, time the same pull in one gear between marked speeds.',
  };
}

/** A torque that is not typed stands on a usual part of the greatest torque. */
function partOfPeak(
  address: string,
  file: BuildFile['brief']['engine'],
  key: 'clutchTorque' | 'drag',
  name: string,
  [low, high]: readonly [number, number],
): Value | null {
  const { curve, peaks } = file;
  const peak = curve
    ? Math.max(...curve.rows.map(([, torque]) => torque)) * typedNumber('torque', `1 ${curve.units.torque}`)
    : peaks
      ? typedNumber('torque', peaks.torque)
      : null;
  if (peak === null) return null;
  return {
    address: `${address}/${key}`,
    name: `Engine, ${name}`,
    kind: 'torque',
    si: ((low + high) / 2) * peak,
    lo: low * peak,
    hi: high * peak,
    text: `${low}..${high} times the greatest torque`,
    origin: 'assumed',
    together: null,
    source: 'common practice',
    recipe: null,
  };
}
