import type { DrawnPart, View } from '@oddwheel/sheets/drawing';
import { type JSX, memo } from 'react';
import { UnderPictures } from '../underlay/UnderPictures.tsx';
import type { Laid } from '../underlay/use-underlays.ts';
import { DrawnElement, Lettering } from './DrawnElement.tsx';
import { belongsTo, goesAlong, isMeasuring } from './parts.ts';

interface Props {
  readonly view: View;
  readonly height: number;
  /** Where the view's origin stands; its place on the sheet, or nothing where it stands alone. */
  readonly at: readonly [number, number];
  readonly chosen: string | null;
  /** Addresses of chains and belts that are drawn anew while something moves. */
  readonly redrawn: readonly string[];
  readonly moving: boolean;
  /** What lies under it. */
  readonly pictures: readonly Laid[];
}

/** How far above a view its title stands, in heights of its lettering. */
const TITLE = 1;

/**
 * One view. What belongs to the choice is in mark on wash, and is moved by the two lengths `--move-x` and `--move-y` of the view alone, so that
 * a drag draws nothing anew.
 */
export const ViewGroup = memo(function ViewGroup(props: Props): JSX.Element {
  const { view, height, at, chosen, redrawn, moving, pictures } = props;
  const [x, y] = at;
  const mine = (part: DrawnPart): boolean => chosen !== null && belongsTo(part, chosen);
  const title: readonly [number, number] = [view.bounds.left, view.bounds.top + TITLE * height];
  return (
    <g
      transform={`translate(${x} ${-y})`}
      data-view={view.id}
      className={`drawn-view${moving ? ' moving' : ''}${pictures.length > 0 ? ' over-picture' : ''}`}
    >
      {pictures.length > 0 && <UnderPictures pictures={pictures} bounds={view.bounds} />}
      {view.parts.map((part, k) => (
        <g
          // The same part may be drawn in pieces.
          // biome-ignore lint/suspicious/noArrayIndexKey: parts of a view have no other name, and stand in a fixed order
          key={`${part.of} ${k}`}
          data-of={part.of}
          data-moves={part.moves ?? undefined}
          className={`part${mine(part) ? ' chosen' : ''}${redrawn.includes(part.of) ? ' stale' : ''}`}
        >
          {part.elements.map((element, n) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: elements of a part have no name
            <DrawnElement key={n} element={element} height={height} />
          ))}
        </g>
      ))}
      {view.notes.map((note, k) => (
        <g
          // biome-ignore lint/suspicious/noArrayIndexKey: notes of a view have no name
          key={k}
          className={`drawn-note${chosen !== null && goesAlong(note, chosen) ? ' goes-along' : ''}${isMeasuring(note) || note.finding !== null ? ' measures' : ''}`}
        >
          {note.elements.map((element, n) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: elements of a note have no name
            <DrawnElement key={n} element={element} height={height} />
          ))}
        </g>
      ))}
      <Lettering at={title} angle={0} anchor="start" look="strong" text={view.title} />
    </g>
  );
});
