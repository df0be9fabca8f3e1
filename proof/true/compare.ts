/**
 * Plays the parts of the simulator by four hands: the same bead each time, a slightly larger one each time, Oddwheel's advice, and one
 * who is told the hidden habits. A part is in when its eccentricity makes a TIR of 3 thou or less and all of the weld that its joint owes
 * is laid.
 */

import { type AdviceState, beginAdvice, learn } from '@oddwheel/mechanics/runout/advice-state';
import { advise } from '@oddwheel/mechanics/runout/advise';
import type { BeadAction, BeadPart, Offset } from '@oddwheel/mechanics/runout/adviser-types';
import { type SectionForm, sectionForm } from '@oddwheel/mechanics/runout/readings';
import { angleOf, nearestOwed, OWED, oraclePiece, owedAfter, type Piece } from './joint.ts';
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
/** TIR that is good enough, thou. */
const GOAL = 3;
/** Readings of the dial go in these steps, thou. */
const STEP = 0.5;

/** Beads on a finished part, and a joint that owes a full weld: twelve beads beyond its stretches, or twelve in all. */
export const TASKS = {
  'extra beads': { rounds: 12, owed: [] },
  'weld up, twelve beyond it': { rounds: 12 + OWED.length, owed: OWED },
  'weld up, twelve in all': { rounds: 12, owed: OWED },
} as const satisfies Record<string, Task>;

/** What is asked of a hand. */
export interface Task {
  /** Beads that may be laid. */
  readonly rounds: number;
  /** Length of each stretch of weld that the joint owes, mm; none for extra beads on a finished part. */
  readonly owed: readonly number[];
}

/** How one part ended. */
interface Played {
  readonly within: boolean;
  /** Beads laid. */
  readonly rounds: number;
  /** It was given up, or left as it is, before the rounds were spent and outside the goal. */
  readonly stopped: boolean;
}

interface Moment {
  readonly part: Part;
  readonly values: readonly number[];
  /** What the joint still owes, and how many beads it has had. */
  readonly owed: readonly number[];
  readonly round: number;
}

/** What comes next by one way of working; null when it leaves off. */
type Next = (moment: Moment) => Piece | null;
/** A way of working, begun anew for each part. */
type Hand = (task: Task) => Next;

/** What the dial says of the section by the analysis that the page uses. */
const formOf = (values: readonly number[]): SectionForm =>
  sectionForm(
    values.map((value, k) => ({ angle: (2 * Math.PI * k) / values.length, value: value * THOU })),
    STEP * THOU,
  );

const owes = (owed: readonly number[]): boolean => owed.some((length) => length > 0);

/** A rule lays the whole of the owed stretch nearest to where it points, then the beads it says until the reading is within the goal. */
const byRule =
  (rule: (values: readonly number[], round: number) => Bead): Hand =>
  (task) =>
  ({ values, owed, round }) => {
    const bead = rule(values, Math.max(0, round - task.owed.length));
    if (owes(owed)) {
      const stretch = nearestOwed(owed, bead.at);
      return { at: angleOf(stretch), length: owed[stretch] as number, stretch };
    }
    const { offset } = formOf(values);
    return 2 * Math.hypot(offset.x, offset.y) <= GOAL * THOU ? null : bead;
  };

/** One who knows the habits, and leaves off when no bead makes it better. */
const told: Hand =
  ({ rounds }) =>
  ({ part, owed, round }) => {
    if (owes(owed)) return oraclePiece(part, owed, rounds - round);
    return tirOf(part.centre) <= GOAL ? null : oracle(part);
  };

/** @param pull middle of what is guessed of the pull before the first bead, thou for each mm */
const advised =
  (pull: number): Hand =>
  (task) => {
    let state: AdviceState | undefined;
    let last: { readonly bead: BeadAction; readonly before: Offset } | undefined;
    return ({ values }) => {
      const form = formOf(values);
      if (state === undefined) state = beginAdvice(asked(form, task, pull));
      else if (last) state = learn(state, last.bead, last.before, form.offset);
      const advice = advise(state);
      if (advice.do !== 'bead') return null;
      last = { bead: advice.bead, before: form.offset };
      const { clock, length, segment } = advice.bead;
      return { at: clock, length: length / MM, stretch: segment };
    };
  };

const asked = (form: SectionForm, { rounds, owed }: Task, pull: number): BeadPart => ({
  mode: owed.length > 0 ? 'weld-up' : 'correct',
  measured: form.offset,
  readingSpread: form.offsetSpread,
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
  rounds,
  owed: owed.map((length, k) => ({ clock: angleOf(k), length: length * MM })),
});

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

function playOne(begun: Part, random: () => number, task: Task, hand: Hand): Played {
  const next = hand(task);
  let [part, owed]: [Part, readonly number[]] = [begun, task.owed];
  for (let round = 0; ; round += 1) {
    const piece = round < task.rounds ? next({ part, values: readings(part, random), owed, round }) : null;
    if (piece === null) {
      const within = tirOf(part.centre) <= GOAL && !owes(owed);
      return { within, rounds: round, stopped: !within && round < task.rounds };
    }
    part = weld(part, piece, random);
    owed = owedAfter(owed, piece);
  }
}

interface Rate {
  /** Part of all that came within the goal. */
  readonly within: number;
  /** Middle of the rounds of those. */
  readonly median: number;
  readonly played: readonly Played[];
}

function rateOf(played: readonly Played[]): Rate {
  const rounds = played.flatMap((one) => (one.within ? [one.rounds] : [])).sort((a, b) => a - b);
  return { within: rounds.length / played.length, median: rounds[Math.floor(rounds.length / 2)] ?? Number.NaN, played };
}

/** Which parts are played. */
interface Parts {
  readonly spread: Spread;
  /** Seed of the first, and how many. */
  readonly first: number;
  readonly count: number;
}

/** Plays parts by one hand. */
export function play(hand: keyof typeof HANDS, task: Task, { spread, first, count }: Parts): Rate {
  return rateOf(
    Array.from({ length: count }, (_, k) =>
      playOne(newPart(first + k, spread), seeded(77_000_000 + first + k), task, HANDS[hand]),
    ),
  );
}

/** Which of the parts not even the one who is told brings in when no bead scatters: there is no hope for them. */
export function withoutHope(task: Task, { spread, first, count }: Parts): boolean[] {
  return Array.from({ length: count }, (_, k) => {
    const part = newPart(first + k, spread);
    const steady = { ...part, habits: { ...part.habits, scatter: 0 } };
    return !playOne(steady, seeded(77_000_000 + first + k), task, told).within;
  });
}
