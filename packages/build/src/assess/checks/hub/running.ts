import { HUB_LIMITS } from '@oddwheel/tables/hub-limits';
import { rowInSi, sourceOf } from '@oddwheel/tables/table';
import type { Hub } from '../../../model/hub.ts';
import type { Check } from '../check.ts';
import { measured } from '../measured.ts';
import { flanksOf } from './flanks.ts';
import { pressure } from './modes.ts';
import { impossible } from './possible.ts';
import { NOTHING, seatsWith, torqueSeatOf, torqueThrough } from './seats.ts';

/** Row of what the flanks bear while they run. A key or spline of which nothing is said counts as loose. */
function rowFor({
  torqueBy,
  key,
  spline,
}: Hub): 'key-tight' | 'key-running' | 'spline-fixed' | 'spline-loose' | 'spline-slides' {
  if (torqueBy === 'key') return key?.fit === 'tight' ? 'key-tight' : 'key-running';
  if (spline?.sits === 'clamped along the shaft') return 'spline-fixed';
  return spline?.sits === 'slides under load' ? 'spline-slides' : 'spline-loose';
}

/** Flanks that press no harder than what texts give neither fret nor wallow; proven drives go beyond it at full throttle. */
export const hubRunning: Check = {
  id: 'hub.running',
  title: 'flanks while running',
  consequence: 'wears out',
  wanted: { reserve: 1, from: sourceOf(HUB_LIMITS, 'spline-fixed') },
  atWorst: 'thin',
  perCase: true,
  subjects: seatsWith(({ torqueBy, key, spline }) =>
    torqueBy === 'key' ? key !== null : torqueBy === 'spline' && spline !== null,
  ),
  run: ({ model, show }, subject, load) => {
    const found = torqueSeatOf(model, subject);
    if (!found || !load || impossible(found.hub, found.seat, show)) return null;
    const torque = torqueThrough(found, load);
    if (torque < NOTHING) return null;
    const answer = flanksOf(found.hub, found.seat, torque);
    if (!answer.ok) return answer.outcome;
    const { onHub, onShaft, used } = answer.of;
    const most = Math.max(onHub, onShaft);
    const row = rowFor(found.hub);
    const limit = rowInSi(HUB_LIMITS, row).pressure ?? Number.NaN;
    return measured(
      pressure('pressure on the flanks', most),
      pressure('usual limit', limit),
      () =>
        `At full throttle the flanks press with ${show('pressure', most)}; the usual limit for flanks that shall last is ${show('pressure', limit)} (${sourceOf(HUB_LIMITS, row)}).`,
      [],
      used,
      { capacity: `hub-limits/${row}`, demand: 'above' },
    );
  },
};
