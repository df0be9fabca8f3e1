import type { Placed } from '@oddwheel/build/placing/types';
import { plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { SpacePart } from '@oddwheel/sheets/space-parts';
import { type JSX, type RefObject, useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import type { Framed } from '../layout/frame.ts';
import { MoveHandle } from '../layout/MoveHandle.tsx';
import { belongsTo, choiceOf, within } from '../layout/parts.ts';
import { dragTo } from '../layout/pointer-move.ts';
import { useEscape } from '../layout/use-escape.ts';
import type { Mover, Shifts } from '../layout/use-move.ts';
import type { Mode } from '../state/actions.ts';
import { PartsTable } from './PartsTable.tsx';
import { SpaceNames } from './SpaceNames.tsx';
import {
  boxAround,
  type Framing,
  intoPlane,
  LOOKS,
  planeFacing,
  scaleToFit,
  sightWords,
  stepInPlane,
} from './sight.ts';
import './turning.css';
import { useSpace } from './use-space.ts';
import type { SpaceShown } from './use-space-parts.ts';
import { useTurning } from './use-turning.ts';

interface Props {
  readonly shown: SpaceShown;
  readonly name: string;
  readonly units: Readonly<Record<string, string>>;
  readonly mode: Mode;
  /** Width and height of the picture, px. */
  readonly width: number;
  readonly height: number;
  readonly chosen: string | null;
  /** What a drag of the choice moves; null where nothing may be moved. */
  readonly placed: Placed | null;
  readonly mover: Mover;
  readonly shifts: RefObject<Shifts | null>;
  readonly onChoose: (address: string) => void;
}

const MISSING =
  'This browser draws nothing in space here: it has no WebGL, or it is switched off. The drawing shows the same parts to scale, and they stand in words below.';
/** On a picture narrower than this the handle would cover what it moves. */
const SMALL = 600;
/** Room that a handle of the shop takes below where it is held, px. */
const CORNER_ROOM = 16;
const HERE: readonly [number, number] = [0, 0];
const ZOOM_STEP = 1.5;
/** Misses of a fingertip or a mouse, px, and how many places are tried round it. */
const MISSES = [0, 5, 10];
const ROUND = 8;

/** The build in space, in ink lines: turned by hand, parts chosen by a press, the chosen one moved by its handle or with the mouse. */
export function TurnView(props: Props): JSX.Element {
  const { shown, chosen, placed, mover, shifts, width, height, mode } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const frame = useRef<HTMLDivElement>(null);
  const state = useSpace(canvas, mode);
  const space = state.is === 'here' ? state.space : null;
  const box = useMemo(() => boxAround(shown.parts), [shown.parts]);
  const middle: Vec3 = box ? times(0.5, plus(box.least, box.most)) : [0, 0, 0];
  useEscape(mover.move !== null, mover.cancel);

  const partAt = (x: number, y: number): SpacePart | null => {
    for (const miss of MISSES)
      for (let k = 0; k < (miss === 0 ? 1 : ROUND); k += 1) {
        const angle = (2 * Math.PI * k) / ROUND;
        const found = space?.pick(x + miss * Math.cos(angle), y + miss * Math.sin(angle));
        if (found) return found;
      }
    return null;
  };
  const choose = (part: Pick<SpacePart, 'of' | 'moves'>): void => props.onChoose(choiceOf(part, chosen));

  const turning = useTurning({
    frame,
    fit: (from) => scaleToFit(shown.parts, from, width, height),
    onPress: (x, y, touch) => {
      if (touch || !placed || plane === null) return false;
      const part = partAt(x, y);
      return part !== null && chosen !== null && (within(part.of, chosen) || part.moves === chosen);
    },
    onDrag: (right, down, free) => {
      if (!placed) return;
      if (!mover.move) inPlane.begin(placed, axes);
      inPlane.wish(dragTo(axes, right, down, scale, free));
    },
    onDrop: mover.finish,
    onCancel: mover.cancel,
    onTap: (x, y) => {
      const part = partAt(x, y);
      if (part) choose(part);
    },
  });
  const { axes, sight, scale } = turning;
  const centre = plus(middle, turning.off);
  const framing: Framing = { axes, centre, scale, width, height };
  const plane = placed ? planeFacing(axes, placed) : null;
  // Moves across the picture become moves in a plane of the vehicle.
  const inPlane: Mover = {
    ...mover,
    begin: (what) => {
      if (plane) mover.begin(what, plane);
    },
    wish: (wished) => {
      if (plane) mover.wish({ ...wished, by: intoPlane(axes, plane, wished.by) });
    },
    step: (by) => {
      if (plane) mover.step(stepInPlane(axes, plane, by));
    },
  };

  useEffect(() => space?.setParts(shown.parts), [space, shown.parts]);
  useEffect(() => {
    space?.setChosen((part) => chosen !== null && belongsTo(part, chosen));
  }, [space, chosen]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the picture is framed anew when one of these numbers changes
  useLayoutEffect(() => {
    space?.setFraming(framing);
  }, [space, sight, scale, width, height, ...centre]);
  useEffect(() => {
    shifts.current = space && { show: space.shift, clear: () => space.shift([0, 0, 0]) };
    return () => {
      shifts.current = null;
    };
  }, [space, shifts]);
  const { moved } = mover;
  useEffect(() => {
    if (moved?.ok) space?.redraw(moved.inSpace);
  }, [space, moved]);

  const [left, top] = [-width / 2, height / 2].map((half) => half * scale);
  const across = (way: Vec3): number => centre[0] * way[0] + centre[1] * way[1] + centre[2] * way[2];
  const laid: Framed = {
    bounds: {
      left: across(axes.right) + (left ?? 0),
      right: across(axes.right) - (left ?? 0),
      bottom: across(axes.up) - (top ?? 0),
      top: across(axes.up) + (top ?? 0),
    },
    width,
    height,
    scale,
  };
  return (
    <>
      <fieldset className="drawing-tools look-from">
        <legend className="hidden-name">Where it is looked at from</legend>
        <span className="look-buttons">
          {LOOKS.map((look) => (
            <button key={look.name} type="button" className="button" onClick={() => turning.lookFrom(look.sight)}>
              {look.name}
            </button>
          ))}
        </span>
        <span className="zoom-buttons">
          <button type="button" className="button" onClick={() => turning.enlarge(ZOOM_STEP)}>
            Larger
          </button>
          <button type="button" className="button" onClick={() => turning.enlarge(1 / ZOOM_STEP)}>
            Smaller
          </button>
          <button type="button" className="button" onClick={turning.whole}>
            Whole
          </button>
        </span>
      </fieldset>
      {state.is === 'missing' ? (
        <p className="lead turn-missing">{MISSING}</p>
      ) : (
        <div ref={frame} className="turn-frame" style={{ height }}>
          <div
            className="turn-picture"
            role="application"
            // biome-ignore lint/a11y/noNoninteractiveTabindex: the picture is turned with the arrow keys
            tabIndex={0}
            aria-label={`${props.name} in space. ${sightWords(sight)}. Arrow keys turn it.`}
            aria-describedby="turn-help"
            {...turning.handlers}
          >
            <canvas ref={canvas} style={{ width, height }} />
            <SpaceNames parts={shown.parts} framing={framing} by={mover.move?.by ?? null} chosen={chosen} />
          </div>
          {space && placed && plane && (
            <MoveHandle
              placed={placed}
              view={{ ...axes, title: plane.title }}
              {...(width < SMALL ? inCorner(laid) : { at: HERE, laid })}
              mover={inPlane}
            />
          )}
        </div>
      )}
      <p className="note" id="turn-help">
        <span role="status">{sightWords(sight)}.</span> Drag or use the arrow keys to turn it, Shift to move the paper,
        two fingers or + and − for the size.
        {plane && ` What is chosen moves ${plane.title.toLowerCase()}: the plane seen most squarely.`}
      </p>
      <PartsTable parts={shown.parts} units={props.units} chosen={chosen} onChoose={choose} />
    </>
  );
}

/** A handle far off to the lower right, which is held at the corner of the picture. */
const inCorner = (laid: Framed): { readonly at: readonly [number, number]; readonly laid: Framed } => ({
  at: [1e6, -1e6],
  laid: { ...laid, height: laid.height - CORNER_ROOM },
});
