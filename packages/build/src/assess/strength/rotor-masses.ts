import { solveFrame } from '@oddwheel/mechanics/frame/solve';
import { dot } from '@oddwheel/mechanics/numerics/vector';
import type { Stage } from '../../model/model.ts';
import type { Scene } from '../checks/check.ts';
import type { StageGeometry } from '../geometry/types.ts';
import type { Missing } from '../types.ts';
import { thinnestAt } from './diameters.ts';
import { across, type ShaftStructure } from './shaft-structure.ts';

/** Steel discs stand in for sprockets, pulleys and gears. */
const DENSITY = 7850;

interface Disc {
  readonly radius: number | null;
  readonly width: number | null;
  /** What is missing where a size is null. */
  readonly missing: Missing;
}

/** The disc that a stage puts on one of its shafts; null for joints and closed units, which bring none that is known. */
function discOf(scene: Scene, { stage, chain, bevel }: StageGeometry, end: 'from' | 'to'): Disc | null {
  const driver = end === 'from';
  const missing = (key: string, words: string): Missing => ({
    address: `${stage.address}/${key}`,
    says: `${words} of ${stage.name}`,
  });
  const toothed = (of: Extract<Stage, { readonly kind: 'bevel' | 'spur' }>, radius: number | null): Disc => ({
    radius,
    width: of.faceWidth ? scene.at(of.faceWidth) : null,
    missing: missing(of.module ? 'faceWidth' : 'module', of.module ? 'the face width' : 'the module'),
  });
  switch (stage.kind) {
    case 'chain':
      return {
        radius: (driver ? chain?.pitchRadiusDriver : chain?.pitchRadiusDriven) ?? null,
        width: stage.size.innerWidth,
        missing: missing('teeth', 'the sprockets'),
      };
    case 'bevel': {
      const mean = driver ? bevel?.meanDriver : bevel?.meanDriven;
      return toothed(stage, mean == null ? null : mean / 2);
    }
    case 'spur':
      return toothed(
        stage,
        stage.module ? (scene.at(stage.module) * stage.teeth[driver ? 'driver' : 'driven']) / 2 : null,
      );
    case 'belt': {
      const shaft = scene.model.shafts.find(({ id }) => id === stage[end].shaft);
      const seat = shaft?.seats.find(({ id }) => id === stage[end].seat);
      return {
        radius: (stage.pitch * stage.teeth[driver ? 'driver' : 'driven']) / (2 * Math.PI),
        width: seat?.width ?? null,
        missing: {
          address: `${seat?.address ?? stage.address}/width`,
          says: `the width of ${seat?.name ?? stage.name}`,
        },
      };
    }
    case 'coupling':
    case 'unit':
      return null;
  }
}

/** Masses at the nodes of a shaft, its own and its discs, and how stiff the shaft is against a push across it there. */
export type Masses =
  | { readonly ok: true; readonly masses: readonly number[]; readonly stiffnesses: readonly number[] }
  | { readonly ok: false; readonly missing: readonly Missing[] };

const STIFFNESSES = new WeakMap<ShaftStructure, readonly number[]>();

/** Push across the shaft at each node over the movement there; the section is round, so one direction stands for all. */
function stiffnessesOf(structure: ShaftStructure): readonly number[] {
  const known = STIFFNESSES.get(structure);
  if (known) return known;
  const { factors, shaft, stations } = structure;
  if (!factors) return [];
  const [first] = across(shaft.direction);
  const found = stations.map((_, node) => {
    const nodes = new Float64Array(stations.length * 6);
    nodes.set(first, node * 6);
    const moves = solveFrame(factors, { nodes });
    return 1 / dot(first, [moves[node * 6] as number, moves[node * 6 + 1] as number, moves[node * 6 + 2] as number]);
  });
  STIFFNESSES.set(structure, found);
  return found;
}

/** What turns with shaft `k`, lumped at its nodes. */
export function massesOn(scene: Scene, k: number): Masses {
  const structure = scene.strength.shafts[k];
  if (!structure || structure.missing.length > 0) return { ok: false, missing: structure?.missing ?? [] };
  const { shaft, stations, stretches } = structure;
  const masses = stations.map(() => 0);
  const put = (node: number, mass: number): void => {
    masses[node] = (masses[node] ?? 0) + mass;
  };
  stations.slice(1).forEach((after, n) => {
    const before = stations[n] as number;
    const stretch = thinnestAt(stretches, (before + after) / 2);
    if (!stretch) return;
    const { diameter, bore } = stretch;
    const half = (shaft.steel.density * Math.PI * (diameter ** 2 - bore ** 2) * (after - before)) / 8;
    put(n, half);
    put(n + 1, half);
  });
  const missing: Missing[] = [];
  for (const [stage, end] of [
    [scene.stages[k - 1], 'to'],
    [scene.stages[k], 'from'],
  ] as const) {
    const disc = stage ? discOf(scene, stage, end) : null;
    if (!stage || !disc) continue;
    if (disc.radius === null || disc.width === null) missing.push(disc.missing);
    else {
      const seat = shaft.seats.find(({ id }) => id === stage.stage[end].seat);
      const node = stations.findIndex((station) => Math.abs(station - (seat?.station ?? Number.NaN)) < 1e-6);
      if (node >= 0) put(node, DENSITY * Math.PI * disc.radius ** 2 * disc.width);
    }
  }
  return missing.length > 0 ? { ok: false, missing } : { ok: true, masses, stiffnesses: stiffnessesOf(structure) };
}
