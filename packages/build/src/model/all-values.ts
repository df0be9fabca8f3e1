import { hubValues } from './hub.ts';
import type {
  Engine,
  Mount,
  ReferenceVehicle,
  Shaft,
  Space,
  Speedometer,
  Stage,
  Targets,
  Value,
  Vehicle,
} from './model.ts';
import { shaftValues } from './resolve-strength.ts';
import type { Cush, Duty, Loads } from './strength.ts';

interface Parts {
  readonly engine: Engine;
  readonly vehicle: Vehicle;
  readonly mounts: readonly Mount[];
  readonly space: Space;
  readonly rollOut: Value | null;
  readonly shafts: readonly Shaft[];
  readonly stages: readonly Stage[];
  readonly targets: Targets;
  readonly reference: ReferenceVehicle | null;
  readonly speedometer: Speedometer | null;
  readonly cush: Cush | null;
  readonly duty: Duty;
  readonly loads: Loads;
}

/** Every input of a model, in the order of the path. */
export function allValues(parts: Parts): Value[] {
  const {
    engine,
    vehicle,
    mounts,
    space,
    rollOut,
    shafts,
    stages,
    targets,
    reference,
    speedometer,
    cush,
    duty,
    loads,
  } = parts;
  const ofStage = (stage: Stage): (Value | null)[] => {
    if (stage.kind === 'chain') return [stage.strands, stage.stretch, stage.efficiency];
    if (stage.kind === 'bevel' || stage.kind === 'spur')
      return [stage.module, stage.faceWidth, stage.spiral, stage.backlash, stage.efficiency];
    if (stage.kind === 'unit') return [stage.ratio, stage.ratedTorque, stage.ratedInputSpeed, stage.efficiency];
    return [stage.efficiency];
  };
  const all = [
    engine.idle,
    engine.redline,
    engine.launch,
    engine.clutchTorque,
    engine.drag,
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
    ...mounts.map(({ stiffness }) => stiffness),
    space.wanted,
    ...stages.flatMap(ofStage),
    ...shafts.flatMap(shaftValues),
    ...shafts.flatMap(({ seats }) => seats.flatMap(({ hub }) => hubValues(hub))),
    cush?.stiffness ?? null,
    duty.distance,
    duty.usual,
    loads.grip,
    loads.shock,
    loads.oil,
    loads.cold,
    loads.hot,
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
  // Bearings in one plate share what is not known of it.
  return [...new Set(all.filter((v) => v !== null))];
}
