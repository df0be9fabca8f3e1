import { cross, dot, plus, times } from '@oddwheel/mechanics/numerics/vector';
import { spurGeometry as spurMethod } from '@oddwheel/mechanics/spur/geometry';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Shaft, Stage } from '../../model/model.ts';
import { lineAngle, MOST_SKEW, onlyTorque, seatOf, turning } from './place.ts';
import { parallelPlace } from './tangent.ts';
import type { At, StageGeometry, Used } from './types.ts';

type GearStage = Extract<Stage, { readonly kind: 'bevel' | 'spur' }>;

/** Pressure angle of cut gears, where the build says nothing else. */
const PRESSURE_ANGLE = Math.PI / 9;

/**
 * Actions of an external spur pair per newton metre through each gear. With ω̂ the driver's sense and u from driver to driven, the teeth meet
 * at r₁u and move along ω̂ × u; the driver feels the tangential force against that, and both are wedged apart.
 */
function spurActions(u: Vec3, turning: Vec3, radiusDriver: number, radiusDriven: number) {
  const forward = cross(turning, u);
  const wedge = times(Math.tan(PRESSURE_ANGLE), u);
  const onDriver = times(-1 / radiusDriver, plus(forward, wedge));
  const onDriven = times(1 / radiusDriven, plus(forward, wedge));
  return {
    from: { force: onDriver, moment: cross(times(radiusDriver, u), onDriver) },
    to: { force: onDriven, moment: cross(times(-radiusDriven, u), onDriven) },
    forcesKnown: true,
  };
}

/** An external spur pair turns its shafts opposite ways; its tooth forces are known with its module. */
export function spurGeometry(stage: GearStage, from: Shaft, to: Shaft, at: At): StageGeometry {
  const skew = lineAngle(from.direction, to.direction);
  const relation = skew > MOST_SKEW ? null : dot(from.direction, to.direction) >= 0 ? -1 : 1;
  const { driver: teethDriver, driven: teethDriven } = stage.teeth;
  const used: Used[] = [];
  const { u } = parallelPlace(seatOf(from, stage.from).at, seatOf(to, stage.to).at, from.direction);
  const module = stage.module ? at(stage.module) : null;
  if (stage.module) {
    const input = { teethDriver, teethDriven, module: at(stage.module) };
    const origins = {
      teethDriver: `${stage.address}/teeth/driver`,
      teethDriven: `${stage.address}/teeth/driven`,
      module: stage.module.address,
    };
    used.push({ method: spurMethod, input, output: spurMethod.run(input), origins });
  }
  return {
    stage,
    from,
    to,
    ratio: teethDriven / teethDriver,
    efficiency: at(stage.efficiency),
    relation,
    trouble:
      relation === null
        ? [{ address: `${to.address}/direction`, says: 'shafts that lie parallel, as a spur pair needs them' }]
        : [],
    actions:
      module === null || u === null || relation === null
        ? onlyTorque(from, to, relation)
        : (sense) => spurActions(u, turning(from, sense), (module * teethDriver) / 2, (module * teethDriven) / 2),
    skew,
    pitchRadiusDriver: null,
    chain: null,
    bevel: null,
    coupling: null,
    used,
  };
}
