import type { AdviceState } from './advice-state.ts';
import type { BeadAction, Offset } from './adviser-types.ts';
import { type Answer, leftOfPull, movementOf } from './belief.ts';

/** Answers that the rest of the rounds is played through with. */
const PLAYED = 48;
/** Places either side of the direct one that are tried, so that beads need not pile up. */
const ASIDE = 2;

/**
 * Part of the possible answers, 0..1, with which the goal stays out of reach in the rounds left, even when the answer
 * is known from here on.
 */
export function hopeless(state: AdviceState, answers: readonly Answer[]): number {
  const { part } = state;
  const left = part.rounds - state.laid.length;
  const every = Math.max(1, Math.floor(answers.length / PLAYED));
  const played = answers.filter((_, k) => k % every === 0);
  const farthest = Math.hypot(state.now.x, state.now.y) - part.goal / 2;
  // Most parts are far from hopeless: one bead reaches a good part of the way for the weakest answer.
  const weakest = Math.min(...played.map(({ pull }) => pull));
  if (farthest < 0.25 * left * weakest * part.beads.largest * 0.3) return 0;
  return played.filter((answer) => !canReach(state, answer, left)).length / played.length;
}

function canReach(state: AdviceState, answer: Answer, rounds: number): boolean {
  const { part, belief } = state;
  const laid: BeadAction[] = [...state.laid];
  let at = state.now;
  for (let round = 0; round < rounds; round++) {
    if (2 * Math.hypot(at.x, at.y) <= part.goal) return true;
    const step = bestStep(at, answer, belief.sign, laid, part.beads);
    if (!step) return false;
    laid.push(step.bead);
    at = step.to;
  }
  return 2 * Math.hypot(at.x, at.y) <= part.goal;
}

function bestStep(
  at: Offset,
  answer: Answer,
  sign: number,
  laid: readonly BeadAction[],
  beads: AdviceState['part']['beads'],
): { bead: BeadAction; to: Offset } | undefined {
  const wanted = Math.atan2(-sign * at.y, -sign * at.x) - answer.lag;
  const place = Math.round((wanted * beads.places) / (2 * Math.PI));
  let best: { bead: BeadAction; to: Offset; far: number } | undefined;
  for (let aside = -ASIDE; aside <= ASIDE; aside++) {
    const clock = (2 * Math.PI * (place + aside)) / beads.places;
    const unit = movementOf(answer, sign, leftOfPull(laid, clock, beads), clock, 1);
    const square = unit.x ** 2 + unit.y ** 2;
    const ideal = -(unit.x * at.x + unit.y * at.y) / square;
    if (!(ideal > 0)) continue;
    const length = Math.min(beads.largest, Math.max(beads.smallest, ideal));
    const to = { x: at.x + unit.x * length, y: at.y + unit.y * length };
    const far = Math.hypot(to.x, to.y);
    if (!best || far < best.far) best = { bead: { clock, length }, to, far };
  }
  return best && best.far < Math.hypot(at.x, at.y) ? best : undefined;
}
