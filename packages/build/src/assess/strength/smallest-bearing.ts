import { BEARINGS } from '@oddwheel/tables/bearings';
import { factsOf } from '../../model/resolve-strength.ts';
import { type Check, looksAt, type Scene } from '../checks/check.ts';
import { bearingLasts, lastingOf } from '../checks/strength/bearing-life.ts';
import { bearingStands, spoiledAt, turnsUpTo } from '../checks/strength/bearing-limits.ts';
import { bearingAt, loadOn } from '../checks/strength/bearings.ts';
import { lifeOf } from './bearing-life.ts';
import { type BearingLoad, staticOf } from './bearing-loads.ts';
import { dutyBearings } from './duty-bearings.ts';

/** Rows of deep groove bearings with one bore, the smallest outside first, then the narrowest. */
function candidates(bore: number): readonly { readonly row: string; readonly outside: number }[] {
  return Object.keys(BEARINGS.rows)
    .flatMap((row) => {
      const facts = factsOf({ row });
      const { outside, width } = facts ?? { outside: null, width: null };
      return facts?.kind === 'deep groove' && facts.bore === bore && outside !== null
        ? [{ row, outside, width: width ?? 0 }]
        : [];
    })
    .sort((a, b) => a.outside - b.outside || a.width - b.width);
}

/**
 * The smallest deep groove bearing of the table that goes on the same shaft seat and into the plate, lasts the duty, stands the peaks with the
 * design reserve and turns as fast as it must.
 * @returns null where the fitted bearing is of another kind or not known, the duty is not, or none does
 */
export function smallestBearing(scene: Scene, address: string): string | null {
  const found = bearingAt(scene, address);
  if (found?.kind !== 'known') return null;
  const { at } = found;
  const { k, b, facts, fitted } = at;
  const duty = scene.duty();
  const lasting = lastingOf(at);
  if (facts.kind !== 'deep groove' || !duty.ok || !('facts' in lasting)) return null;
  const carried = dutyBearings(scene, duty, k);
  if (!carried.ok) return null;
  const peaks: BearingLoad[] = [];
  let fastest = 0;
  for (const load of scene.cases) {
    const answer = scene.strength.answer(k, load);
    if (!answer.ok) return null;
    if (looksAt(bearingStands, load)) peaks.push(loadOn(at, answer.solution).load);
    fastest = Math.max(fastest, load.shafts[k]?.speed ?? 0);
  }
  const { loads, overrides } = scene.model;
  const wanted = (check: Check): number => overrides[`${check.id}:${address}`]?.reserve ?? check.wanted.reserve;
  const [lasts, reserve] = [wanted(bearingLasts), wanted(bearingStands)];
  const ground = { duty, k, b, bins: carried.bins, loads, oil: scene.at(loads.oil) };
  const does = ({ row, outside }: { readonly row: string; readonly outside: number }): boolean => {
    const one = factsOf({ row });
    if (!one || (fitted.plate && outside >= fitted.plate.width)) return false;
    const life = lifeOf({ ...lasting, facts: one, outside }, ground);
    return (
      (life === null || life.distance >= lasts * duty.distance) &&
      peaks.every((load) => staticOf(one, load) * reserve <= spoiledAt(one)) &&
      fastest <= (turnsUpTo(one, fitted.seal) ?? Number.POSITIVE_INFINITY)
    );
  };
  return candidates(lasting.bore).find(does)?.row ?? null;
}
