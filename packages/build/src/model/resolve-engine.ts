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
    source: 'derived: torque never above its peak, power never above its peak',
    recipe: 'A rolling road gives the curve; failing that, time the same pull in one gear between marked speeds.',
  };
}
