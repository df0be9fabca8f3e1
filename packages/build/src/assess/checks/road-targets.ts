import { acceleration } from '@oddwheel/mechanics/vehicle/acceleration';
import { cycleRun } from '@oddwheel/mechanics/vehicle/cycle-run';
import { gripLimit } from '@oddwheel/mechanics/vehicle/grip-limit';
import { roadLoad } from '@oddwheel/mechanics/vehicle/road-load';
import { shiftSpeeds } from '@oddwheel/mechanics/vehicle/shift-speeds';
import { topSpeed } from '@oddwheel/mechanics/vehicle/top-speed';
import { tractiveForce } from '@oddwheel/mechanics/vehicle/tractive-force';
import { formatQuantity } from '@oddwheel/quantity/format';
import type { Model, Value } from '../../model/model.ts';
import type { Used } from '../geometry/types.ts';
import { cycleTitle } from '../road/cycle.ts';
import { loadOf } from '../road/ground.ts';
import type { Tried } from '../road/tried.ts';
import { named, overallOf } from './brief.ts';
import { type Check, type Outcome, oneSubject, type Scene } from './check.ts';
import { measured } from './measured.ts';

const TARGETS = '/brief/targets';
const VEHICLE = '/brief/vehicle';
const target = { reserve: 1, from: 'a target is met or not' } as const;

/** Where a load's inputs come from. */
const LOAD_ORIGINS = {
  mass: `${VEHICLE}/mass and ${VEHICLE}/payload`,
  rollingCoefficient: `${VEHICLE}/rolling`,
  dragArea: `${VEHICLE}/dragArea`,
} as const;
/** Where a drive's inputs come from. */
const DRIVE_ORIGINS = {
  speeds: '/brief/engine/curve, up to the redline',
  torques: '/brief/engine/curve',
  ratios: 'product of primary, gear and stages',
  efficiency: 'product of all efficiencies from crank to wheel',
  rollingRadius: '/brief/wheel/rollOut over 2 π',
} as const;

/** Inputs that the whole drive and the load on the level hang on. */
function driveUses({ engine, wheel, stages, vehicle }: Model): Value[] {
  const drive = [engine.redline, engine.torqueBand, engine.primary, ...engine.gears, engine.boxEfficiency];
  const load = [vehicle.mass, vehicle.payload, vehicle.rolling, vehicle.dragArea];
  return named(...drive, ...stages.map((stage) => stage.efficiency), wheel.rollOut, ...load);
}

/** Inputs that the balance over the wheels hangs on. */
export const balanceUses = ({ vehicle }: Model): Value[] =>
  named(vehicle.mass, vehicle.payload, vehicle.wheelbase, vehicle.drivenLoad, vehicle.centreHeight, vehicle.friction);

/** A part that is not known, as an outcome: missing inputs, or a plain no with its reason. */
export function notRun(
  tried: Extract<Tried<unknown, unknown>, { ok: false }>,
  says: (why: string) => string,
  uses: readonly Value[],
): Outcome {
  if (tried.missing.length > 0) return { kind: 'unknown', missing: tried.missing };
  return { kind: 'plain', holds: false, says: () => says(tried.says), uses, used: () => [] };
}

/** Pull of first gear at peak torque, and how it was found. */
export function firstPull(scene: Scene): { readonly force: number; readonly used: () => readonly Used[] } | null {
  const drive = scene.road.drive();
  if (!drive.ok || scene.rollOut === null) return null;
  const overall = overallOf(scene, 0);
  const input = {
    torque: drive.engine.peakTorque.torque,
    overallRatio: overall.ratio,
    efficiency: drive.drive.efficiency,
    rollOut: scene.rollOut,
  };
  const output = tractiveForce.run(input);
  const origins = {
    torque: '/brief/engine',
    overallRatio: 'above',
    efficiency: DRIVE_ORIGINS.efficiency,
    rollOut: '/brief/wheel/rollOut',
  };
  return { force: output.force, used: () => [overall.used, { method: tractiveForce, input, output, origins }] };
}

/** What the slope of the target asks for at steady speed, and how it was found. */
function climbLoad(scene: Scene, slope: number, speed: number): { readonly force: number; readonly used: Used } {
  const input = { ...loadOf(scene.road.ground, slope), speed, acceleration: 0, massFactor: 1 };
  const output = roadLoad.run(input);
  const origins = { ...LOAD_ORIGINS, slope: `${TARGETS}/climb`, speed: 'at peak torque in first gear' };
  return { force: output.force, used: { method: roadLoad, input, output, origins } };
}

const climbSubject = (model: Model) => (model.targets.climb ? oneSubject(`${TARGETS}/climb`, 'Target')(model) : []);

/** First gear at peak torque holds a steady speed on the slope of the target. */
export const climb: Check = {
  id: 'target.climb',
  title: 'pull for the slope to climb',
  consequence: 'misses a target',
  wanted: target,
  atWorst: 'thin',
  perCase: false,
  onRoad: true,
  subjects: climbSubject,
  run: (scene) => {
    const wanted = scene.model.targets.climb;
    const slope = scene.road.climbSlope();
    const drive = scene.road.drive();
    if (!wanted || slope === null) return null;
    if (!drive.ok) return notRun(drive, (why) => why, []);
    const pull = firstPull(scene);
    if (!pull) return null;
    const speed = (drive.engine.peakTorque.speed * drive.drive.rollingRadius) / (drive.drive.ratios[0] ?? Number.NaN);
    const load = climbLoad(scene, slope, speed);
    return measured(
      { name: 'asked for', value: load.force, kind: 'force', use: 'force' },
      { name: 'first gear at peak torque', value: pull.force, kind: 'force', use: 'force' },
      () =>
        `A slope of ${scene.show('percent', scene.at(wanted))} asks for ${scene.show('force', load.force)}, and first gear at peak torque pulls ${scene.show('force', pull.force)}.`,
      named(wanted, ...driveUses(scene.model)),
      () => [...pull.used(), load.used],
      { capacity: 'above', demand: 'above' },
    );
  },
};

/** The tyre passes on the pull that the slope asks for. */
export const climbGrip: Check = {
  id: 'target.climb-grip',
  title: 'grip for the slope to climb',
  consequence: 'misses a target',
  wanted: target,
  atWorst: 'thin',
  perCase: false,
  onRoad: true,
  subjects: climbSubject,
  run: (scene) => {
    const wanted = scene.model.targets.climb;
    const slope = scene.road.climbSlope();
    const grip = scene.road.gripOnClimb();
    if (!wanted || slope === null || !grip) return null;
    if (!grip.ok) return notRun(grip, (why) => why, []);
    const load = climbLoad(scene, slope, 0);
    const { force, governs } = grip.output;
    return measured(
      { name: 'asked for', value: load.force, kind: 'force', use: 'force' },
      { name: 'passed on', value: force, kind: 'force', use: 'force' },
      () =>
        `A slope of ${scene.show('percent', scene.at(wanted))} asks for ${scene.show('force', load.force)}; ${governs === 'grip' ? 'the tyre slips' : 'the front lifts'} at ${scene.show('force', force)}.`,
      named(wanted, ...balanceUses(scene.model), scene.model.vehicle.rolling),
      () => [
        { ...load.used, origins: { ...load.used.origins, speed: 'crawling' } },
        {
          method: gripLimit,
          input: grip.input,
          output: grip.output,
          origins: { ...BALANCE_ORIGINS, slope: wanted.address },
        },
      ],
      { capacity: 'above', demand: 'above' },
    );
  },
};

/** Where the inputs of a balance over the wheels come from. */
export const BALANCE_ORIGINS = {
  mass: LOAD_ORIGINS.mass,
  wheelbase: `${VEHICLE}/wheelbase`,
  aheadOfRear: `${VEHICLE}/drivenLoad over the laden mass, times the wheelbase`,
  height: `${VEHICLE}/centreHeight`,
  drivenAxle: `${VEHICLE}/contact`,
  share: 'both wheels of a pair pull alike',
  friction: `${VEHICLE}/friction`,
} as const;

/** The engine holds the wanted top speed against rolling and air. */
export const reach: Check = {
  id: 'target.reach',
  title: 'top speed against rolling and air',
  consequence: 'misses a target',
  wanted: target,
  atWorst: 'thin',
  perCase: false,
  onRoad: true,
  subjects: (model) => (model.targets.topSpeed ? oneSubject(`${TARGETS}/topSpeed`, 'Target')(model) : []),
  run: (scene) => {
    const wanted = scene.model.targets.topSpeed;
    if (!wanted) return null;
    const top = scene.road.top();
    const uses = named(wanted, ...driveUses(scene.model));
    if (!top.ok) return notRun(top, (why) => why, uses);
    const { speed, gear, limit } = top.output;
    const limited = limit === 'power' ? 'pull and road load meet there' : 'the engine turns no faster';
    return measured(
      { name: 'wanted', value: scene.at(wanted), kind: 'speed', use: 'speed' },
      { name: 'held on the level', value: speed, kind: 'speed', use: 'speed' },
      () =>
        `On the level it holds ${scene.show('speed', speed)} in gear ${gear}, where ${limited}; ${scene.show('speed', scene.at(wanted))} is wanted.`,
      uses,
      () => [
        { method: topSpeed, input: top.input, output: top.output, origins: { ...DRIVE_ORIGINS, ...LOAD_ORIGINS } },
      ],
      { capacity: 'above', demand: wanted.address },
    );
  },
};

/** From standstill to the wanted speed in the wanted time. */
export const sprint: Check = {
  id: 'target.sprint',
  title: 'time to speed up',
  consequence: 'misses a target',
  wanted: target,
  atWorst: 'thin',
  perCase: false,
  onRoad: true,
  subjects: ({ targets }) =>
    targets.sprintTo || targets.sprintIn
      ? [{ address: `${TARGETS}/${targets.sprintIn ? 'sprintIn' : 'sprintTo'}`, element: 'Target', stage: null }]
      : [],
  run: (scene) => {
    const { targets, engine, vehicle } = scene.model;
    const { sprintTo, sprintIn } = targets;
    if (!sprintTo || !sprintIn)
      return {
        kind: 'unknown',
        missing: [
          sprintTo
            ? { address: `${TARGETS}/sprintIn`, says: 'the time to reach the speed in' }
            : { address: `${TARGETS}/sprintTo`, says: 'the speed to reach from standstill' },
        ],
      };
    const run = scene.road.sprint();
    const inertias = [vehicle.wheelInertia, vehicle.otherInertia, vehicle.engineInertia];
    const grip = scene.road.grip().ok;
    const uses = named(sprintTo, sprintIn, engine.launch, ...driveUses(scene.model), ...inertias, vehicle.friction);
    const to = scene.show('speed', scene.at(sprintTo));
    if (!run.ok) return notRun(run, () => `Full throttle does not bring it to ${to}: the pull gives out before.`, uses);
    const { time, distance, shifts } = run.output;
    const seconds = (si: number) => formatQuantity(si, 'time', 's');
    return measured(
      { name: 'time', value: time, kind: 'time', use: 'time' },
      { name: 'wanted within', value: scene.at(sprintIn), kind: 'time', use: 'time' },
      () =>
        `It reaches ${to} from standstill in ${seconds(time)} over ${formatQuantity(distance, 'length', 'm')}, with ${shifts === 1 ? 'one shift' : `${shifts} shifts`}; ${seconds(scene.at(sprintIn))} is wanted.${grip ? '' : ' Grip is not known, so the tyre is taken not to slip.'}`,
      uses,
      () => [
        {
          method: acceleration,
          input: run.input,
          output: run.output,
          origins: {
            ...DRIVE_ORIGINS,
            ...LOAD_ORIGINS,
            wheelInertia: `${vehicle.wheelInertia.address} and ${vehicle.otherInertia.address}`,
            engineInertia: vehicle.engineInertia.address,
            shiftSpeed: 'last speed of the curve, or the redline',
            slipSpeed: '/brief/engine/launch',
            gripForce: grip ? 'vehicle.gripLimit' : 'friction times the whole weight',
            toSpeed: sprintTo.address,
          },
        },
      ],
      { capacity: sprintIn.address, demand: 'above' },
    );
  },
};

/** The engine follows every second of the driving cycle. */
export const cycle: Check = {
  id: 'road.cycle',
  title: 'driving cycle',
  consequence: 'misses a target',
  wanted: target,
  atWorst: 'thin',
  perCase: false,
  onRoad: true,
  subjects: (model) => (model.targets.cycle === null ? [] : oneSubject(`${TARGETS}/cycle`, 'Target')(model)),
  run: (scene) => {
    const { vehicle, targets, engine } = scene.model;
    const run = scene.road.cycle();
    if (!run) return null;
    const uses = named(engine.idle, ...driveUses(scene.model), vehicle.wheelInertia, vehicle.otherInertia);
    const title = cycleTitle(targets.cycle ?? '');
    if (!run.ok)
      return run.missing.length > 0
        ? { kind: 'unknown', missing: run.missing }
        : { kind: 'unknown', missing: [{ address: `${TARGETS}/cycle`, says: `another cycle (${run.says})` }] };
    const { missed, missedAt, duration } = run.output;
    const rule = scene.road.rule();
    return {
      kind: 'plain',
      holds: missed === 0,
      says: () =>
        missed === 0
          ? `${title}: the engine follows all ${duration} s.`
          : `${title}: the engine cannot follow ${missed} of ${duration} s, first at ${missedAt[0]} s.`,
      uses,
      used: () => [
        ...(rule?.ok
          ? [
              {
                method: shiftSpeeds,
                input: rule.input,
                output: rule.output,
                origins: {
                  kerbMass: vehicle.mass.address,
                  ratios: DRIVE_ORIGINS.ratios,
                  idleSpeed: engine.idle.address,
                },
              },
            ]
          : []),
        {
          method: cycleRun,
          input: run.input,
          output: run.output,
          origins: {
            ...DRIVE_ORIGINS,
            ...LOAD_ORIGINS,
            trace: targets.cycle ?? '',
            turningMass: `${vehicle.wheelInertia.address} and ${vehicle.otherInertia.address}, over the rolling radius squared`,
            upSpeeds: 'above',
            downSpeeds: 'above',
          },
        },
      ],
    };
  },
};
