import { universalPair } from '@oddwheel/mechanics/coupling/universal-pair';
import { universalRatio } from '@oddwheel/mechanics/coupling/universal-ratio';
import { MethodError } from '@oddwheel/mechanics/method/method';
import { cross, dot, minus, norm, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Shaft, Stage } from '../../model/model.ts';
import { lineAngle, onlyTorque, seatOf } from './place.ts';
import type { At, CouplingGeometry, StageGeometry, Used } from './types.ts';

type CouplingStage = Extract<Stage, { readonly kind: 'coupling' }>;

/** Distance of a point from the axis of a shaft. */
export function offAxis(point: Vec3, shaft: Shaft): number {
  const out = minus(point, shaft.origin);
  return norm(minus(out, times(dot(out, shaft.direction), shaft.direction)));
}

/** A rigid or elastic coupling, or one or two universal joints: ratio 1 on average, and how far the two shafts are out of line. */
export function couplingGeometry(stage: CouplingStage, from: Shaft, to: Shaft, at: At): StageGeometry {
  const relation = dot(from.direction, to.direction) >= 0 ? 1 : -1;
  const skew = lineAngle(from.direction, to.direction);
  const base: StageGeometry = {
    stage,
    from,
    to,
    ratio: 1,
    efficiency: at(stage.efficiency),
    relation,
    trouble: [],
    actions: onlyTorque(from, to, relation),
    skew,
    pitchRadiusDriver: null,
    chain: null,
    bevel: null,
    coupling: null,
    used: [],
  };
  const [driver, driven] = [seatOf(from, stage.from), seatOf(to, stage.to)];
  const line = {
    angle: skew,
    // Both ends count: shafts at an angle pass each other on one side of the joint.
    offset: Math.max(offAxis(driven.at, from), offAxis(driver.at, to)),
  };
  try {
    if (stage.joint === 'universal joint') {
      const input = { angle: skew, turn: 0 };
      const output = universalRatio.run(input);
      const used = { method: universalRatio, input, output, origins: { angle: 'directions of the two shafts' } };
      const coupling = { ...line, joints: [skew], residual: skew, unevenness: output.unevenness };
      return { ...base, coupling, used: [used] };
    }
    if (stage.joint === 'two universal joints') return { ...base, ...pair(stage, from, to, line) };
  } catch (error) {
    if (!(error instanceof MethodError)) throw error;
    return {
      ...base,
      trouble: [{ address: `${to.address}/direction`, says: `shafts that a joint can join (${error.message})` }],
    };
  }
  return { ...base, coupling: { ...line, joints: [], residual: 0, unevenness: 0 } };
}

/** Two joints with a middle shaft from one joint seat to the other, the forks on it in one plane. */
function pair(
  stage: CouplingStage,
  from: Shaft,
  to: Shaft,
  line: Pick<CouplingGeometry, 'angle' | 'offset'>,
): Pick<StageGeometry, 'coupling' | 'trouble' | 'used'> {
  const [driver, driven] = [seatOf(from, stage.from), seatOf(to, stage.to)];
  const middle = minus(driven.at, driver.at);
  if (norm(middle) === 0)
    return {
      coupling: null,
      used: [],
      trouble: [{ address: driven.address, says: 'two joints apart from each other, with a middle shaft between' }],
    };
  const [one, two] = [lineAngle(from.direction, middle), lineAngle(middle, to.direction)];
  const input = { angleFirst: one, angleSecond: two, phaseError: planesApart(from.direction, middle, to.direction) };
  const output = universalPair.run(input);
  const used: Used = {
    method: universalPair,
    input,
    output,
    origins: {
      angleFirst: `${from.address} and the line from joint to joint`,
      angleSecond: `${to.address} and the line from joint to joint`,
      phaseError: 'angle between the planes of the two joints; the forks of the middle shaft in one plane',
    },
  };
  return {
    coupling: { ...line, joints: [one, two], residual: output.residualAngle, unevenness: output.unevenness },
    trouble: [],
    used: [used],
  };
}

/** Angle between the planes of two joints about their middle shaft, −90 to 90 degrees; 0 where a joint stands straight. */
function planesApart(first: Vec3, middle: Vec3, second: Vec3): number {
  const [a, b] = [cross(first, middle), cross(middle, second)];
  const straight = 1e-9;
  if (norm(a) < straight * norm(middle) || norm(b) < straight * norm(middle)) return 0;
  return Math.atan2(norm(cross(a, b)), Math.abs(dot(a, b)));
}
