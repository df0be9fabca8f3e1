import { ratioOverall } from '@oddwheel/mechanics/ratio/overall';
import { roadSpeed } from '@oddwheel/mechanics/vehicle/road-speed';
import { shaftSpeed } from '@oddwheel/mechanics/vehicle/shaft-speed';
import { tractiveForce } from '@oddwheel/mechanics/vehicle/tractive-force';
import type { Value } from '../../model/model.ts';
import type { Used } from '../geometry/types.ts';
import { senseFixes } from '../layout/sense-fixes.ts';
import { turnsForward } from '../scene.ts';
import { type Check, oneSubject, type Scene } from './check.ts';
import { measured } from './measured.ts';

const TARGETS = '/brief/targets';
export const named = (...values: readonly (Value | null)[]): Value[] => values.filter((v) => v !== null);
const target = { reserve: 1, from: 'a target is met or not' } as const;

/** Rolls the wheel forward in the forward gears. */
export const forward: Check = {
  id: 'path.forward',
  title: 'sense of the wheel',
  consequence: 'loses drive',
  wanted: target,
  atWorst: 'fails',
  perCase: false,
  subjects: (model) => {
    const last = model.shafts.at(-1);
    return last ? [{ address: last.address, element: last.name, stage: null }] : [];
  },
  run: (scene) => {
    const sense = scene.senses.at(-1) ?? null;
    const axle = scene.model.shafts.at(-1);
    if (!axle) return null;
    if (sense === null) {
      const missing = scene.stages.flatMap((stage) => (stage.relation === null ? stage.trouble : []));
      return { kind: 'unknown', missing };
    }
    if (Math.abs(axle.direction[1]) < 0.5)
      return {
        kind: 'plain',
        holds: false,
        says: () => 'The driven wheel’s shaft does not lie across the vehicle, so the wheel cannot roll ahead.',
        uses: [],
        used: () => [],
      };
    const holds = turnsForward(axle.direction, sense);
    return {
      kind: 'plain',
      holds,
      says: () => (holds ? 'The wheel rolls forward in every forward gear.' : backward(scene)),
      uses: [],
      used: () => scene.stages.flatMap((stage) => stage.used.filter((used) => used.method.id.endsWith('.sense'))),
    };
  },
};

/** Says what turns the wheel round; each way was tried. */
function backward(scene: Scene): string {
  const fixes = senseFixes(scene).map(({ text }) => text);
  return fixes.length === 0
    ? 'The wheel rolls backward in every forward gear.'
    : `The wheel rolls backward in every forward gear. Any one of these turns it round: ${fixes.join('; ')}.`;
}

/** Ratios from crank to wheel in one gear, and their product, as a used method. */
export function overallOf(scene: Scene, gear: number): { readonly ratio: number; readonly used: Used } {
  const { engine } = scene.model;
  const box = engine.gears[gear];
  const input = {
    ratios: [scene.at(engine.primary), ...(box ? [scene.at(box)] : []), ...scene.stages.map((stage) => stage.ratio)],
  };
  const output = ratioOverall.run(input);
  const origins = { ratios: `${engine.primary.address}, ${box?.address ?? ''} and the stages in order` };
  return { ratio: output.overall, used: { method: ratioOverall, input, output, origins } };
}

const TARGET_TOP = oneSubject(`${TARGETS}/topSpeed`, 'Target');

/** Redline in top gear reaches the wanted top speed. */
export const topSpeed: Check = {
  id: 'target.top-speed',
  title: 'top speed at the redline',
  consequence: 'misses a target',
  wanted: target,
  atWorst: 'thin',
  perCase: false,
  subjects: (model) => (model.targets.topSpeed ? TARGET_TOP(model) : []),
  run: (scene) => {
    const { targets, engine, wheel } = scene.model;
    const top = scene.overall.at(-1);
    const wanted = targets.topSpeed;
    if (!wanted || top === undefined) return null;
    if (!scene.engine || scene.rollOut === null)
      return { kind: 'unknown', missing: missingForSpeed(scene.engine !== null, scene.rollOut !== null) };
    const overall = overallOf(scene, engine.gears.length - 1);
    const input = { angularSpeed: scene.engine.redline, overallRatio: overall.ratio, rollOut: scene.rollOut };
    const output = roadSpeed.run(input);
    const { speed } = output;
    const origins = { angularSpeed: '/brief/engine/redline', overallRatio: 'above', rollOut: '/brief/wheel/rollOut' };
    return measured(
      { name: 'wanted', value: scene.at(wanted), kind: 'speed', use: 'speed' },
      { name: 'at redline in top gear', value: speed, kind: 'speed', use: 'speed' },
      () =>
        `Top gear at the redline makes ${scene.show('speed', speed)}, and ${scene.show('speed', scene.at(wanted))} is wanted.`,
      named(wanted, engine.redline, engine.primary, engine.gears.at(-1) ?? null, wheel.rollOut),
      () => [overall.used, { method: roadSpeed, input, output, origins }],
      { capacity: 'above', demand: wanted.address },
    );
  },
};

/** Addresses without which no road speed can be had. */
export function missingForSpeed(haveEngine: boolean, haveRollOut: boolean): { address: string; says: string }[] {
  return [
    ...(haveEngine
      ? []
      : [
          { address: '/brief/engine/curve', says: 'the torque curve, or peak torque and peak power with their speeds' },
        ]),
    ...(haveRollOut
      ? []
      : [{ address: '/brief/wheel/rollOut', says: 'the measured roll-out of the driven wheel, or its tyre size' }]),
  ];
}

/** Engine speed when cruising in top gear lies in the wanted window. */
export const cruise: Check = {
  id: 'target.cruise',
  title: 'engine speed when cruising',
  consequence: 'misses a target',
  wanted: target,
  atWorst: 'thin',
  perCase: false,
  subjects: (model) =>
    model.targets.cruiseSpeed && model.targets.cruiseEngine
      ? oneSubject(`${TARGETS}/cruiseEngine`, 'Target')(model)
      : [],
  run: (scene) => {
    const { targets, engine, wheel } = scene.model;
    const top = scene.overall.at(-1);
    const { cruiseSpeed, cruiseEngine } = targets;
    if (!cruiseSpeed || !cruiseEngine || top === undefined) return null;
    if (scene.rollOut === null) return { kind: 'unknown', missing: missingForSpeed(true, false) };
    const overall = overallOf(scene, engine.gears.length - 1);
    const input = { speed: scene.at(cruiseSpeed), overallRatio: overall.ratio, rollOut: scene.rollOut };
    const output = shaftSpeed.run(input);
    const speed = output.angularSpeed;
    const origins = { speed: cruiseSpeed.address, overallRatio: 'above', rollOut: '/brief/wheel/rollOut' };
    const low = speed < cruiseEngine.lo;
    const window = `${scene.show('angularSpeed', cruiseEngine.lo)} to ${scene.show('angularSpeed', cruiseEngine.hi)}`;
    const amount = { name: 'engine speed', value: speed, kind: 'angularSpeed', use: 'angularSpeed' } as const;
    // The nearer end of the window is the one that can be missed.
    const nearer = low || speed * speed < cruiseEngine.lo * cruiseEngine.hi ? 'lo' : 'hi';
    const limit = {
      name: nearer === 'lo' ? 'least wanted' : 'most wanted',
      value: cruiseEngine[nearer],
      kind: 'angularSpeed',
      use: 'angularSpeed',
    } as const;
    return measured(
      nearer === 'lo' ? limit : amount,
      nearer === 'lo' ? amount : limit,
      () =>
        `At ${scene.show('speed', scene.at(cruiseSpeed))} in top gear the engine turns ${scene.show('angularSpeed', speed)}; ${window} is wanted.`,
      named(cruiseSpeed, engine.primary, engine.gears.at(-1) ?? null, wheel.rollOut),
      () => [overall.used, { method: shaftSpeed, input, output, origins }],
      {
        capacity: nearer === 'lo' ? 'above' : cruiseEngine.address,
        demand: nearer === 'lo' ? cruiseEngine.address : 'above',
      },
    );
  },
};

/** Pull at the wheel in first gear at peak torque. */
export const pull: Check = {
  id: 'target.pull',
  title: 'pull at the wheel in first gear',
  consequence: 'misses a target',
  wanted: target,
  atWorst: 'thin',
  perCase: false,
  subjects: (model) => (model.targets.pull ? oneSubject(`${TARGETS}/pull`, 'Target')(model) : []),
  run: (scene) => {
    const { targets, engine, wheel, stages } = scene.model;
    const wanted = targets.pull;
    if (!wanted) return null;
    if (!scene.engine || scene.rollOut === null)
      return { kind: 'unknown', missing: missingForSpeed(scene.engine !== null, scene.rollOut !== null) };
    const overall = overallOf(scene, 0);
    const efficiency = scene.stages.reduce(
      (product, stage) => product * stage.efficiency,
      scene.at(engine.boxEfficiency),
    );
    const input = {
      torque: scene.engine.peakTorque.torque,
      overallRatio: overall.ratio,
      efficiency,
      rollOut: scene.rollOut,
    };
    const output = tractiveForce.run(input);
    const { force } = output;
    const origins = {
      torque: '/brief/engine',
      overallRatio: 'above',
      efficiency: 'product of all efficiencies from crank to wheel',
      rollOut: '/brief/wheel/rollOut',
    };
    return measured(
      { name: 'wanted', value: scene.at(wanted), kind: 'force', use: 'force' },
      { name: 'at peak torque', value: force, kind: 'force', use: 'force' },
      () =>
        `First gear at peak torque pulls ${scene.show('force', force)} at the ground, and ${scene.show('force', scene.at(wanted))} is wanted.`,
      named(
        wanted,
        engine.primary,
        engine.gears[0] ?? null,
        engine.boxEfficiency,
        ...stages.map((stage) => stage.efficiency),
        wheel.rollOut,
      ),
      () => [overall.used, { method: tractiveForce, input, output, origins }],
      { capacity: 'above', demand: wanted.address },
    );
  },
};
