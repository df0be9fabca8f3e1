import { findRoot } from '@oddwheel/mechanics/numerics/root';
import { roadLoad } from '@oddwheel/mechanics/vehicle/road-load';
import { ordinal } from '../assess/cases.ts';
import type { Scene } from '../assess/checks/check.ts';
import { loadOf } from '../assess/road/ground.ts';
import type { Clash, TargetKey, TargetWindow, Windows } from './types.ts';

/** A tenth more or less engine speed at the same road speed still feels the same (common practice). */
const FEEL = 0.1;
/** Ratios between which a climb is looked for. */
const REACH = [1e-3, 1e4] as const;

type Tried = TargetWindow | { readonly open: string };
type Make = (scene: Scene, rollOut: number) => Tried | null;

const CURVE = 'It needs the torque curve, or peak torque and peak power with their speeds.';

/** Box ratio of the last gear: the smallest. */
const longest = (scene: Scene): number => Math.min(...scene.boxRatios);

const cruise: Make = (scene, rollOut) => {
  const { cruiseSpeed, cruiseEngine } = scene.model.targets;
  if (!cruiseSpeed && !cruiseEngine) return null;
  if (!cruiseSpeed || !cruiseEngine)
    return { open: 'It needs both the cruising speed and the engine speed wanted there.' };
  const turns = (2 * Math.PI * scene.at(cruiseSpeed)) / rollOut;
  return {
    key: 'cruise',
    address: cruiseEngine.address,
    says: `${scene.show('angularSpeed', cruiseEngine.lo)} to ${scene.show('angularSpeed', cruiseEngine.hi)} at ${scene.show('speed', scene.at(cruiseSpeed))} in ${ordinal(scene.boxRatios.length)} gear`,
    least: cruiseEngine.lo / turns / longest(scene),
    most: cruiseEngine.hi / turns / longest(scene),
  };
};

const topSpeed: Make = (scene, rollOut) => {
  const { topSpeed: wanted } = scene.model.targets;
  if (!wanted) return null;
  if (!scene.engine) return { open: CURVE };
  return {
    key: 'top speed',
    address: wanted.address,
    says: `${scene.show('speed', scene.at(wanted))} no later than at the redline, ${scene.show('angularSpeed', scene.engine.redline)}`,
    least: 0,
    most: (scene.engine.redline * rollOut) / (2 * Math.PI * scene.at(wanted)) / longest(scene),
  };
};

/** Pull at the ground in first gear at peak torque, for each unit of path ratio. */
function pullEach(scene: Scene, rollOut: number): number | null {
  const drive = scene.road.drive();
  if (!drive.ok) return null;
  return (
    (drive.engine.peakTorque.torque * (scene.boxRatios[0] ?? Number.NaN) * drive.drive.efficiency * 2 * Math.PI) /
    rollOut
  );
}

const pull: Make = (scene, rollOut) => {
  const { pull: wanted } = scene.model.targets;
  if (!wanted) return null;
  const each = pullEach(scene, rollOut);
  if (each === null) return { open: CURVE };
  return {
    key: 'pull',
    address: wanted.address,
    says: `${scene.show('force', scene.at(wanted))} at the wheel in 1st gear at peak torque`,
    least: scene.at(wanted) / each,
    most: Number.POSITIVE_INFINITY,
  };
};

const climb: Make = (scene, rollOut) => {
  const { climb: wanted } = scene.model.targets;
  const slope = scene.road.climbSlope();
  if (!wanted || slope === null) return null;
  const [each, drive] = [pullEach(scene, rollOut), scene.road.drive()];
  if (each === null || !drive.ok) return { open: CURVE };
  const surplus = (path: number): number => {
    const speed =
      ((drive.engine.peakTorque.speed / path / (scene.boxRatios[0] ?? Number.NaN)) * rollOut) / (2 * Math.PI);
    return (
      each * path - roadLoad.run({ ...loadOf(scene.road.ground, slope), speed, acceleration: 0, massFactor: 1 }).force
    );
  };
  if (surplus(REACH[1]) < 0) return { open: 'No ratio pulls it up this slope.' };
  return {
    key: 'climb',
    address: wanted.address,
    says: `a slope of ${scene.show('percent', scene.at(wanted))} in 1st gear at peak torque`,
    least: surplus(REACH[0]) >= 0 ? REACH[0] : findRoot(surplus, REACH[0], REACH[1]),
    most: Number.POSITIVE_INFINITY,
  };
};

const feel: Make = (scene, rollOut) => {
  const { reference } = scene.model;
  if (!reference) return null;
  const wanted = reference.overall.flatMap((overall, gear) => {
    const box = scene.boxRatios[gear];
    return box === undefined ? [] : [((scene.at(overall) / scene.at(reference.rollOut)) * rollOut) / box];
  });
  const [first = 0, last = 0] = [Math.max(...wanted), Math.min(...wanted)];
  const [least, most] = [first / (1 + FEEL), last * (1 + FEEL)];
  if (least > most)
    return { open: `The gears of ${reference.name} are stepped too differently for one ratio to suit them all.` };
  return {
    key: 'feel',
    address: '/brief/reference',
    says: `engine speed as in ${reference.name} in each gear, within ${scene.show('percent', FEEL)}`,
    least,
    most,
  };
};

const MAKERS: readonly (readonly [TargetKey, Make])[] = [
  ['cruise', cruise],
  ['top speed', topSpeed],
  ['pull', pull],
  ['climb', climb],
  ['feel', feel],
];

/** Pairs of targets that no one ratio meets. */
function clashesOf(targets: readonly TargetWindow[], show: Scene['show']): Clash[] {
  return targets.flatMap((one) =>
    targets.flatMap((other): Clash[] => {
      if (!(one.least > other.most)) return [];
      const apart = one.least / other.most - 1;
      return [
        {
          first: one.key,
          second: other.key,
          apart,
          says: `${one.says} asks for at least ${one.least.toFixed(3)}, but ${other.says} for at most ${other.most.toFixed(3)}: ${show('percent', apart)} apart.`,
        },
      ];
    }),
  );
}

/**
 * Ratios of the path, from gearbox output to wheel, that meet the targets of a build.
 * @param wanted targets that count; empty: all but the feel of the reference vehicle, or that alone where there is no other
 */
export function windowsOf(scene: Scene, wanted: readonly TargetKey[]): Windows {
  const { rollOut } = scene;
  const tried = MAKERS.flatMap(([key, make]) => {
    if (wanted.length > 0 && !wanted.includes(key)) return [];
    const found =
      rollOut === null
        ? { open: 'It needs the measured roll-out of the driven wheel, or its tyre size.' }
        : make(scene, rollOut);
    return found === null ? [] : [{ key, found }];
  });
  const all = tried.flatMap(({ found }) => ('key' in found ? [found] : []));
  const others = all.filter(({ key }) => key !== 'feel');
  const targets = wanted.length > 0 || others.length === 0 ? all : others;
  const open = tried.flatMap(({ key, found }) => ('open' in found ? [{ key, says: found.open }] : []));
  const [low, high] = [Math.max(...targets.map(({ least }) => least)), Math.min(...targets.map(({ most }) => most))];
  const middle = Math.sqrt(low * high);
  return {
    targets,
    clashes: clashesOf(targets, scene.show),
    band:
      targets.length === 0 || (low === 0 && high === Number.POSITIVE_INFINITY)
        ? null
        : low > high
          ? { low: middle, high: middle }
          : { low: low === 0 ? high : low, high: high === Number.POSITIVE_INFINITY ? low : high },
    open,
  };
}
