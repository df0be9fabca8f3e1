import { gripLimit } from '@oddwheel/mechanics/vehicle/grip-limit';
import type { Model, Value } from '../../model/model.ts';
import { type CasePoint, type EngineCurve, ordinal } from '../cases.ts';
import type { At } from '../geometry/types.ts';

/** The train at one corner, as far as peaks of torque need it. */
export interface Train {
  readonly boxRatios: readonly number[];
  readonly boxEfficiency: number;
  /** Ratio and efficiency of all stages behind the box. */
  readonly path: number;
  readonly pathEfficiency: number;
  readonly rollOut: number | null;
}

const GRAVITY = 9.80665;

/**
 * Greatest torque that the ground can put on the driven wheel, N·m: with the highest friction and the full load. Where wheelbase, load and height are not
 * known, the whole weight counts as standing on the driven wheel, which no vehicle passes. Null without a roll-out.
 */
export function gripTorque(model: Model, at: At, rollOut: number | null): number | null {
  if (rollOut === null) return null;
  const { vehicle, loads } = model;
  const friction = at(loads.grip);
  const mass = at(vehicle.mass) + vehicle.payload.hi;
  const radius = rollOut / (2 * Math.PI);
  const most = friction * mass * GRAVITY;
  const { wheelbase, drivenLoad, centreHeight, contact } = vehicle;
  if (!wheelbase || !drivenLoad || !centreHeight || contact === null) return most * radius;
  const base = at(wheelbase);
  const onRear = contact === 'front driven' ? mass - at(drivenLoad) : at(drivenLoad);
  const aheadOfRear = base * (1 - onRear / mass);
  if (!(aheadOfRear > 0 && aheadOfRear < base)) return most * radius;
  const { force } = gripLimit.run({
    mass,
    wheelbase: base,
    aheadOfRear,
    height: at(centreHeight),
    slope: 0,
    gravity: GRAVITY,
    drivenAxle: contact === 'front driven' ? 'front' : 'rear',
    share: 1,
    friction,
  });
  return Math.min(force, most) * radius;
}

/** Inputs that the rare peaks hang on, beside those of the drive. */
export function rareValues({ engine, vehicle, loads }: Model): (Value | null)[] {
  const { mass, wheelbase, drivenLoad, centreHeight } = vehicle;
  return [engine.clutchTorque, engine.drag, loads.grip, loads.shock, mass, wheelbase, drivenLoad, centreHeight];
}

/**
 * Torque at which the ground turns a locked driven wheel no more, N·m: with the highest friction and the full load. A wheel that
 * holds the vehicle back lightens the rear and loads the front; N = m g (a ∓ μ h) / L. Null without roll-out or laden mass on the axle.
 */
function skidTorque(model: Model, at: At, rollOut: number | null): number | null {
  const { vehicle, loads } = model;
  const { wheelbase, drivenLoad, centreHeight, contact } = vehicle;
  if (rollOut === null || !drivenLoad) return null;
  const friction = at(loads.grip);
  const radius = rollOut / (2 * Math.PI);
  const standing = friction * at(drivenLoad) * GRAVITY;
  if (!wheelbase || !centreHeight || contact === null) return standing * radius;
  const shift = (friction * at(centreHeight)) / at(wheelbase);
  // Every wheel that slows the vehicle is the driven one: F = μ N, and N shifts with F.
  const rear = contact !== 'front driven';
  return (rear ? standing / (1 + shift) : shift < 1 ? standing / (1 - shift) : standing) * radius;
}

/** The lesser of two ends of a torque, with its word. */
function least(torque: number, ...ends: readonly (readonly [number | null, 'grip' | 'clutch'])[]) {
  let found: { torque: number; capped: CasePoint['capped'] } = { torque, capped: null };
  for (const [end, word] of ends) if (end !== null && end < found.torque) found = { torque: end, capped: word };
  return found;
}

/**
 * Peaks that strength must stand once, for each gear: a start with a shock, a tyre that had spun and grips again, the closed engine held back by the vehicle;
 * then the brake on the drive, and a drive that locks while the tyre skids. Each takes the greatest that engine side or inertia side can deliver;
 * the clutch ends the one, the tyre’s grip with the highest friction and the full load the other.
 */
export function rareCases(curve: EngineCurve, model: Model, at: At, train: Train): CasePoint[] {
  const { engine, loads, shafts } = model;
  const { boxRatios, boxEfficiency, path, pathEfficiency, rollOut } = train;
  const clutch = engine.clutchTorque ? at(engine.clutchTorque) : null;
  const grip = gripTorque(model, at, rollOut);
  const peak = curve.peakTorque;
  const cases: CasePoint[] = [];
  boxRatios.forEach((box, gear) => {
    const name = `${ordinal(gear + 1)} gear`;
    const gripAtCrank = grip === null ? null : grip / (box * boxEfficiency * path * pathEfficiency);
    const base = { gear, kind: 'rare', brake: null } as const;
    if (gear === 0) {
      const start = least(at(loads.shock) * peak.torque, [clutch, 'clutch'], [gripAtCrank, 'grip']);
      cases.push({
        ...base,
        id: '1/start',
        name: 'start in 1st gear with a shock',
        engineSpeed: peak.speed,
        engineTorque: start.torque,
        capped: start.capped,
      });
    }
    if (clutch !== null) {
      const again = least(clutch, [gripAtCrank, 'grip']);
      cases.push({
        ...base,
        id: `${gear + 1}/grips-again`,
        name: `${name}, a spinning tyre grips again`,
        engineSpeed: peak.speed,
        engineTorque: again.torque,
        capped: again.capped ?? 'clutch',
      });
    }
    if (engine.drag) {
      const held = least(at(engine.drag), [
        grip === null ? null : (grip * boxEfficiency * pathEfficiency) / (box * path),
        'grip',
      ]);
      cases.push({
        ...base,
        id: `${gear + 1}/overrun`,
        name: `${name}, throttle closed`,
        engineSpeed: curve.redline,
        engineTorque: -held.torque,
        capped: held.capped,
      });
    }
  });
  const first = boxRatios[0];
  const skid = skidTorque(model, at, rollOut);
  if (skid !== null && first !== undefined)
    cases.push({
      id: 'locked',
      name: 'the drive locks and the tyre skids',
      gear: 0,
      kind: 'rare',
      engineSpeed: curve.idle,
      engineTorque: -(skid * boxEfficiency * pathEfficiency) / (first * path),
      capped: 'grip',
      brake: null,
    });
  const { brake } = loads;
  if (brake) {
    const [shaftId = '', seat = ''] = brake.at.split('/');
    const shaft = shafts.findIndex(({ id }) => id === shaftId);
    if (shaft >= 0)
      cases.push({
        id: 'brake',
        name: 'brake on the drive, clutch open',
        gear: 0,
        kind: 'rare',
        engineSpeed: curve.idle,
        engineTorque: 0,
        capped: null,
        brake: { shaft, seat, torque: brake.torque },
      });
  }
  return cases;
}
