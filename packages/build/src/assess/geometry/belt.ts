import { beltLength } from '@oddwheel/mechanics/belt/length';
import { MethodError } from '@oddwheel/mechanics/method/method';
import { dot } from '@oddwheel/mechanics/numerics/vector';
import type { Shaft, Stage } from '../../model/model.ts';
import { lineAngle, MOST_SKEW, onlyTorque, seatOf } from './place.ts';
import { parallelPlace } from './tangent.ts';
import type { At, StageGeometry } from './types.ts';

type BeltStage = Extract<Stage, { readonly kind: 'belt' }>;

/** A toothed belt: its pulls need the pre-tension, which the build does not have, so only the torque passes. */
export function beltGeometry(stage: BeltStage, from: Shaft, to: Shaft, at: At): StageGeometry {
  const skew = lineAngle(from.direction, to.direction);
  const relation = skew > MOST_SKEW ? null : dot(from.direction, to.direction) >= 0 ? 1 : -1;
  const place = parallelPlace(seatOf(from, stage.from).at, seatOf(to, stage.to).at, from.direction);
  const { driver: teethDriver, driven: teethDriven } = stage.teeth;
  const base: StageGeometry = {
    stage,
    from,
    to,
    ratio: teethDriven / teethDriver,
    efficiency: at(stage.efficiency),
    relation,
    trouble:
      relation === null
        ? [{ address: `${to.address}/direction`, says: 'shafts that lie parallel, as a belt needs them' }]
        : [],
    actions: onlyTorque(from, to, relation),
    skew,
    pitchRadiusDriver: (stage.pitch * teethDriver) / (2 * Math.PI),
    chain: null,
    bevel: null,
    coupling: null,
    used: [],
  };
  if (relation === null) return base;
  const input = { pitch: stage.pitch, teethDriver, teethDriven, centreDistance: place.centreDistance };
  try {
    const output = beltLength.run(input);
    const origins = {
      pitch: `${stage.address}/pitch`,
      teethDriver: `${stage.address}/teeth/driver`,
      teethDriven: `${stage.address}/teeth/driven`,
      centreDistance: `places of ${from.address} and ${to.address}`,
    };
    return { ...base, used: [{ method: beltLength, input, output, origins }] };
  } catch (error) {
    if (!(error instanceof MethodError)) throw error;
    return {
      ...base,
      trouble: [{ address: `${to.address}/origin`, says: `pulleys that clear each other (${error.message})` }],
    };
  }
}
