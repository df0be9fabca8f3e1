import { dot } from '@oddwheel/mechanics/numerics/vector';
import { spurGeometry as spurMethod } from '@oddwheel/mechanics/spur/geometry';
import type { Shaft, Stage } from '../../model/model.ts';
import { lineAngle, MOST_SKEW, onlyTorque } from './place.ts';
import type { At, StageGeometry, Used } from './types.ts';

type GearStage = Extract<Stage, { readonly kind: 'bevel' | 'spur' }>;

/** An external spur pair turns its shafts opposite ways. Its pressure angle is not in the build, so only the torque passes. */
export function spurGeometry(stage: GearStage, from: Shaft, to: Shaft, at: At): StageGeometry {
  const skew = lineAngle(from.direction, to.direction);
  const relation = skew > MOST_SKEW ? null : dot(from.direction, to.direction) >= 0 ? -1 : 1;
  const { driver: teethDriver, driven: teethDriven } = stage.teeth;
  const used: Used[] = [];
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
    actions: onlyTorque(from, to, relation),
    skew,
    pitchRadiusDriver: null,
    chain: null,
    bevel: null,
    coupling: null,
    used,
  };
}
