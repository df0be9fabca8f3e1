import type { Model, Value } from '../../../model/model.ts';
import { shaftValues } from '../../../model/resolve-strength.ts';
import type { CaseLoads } from '../../loads.ts';
import { type Place, placesOf } from '../../strength/shaft-places.ts';
import type { ShaftSolution, ShaftStructure } from '../../strength/shaft-structure.ts';
import type { Missing } from '../../types.ts';
import type { Check, Outcome, Scene, Subject } from '../check.ts';

/** Every shaft of the path. */
export const shaftSubjects: Check['subjects'] = (model) =>
  model.shafts.map(({ address, name }) => ({ address, element: name, stage: null }));

/** Index of the shaft that a subject is, or that carries it; -1 when there is none. */
export function shaftIndex(model: Model, { address }: Pick<Subject, 'address'>): number {
  const known = INDEX.get(model);
  const before = known?.get(address);
  if (before !== undefined) return before;
  const found = model.shafts.findIndex((shaft) => address === shaft.address || address.startsWith(`${shaft.address}/`));
  if (known) known.set(address, found);
  else INDEX.set(model, new Map([[address, found]]));
  return found;
}

/** By the address: it is asked for in every case. */
const INDEX = new WeakMap<Model, Map<string, number>>();

/** A shaft solved in one case. */
export interface Solved {
  readonly k: number;
  readonly structure: ShaftStructure;
  readonly solution: ShaftSolution;
  readonly places: readonly Place[];
  /** Inputs of the shaft that may be uncertain or assumed. */
  readonly uses: readonly Value[];
}

const unknown = (missing: readonly Missing[]): Outcome => ({ kind: 'unknown', missing });

/** Runs a check on a shaft solved for a case; what is missing to solve it makes the outcome unknown. */
export const onSolved =
  (run: (solved: Solved, scene: Scene, subject: Subject, load: CaseLoads) => Outcome | null): Check['run'] =>
  (scene, subject, load) => {
    const k = shaftIndex(scene.model, subject);
    const structure = scene.strength.shafts[k];
    if (!structure || !load) return null;
    const answer = scene.strength.answer(k, load);
    if (!answer.ok) return unknown(answer.missing);
    const solved = {
      k,
      structure,
      solution: answer.solution,
      places: placesOf(structure, scene.at, scene.model.loads),
      uses: shaftUses(structure),
    };
    return run(solved, scene, subject, load);
  };

const USES = new WeakMap<ShaftStructure, readonly Value[]>();

/** Inputs of a shaft that a check on it uses. */
export function shaftUses(structure: ShaftStructure): readonly Value[] {
  const known = USES.get(structure);
  if (known) return known;
  const uses = shaftValues(structure.shaft).filter((value) => value !== null);
  USES.set(structure, uses);
  return uses;
}
