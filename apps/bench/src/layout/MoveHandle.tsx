import { stepLike } from '@oddwheel/build/placing/length-text';
import type { Placed } from '@oddwheel/build/placing/types';
import { dot, plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { View } from '@oddwheel/sheets/drawing';
import { type JSX, type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { placeOf } from './anchor.ts';
import type { Framed } from './frame.ts';
import { dragTo } from './pointer-move.ts';
import type { Mover } from './use-move.ts';

interface Props {
  readonly placed: Placed;
  readonly view: Pick<View, 'title' | 'right' | 'up'>;
  /** Where the view's origin stands on the sheet. */
  readonly at: readonly [number, number];
  readonly laid: Framed;
  readonly mover: Mover;
}

/** The handle stands clear of what it moves by so much, px. */
const CLEAR = 14;

const KEYS: Readonly<Record<string, readonly [right: number, up: number]>> = {
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** What a key moves is counted by the length along which it mostly goes. */
function textAlong({ points, station }: Placed, way: Vec3): string {
  if (station) return station.coordinate.text;
  const axis = [0, 1, 2].reduce((best, k) => (Math.abs(way[k] ?? 0) > Math.abs(way[best] ?? 0) ? k : best), 0);
  return points[0]?.coordinates[axis]?.text ?? 'mm';
}

/** A handle of a fingertip's size: a finger that scrolls never moves a part, and keys have something to stand on. */
export function MoveHandle({ placed, view, at, laid, mover }: Props): JSX.Element {
  const press = useRef<{ readonly x: number; readonly y: number } | null>(null);
  const [x, y] = placeOf(placed, view, mover.move?.by ?? [0, 0, 0]);
  const left = (x + at[0] - laid.bounds.left) / laid.scale + CLEAR;
  const top = (laid.bounds.top - y - at[1]) / laid.scale + CLEAR;

  const onPointerDown = (event: PointerEvent<HTMLButtonElement>): void => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    press.current = { x: event.clientX, y: event.clientY };
    mover.begin(placed, view);
  };
  const onPointerMove = (event: PointerEvent<HTMLButtonElement>): void => {
    const { current } = press;
    if (!current) return;
    mover.wish(dragTo(view, event.clientX - current.x, event.clientY - current.y, laid.scale, event.altKey));
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Enter' && mover.move) {
      event.preventDefault();
      mover.finish();
      return;
    }
    const key = KEYS[event.key];
    if (!key || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    event.stopPropagation();
    const way = plus(times(key[0], view.right), times(key[1], view.up));
    const step = stepLike(textAlong(placed, way), event.shiftKey ? 'coarse' : event.altKey ? 'fine' : 'plain');
    if (!mover.move) mover.begin(placed, view);
    mover.step(times(step, way));
  };
  const lengthways = placed.station && Math.abs(dot(placed.station.along, view.right)) < 0.5 ? 'up and down' : null;
  return (
    <button
      type="button"
      className="move-handle"
      style={{ left: Math.min(left, laid.width - 80), top: Math.min(top, laid.height - 46) }}
      aria-label={`Move ${placed.name}, ${view.title.toLowerCase()}${lengthways ? `, ${lengthways}` : ''}`}
      aria-describedby="move-help"
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={() => {
        if (press.current) mover.finish();
        press.current = null;
      }}
      onPointerCancel={() => {
        if (press.current) mover.cancel();
        press.current = null;
      }}
      onKeyDown={onKeyDown}
      onBlur={() => {
        if (!press.current && mover.move) mover.finish();
      }}
    >
      Move
    </button>
  );
}
