import { gradeability } from '@oddwheel/mechanics/vehicle/gradeability';
import { speedometerCorrection } from '@oddwheel/mechanics/vehicle/speedometer-correction';
import { type Cache, reuse } from '../../model/cache.ts';
import type { Value } from '../../model/model.ts';
import { type Corner, cornerKey } from '../uncertainty.ts';
import { gripAt, liftOf, sidewaysOf } from './balance.ts';
import { cycleOf, ruleOf } from './cycle.ts';
import { clutchOf, driveOf, outputOf, pullOf, sprintOf, topOf } from './drive.ts';
import { type Ground, loadOf, NEEDS } from './ground.ts';
import { driveValues } from './inputs.ts';
import { attempt, lacks, once } from './tried.ts';

/** What the vehicle does on the road, at one corner; each part is worked out when it is first asked for. */
export type RoadParts = ReturnType<typeof roadParts>;

/** Road speed at which a speedometer is compared where the build names no cruising speed. */
const SHOWN = 50 / 3.6;

/**
 * The road at one corner. Runs that cost are kept by the inputs they depend on, so that corners and edits that do not touch them do not run them again.
 */
export function roadParts(ground: Ground, corner: Corner, cache: Cache | null) {
  const { model, at, engine, rollOut, overall, stages } = ground;
  const { vehicle, targets } = model;
  const driven = once(() => driveValues(model));
  const kept = <T>(part: string, values: readonly (Value | null)[], compute: () => T): T => {
    const slot = `road:${part}:${cornerKey(corner, [...driven(), ...values])}`;
    const efficiencies = stages.map((stage) => stage.efficiency);
    const inputs = [engine, rollOut, ...overall, ...efficiencies, model.engine, vehicle, targets, model.wheel];
    return reuse(cache, slot, inputs, compute);
  };
  const load = [vehicle.mass, vehicle.payload, vehicle.rolling, vehicle.dragArea];
  const balance = [vehicle.friction, vehicle.wheelbase, vehicle.drivenLoad, vehicle.centreHeight];
  const wheels = [vehicle.wheelInertia, vehicle.otherInertia];

  const drive = once(() => kept('drive', [], () => driveOf(ground)));
  const top = once(() => kept('top', load, () => topOf(ground, drive())));
  const grip = once(() => gripAt(ground, 0));
  const climbSlope = (): number | null => (targets.climb ? Math.atan(at(targets.climb)) : null);
  const gripOnClimb = once(() => {
    const slope = climbSlope();
    return slope === null ? null : gripAt(ground, slope);
  });
  const sprint = once(() =>
    kept('sprint', [...load, ...balance, ...wheels, vehicle.engineInertia, model.engine.launch, targets.sprintTo], () =>
      sprintOf(ground, drive(), outputOf(grip())?.force ?? null),
    ),
  );
  const rule = once(() => ruleOf(ground, drive()));
  const cycle = once(() => kept('cycle', [...load, ...wheels], () => cycleOf(ground, drive(), rule())));
  /** Steepest slope at peak torque in a gear, by the pull alone. */
  const grade = (gear: number) => {
    const found = drive();
    if (!found.ok) return found;
    const { mass, rollingCoefficient, gravity, airDensity, dragArea } = loadOf(ground);
    const { speed, torque } = found.engine.peakTorque;
    const road = (speed * found.drive.rollingRadius) / (found.drive.ratios[gear] ?? Number.NaN);
    return attempt(
      gradeability.run,
      {
        force: pullOf(found.drive, gear, torque),
        air: 0.5 * airDensity * dragArea * road ** 2,
        mass,
        rollingCoefficient,
        gravity,
      },
      'The pull outdoes any slope.',
    );
  };
  /** Rise over run at which the tyre slips, or the front lifts: the greatest pull shrinks with the cosine of the slope. */
  const gripGrade = (): number | null => {
    const found = outputOf(grip());
    const { mass, rollingCoefficient, gravity } = loadOf(ground);
    return found && found.force / (mass * gravity) - rollingCoefficient;
  };
  /** Steepest slope in a gear, by pull and grip; null where neither ends it. A pull that outdoes any slope is ended by the grip, where that is known. */
  const steepest = (gear: number): number | null => {
    const tried = grade(gear);
    if (!tried.ok && !drive().ok) return null;
    const least = Math.min(
      tried.ok ? tried.output.grade : Number.POSITIVE_INFINITY,
      gripGrade() ?? Number.POSITIVE_INFINITY,
    );
    return Number.isFinite(least) ? least : null;
  };
  const speedometer = () => {
    const meter = model.speedometer;
    if (!meter) return null;
    if (rollOut === null) return lacks(NEEDS.rollOut);
    return attempt(
      speedometerCorrection.run,
      {
        indicated: targets.cruiseSpeed ? at(targets.cruiseSpeed) : SHOWN,
        designRatio: at(meter.madeRatio),
        designRollOut: at(meter.madeRollOut),
        ratio: meter.senses === 'driven wheel' ? 1 : stages.reduce((product, stage) => product * stage.ratio, 1),
        rollOut,
        allowance: 4 / 3.6,
      },
      'The speedometer’s ratio or roll-out is out of range.',
    );
  };
  return {
    ground,
    drive,
    top,
    grip,
    gripOnClimb,
    climbSlope,
    lift: once(() => liftOf(ground)),
    sideways: once(() => sidewaysOf(ground)),
    sprint,
    clutch: once(() => clutchOf(ground, drive())),
    rule,
    cycle,
    grade,
    gripGrade,
    steepest,
    speedometer: once(speedometer),
  };
}
