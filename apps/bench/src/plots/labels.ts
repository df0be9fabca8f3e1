/** A point of the drawing, px. */
export type Point = readonly [x: number, y: number];

/** A curve in px, and the words that stand at it; without words it is only kept clear of. */
export interface Labelled {
  readonly key: string;
  readonly text: string;
  readonly points: readonly Point[];
  /** Part of the curve at which the words would rather stand, 0 to 1. */
  readonly wish: number;
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface PlacedLabel {
  readonly key: string;
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Anchor on the base line. */
  readonly x: number;
  readonly y: number;
  /** What it covers. */
  readonly box: Box;
}

/** Width of a letter of the lettering and the height of a line, as parts of the letter size; the lettering is narrow. */
const LETTER = 0.47;
const RISE = 0.78;
const FALL = 0.24;
const GAP = 4;
const TRIES = 20;

/** Costs: words over words are not to be read, off the drawing they are cut; a curve through words is only ugly. */
const OVER_WORDS = 1000;
const OFF = 1000;
const OVER_CURVE = 40;
const OWN_CURVE = 60;
const FROM_WISH = 30;
/** Another curve so near to words may be taken for theirs. */
const NEAR = 9;
const BY_OTHER = 14;
/** Words under a curve may be taken for those of the next one down. */
const BELOW = 8;

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

const wider = (box: Box, by: number): Box => ({
  left: box.left - by,
  top: box.top - by,
  right: box.right + by,
  bottom: box.bottom + by,
});

/** Whether the straight line between two points touches a box. */
function crosses([x1, y1]: Point, [x2, y2]: Point, box: Box): boolean {
  let [from, to] = [0, 1];
  for (const [start, step, low, high] of [
    [x1, x2 - x1, box.left, box.right],
    [y1, y2 - y1, box.top, box.bottom],
  ] as const) {
    if (step === 0) {
      if (start < low || start > high) return false;
      continue;
    }
    const [a, b] = [(low - start) / step, (high - start) / step];
    from = Math.max(from, Math.min(a, b));
    to = Math.min(to, Math.max(a, b));
    if (from > to) return false;
  }
  return true;
}

const through = (curve: readonly Point[], box: Box): boolean =>
  curve.some((point, k) => {
    const before = curve[k - 1];
    return before !== undefined && crosses(before, point, box);
  });

/** Points spread over a curve, with their part of its points. */
function spread(curve: readonly Point[]): readonly (readonly [point: Point, part: number])[] {
  const last = curve.length - 1;
  if (last < 1) return curve.map((point) => [point, 0]);
  return Array.from({ length: TRIES + 1 }, (_, k) => {
    const part = k / TRIES;
    const at = Math.min(last - 1, Math.floor(part * last));
    const [a, b] = [curve[at] as Point, curve[at + 1] as Point];
    const t = part * last - at;
    return [[a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t], part];
  });
}

/**
 * Words at each curve where they cover no other words and as few curves as can be; curves named first choose first.
 * @param frame where words may stand
 * @param taken places that hold something else
 * @param letter letter size, px
 */
export function placeLabels(
  curves: readonly Labelled[],
  frame: Box,
  taken: readonly Box[],
  letter: number,
): readonly PlacedLabel[] {
  const full: Box[] = [...taken];
  const [rise, fall] = [RISE * letter, FALL * letter];
  return curves.flatMap((curve): PlacedLabel[] => {
    if (curve.text === '') return [];
    const wide = curve.text.length * LETTER * letter;
    const options = spread(curve.points).flatMap(([[x, y], part]) =>
      (
        [
          ['middle', x, y - GAP - fall, 0],
          ['end', x, y - GAP - fall, 0],
          ['start', x, y - GAP - fall, 0],
          ['start', x + GAP + 2, y + rise / 2, 0],
          ['end', x - GAP - 2, y + rise / 2, 0],
          ['middle', x, y + GAP + rise, BELOW],
          ['start', x, y + GAP + rise, BELOW],
          ['end', x, y + GAP + rise, BELOW],
        ] as const
      ).map(([anchor, at, base, side]) => {
        const left = anchor === 'start' ? at : anchor === 'end' ? at - wide : at - wide / 2;
        const box = { left, top: base - rise, right: left + wide, bottom: base + fall };
        const out =
          box.left < frame.left || box.right > frame.right || box.top < frame.top || box.bottom > frame.bottom;
        const cost =
          side +
          (out ? OFF : 0) +
          (full.some((one) => overlap(one, box)) ? OVER_WORDS : 0) +
          curves.reduce((sum, other) => {
            if (through(other.points, box)) return sum + (other === curve ? OWN_CURVE : OVER_CURVE);
            return other !== curve && through(other.points, wider(box, NEAR)) ? sum + BY_OTHER : sum;
          }, 0) +
          FROM_WISH * Math.abs(part - curve.wish);
        return { anchor, at, base, box, cost };
      }),
    );
    const best = options.reduce<(typeof options)[number] | null>(
      (least, one) => (least === null || one.cost < least.cost ? one : least),
      null,
    );
    // Better no words than words that cover others: the table beneath names every curve.
    if (!best || best.cost >= OVER_WORDS) return [];
    full.push(best.box);
    return [{ key: curve.key, text: curve.text, anchor: best.anchor, x: best.at, y: best.base, box: best.box }];
  });
}
