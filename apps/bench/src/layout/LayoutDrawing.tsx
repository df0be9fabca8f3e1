import { movesIn } from '@oddwheel/build/placing/snap';
import type { Placed } from '@oddwheel/build/placing/types';
import type { View, ViewId } from '@oddwheel/sheets/drawing';
import { type JSX, type PointerEvent, type RefObject, useRef } from 'react';
import type { Laid } from '../underlay/use-underlays.ts';
import type { Framed } from './frame.ts';
import { MoveHandle } from './MoveHandle.tsx';
import { MoveMarks } from './MoveMarks.tsx';
import { nearPart } from './near-part.ts';
import { choiceOf, within } from './parts.ts';
import { dragTo } from './pointer-move.ts';
import type { Shown } from './use-drawing.ts';
import { useEscape } from './use-escape.ts';
import type { Mover } from './use-move.ts';
import { ViewGroup } from './ViewGroup.tsx';

interface Props {
  readonly shown: Shown;
  readonly laid: Framed;
  readonly name: string;
  readonly chosen: string | null;
  /** What a drag of the choice moves; null where nothing may be moved. */
  readonly placed: Placed | null;
  readonly mover: Mover;
  /** View that the handle stands in; null for none. */
  readonly handleIn: View | null;
  readonly sheet: RefObject<SVGSVGElement | null>;
  /** What scrolls the drawing when it is enlarged. */
  readonly frame: RefObject<HTMLElement | null>;
  /** Pictures that lie under the views. */
  readonly pictures: ReadonlyMap<ViewId, readonly Laid[]>;
  readonly onChoose: (address: string, view: ViewId) => void;
}

/** A press that goes further than this is a drag, px. */
const DRAG_BEGINS = 4;

/** The drawing itself: a press chooses, a drag with the mouse moves, and the handle moves by finger and by key. */
export function LayoutDrawing(props: Props): JSX.Element {
  const { shown, laid, chosen, placed, mover, handleIn, sheet, frame } = props;
  const { drawing, request } = shown;
  const { bounds } = laid;
  const press = useRef<{
    readonly x: number;
    readonly y: number;
    readonly view: ViewId;
    readonly held: boolean;
  } | null>(null);
  // Empty paper that is held with the mouse pans an enlarged drawing.
  const paper = useRef<{ readonly x: number; readonly y: number } | null>(null);
  const byTouch = useRef(false);
  const moving = mover.move !== null;
  const redrawn = mover.moved?.ok ? mover.moved.loops.flatMap(({ parts }) => parts.map(({ of }) => of)) : NONE;
  const stale = useStable(redrawn);
  const alone = request.frame.view;
  const views = alone === null ? drawing.views : drawing.views.filter(({ id }) => id === alone);
  const { cancel } = mover;

  useEscape(moving, () => {
    press.current = null;
    cancel();
  });

  const choose = (x: number, y: number): void => {
    const part = nearPart(x, y);
    if (part) props.onChoose(choiceOf(part, chosen), part.view);
  };
  const onPointerDown = (event: PointerEvent<SVGSVGElement>): void => {
    byTouch.current = event.pointerType === 'touch';
    if (event.button !== 0 || byTouch.current) return;
    const part = nearPart(event.clientX, event.clientY);
    if (!part) {
      event.currentTarget.setPointerCapture(event.pointerId);
      paper.current = { x: event.clientX, y: event.clientY };
      return;
    }
    // A drag of the choice, or of a part of it, moves the choice; any other press chooses first.
    const held = chosen !== null && (within(part.of, chosen) || part.moves === chosen);
    press.current = { x: event.clientX, y: event.clientY, view: part.view, held };
    if (!held) props.onChoose(choiceOf(part, chosen), part.view);
  };
  const onPointerMove = (event: PointerEvent<SVGSVGElement>): void => {
    const { current } = press;
    if ((event.buttons & 1) === 0) return;
    if (paper.current) {
      frame.current?.scrollBy(paper.current.x - event.clientX, paper.current.y - event.clientY);
      paper.current = { x: event.clientX, y: event.clientY };
    }
    if (!current || !placed) return;
    const view = views.find(({ id }) => id === current.view);
    if (!view) return;
    if (!moving) {
      if (Math.hypot(event.clientX - current.x, event.clientY - current.y) < DRAG_BEGINS) return;
      if (!movesIn(placed, view.right, view.up)) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      mover.begin(placed, view);
    }
    mover.wish(dragTo(view, event.clientX - current.x, event.clientY - current.y, laid.scale, event.altKey));
  };
  const onPointerUp = (event: PointerEvent<SVGSVGElement>): void => {
    if (moving && press.current) mover.finish();
    else if (press.current?.held) choose(event.clientX, event.clientY);
    press.current = null;
    paper.current = null;
  };

  return (
    <div className="drawing-sheet" style={{ width: laid.width, height: laid.height }}>
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: keys choose in the list below the drawing, and move by the handle */}
      <svg
        ref={sheet}
        role="img"
        aria-label={`${props.name}, drawn to scale. The numbers stand in the lists below.`}
        width={laid.width}
        height={laid.height}
        viewBox={`${bounds.left} ${-bounds.top} ${bounds.right - bounds.left} ${bounds.top - bounds.bottom}`}
        fontSize={drawing.textHeight}
        onPointerDown={onPointerDown}
        onPointerMove={onPointerMove}
        onPointerUp={onPointerUp}
        // A finger that scrolls or pinches ends without a click.
        onClick={(event) => {
          if (byTouch.current) choose(event.clientX, event.clientY);
        }}
        onPointerCancel={() => {
          if (press.current) cancel();
          press.current = null;
        }}
      >
        {views.map((view) => (
          <ViewGroup
            key={view.id}
            view={view}
            height={drawing.textHeight}
            at={alone === null ? view.at : HERE}
            chosen={chosen}
            redrawn={stale}
            moving={moving}
            pictures={props.pictures.get(view.id) ?? NO_PICTURES}
          />
        ))}
        {mover.move &&
          views.map((view) => (
            <MoveMarks
              key={view.id}
              view={view}
              at={alone === null ? view.at : HERE}
              height={drawing.textHeight}
              move={mover.move as NonNullable<typeof mover.move>}
              moved={mover.moved}
            />
          ))}
      </svg>
      {placed && handleIn && (
        <MoveHandle
          placed={placed}
          view={handleIn}
          at={alone === null ? handleIn.at : HERE}
          laid={laid}
          mover={mover}
        />
      )}
    </div>
  );
}

const HERE: readonly [number, number] = [0, 0];
const NONE: readonly string[] = [];
const NO_PICTURES: readonly Laid[] = [];

/** The same list again while it says the same, so that nothing is drawn anew for it. */
function useStable(list: readonly string[]): readonly string[] {
  const kept = useRef(list);
  if (kept.current.join(' ') !== list.join(' ')) kept.current = list;
  return kept.current;
}
