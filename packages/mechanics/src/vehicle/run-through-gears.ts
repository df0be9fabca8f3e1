import { integrate } from '../numerics/ode.ts';
import { integralsOf } from '../numerics/quadrature.ts';
import { findRoot } from '../numerics/root.ts';
import { type Drive, torqueAt } from './drive.ts';
import { type Load, steadyLoad } from './load.ts';

/** What a run through the gears needs, SI. */
export interface Run extends Load {
  readonly drive: Drive;
  readonly speeds: readonly number[];
  readonly ratios: readonly number[];
  readonly efficiency: number;
  readonly rollingRadius: number;
  readonly rollingMass: number;
  readonly engineInertia: number;
  readonly shiftSpeed: number;
  readonly shiftTime: number;
  readonly slipSpeed: number;
  readonly gripForce: number;
  readonly fromSpeed: number;
  readonly toSpeed: number;
}

interface Pulled {
  readonly time: number;
  readonly distance: number;
  readonly driveWork: number;
  readonly loadWork: number;
  readonly engineGain: number;
}

/** The run so far, for drawing. */
interface Trace {
  readonly speeds: number[];
  readonly times: number[];
  readonly distances: number[];
}

/** Wanted error of each integral as a part of it. */
const WITHIN = 1e-10;

/** Pull at the wheel and mass to be sped up, in a gear at a road speed. */
function gearAt(run: Run, ratio: number, slips: boolean, v: number): { pull: number; mass: number } {
  const { drive, rollingRadius, efficiency, slipSpeed, gripForce, rollingMass, engineInertia } = run;
  const engine = slips ? slipSpeed : (v * ratio) / rollingRadius;
  const pull = Math.min(gripForce, (torqueAt(drive, engine) * ratio * efficiency) / rollingRadius);
  const engineMass = slips ? 0 : (efficiency * ratio ** 2 * engineInertia) / rollingRadius ** 2;
  return { pull, mass: rollingMass + engineMass };
}

/** Ends of the spans, with those places added where the tyre begins or ends to hold the pull back: the slope has a kink there. */
function gripEnds(run: Run, ratio: number, places: readonly number[]): number[] {
  const { drive, rollingRadius, efficiency, gripForce } = run;
  const over = (v: number): number =>
    (torqueAt(drive, Math.max(run.slipSpeed, (v * ratio) / rollingRadius)) * ratio * efficiency) / rollingRadius -
    gripForce;
  return places.slice(1).flatMap((next, k) => {
    const here = places[k] as number;
    return over(here) * over(next) < 0 ? [findRoot(over, here, next), next] : [next];
  });
}

/** One gear from a speed to another, split where the curve has its corners and the clutch bites; each split is marked on the trace. */
function pullThrough(
  run: Run,
  gear: number,
  from: number,
  to: number,
  trace: Trace,
  stop: (message: string) => never,
): Pulled {
  const ratio = run.ratios[gear] as number;
  const bite = (run.slipSpeed * run.rollingRadius) / ratio;
  const corners = run.speeds
    .map((engine) => (engine * run.rollingRadius) / ratio)
    .concat(bite)
    .filter((corner) => corner > from && corner < to)
    .sort((a, b) => a - b);
  const ends = gripEnds(run, ratio, [from, ...corners, to]);
  const [startTime, startDistance] = [trace.times.at(-1) as number, trace.distances.at(-1) as number];
  let [time, distance, driveWork, loadWork, engineGain] = [0, 0, 0, 0, 0];
  let here = from;
  for (const next of ends) {
    const slips = next <= bite;
    // What the road and the pull do does not depend on time: speed is what is integrated over.
    const slopes = (v: number): readonly number[] => {
      const { pull, mass } = gearAt(run, ratio, slips, v);
      const load = steadyLoad(run, v);
      if (!(pull > load))
        stop(
          `Speed at the end: ${run.toSpeed} m/s is not reached; in gear ${gear + 1} at ${v} m/s the pull, ${pull} N, does not exceed the load, ${load} N.`,
        );
      const slow = mass / (pull - load);
      return [slow, slow * v, slow * v * pull, slow * v * load];
    };
    slopes(here);
    slopes(next);
    const [t = 0, s = 0, drive = 0, load = 0] = integralsOf(slopes, here, next, WITHIN);
    time += t;
    distance += s;
    driveWork += drive;
    loadWork += load;
    if (!slips) engineGain += ((gearAt(run, ratio, slips, next).mass - run.rollingMass) * (next ** 2 - here ** 2)) / 2;
    here = next;
    trace.speeds.push(here);
    trace.times.push(startTime + time);
    trace.distances.push(startDistance + distance);
  }
  return { time, distance, driveWork, loadWork, engineGain };
}

/** Rolling without pull for the time of a shift. */
function coast(
  run: Run,
  from: number,
  stop: (message: string) => never,
): { speed: number; distance: number; loadWork: number } {
  const slopes = (_: number, [v = 0]: readonly number[]): readonly number[] => {
    const load = steadyLoad(run, v);
    return [-load / run.rollingMass, v, load * v];
  };
  const [speed = 0, distance = 0, loadWork = 0] = integrate(slopes, 0, [from, 0, 0], run.shiftTime, {
    relative: 1e-12,
    absolute: 1e-13,
  });
  if (!(speed > 0))
    stop(
      `Speed at the end: ${run.toSpeed} m/s is not reached; the vehicle stands still within a shift at ${from} m/s.`,
    );
  return { speed, distance, loadWork };
}

/**
 * A run at full throttle from a speed to another, gear by gear.
 * @param stop called with a sentence when the end is not reached; must throw.
 */
export function runThroughGears(run: Run, stop: (message: string) => never) {
  const { ratios, rollingRadius, shiftSpeed, toSpeed, shiftTime, drive } = run;
  const gearEndSpeeds: number[] = [];
  const gearEndTimes: number[] = [];
  const gearTimes: number[] = [];
  const gearDistances: number[] = [];
  const engineGains: number[] = [];
  let [time, shiftDistance, driveWork, loadWork] = [0, 0, 0, 0];
  let here = run.fromSpeed;
  const trace: Trace = { speeds: [here], times: [0], distances: [0] };
  const last = ratios.length - 1;
  const endOf = (gear: number): number =>
    ((gear === last ? drive.highest : shiftSpeed) * rollingRadius) / (ratios[gear] as number);
  let gear = 0;
  while (gear < last && endOf(gear) <= here) gear++;
  for (;;) {
    const end = Math.min(toSpeed, endOf(gear));
    if (end < toSpeed && gear === last)
      stop(`Speed at the end: ${toSpeed} m/s is more than the last gear reaches, ${end} m/s.`);
    const pulled = pullThrough(run, gear, here, end, trace, stop);
    time += pulled.time;
    driveWork += pulled.driveWork;
    loadWork += pulled.loadWork;
    gearTimes.push(pulled.time);
    gearDistances.push(pulled.distance);
    engineGains.push(pulled.engineGain);
    gearEndSpeeds.push(end);
    gearEndTimes.push(time);
    if (end === toSpeed) break;
    const rolled = coast(run, end, stop);
    time += shiftTime;
    shiftDistance += rolled.distance;
    loadWork += rolled.loadWork;
    here = rolled.speed;
    trace.speeds.push(here);
    trace.times.push(time);
    trace.distances.push((trace.distances.at(-1) as number) + rolled.distance);
    if (here >= toSpeed)
      stop(`Speed at the end: ${toSpeed} m/s is passed by rolling downhill within a shift, not under pull.`);
    do gear++;
    while (gear < last && endOf(gear) <= here);
  }
  return {
    time,
    distance: gearDistances.reduce((total, part) => total + part, 0) + shiftDistance,
    shifts: gearTimes.length - 1,
    lastGear: gear + 1,
    gearEndSpeeds,
    gearEndTimes,
    driveWork,
    loadWork,
    gearTimes,
    gearDistances,
    engineGains,
    shiftDistance,
    traceSpeeds: trace.speeds,
    traceTimes: trace.times,
    traceDistances: trace.distances,
  };
}
