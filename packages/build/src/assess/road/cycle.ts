import { cycleRun } from '@oddwheel/mechanics/vehicle/cycle-run';
import { shiftSpeeds } from '@oddwheel/mechanics/vehicle/shift-speeds';
import { cycleTrace } from '@oddwheel/tables/cycle';
import { CYCLE_HWFET } from '@oddwheel/tables/cycle-hwfet';
import { CYCLE_NEDC, CYCLE_UDC } from '@oddwheel/tables/cycle-nedc';
import { CYCLE_UDDS } from '@oddwheel/tables/cycle-udds';
import { CYCLE_WMTC_PART1 } from '@oddwheel/tables/cycle-wmtc-part1';
import { CYCLE_WMTC_PART2 } from '@oddwheel/tables/cycle-wmtc-part2';
import { CYCLE_WMTC_PART3 } from '@oddwheel/tables/cycle-wmtc-part3';
import { type DriveOf, wheelsInertia } from './drive.ts';
import { type Ground, loadOf } from './ground.ts';
import { attempt, refused } from './tried.ts';

const CYCLES = new Map(
  [CYCLE_WMTC_PART1, CYCLE_WMTC_PART2, CYCLE_WMTC_PART3, CYCLE_UDC, CYCLE_NEDC, CYCLE_UDDS, CYCLE_HWFET].map(
    (cycle) => [cycle.id, cycle],
  ),
);

const TRACES = new Map<string, readonly number[]>();

/** Road speeds of a cycle, second by second; undefined for one that is no fixed trace. */
function traceOf(id: string): readonly number[] | undefined {
  const cycle = CYCLES.get(id);
  const trace = TRACES.get(id) ?? (cycle && cycleTrace(cycle));
  if (trace) TRACES.set(id, trace);
  return trace;
}

export const cycleTitle = (id: string): string => CYCLES.get(id)?.title ?? 'Moped cycle';

/** Rider that the shift rule counts with. */
const RULE_RIDER = 75;
/** A gear is held for at least so long, s, by the shift rule. */
const HOLD = 2;

/** Speeds at which gears are changed by the rule of the world motorcycle test; a single gear is never changed. */
export function ruleOf(ground: Ground, drive: DriveOf) {
  if (!drive.ok) return drive;
  const { peakPower, idle } = drive.engine;
  const { ratios, rollingRadius } = drive.drive;
  if (ratios.length < 2) return null;
  return attempt(
    shiftSpeeds.run,
    {
      ratedPower: peakPower.torque * peakPower.speed,
      kerbMass: ground.at(ground.model.vehicle.mass),
      riderMass: RULE_RIDER,
      ratedSpeed: peakPower.speed,
      idleSpeed: idle,
      ratios,
      rollingRadius,
    },
    'The shift rule would leave first gear below idle: the engine is too strong for its mass.',
  );
}

/** The driving cycle of the targets, run by the shift rule; null where none is named. */
export function cycleOf(ground: Ground, drive: DriveOf, rule: ReturnType<typeof ruleOf>) {
  const id = ground.model.targets.cycle;
  if (id === null) return null;
  if (!drive.ok) return drive;
  const trace = traceOf(id);
  if (!trace)
    return refused('This cycle is run at full throttle to the vehicle’s own top speed, so it has no speeds to follow.');
  if (rule && !rule.ok) return rule;
  const { upSpeeds, downSpeeds } = rule?.output ?? { upSpeeds: [], downSpeeds: [] };
  return attempt(
    cycleRun.run,
    {
      ...drive.drive,
      ...loadOf(ground),
      trace,
      step: 1,
      // The engine turns too, but its part changes with the gear; the wheels are what the ground always feels.
      turningMass: wheelsInertia(ground) / drive.drive.rollingRadius ** 2,
      idleSpeed: drive.engine.idle,
      upSpeeds,
      downSpeeds,
      holdTime: HOLD,
    },
    'The cycle cannot be run with these gears.',
  );
}
