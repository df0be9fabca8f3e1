/**
 * What is known of a part's answer to weld beads, as weights over a grid of possible answers.
 * A round multiplies the weights by how likely its measured movement was; nothing else is kept of past rounds.
 */
import type { BeadAction, BeadLimits, BeadPart, LearnedResponse, Offset, ResponsePrior } from './adviser-types.ts';

/** One possible answer of the part. */
export interface Answer {
  /** Offset per bead length, m/m. */
  readonly pull: number;
  /** Turn of the movement from its expected direction, rad. */
  readonly lag: number;
  /** Which of `PILES` holds. */
  readonly pile: number;
  readonly weight: number;
}

/** How earlier beads weaken a new one: e-fold after this length, in longest beads, counted near the place or all round. */
interface PileRule {
  readonly capacity: number;
  readonly counts: 'near' | 'all';
  readonly prior: number;
}

const PILES: readonly PileRule[] = [
  { capacity: Number.POSITIVE_INFINITY, counts: 'all', prior: 0.2 },
  { capacity: 4, counts: 'near', prior: 0.25 },
  { capacity: 1.5, counts: 'near', prior: 0.2 },
  { capacity: 8, counts: 'all', prior: 0.2 },
  { capacity: 3, counts: 'all', prior: 0.15 },
];

const PULLS = 45;
const LAGS = 21;
/** Ends of the grid, in standard deviations. */
const PULL_END = 2.6;
const LAG_END = 2.8;
/** Half the part of a normal distribution within ±1.2816 standard deviations is four in five. */
const FOUR_IN_FIVE = 1.2816;
/** A bead's movement scatters less across its direction than along it. */
const ACROSS = 0.7;
/** Freedom of the likelihood: heavy tails, so that one odd round does not overturn the rest. */
const FREEDOM = 5;
/** Spread of the angle at which earlier beads still weaken a new one, rad. */
const NEAR = 0.6;

export interface Belief {
  /** +1: the section moves towards the bead; −1: away from it. */
  readonly sign: 1 | -1;
  readonly weights: Float64Array;
}

/** Values of the grid for one prior. */
interface Axes {
  readonly pulls: Float64Array;
  readonly lags: Float64Array;
}

function axes(prior: ResponsePrior): Axes {
  const spread = Math.log(prior.pullFactor) / FOUR_IN_FIVE;
  const pulls = new Float64Array(PULLS);
  for (let i = 0; i < PULLS; i++) pulls[i] = prior.pull * Math.exp(spread * PULL_END * ((2 * i) / (PULLS - 1) - 1));
  const lags = new Float64Array(LAGS);
  for (let j = 0; j < LAGS; j++) lags[j] = prior.lag * LAG_END * ((2 * j) / (LAGS - 1) - 1);
  return { pulls, lags };
}

const bell = (z: number): number => Math.exp(-0.5 * z * z);

/** What is believed before the first bead. */
export function firstBelief(sign: 1 | -1): Belief {
  const weights = new Float64Array(PILES.length * PULLS * LAGS);
  let k = 0;
  for (const rule of PILES)
    for (let i = 0; i < PULLS; i++) {
      const pull = bell(PULL_END * ((2 * i) / (PULLS - 1) - 1));
      for (let j = 0; j < LAGS; j++) weights[k++] = rule.prior * pull * bell(LAG_END * ((2 * j) / (LAGS - 1) - 1));
    }
  return { sign, weights: normalised(weights) };
}

function normalised(weights: Float64Array): Float64Array {
  let total = 0;
  for (const w of weights) total += w;
  for (let k = 0; k < weights.length; k++) weights[k] = (weights[k] as number) / total;
  return weights;
}

/** How much a bead at one clock angle weakens one at another, 0..1. */
export function nearness(one: number, other: number): number {
  return bell(Math.atan2(Math.sin(one - other), Math.cos(one - other)) / NEAR);
}

/** Bead length that weakens a new bead at this clock angle, in longest beads. */
function piledUp(laid: readonly BeadAction[], clock: number, largest: number, counts: PileRule['counts']): number {
  let sum = 0;
  for (const bead of laid) {
    if (counts === 'all') sum += bead.length;
    else sum += bead.length * nearness(bead.clock, clock);
  }
  return sum / largest;
}

/** What is left of the pull of a bead at this place for each rule of piling up, 0..1. */
export function leftOfPull(laid: readonly BeadAction[], clock: number, beads: BeadLimits): Float64Array {
  const near = piledUp(laid, clock, beads.largest, 'near');
  const all = piledUp(laid, clock, beads.largest, 'all');
  return Float64Array.from(PILES, (_, pile) => pileFactor(pile, near, all));
}

/** What one rule of piling up leaves of the pull, with these lengths near and all round, in longest beads. */
export function pileFactor(pile: number, near: number, all: number): number {
  const rule = PILES[pile] as PileRule;
  return Math.exp(-(rule.counts === 'near' ? near : all) / rule.capacity);
}

/** Movement that a bead of this length makes under one answer. */
export function movementOf(answer: Answer, sign: number, left: Float64Array, clock: number, length: number): Offset {
  const size = sign * answer.pull * length * (left[answer.pile] as number);
  return { x: size * Math.cos(clock + answer.lag), y: size * Math.sin(clock + answer.lag) };
}

export interface Learnt {
  readonly belief: Belief;
  /** How likely the movement was by what was believed before, for comparing beliefs. */
  readonly evidence: number;
}

/**
 * Belief after a bead and the movement measured for it.
 * @param laid beads that were there before
 * @param moved offset after less offset before, m
 */
export function learnMovement(
  belief: Belief,
  part: Pick<BeadPart, 'prior' | 'beads' | 'readingSpread'>,
  laid: readonly BeadAction[],
  bead: BeadAction,
  moved: Offset,
): Learnt {
  const { pulls, lags } = axes(part.prior);
  const left = leftOfPull(laid, bead.clock, part.beads);
  const noise = 2 * part.readingSpread ** 2;
  const along = part.prior.scatter ** 2;
  const across = (ACROSS * part.prior.scatter) ** 2;
  const weights = new Float64Array(belief.weights.length);
  // The measured movement in axes along and across each possible direction.
  const alongs = new Float64Array(LAGS);
  const acrosses = new Float64Array(LAGS);
  for (let j = 0; j < LAGS; j++) {
    const direction = bead.clock + (lags[j] as number);
    const [c, s] = [Math.cos(direction), Math.sin(direction)];
    alongs[j] = belief.sign * (moved.x * c + moved.y * s);
    acrosses[j] = moved.y * c - moved.x * s;
  }
  let k = 0;
  let evidence = 0;
  for (let p = 0; p < PILES.length; p++)
    for (let i = 0; i < PULLS; i++) {
      const size = (pulls[i] as number) * bead.length * (left[p] as number);
      const varAlong = along * size * size + noise;
      const varAcross = across * size * size + noise;
      const scale = 1 / Math.sqrt(varAlong * varAcross);
      for (let j = 0; j < LAGS; j++, k++) {
        const off = (alongs[j] as number) - size;
        const side = acrosses[j] as number;
        const far = 1 + ((off * off) / varAlong + (side * side) / varAcross) / FREEDOM;
        const w = ((belief.weights[k] as number) * scale) / (far * far * far * Math.sqrt(far));
        weights[k] = w;
        evidence += w;
      }
    }
  return { belief: { sign: belief.sign, weights: normalised(weights) }, evidence };
}

/**
 * A few answers that stand for the whole belief, of equal weight: equally spaced in its running total.
 * @param count how many
 */
export function typicalAnswers(belief: Belief, prior: ResponsePrior, count: number): Answer[] {
  const { pulls, lags } = axes(prior);
  const answers: Answer[] = [];
  let total = 0;
  let next = 0.5 / count;
  for (let k = 0; k < belief.weights.length && answers.length < count; k++) {
    total += belief.weights[k] as number;
    while (total >= next && answers.length < count) {
      const j = k % LAGS;
      const i = Math.floor(k / LAGS) % PULLS;
      const pile = Math.floor(k / (LAGS * PULLS));
      answers.push({ pull: pulls[i] as number, lag: lags[j] as number, pile, weight: 1 / count });
      next += 1 / count;
    }
  }
  return answers;
}

/** The response in words of numbers: pull with the ends that hold four times in five, and lag. */
export function learnedResponse(belief: Belief, prior: ResponsePrior): LearnedResponse {
  const { pulls, lags } = axes(prior);
  const byPull = new Float64Array(PULLS);
  let [lag, square] = [0, 0];
  for (let k = 0; k < belief.weights.length; k++) {
    const w = belief.weights[k] as number;
    const i = Math.floor(k / LAGS) % PULLS;
    byPull[i] = (byPull[i] as number) + w;
    const here = lags[k % LAGS] as number;
    lag += w * here;
    square += w * here * here;
  }
  return {
    pull: pullAt(pulls, byPull, 0.5),
    pullLow: pullAt(pulls, byPull, 0.1),
    pullHigh: pullAt(pulls, byPull, 0.9),
    lag,
    lagSpread: Math.sqrt(Math.max(0, square - lag * lag)),
  };
}

/** Pull below which this part of the weight lies; between grid points in proportion. */
function pullAt(pulls: Float64Array, byPull: Float64Array, part: number): number {
  let total = 0;
  for (let i = 0; i < PULLS; i++) {
    const w = byPull[i] as number;
    if (total + w >= part) {
      const before = i === 0 ? (pulls[0] as number) : (pulls[i - 1] as number);
      const inside = w > 0 ? (part - total) / w : 1;
      return before * ((pulls[i] as number) / before) ** inside;
    }
    total += w;
  }
  return pulls[PULLS - 1] as number;
}
