import type { BeadAction, BeadPart, Offset } from './adviser-types.ts';
import {
  type Belief,
  firstBelief,
  learnedResponse,
  learnMovement,
  leftOfPull,
  movementOf,
  typicalAnswers,
} from './belief.ts';

/** A movement measured warm that waits for its cold reading. */
interface Warm {
  readonly bead: BeadAction;
  readonly before: Offset;
  readonly after: Offset;
}

/** Everything the adviser knows; plain data. */
export interface AdviceState {
  readonly part: BeadPart;
  /** Offset as last measured. */
  readonly now: Offset;
  /** Beads laid, in order. */
  readonly laid: readonly BeadAction[];
  /** Length still owed of each segment of `part.owed`, m. */
  readonly owed: readonly number[];
  readonly belief: Belief;
  /** How much of a movement cooling takes back. */
  readonly relaxation: { readonly mean: number; readonly spread: number };
  /** The last reading was taken warm. */
  readonly warm?: Warm;
  /** The last movement was far from what was expected. */
  readonly surprise: boolean;
  /** The part moves the other way than its place says. */
  readonly turned: boolean;
}

/** The other direction must be this many times likelier before it is believed. */
const TURN_OVER = 50;
/** After this many beads the direction is settled. */
const TURN_BEADS = 2;
/** A movement this much off, as a fraction of itself and beyond the reading spread, is a surprise. */
const SURPRISE = 0.6;

const finite = (value: number, at: string, least: number): void => {
  if (!Number.isFinite(value) || value < least)
    throw new RangeError(`${at}: ${value} read; a number of at least ${least} is accepted.`);
};

/**
 * The adviser's state for a part before its first bead.
 * @throws RangeError naming the value that is out of range.
 */
export function beginAdvice(part: BeadPart): AdviceState {
  const { beads, prior } = part;
  finite(part.measured.x, 'measured.x', Number.NEGATIVE_INFINITY);
  finite(part.measured.y, 'measured.y', Number.NEGATIVE_INFINITY);
  for (const [at, value] of [
    ['goal', part.goal],
    ['readingSpread', part.readingSpread],
    ['beads.smallest', beads.smallest],
    ['beads.step', beads.step],
    ['prior.pull', prior.pull],
    ['prior.lag', prior.lag],
    ['prior.scatter', prior.scatter],
  ] as const)
    finite(value, at, Number.MIN_VALUE);
  finite(beads.largest, 'beads.largest', beads.smallest);
  finite(beads.places, 'beads.places', 4);
  finite(prior.pullFactor, 'prior.pullFactor', 1.01);
  finite(part.rounds, 'rounds', 1);
  if (part.mode === 'weld-up' && part.owed.length === 0)
    throw new RangeError('owed: nothing read; the segments of the weld that the joint owes are needed to weld it up.');
  return {
    part,
    now: part.measured,
    laid: [],
    owed: part.mode === 'weld-up' ? part.owed.map(({ length }) => length) : [],
    belief: firstBelief(part.lies === 'beyond' ? 1 : -1),
    relaxation: prior.relaxation,
    surprise: false,
    turned: false,
  };
}

/**
 * The state after a bead. Of a reading taken warm nothing is learned until `learnCooled` gives the cold one.
 * @param bead as it was really laid
 * @param before, after offset of the watched section measured before and after, m
 */
export function learn(
  state: AdviceState,
  bead: BeadAction,
  before: Offset,
  after: Offset,
  reading: 'cold' | 'warm' = 'cold',
): AdviceState {
  const owed = state.owed.map((length, k) => (k === bead.segment ? Math.max(0, length - bead.length) : length));
  const { warm: _, ...rest } = state;
  const next = { ...rest, now: after, owed, laid: [...state.laid, bead] };
  if (reading === 'warm') return { ...next, warm: { bead, before, after }, surprise: false };
  return { ...next, ...taught(state, state.laid, bead, { x: after.x - before.x, y: after.y - before.y }) };
}

/**
 * The state once a part measured warm has cooled: teaches both the pull and what cooling takes back.
 * @throws RangeError when the last reading was not a warm one.
 */
export function learnCooled(state: AdviceState, cold: Offset): AdviceState {
  const { warm, ...rest } = state;
  if (!warm) throw new RangeError('The last reading was a cold one; there is nothing to cool.');
  const move = { x: warm.after.x - warm.before.x, y: warm.after.y - warm.before.y };
  const back = { x: warm.after.x - cold.x, y: warm.after.y - cold.y };
  const size = move.x ** 2 + move.y ** 2;
  const noise = 2 * state.part.readingSpread ** 2;
  const { mean, spread } = state.relaxation;
  // One measured fraction against the known one, each by its certainty.
  const seen = size > 0 ? (back.x * move.x + back.y * move.y) / size : mean;
  const seenVariance = size > 0 ? noise / size + (0.5 * spread) ** 2 : Number.POSITIVE_INFINITY;
  const gain = spread ** 2 / (spread ** 2 + seenVariance);
  return {
    ...rest,
    now: cold,
    relaxation: { mean: mean + gain * (seen - mean), spread: spread * Math.sqrt(1 - gain) },
    ...taught(state, state.laid.slice(0, -1), warm.bead, {
      x: cold.x - warm.before.x,
      y: cold.y - warm.before.y,
    }),
  };
}

/** Belief after a cold movement. The first beads also decide which way the part moves. */
function taught(
  state: AdviceState,
  laid: readonly BeadAction[],
  bead: BeadAction,
  moved: Offset,
): Pick<AdviceState, 'belief' | 'surprise' | 'turned'> {
  const { part, belief } = state;
  const known = learnedResponse(belief, part.prior);
  const left = leftOfPull(laid, bead.clock, part.beads);
  const expected = meanOf(
    typicalAnswers(belief, part.prior, 16).map((answer) =>
      movementOf(answer, belief.sign, left, bead.clock, bead.length),
    ),
  );
  const off = Math.hypot(moved.x - expected.x, moved.y - expected.y);
  const sure = known.pullHigh / known.pullLow < 2.5;
  const surprise = sure && off > SURPRISE * Math.hypot(expected.x, expected.y) + 4 * part.readingSpread;
  const straight = learnMovement(belief, part, laid, bead, moved);
  if (laid.length >= TURN_BEADS) return { belief: straight.belief, surprise, turned: state.turned };
  const other: Belief = { sign: belief.sign === 1 ? -1 : 1, weights: belief.weights };
  const turned = learnMovement(other, part, laid, bead, moved);
  return turned.evidence > TURN_OVER * straight.evidence
    ? { belief: turned.belief, surprise: true, turned: !state.turned }
    : { belief: straight.belief, surprise, turned: state.turned };
}

const meanOf = (offsets: readonly Offset[]): Offset => ({
  x: offsets.reduce((sum, { x }) => sum + x, 0) / offsets.length,
  y: offsets.reduce((sum, { y }) => sum + y, 0) / offsets.length,
});
