import { formatFor, formatQuantity } from '@oddwheel/quantity/format';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import { type Cache, reuse } from '../model/cache.ts';
import type { Model, SeatRef, Shaft, Stage, Value } from '../model/model.ts';
import { type CasePoint, type EngineCurve, STEADY, standingCases } from './cases.ts';
import type { Scene } from './checks/check.ts';
import { engineCurve } from './engine-curve.ts';
import { seatOf } from './geometry/place.ts';
import { stageGeometry } from './geometry/stage.ts';

import { type CaseLoads, carryLoads, senses } from './loads.ts';
import { driveValues } from './road/inputs.ts';
import { roadParts } from './road/parts.ts';
import { once } from './road/tried.ts';
import { dutyOf, dutyValues } from './strength/duty.ts';
import { rareCases, rareValues } from './strength/rare-cases.ts';
import { strengthOf } from './strength/strength.ts';
import type { Use } from './types.ts';
import { atCorner, type Corner, cornerKey } from './uncertainty.ts';

/** Prints SI numbers in the units of the build. */
export function printer(model: Model): (use: Use, si: number) => string {
  return (use, si) => {
    if (use === 'number') return formatQuantity(si, 'number', '');
    if (use === 'time') return formatQuantity(si, 'time', 's');
    if (use === 'energy') return formatQuantity(si, 'energy', 'kJ');
    if (use === 'percent') return formatQuantity(si, 'fraction', '%');
    if (use === 'distance') return formatQuantity(si, 'length', model.units.speed === 'mph' ? 'mi' : 'km');
    return formatFor(model.units, use, si);
  };
}

/** Inputs of a stage that may be uncertain. */
export function stageValues(stage: Stage): readonly (Value | null)[] {
  switch (stage.kind) {
    case 'chain':
      return [stage.strands, stage.efficiency];
    case 'bevel':
    case 'spur':
      return [stage.module, stage.faceWidth, stage.spiral, stage.efficiency];
    case 'unit':
      return [stage.ratio, stage.ratedTorque, stage.ratedInputSpeed, stage.efficiency];
    case 'belt':
    case 'coupling':
      return [stage.efficiency];
  }
}

/** The two shafts of a stage. */
function shaftsOf({ stages, shafts }: Model, k: number): readonly [Shaft, Shaft] {
  const [from, to] = [shafts[k], shafts[k + 1]];
  if (!from || !to) throw new Error(`${stages[k]?.address}: the path is not closed.`);
  return [from, to];
}

/** What the geometry of a stage reads of a shaft: how it lies, and where the seat of the stage is. */
const placeOn = (shaft: Shaft, ref: SeatRef): readonly (string | number)[] => [
  shaft.address,
  ...shaft.origin,
  ...shaft.direction,
  ...seatOf(shaft, ref).at,
];

/** The build at one corner: geometry, senses, train, and the standing cases carried through. */
export function buildScene(model: Model, corner: Corner, cache: Cache | null): Scene {
  const at = atCorner(corner);
  const { engine, wheel, shafts } = model;
  const placed = model.stages.map((stage, k) => {
    const [from, to] = shaftsOf(model, k);
    const slot = `geometry:${stage.address}:${cornerKey(corner, stageValues(stage))}`;
    const inputs = [stage, ...placeOn(from, stage.from), ...placeOn(to, stage.to)];
    return reuse(cache, slot, inputs, () => stageGeometry(stage, from, to, at));
  });
  // A shaft that is only made otherwise, and not moved, leaves the geometry and the loads as they are.
  const stages = placed.map((stage, k) => {
    const [from, to] = shaftsOf(model, k);
    if (stage.from === from && stage.to === to) return stage;
    const slot = `geometry-on:${stage.stage.address}:${cornerKey(corner, stageValues(stage.stage))}`;
    return reuse(cache, slot, [stage, from, to], () => ({ ...stage, from, to }));
  });
  const engineKey = cornerKey(corner, [engine.idle, engine.redline, engine.torqueBand]);
  const curve = reuse(cache, `engine:${engineKey}`, [engine], () => engineCurve(engine, at));
  const boxRatios = engine.gears.map((gear) => at(engine.primary) * at(gear));
  const path = stages.reduce((product, stage) => product * stage.ratio, 1);
  const pathEfficiency = stages.reduce((product, stage) => product * stage.efficiency, 1);
  const overall = boxRatios.map((ratio) => ratio * path);
  const senseOf = senses(engine.outputSense, stages);
  const boxEfficiency = at(engine.boxEfficiency);
  const rollOut = wheel.rollOut ? at(wheel.rollOut) : null;
  // What the loads of any case hang on, beside the case itself.
  const carried = [
    ...[curve, rollOut, ...boxRatios, boxEfficiency, model.engine, model.vehicle, model.loads],
    ...shafts.flatMap(({ id, direction }) => [id, ...direction]),
    ...placed,
  ];
  const cases = reuse(
    cache,
    `cases:${cornerKey(corner, [...driveValues(model), ...rareValues(model)])}`,
    carried,
    () => {
      if (!curve) return [];
      const train = { boxRatios, boxEfficiency, path, pathEfficiency, rollOut };
      const points = [...standingCases(curve, boxRatios.length), ...rareCases(curve, model, at, train)];
      return points.map((point) =>
        carryLoads(point, shafts, stages, senseOf, boxRatios[point.gear] ?? 1, boxEfficiency),
      );
    },
  );
  const road = roadParts({ model, at, engine: curve, overall, rollOut, stages }, corner, cache);
  return {
    model,
    at,
    engine: curve,
    boxRatios,
    overall,
    rollOut,
    stages,
    senses: senseOf,
    strength: strengthOf(model, at, corner, rollOut, senseOf, cases, cache),
    cases,
    road,
    duty: once(() => {
      const work = () =>
        dutyOf({ model, at, engine: curve, boxRatios, overall, rollOut, stages, senses: senseOf, road });
      const hangsOn = dutyValues(model);
      if (hangsOn === null) return work();
      const slot = `duty:${cornerKey(corner, [...hangsOn, model.vehicle.drivenLoad])}`;
      return reuse(cache, slot, [...carried, overall.length, model.duty, model.targets], work);
    }),
    show: printer(model),
  };
}

/** Inputs that the loads of a case hang on, but for those that make the case itself. */
export function loadValues(model: Model): readonly (Value | null)[] {
  return [...driveValues(model), ...model.stages.flatMap(stageValues)];
}

/** Loads at the slider, or null where the roll-out or the torque curve is not known. */
export function loadsAtSlider(scene: Scene, gear: number, roadSpeed: number): CaseLoads | null {
  const point = sliderPoint(scene, gear, roadSpeed);
  const boxRatio = scene.boxRatios[gear];
  if (!point || boxRatio === undefined) return null;
  const { model, stages, senses: senseOf, at } = scene;
  return carryLoads(point, model.shafts, stages, senseOf, boxRatio, at(model.engine.boxEfficiency));
}

function sliderPoint(scene: Scene, gear: number, roadSpeed: number): CasePoint | null {
  const { engine, rollOut, overall } = scene;
  const ratio = overall[gear];
  if (!engine || rollOut === null || ratio === undefined) return null;
  const engineSpeed = withinEnds((roadSpeed / rollOut) * 2 * Math.PI * ratio, engine);
  const torque = engine.torqueAt(engineSpeed);
  if (torque === null) return null;
  return { id: 'here', name: 'at the slider', gear, engineSpeed, engineTorque: torque, ...STEADY };
}

/** Part of a speed that rounding may take. */
const ROUNDING = 1e-12;

/** A slider at the end of its gear stands on idle or on the redline itself, whatever rounding made of it on the way to the road and back. */
function withinEnds(speed: number, { idle, redline }: EngineCurve): number {
  const near = (end: number) => Math.abs(speed - end) <= ROUNDING * end;
  return near(idle) ? idle : near(redline) ? redline : speed;
}

/** Forward in vehicle axes turns positive about +y, left (ISO 8855). */
export function turnsForward(direction: Vec3, sense: 1 | -1): boolean {
  return direction[1] * sense > 0;
}
