import { stageGeometry } from '@oddwheel/build/assess/geometry/stage';
import type { At, StageGeometry } from '@oddwheel/build/assess/geometry/types';
import type { Model, Seat, Shaft } from '@oddwheel/build/model/model';
import { times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import { modelAtArm, type OnArm } from './arm.ts';
import { bevelSolids, spurSolids } from './gear-solids.ts';
import { beltSolids, chainSolids } from './loop-solids.ts';
import { bearingSolids, MM, shaftSolid } from './shaft-solids.ts';
import type { Solid } from './solids.ts';
import { armSolids, jointSolids, spaceSolids } from './space-solids.ts';
import { wheelSize, wheelSolids } from './wheel-solids.ts';

/** What of an assessed build a drawing is made from: a scene of its assessment has all of it. */
export interface Drawable {
  readonly model: Model;
  readonly at: At;
  readonly stages: readonly StageGeometry[];
  readonly senses: readonly (1 | -1 | null)[];
  readonly rollOut: number | null;
}

/** The build as it is drawn, its arm at the angle asked for. */
export interface Posed extends Drawable {
  readonly onArm: OnArm | null;
}

/** @param armAngle rad from where the wheel is drawn, positive with the wheel up */
export function pose(drawable: Drawable, armAngle: number): Posed {
  const { model, onArm } = modelAtArm(drawable.model, armAngle);
  if (!onArm) return { ...drawable, onArm };
  const stages = drawable.stages.map((geometry, k) => {
    const [from, to] = [model.shafts[k], model.shafts[k + 1]];
    if (!from || !to || (from === geometry.from && to === geometry.to)) return geometry;
    return stageGeometry(geometry.stage, from, to, drawable.at);
  });
  return { ...drawable, model, stages, onArm };
}

/** The wheel's shaft and the seat that the wheel sits on. */
export function wheelSeat(model: Model): { readonly shaft: Shaft; readonly seat: Seat } | null {
  const shaft = model.shafts.at(-1);
  const seat = shaft?.seats.find(({ kind }) => kind === 'wheel');
  return shaft && seat ? { shaft, seat } : null;
}

const turning = (shaft: Shaft, sense: 1 | -1 | null | undefined): Vec3 | null =>
  sense === 1 || sense === -1 ? times(sense, shaft.direction) : null;

function stageSolids(posed: Posed, k: number): readonly Solid[] {
  const geometry = posed.stages[k];
  if (!geometry) return [];
  const { stage } = geometry;
  const value = (v: { readonly si: number }): number => v.si;
  switch (stage.kind) {
    case 'chain':
      return chainSolids(geometry, stage, turning(geometry.from, posed.senses[k]));
    case 'belt':
      return beltSolids(geometry, stage);
    case 'bevel':
      return bevelSolids(geometry, stage, value);
    case 'spur':
      return spurSolids(geometry, stage, value);
    case 'coupling':
    case 'unit':
      return jointSolids(geometry, stage);
  }
}

/** All parts of a build as solids in vehicle axes, mm: path first, then wheel and what stands around. */
export function buildSolids(posed: Posed): readonly Solid[] {
  const { model } = posed;
  const wheel = wheelSeat(model);
  const size = wheel && wheelSize(model.wheel, wheel.seat, posed.rollOut);
  return [
    ...model.shafts.flatMap((shaft) => [shaftSolid(shaft), ...bearingSolids(shaft)]),
    ...posed.stages.flatMap((_, k) => stageSolids(posed, k)),
    ...(wheel && size ? wheelSolids(wheel.shaft, wheel.seat, size, model.wheel.address) : []),
    ...armSolids(model, wheel?.seat.at ?? [0, 0, 0]),
    ...spaceSolids(model, posed.onArm),
  ];
}

/** Radius on which the loaded wheel rolls, mm: its roll-out over a full turn. */
export const rollingRadius = (posed: Drawable): number | null =>
  posed.rollOut === null ? null : (posed.rollOut * MM) / (2 * Math.PI);
