import type { Model } from '../../model/model.ts';
import type { Check, Outcome } from './check.ts';

/**
 * A check that no uncertain input touches gives the same outcome at every corner: it is worked out once for a model.
 * Models do not change, so the answer is the same as without.
 */
export function perModel(run: Check['run']): Check['run'] {
  const known = new WeakMap<Model, Map<string, Outcome | null>>();
  return (scene, subject, load) => {
    const outcomes = known.get(scene.model) ?? new Map<string, Outcome | null>();
    known.set(scene.model, outcomes);
    const found = outcomes.get(subject.address);
    if (found !== undefined) return found;
    const outcome = run(scene, subject, load);
    outcomes.set(subject.address, outcome);
    return outcome;
  };
}
