/** The weld that a joint owes, as the shop that does not exist lays it. Knows nothing of how advice is found. */
import { type Bead, LONGEST, movement, type Part, SHORTEST, type Vector } from './simulator.ts';

/** A bead on a stretch of the owed weld; `stretch` is left out for an extra bead. */
export interface Piece extends Bead {
  readonly stretch?: number | undefined;
}

/** A full weld round a shaft of 40 mm: nine stretches of 14 mm, 126 mm in all. */
export const STRETCHES = 9;
export const STRETCH = 14;
export const OWED: readonly number[] = Array.from({ length: STRETCHES }, () => STRETCH);

export const angleOf = (stretch: number): number => (2 * Math.PI * stretch) / STRETCHES;

/** What is owed once a piece is in. */
export function owedAfter(owed: readonly number[], { stretch, length }: Piece): number[] {
  return owed.map((left, k) => (k === stretch ? Math.max(0, left - length) : left));
}

const far = ({ x, y }: Vector): number => Math.hypot(x, y);

function lay(part: Part, bead: Bead): Part {
  const by = movement(part, bead);
  return {
    ...part,
    centre: { x: part.centre.x + by.x, y: part.centre.y + by.y },
    beads: [...part.beads, bead],
  };
}

/** Lays the rest of the weld without scatter, each time the stretch that leaves the least, with what is still owed pulling ahead. */
function finished(part: Part, owed: readonly number[], ahead: number): Part {
  let now = part;
  let rest = owed;
  while (rest.some((left) => left > 0)) {
    const open = rest.flatMap((left, stretch) => {
      if (left <= 0) return [];
      const piece: Piece = { at: angleOf(stretch), length: Math.min(left, LONGEST), stretch };
      return [{ piece, by: movement(now, piece) }];
    });
    const sum = open.reduce((all, { by }) => ({ x: all.x + by.x, y: all.y + by.y }), { x: 0, y: 0 });
    const scored = open.map(({ piece, by }) => ({
      piece,
      left: Math.hypot(now.centre.x + by.x + ahead * (sum.x - by.x), now.centre.y + by.y + ahead * (sum.y - by.y)),
    }));
    const { piece } = scored.reduce((best, one) => (one.left < best.left ? one : best));
    now = lay(now, piece);
    rest = owedAfter(rest, piece);
  }
  return now;
}

/** Extra beads, without scatter, that bring a part within half of the goal; as many as it takes, up to `most`. */
function extras(part: Part, most: number, pick: (part: Part) => Bead | null): { beads: number; left: number } {
  let now = part;
  for (let beads = 0; beads < most; beads++) {
    if (far(now.centre) <= 1.2) return { beads, left: far(now.centre) };
    const bead = pick(now);
    if (!bead) return { beads, left: far(now.centre) };
    now = lay(now, bead);
  }
  return { beads: most, left: far(now.centre) };
}

/** The best single bead by direction, for looking ahead only; the oracle itself tries every one. */
function direct(part: Part): Bead | null {
  let best: Bead | null = null;
  let least = far(part.centre);
  const away = Math.atan2(-part.centre.y, -part.centre.x) - part.habits.lag;
  const unit = movement(part, { at: away, length: 1 });
  const length = Math.min(LONGEST, Math.max(SHORTEST, Math.round(least / Math.max(1e-9, far(unit)))));
  for (const aside of [0, -0.3, 0.3]) {
    const bead = { at: away + aside, length };
    const left = far(lay(part, bead).centre);
    if (left < least) [best, least] = [bead, left];
  }
  return best;
}

/**
 * The next piece by someone who is told the part’s habits: every stretch and every length is tried, the rest of the weld and
 * the extra beads are played through behind it without scatter, and the fewest rounds with the least left wins.
 */
export function oraclePiece(part: Part, owed: readonly number[], rounds: number): Piece {
  let best: { piece: Piece; cost: number } | undefined;
  for (const [stretch, left] of owed.entries())
    for (let length = Math.min(left, LONGEST); length > 0; length -= 1) {
      if (length < SHORTEST || (left > length && left - length < SHORTEST)) continue;
      const piece = { at: angleOf(stretch), length, stretch };
      const after = lay(part, piece);
      const rest = owedAfter(owed, piece);
      const pieces = rest.filter((one) => one > 0).length;
      if (pieces > rounds - 1) continue;
      for (const ahead of [0, 1]) {
        const more = extras(finished(after, rest, ahead), rounds - 1 - pieces, direct);
        const cost = pieces + more.beads + 2 * Math.max(0, Math.log2(more.left / 1.2));
        if (!best || cost < best.cost) best = { piece, cost };
      }
    }
  if (!best) throw new Error('The weld that is owed does not fit into the rounds that are left.');
  return best.piece;
}

/** Stretch still owed that lies nearest to an angle. */
export function nearestOwed(owed: readonly number[], at: number): number {
  let best = -1;
  for (const [k, left] of owed.entries())
    if (left > 0 && (best < 0 || Math.cos(angleOf(k) - at) > Math.cos(angleOf(best) - at))) best = k;
  return best;
}
