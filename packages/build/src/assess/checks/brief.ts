import type { Value } from '../../model/model.ts';
import { turnsForward } from '../scene.ts';
import { type Check, oneSubject, stagesOfKind } from './check.ts';
import { measured } from './measured.ts';

const TARGETS = '/brief/targets';
const named = (...values: readonly (Value | null)[]): Value[] => values.filter((v) => v !== null);
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
      says: () =>
        holds
          ? 'The wheel rolls forward in every forward gear.'
          : 'The wheel rolls backward in every forward gear: put the bevel gear on the other side of the pinion, or reverse another stage.',
      uses: [],
      used: () => scene.stages.flatMap((stage) => stage.used.filter((used) => used.method.id.endsWith('.sense'))),
    };
  },
};

/** An output that drove a joint was not made for a chain's side pull. */
export const sidePull: Check = {
  id: 'output.side-pull',
  title: 'side pull on the engine’s output',
  consequence: 'loses drive',
  wanted: target,
  atWorst: 'fails',
  perCase: false,
  subjects: (model) => [{ address: '/brief/engine/output', element: model.shafts[0]?.name ?? 'Output', stage: null }],
  run: ({ model }) => {
    const first = model.stages[0];
    if (!first || first.kind === 'coupling') return null;
    const { madeFor } = model.engine;
    if (madeFor === null)
      return {
        kind: 'unknown',
        missing: [
          {
            address: '/brief/engine/output/madeFor',
            says: 'whether the output was made for side pull or for torque only',
          },
        ],
      };
    return {
      kind: 'plain',
      holds: madeFor === 'side pull',
      says: () =>
        madeFor === 'side pull'
          ? `The output was made for side pull, and ${first.name} pulls on it.`
          : `The output was made for torque only, and ${first.name} pulls it sideways: give the first sprocket two bearings of its own behind a coupling, or an outboard bearing on the engine.`,
      uses: [],
      used: () => [],
    };
  },
};

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
    const speed = ((scene.engine.redline / top) * scene.rollOut) / (2 * Math.PI);
    return measured(
      { name: 'wanted', value: scene.at(wanted), kind: 'speed', use: 'speed' },
      { name: 'at redline in top gear', value: speed, kind: 'speed', use: 'speed' },
      () =>
        `Top gear at the redline makes ${scene.show('speed', speed)}, and ${scene.show('speed', scene.at(wanted))} is wanted.`,
      named(wanted, engine.redline, engine.primary, engine.gears.at(-1) ?? null, wheel.rollOut),
      () => [],
      { capacity: 'redline, overall ratio and roll-out', demand: wanted.address },
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
    const speed = (scene.at(cruiseSpeed) / scene.rollOut) * 2 * Math.PI * top;
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
      () => [],
      {
        capacity: nearer === 'lo' ? 'overall ratio and roll-out' : cruiseEngine.address,
        demand: nearer === 'lo' ? cruiseEngine.address : 'overall ratio and roll-out',
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
    const first = scene.cases.find((load) => load.point.id === '1/peak-torque');
    const torque = first?.shafts.at(-1)?.torque;
    if (torque === undefined || scene.rollOut === null)
      return { kind: 'unknown', missing: missingForSpeed(torque !== undefined, scene.rollOut !== null) };
    const force = (torque * 2 * Math.PI) / scene.rollOut;
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
      () => [],
      { capacity: 'torque at the wheel over its rolling radius', demand: wanted.address },
    );
  },
};

/** Output torque of a bought-in unit against its plate. */
export const unitTorque: Check = {
  id: 'unit.torque',
  title: 'output torque against the plate',
  consequence: 'loses drive',
  wanted: { reserve: 1, from: 'the plate is the maker’s own limit' },
  atWorst: 'fails',
  perCase: true,
  subjects: stagesOfKind('unit'),
  run: (scene, subject, load) => {
    const stage = subject.stage === null ? undefined : scene.model.stages[subject.stage];
    if (stage?.kind !== 'unit' || subject.stage === null || !load) return null;
    if (!stage.ratedTorque)
      return {
        kind: 'unknown',
        missing: [{ address: `${stage.address}/rating/torque`, says: 'the output torque on its plate' }],
      };
    const rated = scene.at(stage.ratedTorque);
    const asked = load.stages[subject.stage]?.torqueOut ?? Number.NaN;
    return measured(
      { name: 'asked', value: asked, kind: 'torque', use: 'torque' },
      { name: 'on the plate', value: rated, kind: 'torque', use: 'torque' },
      () => `${scene.show('torque', asked)} asked at its output, ${scene.show('torque', rated)} on its plate.`,
      [stage.ratedTorque, stage.efficiency],
      () => [],
      { capacity: stage.ratedTorque.address, demand: 'torque carried through the path' },
    );
  },
};

/** Input speed of a bought-in unit at the engine's redline in top gear, against its plate. */
export const unitSpeed: Check = {
  id: 'unit.speed',
  title: 'input speed against the plate',
  consequence: 'throws parts',
  wanted: { reserve: 1, from: 'the plate is the maker’s own limit' },
  atWorst: 'fails',
  perCase: false,
  subjects: stagesOfKind('unit'),
  run: (scene, subject) => {
    const stage = subject.stage === null ? undefined : scene.model.stages[subject.stage];
    if (stage?.kind !== 'unit' || subject.stage === null) return null;
    if (!stage.ratedInputSpeed)
      return {
        kind: 'unknown',
        missing: [{ address: `${stage.address}/rating/inputSpeed`, says: 'the input speed on its plate' }],
      };
    if (!scene.engine) return { kind: 'unknown', missing: missingForSpeed(false, true) };
    const before = scene.stages.slice(0, subject.stage).reduce((product, x) => product * x.ratio, 1);
    const speed = scene.engine.redline / (Math.min(...scene.boxRatios) * before);
    const rated = scene.at(stage.ratedInputSpeed);
    return measured(
      { name: 'at redline in top gear', value: speed, kind: 'angularSpeed', use: 'angularSpeed' },
      { name: 'on the plate', value: rated, kind: 'angularSpeed', use: 'angularSpeed' },
      () =>
        `It turns ${scene.show('angularSpeed', speed)} at the redline in top gear, ${scene.show('angularSpeed', rated)} on its plate.`,
      [stage.ratedInputSpeed],
      () => [],
      { capacity: stage.ratedInputSpeed.address, demand: 'redline over the ratios before it' },
    );
  },
};
