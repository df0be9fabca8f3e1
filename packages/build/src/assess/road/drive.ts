import { acceleration } from '@oddwheel/mechanics/vehicle/acceleration';
import { clutchSlipEnergy } from '@oddwheel/mechanics/vehicle/clutch-slip-energy';
import { massFactor } from '@oddwheel/mechanics/vehicle/mass-factor';
import { topSpeed } from '@oddwheel/mechanics/vehicle/top-speed';
import { GRAVITY, type Ground, ladenMass, loadOf, NEEDS, rowsOf, wholeEfficiency } from './ground.ts';
import { attempt, lacks, refused, type Tried } from './tried.ts';

/** Time without pull in each shift; a loaded vehicle with a foot or hand lever (common practice, 0.2 to 1 s). */
export const SHIFT_TIME = 0.5;
/** Where no sprint is asked for, the run goes to this road speed. */
const USUAL_SPRINT = 30 / 3.6;

/** Engine, gears and wheel, as the methods take them. */
export interface Drive {
  readonly speeds: readonly number[];
  readonly torques: readonly number[];
  readonly ratios: readonly number[];
  readonly efficiency: number;
  readonly rollingRadius: number;
}

export function driveOf(ground: Ground) {
  const { engine, rollOut, model, overall } = ground;
  const missing = [...(engine ? [] : [NEEDS.curve]), ...(rollOut === null ? [NEEDS.rollOut] : [])];
  if (!engine || rollOut === null) return lacks(...missing);
  const rows = rowsOf(engine, model.engine.curve);
  if (rows.speeds.length < 2) return refused('The torque curve has fewer than two rows below the redline.');
  if (overall.some((ratio, k) => k > 0 && ratio >= (overall[k - 1] ?? 0)))
    return refused('Each gear must have a smaller ratio than the one below it.');
  const drive: Drive = {
    ...rows,
    ratios: overall,
    efficiency: wholeEfficiency(ground),
    rollingRadius: rollOut / (2 * Math.PI),
  };
  return { ok: true, drive, engine } as const;
}

export type DriveOf = ReturnType<typeof driveOf>;

/** Highest steady speed on the level. */
export function topOf(ground: Ground, drive: DriveOf) {
  if (!drive.ok) return drive;
  return attempt(
    topSpeed.run,
    { ...drive.drive, ...loadOf(ground) },
    'In no gear does full throttle hold a steady speed on the level.',
  );
}

/** Road speed that the run at full throttle ends at: the one asked for, else a usual one, or a little less than the gears allow. */
export function sprintTarget({ model, at }: Ground, drive: DriveOf): number {
  if (model.targets.sprintTo) return at(model.targets.sprintTo);
  if (!drive.ok) return USUAL_SPRINT;
  const { speeds, ratios, rollingRadius } = drive.drive;
  return Math.min(USUAL_SPRINT, (0.9 * (speeds.at(-1) ?? 0) * rollingRadius) / Math.min(...ratios));
}

/** Wheels as felt at the driven wheel. */
export const wheelsInertia = ({ model, at }: Pick<Ground, 'model' | 'at'>): number =>
  at(model.vehicle.wheelInertia) + at(model.vehicle.otherInertia);

/** Engine speed held in a start, kept inside the curve and below the shift. */
function slipSpeed({ model, at }: Ground, { speeds }: Drive): number {
  const [lowest, highest] = [speeds[0] ?? 0, speeds.at(-1) ?? 0];
  const wanted = model.engine.launch ? at(model.engine.launch) : lowest;
  return Math.min(Math.max(wanted, lowest), highest * (1 - 1e-6));
}

/**
 * From standstill at full throttle through the gears; each gear is held to the redline.
 * @param grip greatest pull that the tyre passes on; null where it is not known: then the whole weight is taken to stand on the driven wheel, which
 * is more than can be
 */
export function sprintOf(ground: Ground, drive: DriveOf, grip: number | null) {
  if (!drive.ok) return drive;
  const { at, model } = ground;
  const load = loadOf(ground);
  return attempt(
    acceleration.run,
    {
      ...drive.drive,
      ...load,
      wheelInertia: wheelsInertia(ground),
      engineInertia: at(model.vehicle.engineInertia),
      shiftSpeed: drive.drive.speeds.at(-1) ?? 0,
      shiftTime: SHIFT_TIME,
      slipSpeed: slipSpeed(ground, drive.drive),
      gripForce: grip ?? at(model.vehicle.friction) * load.mass * GRAVITY,
      fromSpeed: 0,
      toSpeed: sprintTarget(ground, drive),
    },
    'The pull, or the last gear, gives out before that speed.',
  );
}

/** Mass with all that turns, while a gear is in. */
export function massIn(ground: Ground, gear: number) {
  const { rollOut, at, model, overall } = ground;
  const ratio = overall[gear];
  if (rollOut === null || ratio === undefined) return lacks(NEEDS.rollOut);
  const radius = rollOut / (2 * Math.PI);
  const { wheelInertia, otherInertia, engineInertia } = model.vehicle;
  return attempt(
    massFactor.run,
    {
      mass: ladenMass(ground),
      wheelInertias: [at(wheelInertia), at(otherInertia)],
      wheelRadii: [radius, radius],
      drivenRadius: radius,
      partInertias: [at(engineInertia)],
      partRatios: [ratio],
      partEfficiencies: [wholeEfficiency(ground)],
      driver: 'engine' as const,
    },
    'The turning parts are out of range.',
  );
}

/** One level start in first gear, as the method takes it; null where it lies off the torque curve. */
function startOf(ground: Ground, { drive, engine }: Extract<DriveOf, { readonly ok: true }>) {
  const engineSpeed = slipSpeed(ground, drive);
  const torque = engine.torqueAt(engineSpeed);
  const ratio = ground.overall[0];
  if (torque === null || ratio === undefined) return null;
  const { rollingRadius, efficiency } = drive;
  const { mass, rollingCoefficient } = loadOf(ground);
  return {
    engineSpeed,
    torque,
    efficiency,
    ratio,
    rollingRadius,
    mass: mass + wheelsInertia(ground) / rollingRadius ** 2,
    load: mass * GRAVITY * rollingCoefficient,
    rollingCoefficient,
  };
}

/** Heat in the clutch in one level start in first gear, the vehicle against itself: no reference is needed. */
export function launchOf(ground: Ground, drive: DriveOf) {
  if (!drive.ok) return drive;
  const start = startOf(ground, drive);
  if (!start) return refused('The start lies off the torque curve.');
  const { rollingCoefficient: _, ...own } = start;
  return attempt(
    clutchSlipEnergy.run,
    {
      ...own,
      referenceRatio: own.ratio,
      referenceRadius: own.rollingRadius,
      referenceMass: own.mass,
      referenceLoad: own.load,
    },
    'The clutch does not start the vehicle on the level at the engine speed of a start.',
  );
}

/** Heat in the clutch in one level start in first gear, here and in the reference vehicle; null without one. */
export function clutchOf(ground: Ground, drive: DriveOf) {
  const { model, at } = ground;
  const { reference } = model;
  if (!reference) return null;
  if (!drive.ok) return reference.mass ? drive : { ...drive, missing: [...drive.missing, NEEDS.referenceMass] };
  if (!reference.mass) return lacks(NEEDS.referenceMass);
  const first = reference.overall[0];
  const start = startOf(ground, drive);
  if (!first || !start) return refused('The start lies off the torque curve.');
  const { rollingCoefficient, ...own } = start;
  const there = at(reference.mass);
  return attempt(
    clutchSlipEnergy.run,
    {
      ...own,
      referenceRatio: at(first),
      referenceRadius: at(reference.rollOut) / (2 * Math.PI),
      referenceMass: there,
      referenceLoad: there * GRAVITY * rollingCoefficient,
    },
    'The clutch does not start one of the two vehicles on the level at the engine speed of a start.',
  );
}

/** Pull at the ground of an engine torque in a gear. */
export const pullOf = ({ ratios, efficiency, rollingRadius }: Drive, gear: number, torque: number): number =>
  (torque * (ratios[gear] ?? Number.NaN) * efficiency) / rollingRadius;

/** The answer of a method, or null. */
export const outputOf = <I, O>(tried: Tried<I, O> | null): O | null => (tried?.ok ? tried.output : null);
