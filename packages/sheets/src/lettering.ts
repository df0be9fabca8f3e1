import type { Model } from '@oddwheel/build/model/model';
import { formatFor } from '@oddwheel/quantity/format';
import type { Bounds, Element, Point } from './drawing.ts';
import { around, overlap } from './plane.ts';

/** Mean advance of a letter of Barlow Semi Condensed over its size, and line pitch over size; measured on figures, rounded up. */
const ADVANCE = 0.52;
const LINE = 1.25;

export const textWidth = (text: string, height: number): number => text.length * ADVANCE * height;
export const lineHeight = (height: number): number => LINE * height;

/** Box of a text: `at` is its baseline at the anchor, the angle in degrees. */
export function textBox(
  { at, text, anchor, angle }: Pick<Extract<Element, { kind: 'text' }>, 'at' | 'text' | 'anchor' | 'angle'>,
  height: number,
): Bounds {
  const width = textWidth(text, height);
  const start = anchor === 'start' ? 0 : anchor === 'middle' ? -width / 2 : -width;
  const [c, s] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
  const corners: Point[] = [
    [start, -0.22 * height],
    [start + width, -0.22 * height],
    [start + width, 0.78 * height],
    [start, 0.78 * height],
  ];
  return around(corners.map(([x, y]): Point => [at[0] + x * c - y * s, at[1] + x * s + y * c]));
}

/** A length as a drawing says it, the unit left to the title block: "481.4". Fractions of an inch keep theirs. */
export function sizeText(model: Pick<Model, 'units'>, mm: number): string {
  const text = formatFor(model.units, 'length', Math.round(mm * 1e4) / 1e7);
  return model.units.length === 'in 1/64' ? text : text.replace(/\s*(mm|cm|m|in|ft)$/u, '').trim();
}

/** A block of lines to put near a point. */
export interface Label {
  readonly lines: readonly Omit<Extract<Element, { kind: 'text' }>, 'at' | 'anchor' | 'angle' | 'kind'>[];
  readonly near: Point;
  /** Offsets to try, in order, mm; the first that is free is taken. */
  readonly tries: readonly Point[];
  /** A line from the label to the point where it stands off it. */
  readonly leader: boolean;
}

/** Whether a box lies inside another. */
const inside = (box: Bounds, outer: Bounds): boolean =>
  box.left >= outer.left && box.right <= outer.right && box.bottom >= outer.bottom && box.top <= outer.top;

/** Finds room for labels: what is placed is taken. */
export class Room {
  readonly #taken: Bounds[];
  readonly #height: number;
  readonly #within: Bounds;

  /** @param within labels stay in it, so that lettering never makes a view much larger than what it shows */
  constructor(height: number, taken: readonly Bounds[], within: Bounds) {
    this.#height = height;
    this.#taken = [...taken];
    this.#within = within;
  }

  /** Lays a label in the first free place, and says what it draws: nothing where there is no room, since the page lists it as well. */
  place(label: Label): readonly Element[] {
    const { lines, near, tries } = label;
    const height = this.#height;
    const put = ([dx, dy]: Point): { readonly texts: Extract<Element, { kind: 'text' }>[]; readonly box: Bounds } => {
      const anchor = dx > 0 ? 'start' : dx < 0 ? 'end' : 'middle';
      const texts = lines.map((line, k) => ({
        ...line,
        kind: 'text' as const,
        at: [near[0] + dx, near[1] + dy - k * lineHeight(height)] as Point,
        anchor: anchor as 'start' | 'middle' | 'end',
        angle: 0,
      }));
      const boxes = texts.map((text) => textBox(text, height));
      return {
        texts,
        box: boxes.reduce((a, b) =>
          around(
            [
              [b.left, b.bottom],
              [b.right, b.top],
            ],
            a,
          ),
        ),
      };
    };
    const choices = tries.map(put);
    const free = choices.find(
      ({ box }) => inside(box, this.#within) && !this.#taken.some((taken) => overlap(taken, box)),
    );
    if (!free) return [];
    this.#taken.push(free.box);
    const { left, right, bottom, top } = free.box;
    const [x, y] = near;
    const end: Point = [Math.min(right, Math.max(left, x)), y > top ? top : y < bottom ? bottom : (top + bottom) / 2];
    const off = Math.hypot(end[0] - x, end[1] - y);
    return label.leader && off > 0.6 * height
      ? [{ kind: 'line', line: 'thin', from: near, to: end }, ...free.texts]
      : free.texts;
  }
}

/** Places round a point, nearest first. */
export function roundAbout(distances: readonly number[]): readonly Point[] {
  return distances.flatMap((d): Point[] => [
    [d, d],
    [-d, d],
    [d, -d],
    [-d, -d],
    [d, 0],
    [-d, 0],
    [0.001, 1.3 * d],
    [0.001, -1.5 * d],
  ]);
}
