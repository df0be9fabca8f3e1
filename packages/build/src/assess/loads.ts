import type { Shaft } from '../model/model.ts';
import type { CasePoint } from './cases.ts';
import type { Action, StageGeometry } from './geometry/types.ts';

/** One shaft in one load case; speed and torque as sizes, the sense apart. */
export interface ShaftLoad {
  readonly speed: number;
  readonly torque: number;
  readonly power: number;
}

export interface StageLoad {
  readonly torqueIn: number;
  readonly torqueOut: number;
  readonly loss: number;
  /** Six numbers at each of its two seats. */
  readonly from: Action;
  readonly to: Action;
  readonly forcesKnown: boolean;
}

export interface CaseLoads {
  readonly point: CasePoint;
  readonly shafts: readonly ShaftLoad[];
  readonly stages: readonly StageLoad[];
  /** Loss between crank and output. */
  readonly boxLoss: number;
  /** Out-of-balance torque about the worst shaft over the torque through it. */
  readonly torqueResidual: number;
  /** |power in − losses − power at the wheel's shaft| over power in. */
  readonly powerResidual: number;
}

const scale = (action: Action, by: number): Action => ({
  force: [action.force[0] * by, action.force[1] * by, action.force[2] * by],
  moment: [action.moment[0] * by, action.moment[1] * by, action.moment[2] * by],
});

const about = (action: Action, shaft: Shaft): number =>
  action.moment[0] * shaft.direction[0] + action.moment[1] * shaft.direction[1] + action.moment[2] * shaft.direction[2];

/** Senses of rotation, shaft by shaft from the output; null from the first stage whose relation is open. */
export function senses(outputSense: 1 | -1, geometry: readonly StageGeometry[]): readonly (1 | -1 | null)[] {
  const list: (1 | -1 | null)[] = [outputSense];
  for (const { relation } of geometry) {
    const before = list.at(-1) ?? null;
    list.push(before === null || relation === null ? null : before === relation ? 1 : -1);
  }
  return list;
}

/** Torque behind a ratio: losses eat into it when it drives, and add to it when it is driven. */
const passed = (torque: number, ratio: number, efficiency: number): number =>
  torque >= 0 ? torque * ratio * efficiency : (torque * ratio) / efficiency;

/**
 * Carries one case from the crank to the wheel's shaft, with the action at every seat: T₂ = T₁ i η while the engine drives, T₂ = T₁ i / η while the
 * vehicle does; ω₂ = ω₁ / i. The other span of a chain then pulls, as if the shafts turned the other way.
 * The model checks itself: torques about each shaft, and power from end to end.
 */
export function carryLoads(
  point: CasePoint,
  shafts: readonly Shaft[],
  geometry: readonly StageGeometry[],
  senseOf: readonly (1 | -1 | null)[],
  boxRatio: number,
  boxEfficiency: number,
): CaseLoads {
  const supplied = point.engineSpeed * point.engineTorque;
  const firstTorque = passed(point.engineTorque, boxRatio, boxEfficiency);
  const firstSpeed = point.engineSpeed / boxRatio;
  const boxLoss = supplied - firstTorque * firstSpeed;
  const braked = (k: number, torque: number): number =>
    point.brake?.shaft === k ? torque - point.brake.torque : torque;
  const load = (k: number, speed: number, torque: number): ShaftLoad => {
    const after = braked(k, torque);
    return { speed, torque: after, power: after * speed };
  };
  const first = load(0, firstSpeed, firstTorque);
  const out: ShaftLoad[] = [first];
  const stages: StageLoad[] = [];
  let before = first;
  geometry.forEach((stage, k) => {
    const torque = passed(before.torque, stage.ratio, stage.efficiency);
    const speed = before.speed / stage.ratio;
    const sense = senseOf[k] ?? 1;
    const actions = stage.actions(before.torque >= 0 ? sense : sense === 1 ? -1 : 1);
    stages.push({
      torqueIn: before.torque,
      torqueOut: torque,
      loss: before.power - torque * speed,
      from: scale(actions.from, Math.abs(before.torque)),
      to: scale(actions.to, Math.abs(torque)),
      forcesKnown: actions.forcesKnown,
    });
    before = load(k + 1, speed, torque);
    out.push(before);
  });
  return {
    point,
    shafts: out,
    stages,
    boxLoss,
    torqueResidual: torqueResidual(point, shafts, stages, out),
    powerResidual: powerResidual(point, out, stages, boxLoss),
  };
}

/** Between two stages, what drives a shaft and what it drives must cancel about its axis. */
function torqueResidual(
  point: CasePoint,
  shafts: readonly Shaft[],
  stages: readonly StageLoad[],
  loads: readonly ShaftLoad[],
): number {
  let worst = 0;
  for (let k = 1; k < shafts.length - 1; k += 1) {
    const shaft = shafts[k];
    const driven = stages[k - 1];
    const driver = stages[k];
    const torque = loads[k]?.torque ?? 0;
    if (!shaft || !driven || !driver || torque === 0 || point.brake?.shaft === k) continue;
    worst = Math.max(worst, Math.abs(about(driven.to, shaft) + about(driver.from, shaft)) / Math.abs(torque));
  }
  return worst;
}

function powerResidual(
  point: CasePoint,
  loads: readonly ShaftLoad[],
  stages: readonly StageLoad[],
  boxLoss: number,
): number {
  const supplied = point.engineSpeed * point.engineTorque;
  const { brake } = point;
  const taken = brake ? brake.torque * (loads[brake.shaft]?.speed ?? 0) : 0;
  const lost = stages.reduce((sum, stage) => sum + stage.loss, boxLoss);
  const delivered = loads.at(-1)?.power ?? 0;
  const size = Math.max(Math.abs(supplied), Math.abs(delivered), Math.abs(taken));
  return size === 0 ? 0 : Math.abs(supplied - lost - taken - delivered) / size;
}
