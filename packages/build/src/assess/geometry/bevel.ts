import { bevelApex } from '@oddwheel/mechanics/bevel/apex';
import { bevelForces } from '@oddwheel/mechanics/bevel/forces';
import { bevelGeometry as bevelMethod } from '@oddwheel/mechanics/bevel/geometry';
import { bevelSense } from '@oddwheel/mechanics/bevel/sense';
import { bevelSpiralForces } from '@oddwheel/mechanics/bevel/spiral-forces';
import { MethodError } from '@oddwheel/mechanics/method/method';
import { cross, dot, minus, plus, times, unit } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Shaft, Stage } from '../../model/model.ts';
import { type Actions, lineAngle, onlyTorque, seatOf, turning } from './place.ts';
import type { At, BevelGeometry, StageGeometry, Used } from './types.ts';

type GearStage = Extract<Stage, { readonly kind: 'bevel' | 'spur' }>;

/** Axes that pass further apart than this have no apex worth the name, and the pair's sense is left open. */
const MOST_APART = 0.005;

/** A bevel pair, straight or spiral: apex, cones, sense, and tooth forces at the mean cone. */
export function bevelGeometry(stage: GearStage, from: Shaft, to: Shaft, at: At): StageGeometry {
  const { driver: teethDriver, driven: teethDriven } = stage.teeth;
  const skew = lineAngle(from.direction, to.direction);
  const base: StageGeometry = {
    stage,
    from,
    to,
    ratio: teethDriven / teethDriver,
    efficiency: at(stage.efficiency),
    relation: null,
    trouble: [],
    actions: onlyTorque(from, to, null),
    skew,
    pitchRadiusDriver: null,
    chain: null,
    bevel: null,
    coupling: null,
    used: [],
  };
  const [driver, driven] = [seatOf(from, stage.from), seatOf(to, stage.to)];
  const directions = { directionDriver: from.direction, directionDriven: to.direction };
  const shaftsAt = {
    originDriver: `${from.address}/origin`,
    originDriven: `${to.address}/origin`,
    directionDriver: `${from.address}/direction`,
    directionDriven: `${to.address}/direction`,
  };
  try {
    const apexIn = { originDriver: from.origin, originDriven: to.origin, ...directions };
    const apex = bevelApex.run(apexIn);
    const used: Used[] = [{ method: bevelApex, input: apexIn, output: apex, origins: shaftsAt }];
    if (apex.axisDistance > MOST_APART)
      return {
        ...base,
        trouble: [
          { address: `${to.address}/origin`, says: `axes that meet; these pass ${apex.axisDistance * 1000} mm apart` },
        ],
      };
    const senseIn = {
      ...directions,
      apex: apex.apex,
      seatDriver: driver.at,
      seatDriven: driven.at,
      teethDriver,
      teethDriven,
    };
    const sense = bevelSense.run(senseIn);
    used.push({
      method: bevelSense,
      input: senseIn,
      output: sense,
      origins: {
        ...shaftsAt,
        apex: 'above',
        seatDriver: driver.address,
        seatDriven: driven.address,
        teethDriver: `${stage.address}/teeth/driver`,
        teethDriven: `${stage.address}/teeth/driven`,
      },
    });
    // The angle of the pair is the one between the gears, seen from the apex.
    const out1 = times(sense.sideDriver, unit(from.direction));
    const out2 = times(sense.sideDriven, unit(to.direction));
    const shaftAngle = Math.acos(Math.max(-1, Math.min(1, dot(out1, out2))));
    const relation = sense.sense > 0 ? 1 : -1;
    const teeth = teethOf(stage, at);
    const sized = cones(stage, at, shaftAngle, apex.axisDistance, apex.apex, used);
    return {
      ...base,
      relation,
      bevel: sized.bevel,
      used,
      actions:
        sized.mean && teeth
          ? toothActions(
              from,
              driver.at,
              driven.at,
              apex.apex,
              out1,
              out2,
              sense.contact,
              sized.mean,
              teethDriven / teethDriver,
              teeth,
            )
          : onlyTorque(from, to, relation),
    };
  } catch (error) {
    if (!(error instanceof MethodError)) throw error;
    return { ...base, trouble: [{ address: stage.address, says: `a bevel pair that can be built: ${error.message}` }] };
  }
}

interface Mean {
  readonly coneDistance: number;
  readonly diameterDriver: number;
  readonly pitchAngleDriver: number;
  readonly pitchAngleDriven: number;
}

/** Cones of the pair; sizes only where module and face width are known. */
function cones(
  stage: GearStage,
  at: At,
  shaftAngle: number,
  axisDistance: number,
  apex: Vec3,
  used: Used[],
): { readonly bevel: BevelGeometry; readonly mean: Mean | null } {
  const place = { axisDistance, shaftAngle, apex };
  if (!stage.module || !stage.faceWidth)
    return { bevel: { ...place, coneDistance: null, meanDriver: null, meanDriven: null }, mean: null };
  const { driver: teethDriver, driven: teethDriven } = stage.teeth;
  const input = { teethDriver, teethDriven, shaftAngle, module: at(stage.module), faceWidth: at(stage.faceWidth) };
  const output = bevelMethod.run(input);
  used.push({
    method: bevelMethod,
    input,
    output,
    origins: {
      teethDriver: `${stage.address}/teeth/driver`,
      teethDriven: `${stage.address}/teeth/driven`,
      shaftAngle: 'places of the two gears about the apex',
      module: stage.module.address,
      faceWidth: stage.faceWidth.address,
    },
  });
  return {
    bevel: {
      ...place,
      coneDistance: output.outerConeDistance,
      meanDriver: output.meanDiameterDriver,
      meanDriven: output.meanDiameterDriven,
    },
    mean: {
      coneDistance: output.meanConeDistance,
      diameterDriver: output.meanDiameterDriver,
      pitchAngleDriver: output.pitchAngleDriver,
      pitchAngleDriven: output.pitchAngleDriven,
    },
  };
}

interface TeethLean {
  readonly spiralAngle: number;
  readonly hand: 'left' | 'right';
}

/** How the teeth lean; null where an angle is given without a hand, or a hand without an angle. Straight teeth have no hand to speak of. */
function teethOf(stage: GearStage, at: At): TeethLean | null {
  if (!stage.spiral) return stage.hand === null ? { spiralAngle: 0, hand: 'right' } : null;
  return stage.hand === null ? null : { spiralAngle: at(stage.spiral), hand: stage.hand };
}

/** Sense of the driver as seen from its back, the large end. */
export function seenFromBack(turns: Vec3, awayFromApex: Vec3): 'clockwise' | 'counter-clockwise' {
  return dot(turns, awayFromApex) < 0 ? 'clockwise' : 'counter-clockwise';
}

/**
 * Tooth forces on both shafts per newton metre through each, at the middle of the face, moments about the seat points.
 * Directions: tangential along the common surface velocity, with it on the driven gear; axial away from the apex; radial toward the own axis.
 */
function toothActions(
  from: Shaft,
  seatDriver: Vec3,
  seatDriven: Vec3,
  apex: Vec3,
  out1: Vec3,
  out2: Vec3,
  contact: Vec3,
  mean: Mean,
  ratio: number,
  teeth: TeethLean,
): (sense: 1 | -1) => Actions {
  const along = unit(contact);
  const point = plus(apex, times(mean.coneDistance, along));
  const radial = (out: Vec3): Vec3 => unit(minus(along, times(dot(along, out), out)));
  const pair = {
    torqueDriver: 1,
    meanDiameterDriver: mean.diameterDriver,
    pitchAngleDriver: mean.pitchAngleDriver,
    pitchAngleDriven: mean.pitchAngleDriven,
    pressureAngle: Math.PI / 9,
  };
  return (sense) => {
    const forces =
      teeth.spiralAngle === 0
        ? bevelForces.run(pair)
        : bevelSpiralForces.run({
            ...pair,
            ...teeth,
            turning: seenFromBack(turning(from, sense), out1),
            flow: 'drive',
          });
    const wedge1 = minus(times(forces.axialDriver, out1), times(forces.radialDriver, radial(out1)));
    const wedge2 = minus(times(forces.axialDriven, out2), times(forces.radialDriven, radial(out2)));
    const velocity = unit(cross(turning(from, sense), along));
    const onDriver = minus(wedge1, times(forces.tangential, velocity));
    const onDriven = times(1 / ratio, plus(wedge2, times(forces.tangential, velocity)));
    return {
      from: { force: onDriver, moment: cross(minus(point, seatDriver), onDriver) },
      to: { force: onDriven, moment: cross(minus(point, seatDriven), onDriven) },
      forcesKnown: true,
    };
  };
}
