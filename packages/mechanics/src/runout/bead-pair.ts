import type { AdviceState } from './advice-state.ts';
import type { BeadAction, Expected, Offset } from './adviser-types.ts';
import { type Answer, leftOfPull, movementOf } from './belief.ts';
import { expectedOf, outcomes } from './outcomes.ts';

/** Lengths that either bead may have, in shortest beads. */
const LENGTHS = [1, 1.5, 2.5] as const;

/** The first of two beads, and what both together promise. */
export interface BeadPair {
  readonly bead: BeadAction;
  readonly expected: Expected;
}

/**
 * Two beads set apart round the part, whose movements nearly cancel: for what is left when the shortest bead alone
 * would overshoot. Undefined when no pair lands nearer than the part is now.
 */
export function beadPair(state: AdviceState, answers: readonly Answer[]): BeadPair | undefined {
  const { part, now, belief } = state;
  const { smallest, largest, places } = part.beads;
  const tried: { bead: BeadAction; moves: Offset[]; mean: Offset }[] = [];
  for (let p = 0; p < places; p++) {
    const clock = (2 * Math.PI * p) / places;
    const left = leftOfPull(state.laid, clock, part.beads);
    for (const times of LENGTHS) {
      const length = smallest + Math.round((smallest * (times - 1)) / part.beads.step) * part.beads.step;
      if (length > largest) continue;
      const moves = answers.map((answer) => movementOf(answer, belief.sign, left, clock, length));
      tried.push({ bead: { clock, length }, moves, mean: meanOf(moves) });
    }
  }
  let best: { one: (typeof tried)[number]; two: (typeof tried)[number]; far: number } | undefined;
  for (const [i, one] of tried.entries())
    for (const two of tried.slice(i + 1)) {
      const far = Math.hypot(now.x + one.mean.x + two.mean.x, now.y + one.mean.y + two.mean.y);
      if (!best || far < best.far) best = { one, two, far };
    }
  if (!best || best.far >= Math.hypot(now.x, now.y)) return undefined;
  const { one, two } = best;
  const both = one.moves.map(({ x, y }, k) => ({
    x: x + (two.moves[k] as Offset).x,
    y: y + (two.moves[k] as Offset).y,
  }));
  const spread = part.prior.scatter * Math.hypot(one.mean.x, one.mean.y, two.mean.x, two.mean.y) * Math.SQRT1_2;
  return { bead: one.bead, expected: expectedOf(outcomes(now, both, 0, spread), part.goal) };
}

function meanOf(moves: readonly Offset[]): Offset {
  const sum = moves.reduce((total, { x, y }) => ({ x: total.x + x, y: total.y + y }), { x: 0, y: 0 });
  return { x: sum.x / moves.length, y: sum.y / moves.length };
}
