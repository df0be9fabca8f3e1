/**
 * A shop that does not exist: parts with hidden habits, a dial that rounds, beads that pull as they like. Written before the
 * adviser and sharing no code with it; it knows nothing of how advice is found.
 *
 * All of it is common practice, not published: a weld bead shrinks and leaves its side concave, so that the end that stands out
 * beyond the weld moves toward the bead; how far differs from part to part by a factor of three either way; it moves a little aside of the
 * bead; no two beads are alike; part of the movement is lost as the part cools; beads on top of beads move less.
 */

/** Deterministic uniform numbers in [0, 1) (a 32-bit mixing generator, from memory). */
export function seeded(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = a;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A normal number from two uniform ones. */
export function normal(random: () => number): number {
  const u = Math.max(random(), 1e-12);
  return Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * random());
}

export interface Vector {
  readonly x: number;
  readonly y: number;
}

/** What a part keeps to itself. Lengths in thou (0.001 in), angles in rad, clock angle from the punch mark in the sense of turning. */
export interface Habits {
  /** Thou of movement of the centre for each mm of the first bead. */
  readonly pull: number;
  /** How far aside of the bead the centre moves. */
  readonly lag: number;
  /** Scatter of one bead against another, a part of its pull. */
  readonly scatter: number;
  /** Part of the movement that cooling takes back. */
  readonly relaxation: number;
  /** How fast beads lose their effect as they pile up in one place. */
  readonly piling: number;
  /** Twice round: half its height from the mean, and where. */
  readonly oval: number;
  readonly ovalAt: number;
}

export interface Part {
  readonly habits: Habits;
  /** Centre of the part against its true axis; TIR of a round part is twice its length. */
  readonly centre: Vector;
  readonly beads: readonly Bead[];
}

export interface Bead {
  /** Clock angle of its middle, rad. */
  readonly at: number;
  /** mm. */
  readonly length: number;
}

export interface Spread {
  /** Factor either way by which the pull differs from part to part. */
  readonly pull: number;
  /** Standard deviation of the lag, rad. */
  readonly lag: number;
  readonly scatter: readonly [number, number];
}

/** The spread that the issue states; `wider` has half as much more of each. */
export const STATED: Spread = { pull: 3, lag: 0.2, scatter: [0.15, 0.2] };
export const WIDER: Spread = { pull: 3 ** 1.5, lag: 0.3, scatter: [0.225, 0.3] };

/** Thou for each mm that a middling part moves. */
const MIDDLE_PULL = 0.9;
/** Longest bead that does not cook a shaft of this size, mm, and the shortest that can be laid. */
export const LONGEST = 25;
export const SHORTEST = 3;
/** Beads within this angle of each other lie on each other’s heat. */
const NEAR = Math.PI / 4;

export const tirOf = (v: Vector): number => 2 * Math.hypot(v.x, v.y);

/** A part that swings 30 to 60 thou when it comes in. */
export function newPart(seed: number, spread: Spread): Part {
  const random = seeded(seed);
  const tir = 30 + 30 * random();
  const at = 2 * Math.PI * random();
  const [low, high] = spread.scatter;
  return {
    centre: { x: (tir / 2) * Math.cos(at), y: (tir / 2) * Math.sin(at) },
    beads: [],
    habits: {
      pull: MIDDLE_PULL * spread.pull ** (2 * random() - 1),
      lag: spread.lag * normal(random),
      scatter: low + (high - low) * random(),
      relaxation: 0.25 * random(),
      piling: 0.1 + 0.3 * random(),
      oval: 0.2 + 0.5 * random(),
      ovalAt: Math.PI * random(),
    },
  };
}

const apart = (a: number, b: number): number => {
  const d = Math.abs((((a - b) % (2 * Math.PI)) + 3 * Math.PI) % (2 * Math.PI)) - Math.PI;
  return Math.abs(d);
};

/** Movement of the centre by a bead if no two were different; `bead.length` of nothing moves nothing. */
export function movement({ habits, beads }: Part, bead: Bead): Vector {
  const heat = beads.reduce((sum, one) => sum + (apart(one.at, bead.at) < NEAR ? one.length : 0), 0);
  const size = (habits.pull * bead.length * (1 - habits.relaxation)) / (1 + (habits.piling * heat) / 10);
  return { x: size * Math.cos(bead.at + habits.lag), y: size * Math.sin(bead.at + habits.lag) };
}

/** Lays a bead: it moves the part as it will, with its scatter in size and, a third of it, in direction. */
export function weld(part: Part, bead: Bead, random: () => number): Part {
  const length = Math.min(LONGEST, Math.max(0, bead.length));
  const mean = movement(part, { ...bead, length });
  const grow = Math.max(0, 1 + part.habits.scatter * normal(random));
  const turn = (part.habits.scatter / 3) * normal(random);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return {
    ...part,
    centre: {
      x: part.centre.x + grow * (c * mean.x - s * mean.y),
      y: part.centre.y + grow * (s * mean.x + c * mean.y),
    },
    beads: [...part.beads, { at: bead.at, length }],
  };
}

/** Twelve readings of a dial at the hours, rounded to half a thou; the part is cold. */
export function readings(part: Part, random: () => number, count = 12): number[] {
  const { oval, ovalAt } = part.habits;
  return Array.from({ length: count }, (_, k) => {
    const angle = (2 * Math.PI * k) / count;
    const true_ =
      part.centre.x * Math.cos(angle) + part.centre.y * Math.sin(angle) + oval * Math.cos(2 * (angle - ovalAt));
    return Math.round((true_ + 0.15 * normal(random)) * 2) / 2;
  });
}

/** Beads that a welder can lay: every five degrees, every millimetre. */
export function* allowedBeads(): Generator<Bead> {
  for (let degrees = 0; degrees < 360; degrees += 5)
    for (let length = SHORTEST; length <= LONGEST; length += 1) yield { at: (degrees * Math.PI) / 180, length };
}

/** The best bead by someone who is told the part’s habits; null when leaving it alone is best. */
export function oracle(part: Part): Bead | null {
  let best: Bead | null = null;
  let least = Math.hypot(part.centre.x, part.centre.y);
  for (const bead of allowedBeads()) {
    const by = movement(part, bead);
    const left = Math.hypot(part.centre.x + by.x, part.centre.y + by.y);
    if (left < least) [best, least] = [bead, left];
  }
  return best;
}

/** Angle of the largest reading: where a helper with chalk marks the high spot, by the first harmonic that anyone can draw. */
export function highSpot(values: readonly number[]): number {
  let [c, s] = [0, 0];
  values.forEach((value, k) => {
    const angle = (2 * Math.PI * k) / values.length;
    c += value * Math.cos(angle);
    s += value * Math.sin(angle);
  });
  return Math.atan2(s, c);
}

/** The same bead opposite the high spot each time. */
export const sameEachTime =
  (length: number) =>
  (values: readonly number[]): Bead => ({ at: highSpot(values) + Math.PI, length });

/** A slightly larger one each time. */
export const largerEachTime =
  (first: number, more: number) =>
  (values: readonly number[], round: number): Bead => ({
    at: highSpot(values) + Math.PI,
    length: Math.min(LONGEST, first + more * round),
  });
