/** Plays the same parts by two rules of the shop, by Oddwheel's advice and by someone who is told the hidden answer. */
import { priorOf } from '@oddwheel/build/true/prior';
import { beginAdvice, learn } from '@oddwheel/mechanics/runout/advice-state';
import { advise } from '@oddwheel/mechanics/runout/advise';
import type { BeadPart, Offset, StopReason } from '@oddwheel/mechanics/runout/adviser-types';
import { offsetShare } from '@oddwheel/mechanics/runout/form-share';
import { type SectionForm, sectionForm } from '@oddwheel/mechanics/runout/readings';
import { angleOf, nearestOwed, oracleBead, oraclePiece, owedAfter, type Piece, STRETCH, STRETCHES } from './joint.ts';
import {
  type Bead,
  largerEachTime,
  LONGEST,
  newPart,
  type Part,
  readings,
  SHORTEST,
  type Spread,
  sameEachTime,
  seeded,
  trueSwing,
  weld,
} from './simulator.ts';

export type Mode = 'correct' | 'weld-up';

/** TIR that is good enough, thou, and the rounds that may be spent. */
export const GOAL = 3;
export const ROUNDS = 12;

/** How one part ended. */
export interface Played {
  /** The dial of a perfect gauge swings no more than the goal, and all of the owed weld is in. */
  readonly good: boolean;
  /** Beads laid. */
  readonly rounds: number;
  readonly because?: StopReason;
}

interface Moment {
  readonly part: Part;
  readonly values: readonly number[];
  readonly owed: readonly number[];
  readonly round: number;
}
type Step = Piece | { readonly stop: StopReason | 'told' };
/** One way of working: what comes next. A new one is made for each part. */
export type Way = () => (moment: Moment) => Step;

/** Lays beads as a way of working says until it stops or the rounds are spent. */
export function play(seed: number, spread: Spread, mode: Mode, way: Way, scatter = true): Played {
  const random = seeded(seed * 7919 + 13);
  const begun = newPart(seed, spread);
  let part = scatter ? begun : { ...begun, habits: { ...begun.habits, scatter: 0 } };
  let owed: readonly number[] = mode === 'weld-up' ? Array.from({ length: STRETCHES }, () => STRETCH) : [];
  const next = way();
  for (let round = 0; ; round++) {
    const values = readings(part, random);
    const whole = owed.every((left) => left <= 0);
    const step = round < ROUNDS ? next({ part, values, owed, round }) : { stop: 'spent' as const };
    if ('stop' in step) {
      const good = whole && trueSwing(part) <= GOAL;
      return step.stop === 'told' ? { good, rounds: round } : { good, rounds: round, because: step.stop };
    }
    part = weld(part, step, random);
    owed = owedAfter(owed, step);
  }
}

/** A rule of the shop; of a joint that owes weld it lays the whole stretch nearest to its place, and goes by its lengths after that. */
export const byRule =
  (rule: (values: readonly number[], round: number) => Bead): Way =>
  () =>
  ({ values, owed, round }) => {
    const bead = rule(values, round - (owed.length > 0 ? Math.min(round, STRETCHES) : 0));
    const stretch = nearestOwed(owed, bead.at);
    const left = owed[stretch];
    if (left !== undefined) return { at: angleOf(stretch), length: left, stretch };
    return Math.max(...values) - Math.min(...values) <= GOAL ? { stop: 'good' } : bead;
  };

export const SAME: Way = byRule(sameEachTime(8));
export const LARGER: Way = byRule(largerEachTime(4, 2));

/** Told the habits and the true centre; tries every bead that can be laid, without scatter. */
export const ORACLE: Way =
  () =>
  ({ part, owed, round }) => {
    if (owed.some((left) => left > 0)) return oraclePiece(part, owed, ROUNDS - round);
    return trueSwing(part) <= GOAL ? { stop: 'told' } : (oracleBead(part) ?? { stop: 'told' });
  };

const THOU = 25.4e-6;
const MM = 1e-3;
/** Smallest step of the dial, thou. */
const STEP = 0.5;

const formOf = (values: readonly number[]): SectionForm =>
  sectionForm(
    values.map((value, k) => ({ angle: (2 * Math.PI * k) / values.length, value: value * THOU })),
    STEP * THOU,
  );

function beadPart(form: SectionForm, owed: readonly number[]): BeadPart {
  return {
    mode: owed.length > 0 ? 'weld-up' : 'correct',
    measured: form.offset,
    readingSpread: form.offsetSpread,
    goal: offsetShare(GOAL * THOU, form.harmonics),
    lies: 'beyond',
    beads: { smallest: SHORTEST * MM, largest: LONGEST * MM, step: MM, places: 24 },
    // As the record of a build gives it for a joint 20 mm beyond a seat and a section 100 mm further out.
    prior: priorOf({ a: 0, b: 0.2, weld: 0.22, watched: 0.32 }),
    rounds: ROUNDS,
    owed: owed.map((length, k) => ({ clock: angleOf(k), length: length * MM })),
  };
}

/** Oddwheel's advice: it sees the dial and nothing else. */
export const ADVICE: Way = () => {
  let state: ReturnType<typeof beginAdvice> | undefined;
  let laid: { clock: number; length: number; segment?: number } | undefined;
  let before: Offset | undefined;
  return ({ values, owed }) => {
    const form = formOf(values);
    if (!state) state = beginAdvice(beadPart(form, owed));
    else if (laid && before) state = learn(state, laid, before, form.offset);
    const advice = advise(state);
    if (advice.do === 'wait') throw new Error('Every reading was a cold one; nothing is to be waited for.');
    if (advice.do === 'stop') return { stop: advice.because };
    laid = advice.bead;
    before = form.offset;
    const { clock, length, segment } = advice.bead;
    return { at: clock, length: length / MM, ...(segment === undefined ? {} : { stretch: segment }) };
  };
};

/** How all parts went. */
export interface Tally {
  readonly parts: number;
  /** Part of them that came to the goal, 0..1. */
  readonly good: number;
  /** Beads in the middle of those that came to the goal. */
  readonly median: number;
}

export function tally(played: readonly Played[]): Tally {
  const rounds = played
    .filter(({ good }) => good)
    .map((one) => one.rounds)
    .sort((a, b) => a - b);
  return {
    parts: played.length,
    good: rounds.length / played.length,
    median: rounds[Math.floor((rounds.length - 1) / 2)] ?? Number.NaN,
  };
}

/** One way over parts with these seeds. */
export function playAll(
  seeds: readonly number[],
  spread: Spread,
  mode: Mode,
  way: Way,
  scatter = true,
): readonly Played[] {
  return seeds.map((seed) => play(seed, spread, mode, way, scatter));
}

/** Of the parts that not even steady beads by the told one bring to the goal: how early the advice says so. */
export interface Hopeless {
  readonly parts: number;
  /** Given up with fewer than six beads laid. */
  readonly early: number;
  /** Brought to the goal after all. */
  readonly mended: number;
  /** Given up although the told one brings them to the goal with the same scatter. */
  readonly wrongly: number;
}

export function hopelessOf(advice: readonly Played[], steady: readonly Played[], told: readonly Played[]): Hopeless {
  const gaveUp = ({ good, because }: Played) => !good && (because === 'hopeless' || because === 'no-gain');
  const hopeless = advice.filter((_, k) => !steady[k]?.good);
  return {
    parts: hopeless.length,
    early: hopeless.filter((one) => gaveUp(one) && one.rounds < 6).length,
    mended: hopeless.filter(({ good }) => good).length,
    wrongly: advice.filter((one, k) => gaveUp(one) && told[k]?.good).length,
  };
}
