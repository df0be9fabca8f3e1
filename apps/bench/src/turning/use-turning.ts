import { plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import { type KeyboardEvent, type PointerEvent, type RefObject, useEffect, useRef, useState } from 'react';
import { type Axes, axesOf, FIRST_SIGHT, type Sight, turnedBy } from './sight.ts';

/** A drag of so many px turns by a right angle. */
const QUARTER_TURN = 320;
const TURN_PER_PX = Math.PI / 2 / QUARTER_TURN;
const KEY_TURN = (5 * Math.PI) / 180;
const KEY_PAN = 30;
const KEY_ZOOM = 1.25;
/** A turn of the wheel by so many px doubles the size. */
const WHEEL_DOUBLES = 300;
const [LEAST, MOST] = [0.5, 12];
/** A press that goes further than this is a drag, px. */
const DRAG_BEGINS = 4;

export interface Turning {
  readonly sight: Sight;
  readonly axes: Axes;
  /** mm for a px. */
  readonly scale: number;
  /** From the middle of the build, mm in vehicle axes. */
  readonly off: Vec3;
  readonly lookFrom: (sight: Sight) => void;
  readonly enlarge: (factor: number) => void;
  /** All of it in the frame again, as it is turned. */
  readonly whole: () => void;
}

interface Given {
  readonly frame: RefObject<HTMLElement | null>;
  /** mm for a px at which all of it is seen, looked at from somewhere. */
  readonly fit: (axes: Axes) => number;
  /** A press on the picture: true keeps it, so that its drag moves something instead of turning. */
  readonly onPress: (x: number, y: number, touch: boolean) => boolean;
  readonly onDrag: (right: number, down: number, free: boolean) => void;
  readonly onDrop: () => void;
  readonly onCancel: () => void;
  /** A press that turned nothing. */
  readonly onTap: (x: number, y: number) => void;
}

interface Press {
  readonly x: number;
  readonly y: number;
  readonly kept: boolean;
  far: boolean;
}

const clamped = (zoom: number): number => Math.min(MOST, Math.max(LEAST, zoom));

/**
 * Turning by mouse, finger and arrow keys; two fingers or Ctrl with the wheel enlarge, two fingers or Shift move the paper. A plain wheel scrolls
 * the page.
 */
export function useTurning(given: Given): Turning & {
  readonly handlers: {
    readonly onPointerDown: (event: PointerEvent<HTMLElement>) => void;
    readonly onPointerMove: (event: PointerEvent<HTMLElement>) => void;
    readonly onPointerUp: (event: PointerEvent<HTMLElement>) => void;
    readonly onPointerCancel: (event: PointerEvent<HTMLElement>) => void;
    readonly onKeyDown: (event: KeyboardEvent<HTMLElement>) => void;
  };
} {
  const { frame, fit } = given;
  const [sight, setSight] = useState<Sight>(FIRST_SIGHT);
  // What is turned by hand keeps its size; a look from a button fits the frame again.
  const [fitted, setFitted] = useState<Sight>(FIRST_SIGHT);
  const [zoom, setZoom] = useState(1);
  const [off, setOff] = useState<Vec3>([0, 0, 0]);
  const fingers = useRef(new Map<number, { x: number; y: number }>());
  const press = useRef<Press | null>(null);
  const axes = axesOf(sight);
  const scale = fit(axesOf(fitted)) / zoom;

  const pan = (right: number, down: number): void =>
    setOff((now) => plus(now, plus(times(-right * scale, axes.right), times(down * scale, axes.up))));
  const turn = (right: number, down: number): void =>
    setSight((now) => turnedBy(now, right * TURN_PER_PX, down * TURN_PER_PX));
  const enlarge = (factor: number): void => setZoom((now) => clamped(now * factor));

  const whole = (seen: Sight): void => {
    setFitted(seen);
    setZoom(1);
    setOff([0, 0, 0]);
  };

  useEffect(() => {
    const box = frame.current;
    if (!box) return;
    const onWheel = (event: WheelEvent): void => {
      if (!event.ctrlKey) return;
      event.preventDefault();
      setZoom((now) => clamped(now * 2 ** (-event.deltaY / WHEEL_DOUBLES)));
    };
    box.addEventListener('wheel', onWheel, { passive: false });
    return () => box.removeEventListener('wheel', onWheel);
  }, [frame]);

  const placeIn = (event: PointerEvent<HTMLElement>): { x: number; y: number } => {
    const box = event.currentTarget.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };
  const onPointerDown = (event: PointerEvent<HTMLElement>): void => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const { x, y } = placeIn(event);
    fingers.current.set(event.pointerId, { x, y });
    if (fingers.current.size > 1) {
      // A second finger ends what the first one began.
      if (press.current?.kept) given.onCancel();
      press.current = null;
      return;
    }
    const kept = !event.shiftKey && given.onPress(x, y, event.pointerType === 'touch');
    press.current = { x, y, kept, far: false };
  };
  const onPointerMove = (event: PointerEvent<HTMLElement>): void => {
    const before = fingers.current.get(event.pointerId);
    if (!before) return;
    const now = placeIn(event);
    const [right, down] = [now.x - before.x, now.y - before.y];
    const other = [...fingers.current].find(([id]) => id !== event.pointerId)?.[1];
    fingers.current.set(event.pointerId, now);
    if (other) {
      const apart = (at: { x: number; y: number }): number => Math.hypot(at.x - other.x, at.y - other.y);
      if (apart(before) > 0) enlarge(apart(now) / apart(before));
      // Each finger brings half of what both move together.
      pan(right / 2, down / 2);
      return;
    }
    const { current } = press;
    if (!current) return;
    if (!current.far && Math.hypot(now.x - current.x, now.y - current.y) < DRAG_BEGINS) return;
    const started = current.far;
    current.far = true;
    if (current.kept) given.onDrag(now.x - current.x, now.y - current.y, event.altKey);
    else {
      // The way to the first turn counts too.
      const [dx, dy] = started ? [right, down] : [now.x - current.x, now.y - current.y];
      if (event.shiftKey) pan(dx, dy);
      else turn(dx, dy);
    }
  };
  const onPointerUp = (event: PointerEvent<HTMLElement>): void => {
    fingers.current.delete(event.pointerId);
    const { current } = press;
    press.current = null;
    if (!current) return;
    if (!current.far) given.onTap(current.x, current.y);
    else if (current.kept) given.onDrop();
  };
  const onPointerCancel = (event: PointerEvent<HTMLElement>): void => {
    fingers.current.delete(event.pointerId);
    if (press.current?.kept) given.onCancel();
    press.current = null;
  };
  const onKeyDown = (event: KeyboardEvent<HTMLElement>): void => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.target !== event.currentTarget) return;
    const way = WAYS[event.key];
    if (way) {
      if (event.shiftKey) pan(way[0] * KEY_PAN, way[1] * KEY_PAN);
      else setSight((now) => turnedBy(now, way[0] * KEY_TURN, way[1] * KEY_TURN));
    } else if (event.key === '+' || event.key === '=') enlarge(KEY_ZOOM);
    else if (event.key === '-') enlarge(1 / KEY_ZOOM);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };

  return {
    sight,
    axes,
    scale,
    off,
    lookFrom: (next) => {
      setSight(next);
      whole(next);
    },
    enlarge,
    whole: () => whole(sight),
    handlers: { onPointerDown, onPointerMove, onPointerUp, onPointerCancel, onKeyDown },
  };
}

/** Arrow keys as ways across the picture: right, down. */
const WAYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
