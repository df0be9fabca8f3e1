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

/** Words never stand on words, nor off the drawing; a curve through words is only ugly, and costs. From here on they are left out. */
const TOO_DEAR = 1000;
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

const within = (box: Box, frame: Box): boolean =>
  box.left >= frame.left && box.right <= frame.right && box.top >= frame.top && box.bottom <= frame.bottom;

/** The box around a curve; a level one still has a height. */
function extent(curve: readonly Point[]): Box {
  const [xs, ys] = [curve.map((point) => point[0]), curve.map((point) => point[1])];
  return wider({ left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) }, 1);
}

/** Where words may stand at a point: above it, beside it, below it; with what each place costs. */
const placesAt = (rise: number, fall: number) =>
  [
    ['middle', 0, -GAP - fall, 0],
    ['end', 0, -GAP - fall, 0],
    ['start', 0, -GAP - fall, 0],
    ['start', GAP + 2, rise / 2, 0],
    ['end', -GAP - 2, rise / 2, 0],
    ['middle', 0, GAP + rise, BELOW],
    ['start', 0, GAP + rise, BELOW],
    ['end', 0, GAP + rise, BELOW],
  ] as const;

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
  const around = new Map(curves.map((curve) => [curve, extent(curve.points)]));
  return curves.flatMap((curve): PlacedLabel[] => {
    if (curve.text === '') return [];
    const wide = curve.text.length * LETTER * letter;
    // Better no words than words that cover others: the table beneath names every curve.
    let least = TOO_DEAR;
    let best: PlacedLabel | null = null;
    for (const [[x, y], part] of spread(curve.points))
      for (const [anchor, dx, dy, side] of placesAt(rise, fall)) {
        const [at, base] = [x + dx, y + dy];
        const left = anchor === 'start' ? at : anchor === 'end' ? at - wide : at - wide / 2;
        const box = { left, top: base - rise, right: left + wide, bottom: base + fall };
        let cost = side + FROM_WISH * Math.abs(part - curve.wish);
        // The dear tests come last, and only for a place that could still win.
        if (cost >= least || !within(box, frame) || full.some((one) => overlap(one, box))) continue;
        for (const other of curves) {
          if (cost >= least) break;
          if (!overlap(around.get(other) ?? box, wider(box, NEAR))) continue;
          if (through(other.points, box)) cost += other === curve ? OWN_CURVE : OVER_CURVE;
          else if (other !== curve && through(other.points, wider(box, NEAR))) cost += BY_OTHER;
        }
        if (cost >= least) continue;
        least = cost;
        best = { key: curve.key, text: curve.text, anchor, x: at, y: base, box };
      }
    if (best === null) return [];
    full.push(best.box);
    return [best];
  });
}
