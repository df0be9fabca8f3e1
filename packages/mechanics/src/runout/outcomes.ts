import type { Expected, Offset } from './adviser-types.ts';

/** Pairs of standard normal numbers that fill the plane evenly, fixed once: chance without a random source. */
const PAIRS: readonly Offset[] = evenPairs(64);

/** Halton points, bases 2 and 3, turned into normal pairs by radius and angle. */
function evenPairs(count: number): Offset[] {
  const halton = (index: number, base: number): number => {
    let [rest, part, sum] = [index, 1 / base, 0];
    while (rest > 0) {
      sum += part * (rest % base);
      rest = Math.floor(rest / base);
      part /= base;
    }
    return sum;
  };
  return Array.from({ length: count }, (_, k) => {
    const radius = Math.sqrt(-2 * Math.log(1 - halton(k + 1, 2)));
    const angle = 2 * Math.PI * halton(k + 1, 3);
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
  });
}

/** Scatter pairs tried for each possible answer of the part. */
const TRIES = 6;
/** Across its direction a movement scatters less than along it. */
const ACROSS = 0.7;

/**
 * TIR that can come out of these movements, one number for each movement and each scatter pair.
 * @param from offset before, m
 * @param moves movement for each possible answer, m
 * @param scatter of a movement, as a fraction of it
 */
export function outcomes(from: Offset, moves: readonly Offset[], scatter: number, noise: number): Float64Array {
  const results = new Float64Array(moves.length * TRIES);
  let k = 0;
  for (const [i, move] of moves.entries()) {
    const size = Math.hypot(move.x, move.y);
    for (let t = 0; t < TRIES; t++) {
      const pair = PAIRS[(i * TRIES + t) % PAIRS.length] as Offset;
      const other = PAIRS[(i * TRIES + t + 31) % PAIRS.length] as Offset;
      const along = 1 + scatter * pair.x;
      const across = ACROSS * scatter * pair.y;
      const x = from.x + move.x * along - move.y * across + noise * other.x;
      const y = from.y + move.y * along + move.x * across + noise * other.y;
      results[k++] = size === 0 && noise === 0 ? 2 * Math.hypot(from.x, from.y) : 2 * Math.hypot(x, y);
    }
  }
  return results;
}

/** Middle, ends and chance of a set of equally likely TIRs. */
export function expectedOf(tirs: Float64Array, goal: number): Expected {
  const sorted = Float64Array.from(tirs).sort();
  const at = (part: number): number => sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] as number;
  let within = 0;
  for (const tir of sorted) if (tir <= goal) within++;
  return { tir: at(0.5), low: at(0.1), high: at(0.9), within: within / sorted.length };
}

/** A round brings the TIR down to about this part of itself, when the bead is not held back by its length. */
const PER_ROUND = Math.log(4);

/**
 * Rounds that a part of this TIR still needs, about: none within the goal, else by what a round brings and by how far
 * the longest bead reaches.
 * @param reach TIR that the longest bead takes away, m
 */
export function roundsToGo(tir: number, goal: number, reach: number): number {
  if (tir <= goal) return 0;
  return 1 + Math.log(tir / goal) / PER_ROUND + Math.max(0, tir - goal) / reach;
}
