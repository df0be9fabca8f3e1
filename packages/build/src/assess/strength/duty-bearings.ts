import { dot, minus, norm, plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Scene } from '../checks/check.ts';
import type { CaseLoads } from '../loads.ts';
import type { Missing } from '../types.ts';
import { type BearingLoads, shareThrust } from './bearing-loads.ts';
import type { DutyRun } from './duty.ts';
import type { ShaftStructure } from './shaft-structure.ts';

/** What the bearings of one shaft carry in each bin of the duty, in the order of its bins. */
export type DutyBearings =
  | { readonly ok: true; readonly bins: readonly BearingLoads[] }
  | { readonly ok: false; readonly missing: readonly Missing[] };

/** By the duty and the shaft: one duty stands for many ways of making a shaft. */
const KNOWN = new WeakMap<DutyRun, WeakMap<ShaftStructure, DutyBearings>>();

/** Loads on the bearings of the shaft of this index over the duty; worked out once. */
export function dutyBearings(scene: Scene, duty: DutyRun, k: number): DutyBearings {
  const structure = scene.strength.shafts[k];
  if (!structure) return { ok: false, missing: [] };
  const known = KNOWN.get(duty) ?? new WeakMap<ShaftStructure, DutyBearings>();
  KNOWN.set(duty, known);
  const found = known.get(structure) ?? work(scene, duty, k);
  known.set(structure, found);
  return found;
}

/**
 * A shaft is a linear structure, and all that the drive does to it goes with the torque through it. So it is solved without torque,
 * once while the engine drives and once while the vehicle does; each bin lies on the straight line between.
 */
function work({ strength }: Scene, { bins, none }: DutyRun, k: number): DutyBearings {
  const structure = strength.shafts[k];
  if (!structure) return { ok: false, missing: [] };
  const seats = structure.bearings.map(({ seat }) => seat);
  const { direction } = structure.shaft;
  const still = strength.answer(k, none);
  if (!still.ok) return still;
  const torqueOf = (load: CaseLoads): number => load.shafts[k]?.torque ?? 0;
  const solved = ([1, -1] as const).map((sign) => {
    const bin = bins.find(({ load }) => Math.sign(torqueOf(load)) === sign);
    const answer = bin && strength.answer(k, bin.load);
    return bin && answer?.ok ? { torque: torqueOf(bin.load), solution: answer.solution } : null;
  });
  return {
    ok: true,
    bins: bins.map(({ load }) => {
      const torque = torqueOf(load);
      const line = torque === 0 ? null : solved[torque > 0 ? 0 : 1];
      const forces = seats.map((_, b): Vec3 => {
        const force = still.solution.reactionAt(b)?.force ?? [0, 0, 0];
        const at = line?.solution.reactionAt(b)?.force;
        return line && at ? plus(force, times(torque / line.torque, minus(at, force))) : force;
      });
      let thrust = 0;
      const radial = forces.map((force) => {
        const along = dot(force, direction);
        thrust -= along;
        return norm(minus(force, times(along, direction)));
      });
      return shareThrust(seats, radial, thrust);
    }),
  };
}
