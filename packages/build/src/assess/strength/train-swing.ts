import { trainModes } from '@oddwheel/mechanics/torsion/train-modes';
import type { Shaft, Stage } from '../../model/model.ts';
import type { Scene } from '../checks/check.ts';
import type { Missing } from '../types.ts';
import { diametersOf } from './diameters.ts';

/** The whole drive brought to the speed of the wheel, in one gear: masses in a row, a spring between each two. */
export interface TrainSwing {
  /** Index of the gear, first gear 0. */
  readonly gear: number;
  /** Crank turns for one of the wheel. */
  readonly overall: number;
  readonly inertias: readonly number[];
  readonly stiffnesses: readonly number[];
  /** Natural frequencies, Hz, slowest first. */
  readonly modes: readonly number[];
}

export type Swings =
  | { readonly ok: true; readonly gears: readonly TrainSwing[] }
  | { readonly ok: false; readonly missing: readonly Missing[] };

const DENSITY = 7850;

const KNOWN = new WeakMap<Scene, Swings>();

/** Natural swings of the drive in each gear; worked out once for a scene. */
export function swingsOf(scene: Scene): Swings {
  const known = KNOWN.get(scene);
  if (known) return known;
  const found = work(scene);
  KNOWN.set(scene, found);
  return found;
}

/** A solid steel disc stands in for a sprocket or gear: J = ½ ρ π r⁴ b. */
const disc = (radius: number, width: number): number => 0.5 * DENSITY * Math.PI * radius ** 4 * width;

/** How far a shaft twists between two stations under one newton metre, rad. */
export function giveBetween(shaft: Shaft, a: number, b: number): { give: number; missing: readonly Missing[] } {
  const [from, to] = [Math.min(a, b), Math.max(a, b)];
  if (to - from < 1e-9) return { give: 0, missing: [] };
  const { stretches, missing } = diametersOf(shaft);
  let give = 0;
  for (const stretch of stretches) {
    const length = Math.min(stretch.to, to) - Math.max(stretch.from, from);
    if (length > 0) give += (length * 32) / (shaft.steel.shear * Math.PI * (stretch.diameter ** 4 - stretch.bore ** 4));
  }
  return { give, missing };
}

const stationOf = (shaft: Shaft, seat: string): number => shaft.seats.find(({ id }) => id === seat)?.station ?? 0;

/** Discs at driver and driven seat of a stage; nothing where their size is not known. */
function discsOf(scene: Scene, k: number): readonly [number, number] {
  const geometry = scene.stages[k];
  if (!geometry) return [0, 0];
  const { stage, chain, bevel } = geometry;
  if (stage.kind === 'chain' && chain)
    return [disc(chain.pitchRadiusDriver, stage.size.innerWidth), disc(chain.pitchRadiusDriven, stage.size.innerWidth)];
  if (stage.kind === 'bevel' && stage.faceWidth && bevel?.meanDriver && bevel.meanDriven) {
    const width = scene.at(stage.faceWidth);
    return [disc(bevel.meanDriver / 2, width), disc(bevel.meanDriven / 2, width)];
  }
  if (stage.kind === 'spur' && stage.faceWidth && stage.module) {
    const [module, width] = [scene.at(stage.module), scene.at(stage.faceWidth)];
    return [disc((module * stage.teeth.driver) / 2, width), disc((module * stage.teeth.driven) / 2, width)];
  }
  return [0, 0];
}

/** How far the driven shaft of a stage turns under one newton metre with its driver held, rad; gears and joints do not give. */
function stageGive(scene: Scene, k: number): { give: number; missing: readonly Missing[] } {
  const geometry = scene.stages[k];
  if (!geometry) return { give: 0, missing: [] };
  const { stage, chain } = geometry;
  if (stage.kind === 'belt')
    return {
      give: 0,
      missing: [
        {
          address: stage.address,
          says: `how far ${stage.name} stretches, for which no published figure is in the tables`,
        },
      ],
    };
  if (stage.kind !== 'chain') return { give: 0, missing: [] };
  if (!chain) return { give: 0, missing: geometry.trouble };
  const pull = (0.1 * stage.size.minTensile * scene.at(stage.strands)) / scene.at(stage.stretch);
  return { give: chain.span / (pull * chain.pitchRadiusDriven ** 2), missing: [] };
}

/** A row of masses that springs hold together, as it is put down; what has no mass of its own only adds to the spring. */
function newRow() {
  const inertias: number[] = [];
  const stiffnesses: number[] = [];
  let waiting = 0;
  return {
    inertias,
    stiffnesses,
    spring: (give: number): void => {
      waiting += give;
    },
    mass: (inertia: number): void => {
      if (inertia <= 0) return;
      const last = inertias.length - 1;
      if (last >= 0 && waiting === 0) inertias[last] = (inertias[last] as number) + inertia;
      else {
        if (last >= 0) stiffnesses.push(1 / waiting);
        inertias.push(inertia);
        waiting = 0;
      }
    },
  };
}

function work(scene: Scene): Swings {
  const { model, at, rollOut } = scene;
  const { vehicle, shafts, stages, cush } = model;
  const missing: Missing[] = [];
  if (rollOut === null) missing.push({ address: '/brief/wheel', says: 'the tyre or its roll-out' });
  if (cush && !cush.stiffness)
    missing.push({ address: `${cush.address}/stiffness`, says: 'the stiffness of the cush or damper' });
  // Turns of each shaft for one of the wheel.
  const turns: number[] = shafts.map(() => 1);
  for (let k = shafts.length - 2; k >= 0; k -= 1) turns[k] = (turns[k + 1] as number) * (scene.stages[k]?.ratio ?? 1);
  const gives = stages.map((_, k) => stageGive(scene, k));
  const along = shafts.map((shaft, k) => {
    const [from, to] = [stages[k - 1]?.to.seat, stages[k]?.from.seat ?? wheelSeat(shaft)];
    // The box in front of its output is not known; the output gives from its seat on.
    return from === undefined || to === undefined
      ? { give: 0, missing: [] }
      : giveBetween(shaft, stationOf(shaft, from), stationOf(shaft, to));
  });
  missing.push(...gives.flatMap((one) => one.missing), ...along.flatMap((one) => one.missing));
  if (missing.length > 0 || rollOut === null) return { ok: false, missing };
  const [cushShaft = '', cushSeat = ''] = cush?.at.split('/') ?? [];
  const cushGive = cush?.stiffness ? 1 / at(cush.stiffness) : 0;
  const soft = (k: number, seat: string | undefined): number =>
    cush && shafts[k]?.id === cushShaft && seat === cushSeat ? cushGive : 0;
  const rider = at(vehicle.mass) + at(vehicle.payload);
  const behind = at(vehicle.wheelInertia) + at(vehicle.otherInertia) + rider * (rollOut / (2 * Math.PI)) ** 2;
  const discs = stages.map((_, k) => discsOf(scene, k));
  const gears = scene.boxRatios.map((box, gear): TrainSwing => {
    const row = newRow();
    const first = turns[0] as number;
    row.mass(at(vehicle.engineInertia) * (box * first) ** 2);
    shafts.forEach((_, k) => {
      const speed = (turns[k] as number) ** 2;
      const [into, out] = [stages[k - 1], stages[k]];
      if (into) {
        row.spring((gives[k - 1]?.give ?? 0) / speed);
        row.mass((discs[k - 1]?.[1] ?? 0) * speed);
        row.spring(soft(k, into.to.seat) / speed);
      }
      row.spring((along[k]?.give ?? 0) / speed);
      if (out) {
        row.spring(soft(k, out.from.seat) / speed);
        row.mass((discs[k]?.[0] ?? 0) * speed);
      } else {
        row.spring(soft(k, wheelSeat(shafts[k] as Shaft)) / speed);
        row.mass(behind);
      }
    });
    const { inertias, stiffnesses } = row;
    const modes = trainModes(inertias, stiffnesses).map(({ angularFrequency }) => angularFrequency / (2 * Math.PI));
    return { gear, overall: box * first, inertias, stiffnesses, modes };
  });
  return { ok: true, gears };
}

const wheelSeat = (shaft: Shaft): string | undefined => shaft.seats.find(({ kind }) => kind === 'wheel')?.id;

/** Places in the drive where a cush or damper can sit, in words, nearest to the wheel first. */
export function cushPlaces(shafts: readonly Shaft[], stages: readonly Stage[]): string[] {
  const wheel = shafts.at(-1);
  const places = wheel ? [`between the wheel and ${wheel.name}`] : [];
  for (const stage of [...stages].reverse())
    if (stage.kind === 'chain' || stage.kind === 'belt')
      places.push(`in the carrier of the driven wheel of ${stage.name}`);
    else if (stage.kind === 'coupling') places.push(`as an elastic coupling in place of ${stage.name}`);
  return places;
}
