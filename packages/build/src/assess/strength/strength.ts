import { type Cache, reuse } from '../../model/cache.ts';
import type { Model } from '../../model/model.ts';
import { shaftValues } from '../../model/resolve-strength.ts';
import type { At } from '../geometry/types.ts';
import type { CaseLoads } from '../loads.ts';
import type { Missing } from '../types.ts';
import { type Corner, cornerKey } from '../uncertainty.ts';
import { type SeatLoad, seatLoads } from './seat-loads.ts';
import { type ShaftSolution, type ShaftStructure, shaftStructure, solveShaft } from './shaft-structure.ts';

/** A shaft under one load case: forces inside, at its bearings, and movements. */
export type ShaftAnswer =
  | { readonly ok: true; readonly loads: readonly SeatLoad[]; readonly solution: ShaftSolution }
  | { readonly ok: false; readonly missing: readonly Missing[] };

/** Shafts on their bearings at one corner of the uncertain inputs. */
export interface Strength {
  /** In the order of power, the output shaft first. */
  readonly shafts: readonly ShaftStructure[];
  /** Answer for the shaft of this index; worked out once for each case. */
  readonly answer: (k: number, load: CaseLoads) => ShaftAnswer;
}

/** Makes the shafts ready; cases are solved when a check asks. */
export function strengthOf(
  model: Model,
  at: At,
  corner: Corner,
  rollOut: number | null,
  senses: readonly (1 | -1 | null)[],
  cache: Cache | null,
): Strength {
  const shafts = model.shafts.map((shaft) =>
    reuse(cache, `strength:${shaft.address}:${cornerKey(corner, shaftValues(shaft))}`, [shaft], () =>
      shaftStructure(shaft, at),
    ),
  );
  const known = new WeakMap<CaseLoads, ShaftAnswer[]>();
  const solve = (k: number, load: CaseLoads): ShaftAnswer => {
    const structure = shafts[k];
    if (!structure) throw new Error(`There is no shaft ${k}.`);
    if (structure.missing.length > 0) return { ok: false, missing: structure.missing };
    const { loads, missing } = seatLoads(model, at, rollOut, k, load, senses[k] ?? null);
    if (missing.length > 0) return { ok: false, missing };
    const solution = solveShaft(structure, loads);
    return solution ? { ok: true, loads, solution } : { ok: false, missing: structure.missing };
  };
  return {
    shafts,
    answer: (k, load) => {
      const answers = known.get(load) ?? [];
      known.set(load, answers);
      answers[k] ??= solve(k, load);
      return answers[k];
    },
  };
}
