import type { Model, Value } from '../../model/model.ts';

/** Inputs that speed, torque and pull from crank to wheel hang on. */
export function driveValues({ engine, wheel, stages }: Model): (Value | null)[] {
  return [
    ...[engine.idle, engine.redline, engine.torqueBand, engine.primary, ...engine.gears, engine.boxEfficiency],
    ...stages.flatMap((stage) => (stage.kind === 'unit' ? [stage.ratio, stage.efficiency] : [stage.efficiency])),
    wheel.rollOut,
  ];
}

/** Addresses of the inputs that only the road reads, and no check of the drive. */
export function roadInputs({ engine, vehicle, targets, reference, speedometer }: Model): ReadonlySet<string> {
  const { contact: _, ...measures } = vehicle;
  const values = [
    ...Object.values(measures),
    engine.launch,
    ...[targets.climb, targets.sprintTo, targets.sprintIn],
    reference?.mass ?? null,
    ...(speedometer ? [speedometer.madeRatio, speedometer.madeRollOut] : []),
  ];
  return new Set(values.flatMap((value) => (value ? [value.address] : [])));
}
