import type { Engine, ReferenceVehicle, Space, Speedometer, Stage, Targets, Value, Vehicle } from './model.ts';

/** Every input of a model, in the order of the path. */
export function allValues(
  engine: Engine,
  vehicle: Vehicle,
  space: Space,
  rollOut: Value | null,
  stages: readonly Stage[],
  targets: Targets,
  reference: ReferenceVehicle | null,
  speedometer: Speedometer | null,
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
    engine.launch,
    engine.torqueBand,
    engine.primary,
    ...engine.gears,
    engine.boxEfficiency,
    vehicle.mass,
    vehicle.payload,
    vehicle.wheelbase,
    vehicle.drivenLoad,
    vehicle.centreHeight,
    vehicle.dragArea,
    vehicle.rolling,
    vehicle.friction,
    vehicle.wheelInertia,
    vehicle.engineInertia,
    vehicle.otherInertia,
    vehicle.track,
    space.wanted,
    ...stages.flatMap(ofStage),
    rollOut,
    targets.topSpeed,
    targets.cruiseSpeed,
    targets.pull,
    targets.climb,
    targets.sprintTo,
    targets.sprintIn,
    ...(reference ? [...reference.overall, reference.rollOut, reference.mass, reference.at] : []),
    ...(speedometer ? [speedometer.madeRatio, speedometer.madeRollOut] : []),
  ];
  return all.filter((v) => v !== null);
}
