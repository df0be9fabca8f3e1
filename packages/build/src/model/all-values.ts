import type { Engine, ReferenceVehicle, Stage, Targets, Value, Vehicle } from './model.ts';

/** Every input of a model, in the order of the path. */
export function allValues(
  engine: Engine,
  vehicle: Vehicle,
  rollOut: Value | null,
  stages: readonly Stage[],
  targets: Targets,
  reference: ReferenceVehicle | null,
): Value[] {
  const ofStage = (stage: Stage): (Value | null)[] => {
    if (stage.kind === 'chain') return [stage.strands, stage.efficiency];
    if (stage.kind === 'bevel' || stage.kind === 'spur')
      return [stage.module, stage.faceWidth, stage.spiral, stage.efficiency];
    if (stage.kind === 'unit') return [stage.ratio, stage.ratedTorque, stage.ratedInputSpeed, stage.efficiency];
    return [stage.efficiency];
  };
  const all = [
    engine.idle,
    engine.redline,
    engine.torqueBand,
    engine.primary,
    ...engine.gears,
    engine.boxEfficiency,
    vehicle.mass,
    vehicle.payload,
    ...stages.flatMap(ofStage),
    rollOut,
    targets.topSpeed,
    targets.cruiseSpeed,
    targets.pull,
    ...(reference ? [...reference.overall, reference.rollOut, reference.at] : []),
  ];
  return all.filter((v) => v !== null);
}
