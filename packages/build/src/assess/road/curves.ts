import { acceleration } from '@oddwheel/mechanics/vehicle/acceleration';
import { roadLoad } from '@oddwheel/mechanics/vehicle/road-load';
import { ordinal } from '../cases.ts';
import type { Evaluation } from '../evaluation.ts';
import type { GearCurve, GradeLoad, RoadCurves, RunPoint } from './curve-types.ts';
import { outputOf, pullOf } from './drive.ts';
import { type Ground, loadOf } from './ground.ts';
import type { RoadParts } from './parts.ts';
import { attempt } from './tried.ts';
import type { Known, NotKnown, SpeedPull } from './types.ts';

/** Places of a curve. */
const PLACES = 48;
/** Slopes that roads are spoken of by, rise over run. */
const USUAL_GRADES = [0.02, 0.05, 0.1, 0.2, 0.3, 0.5] as const;
/** Slopes nearer to each other than this part of the steepest would draw as one. */
const APART = 1 / 6;
/** The run is drawn on to this part of the top speed: where power limits it, the rest takes for ever. */
const NEAR_TOP = 0.97;

const spaced = (low: number, high: number): number[] =>
  Array.from({ length: PLACES + 1 }, (_, k) => low + ((high - low) * k) / PLACES);

/**
 * Curves of pull, road load, engine speed and a run at full throttle, finer than the assessment holds them. Worked out when asked for.
 */
export function roadCurves({ middle }: Evaluation): Known<RoadCurves> {
  const { road } = middle.scene;
  const drive = road.drive();
  if (!drive.ok) return { missing: drive.missing, says: drive.says };
  const { model, at } = road.ground;
  const { engine } = drive;
  const { speeds, ratios, rollingRadius } = drive.drive;
  const [low, high] = [speeds[0] ?? 0, speeds.at(-1) ?? 0];
  const bare = ratios.map((ratio, k): Omit<GearCurve, 'shift'> => {
    const turns = ratio / rollingRadius;
    const pulls = spaced(low, high).flatMap((speed): SpeedPull[] => {
      const torque = engine.torqueAt(speed);
      return torque === null ? [] : [[(speed * rollingRadius) / ratio, pullOf(drive.drive, k, torque)]];
    });
    return {
      gear: String(k + 1),
      name: ordinal(k + 1),
      turns,
      pulls,
      atIdle: engine.idle / turns,
      atPeakTorque: engine.peakTorque.speed / turns,
      atPeakPower: engine.peakPower.speed / turns,
      atRedline: engine.redline / turns,
    };
  });
  const gears = bare.map((gear, k): GearCurve => {
    const next = bare[k + 1];
    return { ...gear, shift: next ? shiftBetween(gear, next, high) : null };
  });
  const { reference } = model;
  return {
    idle: engine.idle,
    redline: engine.redline,
    peakTorque: engine.peakTorque.speed,
    peakPower: engine.peakPower.speed,
    gears,
    loads: loadsOf(road, (1.1 * high * rollingRadius) / Math.min(...ratios)),
    reference: reference && {
      name: reference.name,
      gears: reference.overall.map((ratio, k) => ({
        name: ordinal(k + 1),
        turns: (at(ratio) * 2 * Math.PI) / at(reference.rollOut),
      })),
    },
    run: runOf(road),
  };
}

/** Where the next gear first pulls as much as this one, else the end of this one. */
function shiftBetween(
  gear: Omit<GearCurve, 'shift'>,
  next: Omit<GearCurve, 'shift'>,
  highest: number,
): GearCurve['shift'] {
  const at = (speed: number) => ({
    speed,
    engineBefore: speed * gear.turns,
    engineAfter: speed * next.turns,
  });
  const over = ([speed, pull]: SpeedPull): number | null => {
    const there = pullAt(next.pulls, speed);
    return there === null ? null : there - pull;
  };
  for (const [k, point] of gear.pulls.entries()) {
    const lead = over(point);
    if (lead === null || lead < 0) continue;
    const before = gear.pulls[k - 1];
    const lag = before ? over(before) : null;
    if (!before || lag === null) return at(point[0]);
    return at(before[0] + ((point[0] - before[0]) * -lag) / (lead - lag));
  }
  return at(highest / gear.turns);
}

/** Pull at a road speed, between the points of a curve; null beyond its ends. */
function pullAt(curve: readonly SpeedPull[], speed: number): number | null {
  const k = curve.findIndex(([at]) => at >= speed);
  const [here, before] = [curve[k], curve[k - 1]];
  if (!here) return null;
  if (!before) return here[0] === speed ? here[1] : null;
  return before[1] + ((here[1] - before[1]) * (speed - before[0])) / (here[0] - before[0]);
}

/** The level, the slope of the target, and the usual slopes between that first gear climbs. */
function loadsOf(road: RoadParts, most: number): GradeLoad[] {
  const slope = road.climbSlope();
  const wanted = slope === null ? null : Math.tan(slope);
  const steepest = road.steepest(0) ?? 0;
  const grades = wanted === null ? [0] : [0, wanted];
  for (const grade of USUAL_GRADES) {
    const near = grades.some((other) => Math.abs(other - grade) < APART * steepest);
    if (grade < steepest && !near) grades.push(grade);
  }
  const on = (grade: number): GradeLoad => ({
    grade,
    wanted: grade === wanted,
    points: spaced(0, most).map((speed) => [speed, loadAt(road.ground, Math.atan(grade), speed)]),
  });
  return grades.sort((a, b) => a - b).map(on);
}

const loadAt = (ground: Ground, slope: number, speed: number): number =>
  roadLoad.run({ ...loadOf(ground, slope), speed, acceleration: 0, massFactor: 1 }).force;

/** The sprint of the target, drawn on toward the top speed where the drive gets there. */
function runOf(road: RoadParts): RoadCurves['run'] {
  const sprint = road.sprint();
  const { model, at } = road.ground;
  const wanted = model.targets.sprintIn ? at(model.targets.sprintIn) : null;
  if (!sprint.ok) return refusal(sprint);
  const top = outputOf(road.top())?.speed ?? 0;
  const onward = attempt(
    acceleration.run,
    { ...sprint.input, toSpeed: Math.max(sprint.input.toSpeed, NEAR_TOP * top) },
    '',
  );
  const { traceSpeeds, traceTimes } = onward.ok ? onward.output : sprint.output;
  const points = traceSpeeds.map((speed, k): RunPoint => ({ time: traceTimes[k] ?? Number.NaN, speed }));
  return { points, wanted };
}

const refusal = ({ missing, says }: NotKnown): NotKnown => ({ missing, says });
