import type { Scene } from '../checks/check.ts';
import type { Missing } from '../types.ts';
import type { DutyRun } from './duty.ts';
import { type SectionForces, type Sections, sectionAt } from './sections.ts';
import { fatigueUse, type Place } from './shaft-places.ts';
import type { ShaftStructure } from './shaft-structure.ts';

/** One section of a shaft over the duty: stresses and turns of each step that bends it. */
export interface DutyStresses {
  readonly place: Place;
  readonly swings: readonly number[];
  readonly means: readonly number[];
  readonly turns: readonly number[];
  /** Names of the steps. */
  readonly steps: readonly string[];
}

export type DutySections =
  | { readonly ok: true; readonly bins: readonly Sections[] }
  | { readonly ok: false; readonly missing: readonly Missing[] };

/** Places that come this near to the one that is used most are compared by the sum of their damage. */
const NEAR = 0.6;
const NOTHING = 1e-6;

/** By the duty and the shaft: one duty stands for many ways of making a shaft. */
const KNOWN = new WeakMap<DutyRun, WeakMap<ShaftStructure, DutySections>>();

/** What goes on inside the shaft of this index in each step of the duty; worked out once. */
export function dutySections(scene: Scene, duty: DutyRun, k: number): DutySections {
  const structure = scene.strength.shafts[k];
  if (!structure) return { ok: false, missing: [] };
  const known = KNOWN.get(duty) ?? new WeakMap<ShaftStructure, DutySections>();
  KNOWN.set(duty, known);
  const found = known.get(structure) ?? work(scene, duty, k);
  known.set(structure, found);
  return found;
}

/** Nothing but the torque loads a shaft that carries no wheel, so one step for each way of turning stands for all of them. */
function work({ strength, model }: Scene, { bins }: DutyRun, k: number): DutySections {
  const scaled = k < model.shafts.length - 1;
  const whole = new Map<number, { readonly torque: number; readonly sections: Sections }>();
  const found: Sections[] = [];
  for (const { load } of bins) {
    const torque = load.shafts[k]?.torque ?? 0;
    const sign = Math.sign(torque);
    const one = scaled ? whole.get(sign) : undefined;
    if (one && torque !== 0) {
      const { by } = one.sections;
      found.push({ ...one.sections, by: by * (torque / one.torque) });
      continue;
    }
    const answer = strength.answer(k, load);
    if (!answer.ok) return { ok: false, missing: answer.missing };
    const { sections } = answer.solution;
    if (torque !== 0) whole.set(sign, { torque, sections });
    found.push(sections);
  }
  return { ok: true, bins: found };
}

/** Stress that swings and mean stress at a place, as the method for fatigue has them. */
function stressesAt(
  place: Place,
  { bending, torque }: SectionForces,
): { readonly swing: number; readonly mean: number } {
  return {
    swing: (place.bending * bending) / place.modulus,
    mean: (Math.sqrt(3) * place.torsion * Math.abs(torque)) / (2 * place.modulus),
  };
}

/**
 * Sections of a shaft that the duty uses most, each with its stresses; those far from the most used are left out.
 * @returns an empty list where nothing bends the shaft
 */
export function dutyStresses(
  places: readonly Place[],
  bins: readonly Sections[],
  duty: DutyRun,
  k: number,
): readonly DutyStresses[] {
  // The straight line of Goodman ranks places well enough; their damage is compared afterwards.
  const use = fatigueUse('Goodman');
  const ranked = places.flatMap((place) =>
    place.entries.map((entry) => ({
      place,
      entry,
      most: bins.reduce((most, sections) => {
        const forces = sectionAt(sections, entry);
        return forces ? Math.max(most, use(place, forces)) : most;
      }, 0),
    })),
  );
  const top = ranked.reduce((most, one) => Math.max(most, one.most), 0);
  if (!(top > NOTHING)) return [];
  return ranked
    .filter(({ most }) => most >= NEAR * top)
    .flatMap(({ place, entry }): DutyStresses[] => {
      const steps = bins.flatMap((sections, n) => {
        const forces = sectionAt(sections, entry);
        const bin = duty.bins[n];
        if (!forces || !bin) return [];
        const { swing, mean } = stressesAt(place, forces);
        const turns = (duty.turns[k] ?? 0) * bin.ofDistance;
        return swing > NOTHING * place.endurance && turns > 0 ? [{ swing, mean, turns, name: bin.point.name }] : [];
      });
      return steps.length === 0
        ? []
        : [
            {
              place,
              swings: steps.map(({ swing }) => swing),
              means: steps.map(({ mean }) => mean),
              turns: steps.map(({ turns }) => turns),
              steps: steps.map(({ name }) => name),
            },
          ];
    });
}
