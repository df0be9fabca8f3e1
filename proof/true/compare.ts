/**
 * Plays the parts of the simulator by four hands: the same bead each time, a slightly larger one each time, Oddwheel's advice, and one
 * who is told the hidden habits. A part is in when its eccentricity makes a TIR of 3 thou or less; twelve rounds are allowed.
 */

import { type AdviceState, beginAdvice, learn } from '@oddwheel/mechanics/runout/advice-state';
import { advise } from '@oddwheel/mechanics/runout/advise';
import type { BeadPart, Offset } from '@oddwheel/mechanics/runout/adviser-types';
import { sectionForm } from '@oddwheel/mechanics/runout/readings';
import {
  type Bead,
  LONGEST,
  largerEachTime,
  newPart,
  oracle,
  type Part,
  readings,
  SHORTEST,
  type Spread,
  sameEachTime,
  seeded,
  tirOf,
  weld,
} from './simulator.ts';

const THOU = 25.4e-6;
const MM = 1e-3;
/** TIR that is good enough, thou, and rounds that are allowed. */
const GOAL = 3;
const ROUNDS = 12;

/** How one part ended. */
interface Played {
  readonly within: boolean;
  /** Beads laid. */
  readonly rounds: number;
  /** It was given up, or left as it is, before the rounds were spent and outside the goal. */
  readonly stopped: boolean;
}

type Hand = (part: Part, random: () => number) => Played;

/** What the dial says of the section by the analysis that the page uses. */
const formOf = (values: readonly number[]) =>
  sectionForm(
    values.map((value, k) => ({ angle: (2 * Math.PI * k) / values.length, value: value * THOU })),
    0.5 * THOU,
  );

/** A rule that lays the bead it says until the dial shows the goal. */
const byRule =
  (rule: (values: readonly number[], round: number) => Bead): Hand =>
  (start, random) => {
    let part = start;
    for (let round = 0; round < ROUNDS; round += 1) {
      const values = readings(part, random);
      const { offset } = formOf(values);
      if (2 * Math.hypot(offset.x, offset.y) <= GOAL * THOU) return ended(part, round);
      part = weld(part, rule(values, round), random);
    }
    return ended(part, ROUNDS);
  };

const ended = (part: Part, rounds: number): Played => {
  const within = tirOf(part.centre) <= GOAL;
  return { within, rounds, stopped: !within && rounds < ROUNDS };
};

/** One who knows the habits, and leaves off when no bead makes it better. */
const told: Hand = (start, random) => {
  let part = start;
  for (let round = 0; round < ROUNDS; round += 1) {
    if (tirOf(part.centre) <= GOAL) return ended(part, round);
    const bead = oracle(part);
    if (bead === null) return ended(part, round);
    part = weld(part, bead, random);
  }
  return ended(part, ROUNDS);
};

/** @param pull middle of what is guessed of the pull before the first bead, thou for each mm */
const advised =
  (pull: number): Hand =>
  (start, random) => {
    let part = start;
    const measure = (): { readonly offset: Offset; readonly spread: number } => {
      const { offset, offsetSpread } = formOf(readings(part, random));
      return { offset, spread: offsetSpread };
    };
    const first = measure();
    const asked: BeadPart = {
      mode: 'correct',
      measured: first.offset,
      readingSpread: first.spread,
      goal: GOAL * THOU,
      lies: 'beyond',
      beads: { smallest: SHORTEST * MM, largest: LONGEST * MM, step: MM, places: 24 },
      prior: {
        pull: (pull * THOU) / MM,
        pullFactor: 3,
        lag: Math.PI / 12,
        scatter: 0.18,
        relaxation: { mean: 0.1, spread: 0.07 },
      },
      rounds: ROUNDS,
      owed: [],
    };
    let state: AdviceState = beginAdvice(asked);
    for (let round = 0; round < ROUNDS; round += 1) {
      const advice = advise(state);
      if (advice.do !== 'bead') return ended(part, round);
      const { bead } = advice;
      const before = state.now;
      part = weld(part, { at: bead.clock, length: bead.length / MM }, random);
      state = learn(state, bead, before, measure().offset);
    }
    return ended(part, ROUNDS);
  };

/**
 * The hands that are compared. Advice begins from the guess that the page begins from, a fifth of the simulator’s middling pull; `well guessed`
 * begins from that middle.
 */
export const HANDS = {
  same: byRule(sameEachTime(8)),
  larger: byRule(largerEachTime(4, 2)),
  advice: advised(0.005 / (THOU / MM)),
  'advice, well guessed': advised(0.9),
  told,
} as const satisfies Record<string, Hand>;

interface Rate {
  /** Part of all that came within the goal. */
  readonly within: number;
  /** Middle of the rounds of those. */
  readonly median: number;
  /** Middle of the rounds after which the others were given up; NaN when none was. */
  readonly givenUp: number;
  readonly played: readonly Played[];
}

const median = (values: readonly number[]): number =>
  values.length === 0 ? Number.NaN : ([...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN);

/** Plays the parts of `count` seeds by one hand. */
export function play(hand: keyof typeof HANDS, spread: Spread, first: number, count: number): Rate {
  const played = Array.from({ length: count }, (_, k) =>
    HANDS[hand](newPart(first + k, spread), seeded(77_000_000 + first + k)),
  );
  return {
    within: played.filter(({ within }) => within).length / count,
    median: median(played.flatMap(({ within, rounds }) => (within ? [rounds] : []))),
    givenUp: median(played.flatMap(({ stopped, rounds }) => (stopped ? [rounds] : []))),
    played,
  };
}
