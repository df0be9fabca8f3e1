import { gyroscopicMoment } from '@oddwheel/mechanics/vehicle/gyroscopic-moment';
import { roadLoad } from '@oddwheel/mechanics/vehicle/road-load';
import { tyreGrowth } from '@oddwheel/mechanics/vehicle/tyre-growth';
import { rowInSi } from '@oddwheel/tables/table';
import { TYRE_GROWTH } from '@oddwheel/tables/tyre-growth';
import { reuse } from '../../model/cache.ts';
import { ordinal } from '../cases.ts';
import type { CornerResult, Evaluation } from '../evaluation.ts';
import { spreadOf } from '../spread.ts';
import type { Spread } from '../types.ts';
import { gripAt } from './balance.ts';
import { cycleTitle } from './cycle.ts';
import { massIn, outputOf, pullOf, SHIFT_TIME, sprintTarget } from './drive.ts';
import { ladenMass, loadOf, NEEDS, wholeEfficiency } from './ground.ts';
import type { RoadParts } from './parts.ts';
import type { Tried } from './tried.ts';
import type { GearPull, Grip, Known, LoadPoint, NotKnown, Road, SpeedPull, Top } from './types.ts';

/** Rate at which the axle is swung round for the gyroscopic moment, rad/s: a twelfth of a turn in a second, as in a quick lean or swerve. */
const TURN_RATE = Math.PI / 6;
/** Places of a curve for drawing. */
const PLACES = 24;

const notKnown = ({ missing, says }: NotKnown): NotKnown => ({ missing, says });
const governs = (word: string): Grip['governs'] => (word === 'front lift' ? 'front lift' : 'grip');

/** Everything of the road but what hangs on the slider; kept as long as the model stays the same. */
function standing(evaluation: Evaluation): Omit<Road, 'gyroscopic'> {
  const { road } = evaluation.middle.scene;
  const { model } = road.ground;
  const of = (read: (parts: RoadParts) => number | null | undefined): Spread => {
    const spread = spreadOf(evaluation, (result: CornerResult) => read(result.scene.road));
    return spread ?? { value: Number.NaN, lo: Number.NaN, hi: Number.NaN };
  };
  /** Spreads of a part's outputs, or why it is not known. */
  const known = <O, T>(
    part: (parts: RoadParts) => Tried<unknown, O> | null,
    make: (output: O, spread: (pick: (output: O) => number) => Spread) => T,
  ): Known<T> | null => {
    const tried = part(road);
    if (!tried) return null;
    if (!tried.ok) return notKnown(tried);
    const spread = (pick: (output: O) => number) =>
      of((parts) => {
        const output = outputOf(part(parts));
        return output && pick(output);
      });
    return make(tried.output, spread);
  };
  const must = <T>(part: Known<T> | null): Known<T> => part ?? { missing: [], says: '' };
  return {
    laden: of(({ ground }) => ladenMass(ground)),
    pulls: pullsOf(road, of),
    load: loadPoints(road),
    grip: must(
      known(
        (parts) => parts.grip(),
        (output, spread) =>
          gripOf(
            road,
            governs(output.governs),
            spread((o) => o.force),
          ),
      ),
    ),
    lift: known(
      (parts) => parts.lift(),
      (_, spread) => ({
        acceleration: spread((o) => o.liftAcceleration),
        force: spread((o) => o.liftForce),
        friction: spread((o) => o.frictionNeeded),
      }),
    ),
    sideways: known(
      (parts) => parts.sideways(),
      (_, spread) => ({ acceleration: spread((o) => o.acceleration), parts: spread((o) => o.parts) }),
    ),
    top: must(
      known(
        (parts) => parts.top(),
        (output, spread): Top => ({
          speed: spread((o) => o.speed),
          gear: String(output.gear),
          limit: output.limit === 'power' ? 'power' : 'engine speed',
          surplus: output.surplus,
          tyreGrowth: growthAt(road, output.speed),
        }),
      ),
    ),
    sprint: must(
      known(
        (parts) => parts.sprint(),
        (output, spread) => ({
          to: sprintTarget(road.ground, road.drive()),
          time: spread((o) => o.time),
          distance: spread((o) => o.distance),
          shifts: output.shifts,
          lastGear: String(output.lastGear),
          shiftTime: SHIFT_TIME,
          gripKnown: road.grip().ok,
          points: output.traceSpeeds.map((speed, k) => ({
            time: output.traceTimes[k] ?? Number.NaN,
            speed,
            distance: output.traceDistances[k] ?? Number.NaN,
          })),
        }),
      ),
    ),
    clutch: known(
      (parts) => parts.clutch(),
      (_, spread) => ({
        energy: spread((o) => o.energy),
        referenceEnergy: spread((o) => o.referenceEnergy),
        ratio: spread((o) => o.energyRatio),
        time: spread((o) => o.time),
        syncSpeed: spread((o) => o.syncSpeed),
      }),
    ),
    speedometer: known(
      (parts) => parts.speedometer(),
      (output, spread) => ({
        indicated: output.speed / output.factor,
        speed: spread((o) => o.speed),
        factor: spread((o) => o.factor),
        mostIndicated: spread((o) => o.mostIndicated),
        verdict: output.verdict,
      }),
    ),
    cycle: known(
      (parts) => parts.cycle(),
      (output, spread) => ({
        cycle: model.targets.cycle ?? '',
        title: cycleTitle(model.targets.cycle ?? ''),
        duration: output.duration,
        distance: output.distance,
        gearTimes: output.gearTimes.map((time, gear) => ({
          name: gear === 0 ? 'standing or clutch open' : `${ordinal(gear)} gear`,
          time,
        })),
        meanEngineSpeed: spread((o) => o.meanEngineSpeed),
        energy: spread((o) => o.driveEnergy),
        missed: spread((o) => o.missed),
        missedAt: output.missedAt,
        upSpeeds: outputOf(road.rule())?.upSpeeds ?? [],
      }),
    ),
  };
}

function pullsOf(
  road: RoadParts,
  of: (read: (parts: RoadParts) => number | null | undefined) => Spread,
): Road['pulls'] {
  const drive = road.drive();
  if (!drive.ok) return notKnown(drive);
  const gears = drive.drive.ratios.map((ratio, gear): GearPull => {
    const at = (row: 'first' | 'peak' | 'last') =>
      of((parts) => {
        const found = parts.drive();
        if (!found.ok) return null;
        const { torques } = found.drive;
        const torque = row === 'first' ? torques[0] : row === 'last' ? torques.at(-1) : found.engine.peakTorque.torque;
        return pullOf(found.drive, gear, torque ?? Number.NaN);
      });
    const byPull = road.grade(gear);
    const byGrip = road.gripGrade();
    const held = byGrip !== null && !(byPull.ok && byPull.output.grade <= byGrip);
    return {
      gear: String(gear + 1),
      name: ordinal(gear + 1),
      atIdle: at('first'),
      atPeakTorque: at('peak'),
      atRedline: at('last'),
      massFactor: of((parts) => outputOf(massIn(parts.ground, gear))?.massFactor),
      grade: road.steepest(gear) === null ? null : of((parts) => parts.steepest(gear)),
      gradeEnds: held ? governs(outputOf(road.grip())?.governs ?? '') : 'pull',
      curve: curveOf(drive.drive, drive.engine.torqueAt, ratio, gear),
    };
  });
  return { gears, efficiency: of(({ ground }) => wholeEfficiency(ground)) };
}

function curveOf(
  drive: {
    readonly speeds: readonly number[];
    readonly ratios: readonly number[];
    readonly efficiency: number;
    readonly rollingRadius: number;
    readonly torques: readonly number[];
  },
  torqueAt: (speed: number) => number | null,
  ratio: number,
  gear: number,
): SpeedPull[] {
  const [low, high] = [drive.speeds[0] ?? 0, drive.speeds.at(-1) ?? 0];
  return Array.from({ length: PLACES + 1 }, (_, k) => low + ((high - low) * k) / PLACES).flatMap((speed) => {
    const torque = torqueAt(speed);
    return torque === null ? [] : [[(speed * drive.rollingRadius) / ratio, pullOf(drive, gear, torque)] as const];
  });
}

/** What resists from standstill to a tenth beyond the fastest that the gears allow. */
function loadPoints(road: RoadParts): Road['load'] {
  const drive = road.drive();
  if (!drive.ok) return notKnown(drive);
  const { speeds, ratios, rollingRadius } = drive.drive;
  const most = (1.1 * (speeds.at(-1) ?? 0) * rollingRadius) / Math.min(...ratios);
  const slope = road.climbSlope();
  const run = (speed: number, on: number) =>
    roadLoad.run({ ...loadOf(road.ground, on), speed, acceleration: 0, massFactor: 1 });
  const points = Array.from({ length: PLACES + 1 }, (_, k): LoadPoint => {
    const speed = (most * k) / PLACES;
    const level = run(speed, 0);
    return {
      speed,
      rolling: level.rolling,
      air: level.air,
      level: level.force,
      climb: slope === null ? null : run(speed, slope).force,
    };
  });
  return { points, climb: slope };
}

/** Grip at both ends of the friction, all else in the middle. */
function gripOf(road: RoadParts, first: Grip['governs'], force: Spread): Grip {
  const { ground } = road;
  const { friction, contact } = ground.model.vehicle;
  const end = (value: number) => {
    const at: typeof ground.at = (asked) => (asked === friction ? value : ground.at(asked));
    const found = outputOf(gripAt({ ...ground, at }, 0));
    return { friction: value, force: found?.force ?? Number.NaN, governs: governs(found?.governs ?? '') };
  };
  return {
    driven: contact === 'front driven' ? 'front' : 'rear',
    force,
    governs: first,
    low: end(friction.lo),
    high: end(friction.hi),
  };
}

const GROWTH = Object.keys(TYRE_GROWTH.rows).map((key) => rowInSi(TYRE_GROWTH, key));

/** Growth of the roll-out; null for a tyre that is not radial, and outside the speeds of the table. */
function growthAt({ ground }: RoadParts, speed: number): number | null {
  const rowSpeeds = GROWTH.map((row) => row.speed ?? Number.NaN);
  const [low, high] = [rowSpeeds[0] ?? 0, rowSpeeds.at(-1) ?? 0];
  const { tyre } = ground.model.wheel;
  if (ground.rollOut === null || !tyre?.includes('R') || speed < low || speed > high) return null;
  const rowGrowths = GROWTH.map((row) => row.growth ?? Number.NaN);
  return tyreGrowth.run({ rollOut: ground.rollOut, speed, rowSpeeds, rowGrowths }).growth;
}

/** Moment that the wheel asks for at the slider's speed while its axle is swung round. */
function gyroscopicOf(evaluation: Evaluation): Road['gyroscopic'] {
  const moment = spreadOf(evaluation, ({ scene }) => {
    if (scene.rollOut === null) return null;
    return gyroscopicMoment.run({
      inertia: scene.at(scene.model.vehicle.wheelInertia),
      speed: evaluation.here.roadSpeed,
      rollingRadius: scene.rollOut / (2 * Math.PI),
      turnRate: TURN_RATE,
    }).moment;
  });
  return moment ? { moment, turnRate: TURN_RATE } : { missing: [NEEDS.rollOut], says: '' };
}

/** What the vehicle does on the road. */
export function roadOf(evaluation: Evaluation): Road {
  const kept = reuse(evaluation.cache, 'road', [evaluation.model, evaluation.ends], () => standing(evaluation));
  return { ...kept, gyroscopic: gyroscopicOf(evaluation) };
}
