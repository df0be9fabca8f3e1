import type { Model, Value } from '../../model/model.ts';
import { rareValues } from '../strength/rare-cases.ts';
import { moverOf } from '../uncertainty.ts';

/** Inputs that speed, torque and pull from crank to wheel hang on. */
export function driveValues({ engine, wheel, stages }: Model): (Value | null)[] {
  return [
    ...[engine.idle, engine.redline, engine.torqueBand, engine.primary, ...engine.gears, engine.boxEfficiency],
    ...stages.flatMap((stage) => (stage.kind === 'unit' ? [stage.ratio, stage.efficiency] : [stage.efficiency])),
    wheel.rollOut,
  ];
}

/** What moves the inputs that only the road and the swings of the drive read, and no other check of the drive. */
export function roadInputs(model: Model): ReadonlySet<string> {
  const { engine, vehicle, targets, reference, speedometer, stages, cush } = model;
  const { contact: _, ...measures } = vehicle;
  const values = [
    ...Object.values(measures),
    engine.launch,
    ...stages.map((stage) => (stage.kind === 'chain' ? stage.stretch : null)),
    cush?.stiffness ?? null,
    ...[targets.climb, targets.sprintTo, targets.sprintIn],
    reference?.mass ?? null,
    ...(speedometer ? [speedometer.madeRatio, speedometer.madeRollOut] : []),
  ];
  // The rare peaks of the drive end at the grip, which hangs on masses and places.
  const ofPeaks = new Set(rareValues(model).flatMap((value) => (value ? [moverOf(value)] : [])));
  return new Set(values.flatMap((value) => (value && !ofPeaks.has(moverOf(value)) ? [moverOf(value)] : [])));
}
