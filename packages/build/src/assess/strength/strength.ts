import { type Cache, reuse } from '../../model/cache.ts';
import type { Model } from '../../model/model.ts';
import { shaftValues } from '../../model/resolve-strength.ts';
import type { At } from '../geometry/types.ts';
import type { CaseLoads } from '../loads.ts';
import type { Missing } from '../types.ts';
import { type Corner, cornerKey } from '../uncertainty.ts';
import { type SeatLoad, seatLoads } from './seat-loads.ts';
import { scaledSolution, timesAsLarge } from './shaft-scaled.ts';
import { solveShaft } from './shaft-solve.ts';
import { type ShaftSolution, type ShaftStructure, shaftStructure } from './shaft-structure.ts';

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

/**
 * Answers by case and shaft. A case is made anew whenever an input changes that loads on seats hang on (roll-out and laden mass among them), and a shaft
 * whenever one of its own does, so that corners which differ in neither share the answer.
 */
const KNOWN = new WeakMap<CaseLoads, WeakMap<ShaftStructure, ShaftAnswer>>();

/**
 * Makes the shafts ready; cases are solved when a check asks.
 * @param cases of this corner: most load a shaft alike but for the size, and then the first of them stands for all
 */
export function strengthOf(
  model: Model,
  at: At,
  corner: Corner,
  rollOut: number | null,
  senses: readonly (1 | -1 | null)[],
  cases: readonly CaseLoads[],
  cache: Cache | null,
): Strength {
  const shafts = model.shafts.map((shaft) =>
    reuse(cache, `strength:${shaft.address}:${cornerKey(corner, shaftValues(shaft))}`, [shaft], () =>
      shaftStructure(shaft, at),
    ),
  );
  const solve = (structure: ShaftStructure, k: number, load: CaseLoads): ShaftAnswer => {
    if (structure.missing.length > 0) return { ok: false, missing: structure.missing };
    const { loads, missing } = seatLoads(model, at, rollOut, k, load, senses[k] ?? null);
    if (missing.length > 0) return { ok: false, missing };
    const first = firstAlike(k, load);
    const one = first && first !== load ? answerOf(k, first) : null;
    const by = one?.ok ? timesAsLarge(loads, one.loads) : null;
    const solution = one?.ok && by !== null ? scaledSolution(one.solution, by) : solveShaft(structure, loads);
    return solution ? { ok: true, loads, solution } : { ok: false, missing: structure.missing };
  };
  /**
   * The first case of full throttle that may load a shaft as this one does: its torque has the same sign. The wheel's own load goes with no
   * torque. Rare peaks hang on more inputs than others that answers are shared with, and stand for none but themselves.
   */
  const firstAlike = (k: number, load: CaseLoads): CaseLoads | null => {
    if (k === shafts.length - 1) return null;
    const sign = Math.sign(load.shafts[k]?.torque ?? 0);
    const alike = ({ point, shafts: on }: CaseLoads) =>
      point.kind === 'steady' && Math.sign(on[k]?.torque ?? 0) === sign;
    return sign === 0 ? null : (cases.find(alike) ?? null);
  };
  const answerOf = (k: number, load: CaseLoads): ShaftAnswer => {
    const structure = shafts[k];
    if (!structure) throw new Error(`There is no shaft ${k}.`);
    let answers = KNOWN.get(load);
    if (!answers) {
      answers = new WeakMap();
      KNOWN.set(load, answers);
    }
    const known = answers.get(structure);
    if (known) return known;
    const answer = solve(structure, k, load);
    answers.set(structure, answer);
    return answer;
  };
  return { shafts, answer: answerOf };
}
