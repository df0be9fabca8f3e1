import type { AdviceState } from './advice-state.ts';
import type { BeadAction, Warning } from './adviser-types.ts';
import { learnedResponse } from './belief.ts';

/** Beads this near to one another weaken each other, rad. */
const NEAR = Math.PI / 6;
/** Longest beads already near a place before it counts as piled up. */
const PILED = 1.5;
/** Ends of the pull this far apart are still uncertain. */
const UNCERTAIN = 3;

/**
 * What to be careful of before the next bead.
 * @param next the bead that is advised; left out when none is
 */
export function warningsOf(state: AdviceState, next?: BeadAction): Warning[] {
  const { part, belief, laid } = state;
  const known = learnedResponse(belief, part.prior);
  const warnings: Warning[] = [];
  if (next && known.pullHigh / known.pullLow > UNCERTAIN) warnings.push('uncertain');
  if (next) {
    const there = laid.filter(({ clock }) => {
      const apart = Math.atan2(Math.sin(clock - next.clock), Math.cos(clock - next.clock));
      return Math.abs(apart) <= NEAR;
    });
    const length = there.reduce((sum, bead) => sum + bead.length, next.length);
    if (there.length > 0 && length > PILED * part.beads.largest) warnings.push('piled-up');
  }
  if (state.surprise) warnings.push('surprise');
  if (state.turned) warnings.push('sense');
  return warnings;
}
