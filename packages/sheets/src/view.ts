import { drawSolid, nearness } from './draw-solid.ts';
import type { Bounds, DrawnNote, DrawnPart, Element, Point, View, ViewId } from './drawing.ts';
import { textBox } from './lettering.ts';
import { around, NO_BOUNDS, type Plane } from './plane.ts';
import type { Solid } from './solids.ts';

/** All corners of an element that bound it. */
function extent(element: Element, height: number): readonly Point[] {
  const box = (bounds: Bounds): Point[] => [
    [bounds.left, bounds.bottom],
    [bounds.right, bounds.top],
  ];
  switch (element.kind) {
    case 'line':
      return [element.from, element.to];
    case 'circle':
      return box({
        left: element.centre[0] - element.radius,
        right: element.centre[0] + element.radius,
        bottom: element.centre[1] - element.radius,
        top: element.centre[1] + element.radius,
      });
    case 'path':
      return [element.start, ...element.steps.map(({ to }) => to)];
    case 'loop':
      return box(
        around(
          element.pins.flatMap(([x, y]): Point[] => [
            [x - element.height / 2, y - element.height / 2],
            [x + element.height / 2, y + element.height / 2],
          ]),
        ),
      );
    case 'hatch':
      return element.lines.flat();
    case 'text':
      return box(textBox(element, height));
    case 'dimension':
      return [...element.measured, ...element.ends, ...box(dimensionTextBox(element, height))];
  }
}

/** Room that the text of a dimension takes. */
export const dimensionTextBox = (element: Extract<Element, { kind: 'dimension' }>, height: number): Bounds =>
  textBox({ at: element.textAt, text: element.text, anchor: 'middle', angle: element.angle }, height);

export function boundsOf(drawn: readonly { readonly elements: readonly Element[] }[], height: number): Bounds {
  return around(
    drawn.flatMap(({ elements }) => elements.flatMap((element) => extent(element, height))),
    NO_BOUNDS,
  );
}

/** Room that labels of a view may use: what it shows, and some lines of lettering round it. */
export function roomAround({ left, right, bottom, top }: Bounds, height: number): Bounds {
  return { left: left - 2 * height, right: right + 2 * height, bottom: bottom - 3 * height, top: top + height };
}

/** Every box that lettering takes. */
export function textBoxes(notes: readonly DrawnNote[], height: number): readonly Bounds[] {
  return notes.flatMap(({ elements }) =>
    elements.flatMap((element): Bounds[] =>
      element.kind === 'text'
        ? [textBox(element, height)]
        : element.kind === 'dimension'
          ? [dimensionTextBox(element, height)]
          : [],
    ),
  );
}

/** The parts of a view, farthest first. */
export function partsOf(plane: Plane, solids: readonly Solid[]): readonly DrawnPart[] {
  return solids
    .map((solid, k) => ({ solid, k, near: nearness(plane, solid) }))
    .sort((a, b) => (a.near === b.near ? a.k - b.k : a.near < b.near ? -1 : 1))
    .flatMap(({ solid }) => drawSolid(plane, solid) ?? []);
}

export const viewOf = (
  id: ViewId,
  title: string,
  plane: Plane,
  parts: readonly DrawnPart[],
  notes: readonly DrawnNote[],
  height: number,
): View => ({ id, title, ...plane, at: [0, 0], bounds: boundsOf([...parts, ...notes], height), parts, notes });
