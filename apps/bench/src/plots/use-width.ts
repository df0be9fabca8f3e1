import { useRef, useState } from 'react';

/** Width of an element in px, as it changes; `usual` until it is first drawn. */
export function useWidth(usual: number): readonly [hold: (place: HTMLElement | null) => void, width: number] {
  const [width, setWidth] = useState(usual);
  const watch = useRef<ResizeObserver | null>(null);
  const hold = useRef((place: HTMLElement | null): void => {
    watch.current?.disconnect();
    if (!place) return;
    watch.current = new ResizeObserver(([entry]) => {
      if (entry && entry.contentRect.width > 0) setWidth(Math.round(entry.contentRect.width));
    });
    watch.current.observe(place);
  });
  return [hold.current, width];
}
