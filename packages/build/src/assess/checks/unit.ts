import { missingForSpeed } from './brief.ts';
import { type Check, stagesOfKind } from './check.ts';
import { measured } from './measured.ts';

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
