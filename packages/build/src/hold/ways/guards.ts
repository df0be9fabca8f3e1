/** Guards: what keeps hands and toes out, and a broken chain or belt in. */
import { REACH_DISTANCES } from '@oddwheel/tables/reach-distances';
import { rowInSi } from '@oddwheel/tables/table';
import { leastBehind } from '../../assess/checks/guard.ts';
import type { Stage } from '../../model/model.ts';
import type { Guard } from '../../model/strength.ts';
import { change, type Ground, type Ladder, ladder, lengthText, put, type Step, single, typedAt } from '../ladder.ts';
import { stageOf } from './parts.ts';

function guardOf(ground: Ground): { readonly stage: Stage; readonly guard: Guard; readonly at: string } | null {
  const stage = stageOf(ground);
  return stage?.guard ? { stage, guard: stage.guard, at: `${stage.address}/guard` } : null;
}

/** A guard without openings, on all sides. */
export function closedIn(ground: Ground): readonly Ladder[] {
  const found = guardOf(ground);
  if (!found || found.guard.kind === 'closed') return [];
  return single('re-make', {
    what: `Close ${found.stage.name} in a guard on all sides`,
    patches: [put(ground, `${found.at}/kind`, 'closed')],
    size: 1,
  });
}

/** The guard as far off as its openings ask, where that is still this side of whoever comes nearest. */
export function furtherOff(ground: Ground): readonly Ladder[] {
  const found = guardOf(ground);
  if (found?.guard.kind !== 'with openings') return [];
  const { opening, shape, slotLength, stands, rider, passenger, bystander } = found.guard;
  const least = opening === null || shape === null ? null : leastBehind(opening, shape, slotLength);
  const nearest = Math.min(...[rider, passenger, bystander].map((one) => one ?? Number.POSITIVE_INFINITY));
  if (!least || stands === null || stands >= least.distance || least.distance > nearest) return [];
  const at = `${found.at}/stands`;
  const text = lengthText(ground, at, least.distance);
  return single('re-make', {
    what: `Set the guard of ${found.stage.name} ${text} off instead of ${typedAt(ground, at)}`,
    patches: [put(ground, at, text)],
    size: change(stands, least.distance),
  });
}

/** Smaller openings of the same shape, where the guard is; the largest first. */
export function finerOpenings(ground: Ground): readonly Ladder[] {
  const found = guardOf(ground);
  if (found?.guard.kind !== 'with openings') return [];
  const { opening, shape } = found.guard;
  if (opening === null || shape === null) return [];
  const at = `${found.at}/opening`;
  const smaller = Object.keys(REACH_DISTANCES.rows)
    .flatMap((row) => rowInSi(REACH_DISTANCES, row as keyof typeof REACH_DISTANCES.rows).opening ?? [])
    .filter((one, k, all) => one < opening * 0.9999 && all.indexOf(one) === k)
    .sort((a, b) => b - a);
  return ladder(
    'buy',
    smaller.map((one): Step => {
      const text = lengthText(ground, at, one);
      return {
        what: `Guard ${found.stage.name} with ${shape} of ${text} instead of ${typedAt(ground, at)}`,
        patches: [put(ground, at, text)],
        size: change(opening, one),
      };
    }),
  );
}

/** A fin ahead of where the lower run meets the sprocket. */
export function toeFin(ground: Ground): readonly Ladder[] {
  const found = guardOf(ground);
  if (!found || found.guard.toe === true) return [];
  return single('re-make', {
    what: `Fit a fin that keeps toes out where ${found.stage.name} meets the sprocket of the wheel`,
    patches: [put(ground, `${found.at}/toe`, 'fitted')],
    size: 0.1,
  });
}

/** What stops the free end of a broken one. */
export function heldIn(ground: Ground): readonly Ladder[] {
  const found = guardOf(ground);
  if (!found || found.guard.holds === true) return [];
  return single('re-make', {
    what: `Put a steel plate, or a hoop at the driver, beside ${found.stage.name}, so that a broken one stays in`,
    patches: [put(ground, `${found.at}/holds`, 'yes')],
    size: 0.2,
  });
}
