import { beltLength } from '@oddwheel/mechanics/belt/length';
import { MethodError } from '@oddwheel/mechanics/method/method';
import { dot, plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Shaft, Stage } from '../../model/model.ts';
import { lineAngle, MOST_SKEW, onlyTorque, seatOf, turning } from './place.ts';
import { parallelPlace, tangentActions } from './tangent.ts';
import type { Action, At, StageGeometry } from './types.ts';

type BeltStage = Extract<Stage, { readonly kind: 'belt' }>;

/**
 * Pull of each span of a toothed belt that is set as its makers say, over the pull that the torque asks for: F₁ = 1250 P/v, F₂ = 250 P/v.
 * Source: catalogues of toothed belts, restated (read).
 */
const TIGHT = 1.25;
const SLACK = 0.25;

/** Both spans of a belt pull, per newton metre through each pulley. */
function beltActions(u: Vec3, turns: Vec3, centreDistance: number, radiusDriver: number, radiusDriven: number) {
  const tight = tangentActions(u, turns, centreDistance, radiusDriver, radiusDriven);
  const slack = tangentActions(u, times(-1, turns), centreDistance, radiusDriver, radiusDriven);
  const both = (a: Action, b: Action): Action => ({
    force: plus(times(TIGHT, a.force), times(SLACK, b.force)),
    moment: plus(times(TIGHT, a.moment), times(SLACK, b.moment)),
  });
  return { from: both(tight.from, slack.from), to: both(tight.to, slack.to), forcesKnown: true };
}

/** A toothed belt. Its pulls stand on the tension that its makers ask for. */
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
    const [radiusDriver, radiusDriven] = [teethDriver, teethDriven].map((z) => (stage.pitch * z) / (2 * Math.PI));
    const { u, centreDistance } = place;
    return {
      ...base,
      actions:
        u === null || radiusDriver === undefined || radiusDriven === undefined
          ? base.actions
          : (sense) => beltActions(u, turning(from, sense), centreDistance, radiusDriver, radiusDriven),
      used: [{ method: beltLength, input, output, origins }],
    };
  } catch (error) {
    if (!(error instanceof MethodError)) throw error;
    return {
      ...base,
      trouble: [{ address: `${to.address}/origin`, says: `pulleys that clear each other (${error.message})` }],
    };
  }
}
