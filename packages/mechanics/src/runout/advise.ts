import type { AdviceState } from './advice-state.ts';
import type { Advice, BeadAction, BeadPart, Expected, Offset } from './adviser-types.ts';
import { beadPair } from './bead-pair.ts';
import { type Answer, leftOfPull, movementOf, typicalAnswers } from './belief.ts';
import { hopeless } from './hopeless.ts';
import { expectedOf, outcomes, roundsToGo } from './outcomes.ts';
import { warningsOf } from './warnings.ts';
import { weldUpOptions } from './weld-up.ts';

/** Answers that a choice is tried on. */
const ANSWERS = 48;
/** Beads that are looked at closely. */
const CLOSE = 10;
/** The reading must be this sure of the goal before the part is called good. */
const SURE_ENOUGH = 0.7;
/** A hopeless part is called so when this many of its possible answers cannot get there. */
const HOPELESS_ENOUGH = 0.98;
/** A part is unsure enough for a trial bead when its pull may lie this far apart (ends that hold four times in five). */
const TRIAL_SPREAD = 3;

/** Two beads are worth it when they bring the part within the goal this often. */
const PAIR_CHANCE = 0.3;

/** A bead and what it promises. */
interface Option {
  readonly bead: BeadAction;
  readonly score: number;
  readonly tirs: Float64Array;
}

const still: Offset = { x: 0, y: 0 };

/** TIR of the part as it is, with the uncertainty of its reading. */
export function asItIs(state: AdviceState): Expected {
  const moves = Array.from({ length: ANSWERS }, () => still);
  const { goal, readingSpread } = state.part;
  return expectedOf(outcomes(state.now, moves, 0, readingSpread), goal);
}

/** What comes next for this part: a bead, waiting until it has cooled, or an end with its reason. */
export function advise(state: AdviceState): Advice {
  const { part } = state;
  if (state.warm) return wait(state);
  if (state.owed.some((length) => length > 0)) return weldUp(state);
  const now = asItIs(state);
  const warnings = warningsOf(state);
  if (now.within >= SURE_ENOUGH) return { do: 'stop', because: 'good', expected: now, warnings };
  if (state.laid.length >= part.rounds)
    return { do: 'stop', because: now.within >= 0.5 ? 'good' : 'spent', expected: now, warnings };
  const answers = typicalAnswers(state.belief, part.prior, ANSWERS);
  if (state.laid.length > 0 && hopeless(state, answers) >= HOPELESS_ENOUGH)
    return { do: 'stop', because: 'hopeless', expected: now, warnings };
  const [best, ...rest] = beadOptions(state, answers);
  const stay = roundsToGo(now.tir, part.goal, reachOf(state, answers));
  if (!best || best.score >= stay) return adviseOfPair(state, answers, now);
  const other = rest.find(({ bead }) => bead.clock !== best.bead.clock) ?? rest[0];
  return {
    do: 'bead',
    bead: best.bead,
    trial: isTrial(answers),
    expected: expectedOf(best.tirs, part.goal),
    ...(other ? { otherwise: { bead: other.bead, expected: expectedOf(other.tirs, part.goal) } } : {}),
    warnings: warningsOf(state, best.bead),
    owedAfter: 0,
  };
}

/** What to do when no single bead helps: the first of two, when two do and there is time for both. */
function adviseOfPair(state: AdviceState, answers: readonly Answer[], now: Expected): Advice {
  const pair = state.part.rounds - state.laid.length >= 2 ? beadPair(state, answers) : undefined;
  if (!pair || pair.expected.within < PAIR_CHANCE)
    return { do: 'stop', because: 'no-gain', expected: now, warnings: warningsOf(state) };
  const { bead, expected } = pair;
  return { do: 'bead', bead, trial: false, pair: true, expected, warnings: warningsOf(state, bead), owedAfter: 0 };
}

/** The next piece of the weld that the joint owes. It is never finished before all of it is in. */
function weldUp(state: AdviceState): Advice {
  const answers = typicalAnswers(state.belief, state.part.prior, ANSWERS);
  const [best, other] = weldUpOptions(state, answers).map((bead) => {
    const left = leftOfPull(state.laid, bead.clock, state.part.beads);
    const moves = answers.map((answer) => movementOf(answer, state.belief.sign, left, bead.clock, bead.length));
    return { bead, expected: expectedOf(outcomes(state.now, moves, state.part.prior.scatter, 0), state.part.goal) };
  });
  if (!best) throw new RangeError('owed: nothing is owed, so no piece of it can be next.');
  return {
    do: 'bead',
    ...best,
    trial: false,
    ...(other ? { otherwise: other } : {}),
    warnings: warningsOf(state, best.bead),
    owedAfter: state.owed.reduce((sum, length) => sum + length, 0) - best.bead.length,
  };
}

function wait(state: AdviceState): Advice {
  const { part, warm, relaxation } = state;
  const move = warm ? { x: warm.after.x - warm.before.x, y: warm.after.y - warm.before.y } : still;
  const back = { x: -relaxation.mean * move.x, y: -relaxation.mean * move.y };
  const moves = Array.from({ length: ANSWERS }, () => back);
  const scatter = relaxation.mean > 0 ? relaxation.spread / relaxation.mean : 0;
  const expected = expectedOf(outcomes(state.now, moves, scatter, part.readingSpread), part.goal);
  return { do: 'wait', expected, warnings: ['warm', ...warningsOf(state)] };
}

function isTrial(answers: readonly Answer[]): boolean {
  const pulls = answers.map(({ pull }) => pull).sort((a, b) => a - b);
  const at = (part: number): number => pulls[Math.floor(part * pulls.length)] as number;
  return at(0.9) / at(0.1) > TRIAL_SPREAD;
}

/** TIR that the longest bead takes away, in the middle of what is believed. */
export function reachOf({ part }: AdviceState, answers: readonly Answer[]): number {
  let sum = 0;
  for (const { pull } of answers) sum += pull;
  return Math.max((2 * part.beads.largest * sum) / answers.length, Number.MIN_VALUE);
}

/** Lengths that can be laid. */
export function allowedLengths({ smallest, largest, step }: BeadPart['beads']): number[] {
  const count = Math.floor((largest - smallest) / step + 1e-9) + 1;
  return Array.from({ length: count }, (_, k) => smallest + k * step);
}

/** Beads worth looking at, the best first: cheap moments for all places, then the likely ones with their scatter. */
function beadOptions(state: AdviceState, answers: readonly Answer[]): Option[] {
  const { part, now, belief } = state;
  const { beads, prior, goal } = part;
  const lengths = allowedLengths(beads);
  const rough: { bead: BeadAction; score: number; unit: readonly Offset[] }[] = [];
  for (let p = 0; p < beads.places; p++) {
    const clock = (2 * Math.PI * p) / beads.places;
    const left = leftOfPull(state.laid, clock, beads);
    const unit = answers.map((answer) => movementOf(answer, belief.sign, left, clock, 1));
    const { towards, square } = moments(unit, now, prior.scatter);
    if (towards >= 0) continue;
    // Least expected square of the offset lies at −towards/square; the best length for the goal is not far from it.
    const ideal = -towards / square;
    for (const length of lengths) {
      if (length < 0.6 * ideal && length < beads.largest - beads.step / 2) continue;
      if (length > 1.5 * ideal && length > beads.smallest + beads.step / 2) continue;
      const score = 2 * length * towards + length * length * square;
      rough.push({ bead: { clock, length }, score, unit });
    }
  }
  rough.sort((a, b) => a.score - b.score);
  const reach = reachOf(state, answers);
  const options = rough.slice(0, CLOSE).map(({ bead, unit }): Option => {
    const moves = unit.map(({ x, y }) => ({ x: x * bead.length, y: y * bead.length }));
    const tirs = outcomes(now, moves, prior.scatter, 0);
    let score = 0;
    for (const tir of tirs) score += roundsToGo(tir, goal, reach);
    return { bead, score: score / tirs.length, tirs };
  });
  return options.sort((a, b) => a.score - b.score);
}

/** Mean of the movement towards the present offset, and of its square, per length of bead. */
function moments(unit: readonly Offset[], now: Offset, scatter: number): { towards: number; square: number } {
  let [towards, square] = [0, 0];
  for (const { x, y } of unit) {
    towards += x * now.x + y * now.y;
    square += x * x + y * y;
  }
  const spread = 1 + scatter * scatter * (1 + 0.49);
  return { towards: towards / unit.length, square: (square / unit.length) * spread };
}
