import { type RefObject, useEffect, useLayoutEffect, useRef, useState } from 'react';
import { LEAST_ZOOM, MOST_ZOOM } from './DrawingTools.tsx';

/** A turn of the wheel by so many px doubles the size. */
const WHEEL_DOUBLES = 300;

interface Anchor {
  /** Place in the frame, px. */
  readonly x: number;
  readonly y: number;
  /** The same place as a part of the drawing. */
  readonly right: number;
  readonly down: number;
}

const clamped = (zoom: number): number => Math.min(MOST_ZOOM, Math.max(LEAST_ZOOM, zoom));

/** Scrolls a place of the drawing to its place in the frame. */
function scrollTo(box: HTMLElement, { x, y, right, down }: Anchor): void {
  box.scrollLeft = right * box.scrollWidth - x;
  box.scrollTop = down * box.scrollHeight - y;
}

/**
 * Enlarging a drawing in the frame that scrolls it: by two fingers, by the wheel with Ctrl held (which is what a touchpad's pinch sends), or by
 * buttons. A plain wheel and one finger scroll, so that the page is never caught.
 */
export function useZoom(frame: RefObject<HTMLElement | null>): {
  readonly zoom: number;
  readonly setZoom: (zoom: number) => void;
} {
  const [zoom, setZoom] = useState(1);
  const anchor = useRef<Anchor | null>(null);
  const size = useRef(1);
  size.current = zoom;

  useEffect(() => {
    const box = frame.current;
    if (!box) return;
    /** A place on the screen, and what of the drawing is there now. */
    const placeOf = (clientX: number, clientY: number): Anchor => {
      const rect = box.getBoundingClientRect();
      const [x, y] = [clientX - rect.left, clientY - rect.top];
      return { x, y, right: (box.scrollLeft + x) / box.scrollWidth, down: (box.scrollTop + y) / box.scrollHeight };
    };
    const onWheel = (event: WheelEvent): void => {
      if (!event.ctrlKey) return;
      event.preventDefault();
      anchor.current = placeOf(event.clientX, event.clientY);
      setZoom(clamped(size.current * 2 ** (-event.deltaY / WHEEL_DOUBLES)));
    };
    let pinch: { readonly apart: number; readonly zoom: number; readonly start: Anchor } | null = null;
    const apart = ({ touches: [a, b] }: TouchEvent): number =>
      a && b ? Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY) : 0;
    const onTouchStart = (event: TouchEvent): void => {
      const [a, b] = event.touches;
      pinch = null;
      if (!a || !b) return;
      event.preventDefault();
      const start = placeOf((a.clientX + b.clientX) / 2, (a.clientY + b.clientY) / 2);
      pinch = { apart: apart(event), zoom: size.current, start };
    };
    const onTouchMove = (event: TouchEvent): void => {
      const [a, b] = event.touches;
      if (!pinch || !a || !b || pinch.apart === 0) return;
      event.preventDefault();
      // What was between the fingers stays between them, so that two fingers pan as well.
      const { x, y } = placeOf((a.clientX + b.clientX) / 2, (a.clientY + b.clientY) / 2);
      const at: Anchor = { ...pinch.start, x, y };
      const next = clamped((pinch.zoom * apart(event)) / pinch.apart);
      if (next === size.current) scrollTo(box, at);
      else {
        anchor.current = at;
        setZoom(next);
      }
    };
    const onTouchEnd = (): void => {
      pinch = null;
    };
    const active = { passive: false } as const;
    box.addEventListener('wheel', onWheel, active);
    box.addEventListener('touchstart', onTouchStart, active);
    box.addEventListener('touchmove', onTouchMove, active);
    box.addEventListener('touchend', onTouchEnd);
    return () => {
      box.removeEventListener('wheel', onWheel);
      box.removeEventListener('touchstart', onTouchStart);
      box.removeEventListener('touchmove', onTouchMove);
      box.removeEventListener('touchend', onTouchEnd);
    };
  }, [frame]);

  // What was under the fingers stays there.
  // biome-ignore lint/correctness/useExhaustiveDependencies: it follows the size
  useLayoutEffect(() => {
    const [box, at] = [frame.current, anchor.current];
    if (!box || !at) return;
    scrollTo(box, at);
    anchor.current = null;
  }, [zoom]);

  return {
    zoom,
    setZoom: (next) => {
      const box = frame.current;
      if (box)
        anchor.current = {
          x: box.clientWidth / 2,
          y: box.clientHeight / 2,
          right: (box.scrollLeft + box.clientWidth / 2) / box.scrollWidth,
          down: (box.scrollTop + box.clientHeight / 2) / box.scrollHeight,
        };
      setZoom(clamped(next));
    },
  };
}
