/** Words under a drawing, each on a line of its own mark. */
interface Named {
  readonly key: string;
  readonly text: string;
  /** Where its mark stands, px. */
  readonly at: number;
}

export interface PlacedName extends Named {
  readonly anchor: 'start' | 'middle' | 'end';
  readonly x: number;
  /** Line of lettering below the drawing, from 0. */
  readonly row: number;
}

type Anchor = PlacedName['anchor'];
type Placed = PlacedName & { readonly from: number; readonly to: number };

/** Orders in which places are tried: no single one does for every row of marks. */
const ANCHORS: readonly (readonly Anchor[])[] = [
  ['middle', 'start', 'end'],
  ['start', 'middle', 'end'],
  ['end', 'middle', 'start'],
];
const MOST_ROWS = 12;

/**
 * Puts names on as few lines as can be, so that none covers another, and no line to a mark runs through a name.
 * @param width width of a text, px
 * @param left from here, px, to `right` there is room
 */
export function placeNames(
  named: readonly Named[],
  width: (text: string) => number,
  left: number,
  right: number,
  gap: number,
): readonly PlacedName[] {
  const sorted = [...named].sort((a, b) => a.at - b.at);
  const tries = [sorted, [...sorted].reverse()].flatMap((order) =>
    ANCHORS.map((anchors) => tryOrder(order, anchors, width, left, right, gap)),
  );
  const rows = (placed: readonly Placed[]): number => placed.reduce((sum, { row }) => sum + row, 0);
  const best = tries.reduce((one, other) =>
    other.length > one.length || (other.length === one.length && rows(other) < rows(one)) ? other : one,
  );
  return best.map(({ key, text, at, anchor, x, row }) => ({ key, text, at, anchor, x, row }));
}

function tryOrder(
  named: readonly Named[],
  anchors: readonly Anchor[],
  width: (text: string) => number,
  left: number,
  right: number,
  gap: number,
): readonly Placed[] {
  const placed: Placed[] = [];
  for (const one of named) {
    const wide = width(one.text);
    let found: Placed | null = null;
    for (let row = 0; row < MOST_ROWS && !found; row++)
      for (const anchor of anchors) {
        const wish = anchor === 'middle' ? one.at - wide / 2 : anchor === 'start' ? one.at : one.at - wide;
        const from = Math.max(left, Math.min(right - wide, wish));
        const to = from + wide;
        const free = placed.every((other) => {
          if (other.row === row) return to + gap <= other.from || other.to + gap <= from;
          const [upper, lower] = other.row < row ? [other, one] : [{ from, to }, other];
          return lower.at < upper.from - 2 || lower.at > upper.to + 2;
        });
        if (!free) continue;
        const x = anchor === 'middle' ? (from + to) / 2 : anchor === 'start' ? from : to;
        found = { ...one, anchor, x, row, from, to };
        break;
      }
    if (found) placed.push(found);
  }
  return placed;
}
