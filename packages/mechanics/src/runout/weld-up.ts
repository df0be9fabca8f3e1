import type { AdviceState } from './advice-state.ts';
import type { BeadAction, Offset } from './adviser-types.ts';
import { type Answer, nearness, pileFactor } from './belief.ts';
import { roundsToGo } from './outcomes.ts';

/** Answers that an order of segments is played through with. */
const PLAYED = 5;
/** First segments that are also tried at half their length. */
const HALVED = 4;
/** What one bead more costs, in rounds: a shorter bead must be worth it. */
const PER_BEAD = 0.5;

/** The joint while an order is played through: all numbers in segments' order. */
interface Joint {
  readonly x: number;
  readonly y: number;
  readonly owed: Float64Array;
  /** Bead length near each segment and all round, in longest beads. */
  readonly near: Float64Array;
  readonly all: number;
}

interface Setting {
  readonly clocks: readonly number[];
  readonly kernel: readonly Float64Array[];
  readonly largest: number;
}

/**
 * Pieces of the owed weld that can come next, the best first: each is tried and the rest of the weld played through
 * behind it, so that the part is right when the last piece is in.
 */
export function weldUpOptions(state: AdviceState, answers: readonly Answer[]): BeadAction[] {
  const { part, belief, now } = state;
  const clocks = part.owed.map(({ clock }) => clock);
  const kernel = clocks.map((clock) => Float64Array.from(clocks, (other) => nearness(clock, other)));
  const setting: Setting = { clocks, kernel, largest: part.beads.largest };
  const joint = jointNow(state, setting, now);
  const every = Math.max(1, Math.floor(answers.length / PLAYED));
  const played = answers.filter((_, k) => k % every === Math.floor(every / 2));
  const reach = (2 * part.beads.largest * played.reduce((sum, { pull }) => sum + pull, 0)) / played.length;
  const score = (segment: number, length: number): number => {
    let sum = 0;
    for (const answer of played) {
      const after = weld(joint, setting, answer, belief.sign, segment, length);
      sum += roundsToGo(finish(after, setting, answer, belief.sign), part.goal, reach);
    }
    return sum / played.length;
  };
  const whole = clocks.flatMap((_, segment) => {
    const owes = joint.owed[segment] as number;
    if (owes <= 0) return [];
    const length = Math.min(owes, part.beads.largest);
    return [{ segment, length, score: score(segment, length) }];
  });
  whole.sort((a, b) => a.score - b.score);
  const halves = whole.slice(0, HALVED).flatMap(({ segment, length }) => {
    const half = Math.round(length / 2 / part.beads.step) * part.beads.step;
    const rest = (joint.owed[segment] as number) - half;
    if (half < part.beads.smallest || rest < part.beads.smallest) return [];
    return [{ segment, length: half, score: score(segment, half) + PER_BEAD }];
  });
  return [...whole, ...halves]
    .sort((a, b) => a.score - b.score)
    .map(({ segment, length }) => ({ segment, length, clock: clocks[segment] as number }));
}

function jointNow({ owed, laid }: AdviceState, { clocks, largest }: Setting, { x, y }: Offset): Joint {
  const near = Float64Array.from(clocks, (clock) =>
    laid.reduce((sum, bead) => sum + (bead.length * nearness(bead.clock, clock)) / largest, 0),
  );
  return {
    x,
    y,
    owed: Float64Array.from(owed),
    near,
    all: laid.reduce((sum, { length }) => sum + length / largest, 0),
  };
}

function moveOf(joint: Joint, setting: Setting, answer: Answer, sign: number, segment: number, length: number): Offset {
  const left = pileFactor(answer.pile, joint.near[segment] as number, joint.all);
  const size = sign * answer.pull * length * left;
  const direction = (setting.clocks[segment] as number) + answer.lag;
  return { x: size * Math.cos(direction), y: size * Math.sin(direction) };
}

function weld(joint: Joint, setting: Setting, answer: Answer, sign: number, segment: number, length: number): Joint {
  const move = moveOf(joint, setting, answer, sign, segment, length);
  const owed = joint.owed.slice();
  owed[segment] = Math.max(0, (owed[segment] as number) - length);
  const row = setting.kernel[segment] as Float64Array;
  const near = joint.near.map((sum, k) => sum + ((row[k] as number) * length) / setting.largest);
  return { x: joint.x + move.x, y: joint.y + move.y, owed, near, all: joint.all + length / setting.largest };
}

/** TIR when the rest of the weld is in, by the better of two orders: straight at every moment, or straight at the end. */
function finish(joint: Joint, setting: Setting, answer: Answer, sign: number): number {
  return Math.min(playOut(joint, setting, answer, sign, 0), playOut(joint, setting, answer, sign, 0.8));
}

/** @param ahead how much of the weld still owed counts when the next segment is chosen */
function playOut(from: Joint, setting: Setting, answer: Answer, sign: number, ahead: number): number {
  let joint = from;
  for (;;) {
    const moves = setting.clocks.map((_, segment) => {
      const owes = joint.owed[segment] as number;
      return owes > 0 ? moveOf(joint, setting, answer, sign, segment, Math.min(owes, setting.largest)) : undefined;
    });
    const open = moves.flatMap((move, segment) => (move ? [{ move, segment }] : []));
    if (open.length === 0) return 2 * Math.hypot(joint.x, joint.y);
    const rest = { x: 0, y: 0 };
    for (const { move } of open) {
      rest.x += ahead * move.x;
      rest.y += ahead * move.y;
    }
    let [best, least] = [-1, Number.POSITIVE_INFINITY];
    for (const { move, segment } of open) {
      const far = Math.hypot(joint.x + rest.x + (1 - ahead) * move.x, joint.y + rest.y + (1 - ahead) * move.y);
      if (far < least) [best, least] = [segment, far];
    }
    joint = weld(joint, setting, answer, sign, best, Math.min(joint.owed[best] as number, setting.largest));
  }
}
