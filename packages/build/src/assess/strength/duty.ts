import { rowInSi } from '@oddwheel/tables/table';
import { USUAL_DUTY } from '@oddwheel/tables/usual-duty';
import type { Model, Value } from '../../model/model.ts';
import { type CasePoint, type EngineCurve, ordinal, STEADY } from '../cases.ts';
import type { At, StageGeometry } from '../geometry/types.ts';
import { type CaseLoads, carryLoads } from '../loads.ts';
import { cycleTitle } from '../road/cycle.ts';
import { NEEDS, rowsOf } from '../road/ground.ts';
import { driveValues } from '../road/inputs.ts';
import type { RoadParts } from '../road/parts.ts';
import type { Missing } from '../types.ts';

/** Part of the duty with one gear, speed and torque. */
export interface DutyBin {
  readonly point: CasePoint;
  /** Carried from crank to wheel; where the clutch slips, the crank counts as turning with the box. */
  readonly load: CaseLoads;
  readonly roadSpeed: number;
  /** Part of the distance, and so of the turns of every shaft behind the box; 1 in all. */
  readonly ofDistance: number;
  /** Part of the time on the move; 1 in all. */
  readonly ofTime: number;
}

/** How the build is driven over its whole life. */
export interface DutyRun {
  readonly ok: true;
  readonly from: 'typed' | 'cycle' | 'usual';
  /** Where the bins come from: an address, a cycle, or a row of a table. */
  readonly origin: string;
  readonly bins: readonly DutyBin[];
  /** Rolling along without torque. */
  readonly none: CaseLoads;
  /** Distance that the drive shall last, m, and the time on the move that it takes, s. */
  readonly distance: number;
  readonly time: number;
  /** Turns of each shaft over that distance, in the order of power. */
  readonly turns: readonly number[];
  /** Inputs that the duty hangs on. */
  readonly uses: readonly Value[];
}

export type DutyAnswer = DutyRun | { readonly ok: false; readonly missing: readonly Missing[] };

/** What the duty needs of the build at one corner. */
export interface DutyGround {
  readonly model: Model;
  readonly at: At;
  readonly engine: EngineCurve | null;
  readonly boxRatios: readonly number[];
  readonly overall: readonly number[];
  readonly rollOut: number | null;
  readonly stages: readonly StageGeometry[];
  readonly senses: readonly (1 | -1 | null)[];
  readonly road: RoadParts;
}

/** A bin before it is carried: parts of the distance need not sum to one. */
interface Step {
  readonly name: string;
  readonly gear: number;
  readonly roadSpeed: number;
  readonly torque: number;
  readonly share: number;
}

type Steps = { readonly ok: true; readonly origin: string; readonly steps: readonly Step[] } | Refusal;
interface Refusal {
  readonly ok: false;
  readonly missing: readonly Missing[];
}
const lacks = (...missing: Missing[]): Refusal => ({ ok: false, missing });

/**
 * How the build is driven: by the typed table; else over the cycle of the targets, second by second; else by a usual spectrum, which shows as assumed.
 * @returns bins of gear, speed and torque, each carried through the drive, or what is missing to know them
 */
export function dutyOf(ground: DutyGround): DutyAnswer {
  const { model, at, engine, rollOut, boxRatios, overall, stages, senses } = ground;
  const { duty, targets, shafts } = model;
  if (!engine || rollOut === null)
    return lacks(...(engine ? [] : [NEEDS.curve]), ...(rollOut === null ? [NEEDS.rollOut] : []));
  const from = duty.rows ? 'typed' : targets.cycle === null ? 'usual' : 'cycle';
  const found =
    from === 'typed'
      ? typedSteps(ground, engine, rollOut)
      : from === 'cycle'
        ? cycleSteps(ground, engine)
        : usualSteps(ground, engine, rollOut);
  if (!found.ok) return found;
  const { steps } = found;
  const whole = steps.reduce((sum, { share }) => sum + share, 0);
  // Time of each step per metre of duty.
  const slowness = steps.map(({ share, roadSpeed }) => share / whole / roadSpeed);
  const perMetre = slowness.reduce((sum, one) => sum + one, 0);
  const efficiency = at(model.engine.boxEfficiency);
  const bins = steps.map((step, k): DutyBin => {
    const { name, gear, roadSpeed, torque, share } = step;
    const point: CasePoint = {
      id: `duty/${k + 1}`,
      name,
      gear,
      engineSpeed: ((roadSpeed * 2 * Math.PI) / rollOut) * (overall[gear] as number),
      engineTorque: torque,
      ...STEADY,
    };
    return {
      point,
      load: carryLoads(point, shafts, stages, senses, boxRatios[gear] as number, efficiency),
      roadSpeed,
      ofDistance: share / whole,
      ofTime: (slowness[k] as number) / perMetre,
    };
  });
  const rolling: CasePoint = { id: 'duty/none', name: 'rolling', gear: 0, engineSpeed: 0, engineTorque: 0, ...STEADY };
  const none = carryLoads(rolling, shafts, stages, senses, boxRatios[0] as number, efficiency);
  const distance = at(duty.distance);
  // Shafts behind the box turn with the wheel in every gear.
  const turns: number[] = [];
  let behind = distance / rollOut;
  for (let k = shafts.length - 1; k >= 0; k--) {
    turns.unshift(behind);
    behind *= stages[k - 1]?.ratio ?? 1;
  }
  return {
    ok: true,
    from,
    origin: found.origin,
    bins,
    none,
    distance,
    time: perMetre * distance,
    turns,
    uses: usesOf(model),
  };
}

/** Turns of the path per metre of road. */
const perMetreOf = (overall: number, rollOut: number): number => (2 * Math.PI * overall) / rollOut;

/** Torque that part of the full torque gives at a road speed; below the curve the clutch slips and its lowest row counts. */
function typedSteps({ model, overall }: DutyGround, engine: EngineCurve, rollOut: number): Steps {
  const rows = model.duty.rows ?? [];
  const { speeds, torques } = rowsOf(engine, model.engine.curve);
  const [lowest, least] = [speeds[0] ?? engine.idle, torques[0] ?? engine.peakTorque.torque];
  const missing: Missing[] = [];
  const steps = rows.flatMap(({ address, name, gear, speed, throttle, share }): Step[] => {
    const ratio = overall[gear];
    if (ratio === undefined) {
      missing.push({ address: `${address}/gear`, says: `a gear that the box has, for “${name}”` });
      return [];
    }
    const crank = speed * perMetreOf(ratio, rollOut);
    const full = crank < lowest ? least : engine.torqueAt(Math.min(crank, engine.redline));
    if (full === null || crank > engine.redline * (1 + 1e-9)) {
      missing.push({
        address: `${address}/speed`,
        says: `a road speed below the redline in ${ordinal(gear + 1)} gear, for “${name}”`,
      });
      return [];
    }
    return [{ name, gear, roadSpeed: speed, torque: throttle * full, share }];
  });
  return missing.length > 0 ? lacks(...missing) : { ok: true, origin: `${model.duty.address}/rows`, steps };
}

const LEVELS = (['full torque', 'pulling well', 'rolling along'] as const).map((name) => {
  const { throttle = Number.NaN, share = Number.NaN } = rowInSi(USUAL_DUTY, name);
  return { name, throttle, share };
});
const IN_FIRST = rowInSi(USUAL_DUTY, 'in first gear').share ?? Number.NaN;

/** First gear a little, the others alike; in each a little at full torque, at the speed of peak torque. */
function usualSteps({ overall }: DutyGround, { peakTorque }: EngineCurve, rollOut: number): Steps {
  const steps = overall.flatMap((ratio, gear) => {
    const part = overall.length === 1 ? 1 : gear === 0 ? IN_FIRST : (1 - IN_FIRST) / (overall.length - 1);
    return LEVELS.map(
      ({ name, throttle, share }): Step => ({
        name: `${ordinal(gear + 1)} gear, ${name}`,
        gear,
        roadSpeed: peakTorque.speed / perMetreOf(ratio, rollOut),
        torque: throttle * peakTorque.torque,
        share: part * share,
      }),
    );
  });
  return { ok: true, origin: 'usual-duty', steps };
}

/** Bands of speed up to the redline, and of torque up to its peak, in which seconds of a cycle count as one bin. */
const SPEED_BANDS = 5;
const TORQUE_BANDS = 6;

/** Seconds of one gear, speed band and torque band. */
interface Gathered {
  readonly gear: number;
  readonly sign: -1 | 0 | 1;
  distance: number;
  time: number;
  /** Sum of distance times torque cubed: the mean torque of a bin wears balls as its seconds do. */
  cubed: number;
}

/**
 * The cycle of the targets, gathered into bins. Torque that the engine does not have is cut to its full torque; on the overrun the
 * engine’s own drag is the most, and where that is not known, all that slows the vehicle counts as coming through the drive.
 */
function cycleSteps({ model, at, overall, road }: DutyGround, engine: EngineCurve): Steps {
  const drive = road.drive();
  const run = road.cycle();
  const address = '/brief/targets/cycle';
  if (!run) return lacks({ address, says: 'a driving cycle' });
  if (!drive.ok || !run.ok) {
    const refused = drive.ok ? run : drive;
    if (!refused.ok && refused.missing.length > 0) return lacks(...refused.missing);
    return lacks({
      address: `${model.duty.address}/rows`,
      says: `how it is driven, row by row, as the cycle does not tell it (${refused.ok ? '' : refused.says})`,
    });
  }
  const { gears, engineTorques, meanSpeeds } = run.output;
  const { step } = run.input;
  const { rollingRadius, speeds, torques } = drive.drive;
  const { redline, peakTorque } = engine;
  const [lowest, least] = [speeds[0] ?? 0, torques[0] ?? 0];
  const drag = model.engine.drag ? at(model.engine.drag) : Number.POSITIVE_INFINITY;
  const bins = new Map<string, Gathered>();
  meanSpeeds.forEach((speed, k) => {
    if (!(speed > 0)) return;
    const inGear = (gears[k] ?? 0) > 0;
    const gear = inGear ? (gears[k] as number) - 1 : 0;
    const crank = (speed * (overall[gear] as number)) / rollingRadius;
    const full =
      crank < lowest ? least : (engine.torqueAt(Math.min(crank, redline, speeds.at(-1) ?? redline)) ?? least);
    const torque = inGear ? Math.min(full, Math.max(-drag, engineTorques[k] ?? 0)) : 0;
    const band = Math.floor((Math.abs(torque) / peakTorque.torque) * TORQUE_BANDS);
    const sign = Math.sign(torque) as -1 | 0 | 1;
    const key = `${inGear} ${gear} ${Math.floor((crank / redline) * SPEED_BANDS)} ${sign} ${band}`;
    const bin = bins.get(key) ?? { gear, sign, distance: 0, time: 0, cubed: 0 };
    bin.distance += speed * step;
    bin.time += step;
    bin.cubed += speed * step * Math.abs(torque) ** 3;
    bins.set(key, bin);
  });
  const steps = [...bins.values()].map(({ gear, sign, distance, time, cubed }): Step => {
    const size = Math.cbrt(cubed / distance);
    const part = Math.round((100 * size) / peakTorque.torque);
    const how = sign < 0 ? 'held back with' : 'at';
    return {
      name:
        sign === 0 ? 'rolling, clutch open' : `${ordinal(gear + 1)} gear, ${how} ${part} % of the engine’s peak torque`,
      gear,
      roadSpeed: distance / time,
      torque: sign * size,
      share: distance,
    };
  });
  return { ok: true, origin: cycleTitle(model.targets.cycle ?? ''), steps };
}

/** Inputs that the duty hangs on. */
/** Inputs that a typed or usual duty hangs on; null for one over a cycle, which reads much of the road besides. */
export const dutyValues = (model: Model): readonly Value[] | null =>
  model.duty.rows || model.targets.cycle === null ? usesOf(model) : null;

function usesOf(model: Model): Value[] {
  const { duty, vehicle, engine, targets } = model;
  const ofCycle =
    duty.rows || targets.cycle === null
      ? []
      : [vehicle.mass, vehicle.payload, vehicle.rolling, vehicle.dragArea, engine.drag];
  const ofInertia = ofCycle.length > 0 ? [vehicle.wheelInertia, vehicle.otherInertia] : [];
  return [...driveValues(model), ...ofCycle, ...ofInertia, duty.distance, duty.usual].filter((value) => value !== null);
}
