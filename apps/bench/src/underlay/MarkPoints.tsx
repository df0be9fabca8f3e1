import { type JSX, type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import type { PictureFile } from './use-picture-files.ts';

/** Where a point is marked, as parts of the picture's width and height. */
export interface Mark {
  readonly right: number;
  readonly down: number;
}

export type Which = 'first' | 'second';
export const WHICH: readonly Which[] = ['first', 'second'];
const NUMBER = { first: '1', second: '2' } as const;
const ZOOM_STEP = 1.6;
const MOST_ZOOM = 10;

const KEYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
const within = (x: number): number => Math.min(1, Math.max(0, x));

interface Props {
  readonly name: string;
  readonly file: Extract<PictureFile, { readonly ok: true }>;
  readonly marks: Readonly<Record<Which, Mark | null>>;
  /** The point that the next press marks. */
  readonly next: Which;
  readonly onMark: (which: Which, mark: Mark) => void;
}

/** The picture with its two points: a press marks one, which can then be dragged, or moved by arrow keys a pixel at a time. */
export function MarkPoints({ name, file, marks, next, onMark }: Props): JSX.Element {
  const [zoom, setZoom] = useState(1);
  const picture = useRef<HTMLDivElement>(null);

  const at = (event: { readonly clientX: number; readonly clientY: number }): Mark | null => {
    const box = picture.current?.getBoundingClientRect();
    return box && box.width > 0
      ? { right: within((event.clientX - box.left) / box.width), down: within((event.clientY - box.top) / box.height) }
      : null;
  };
  const onKeyDown = (which: Which, mark: Mark, event: KeyboardEvent): void => {
    const way = KEYS[event.key];
    if (!way || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    event.stopPropagation();
    const step = event.shiftKey ? 20 : 1;
    onMark(which, {
      right: within(mark.right + (way[0] * step) / file.width),
      down: within(mark.down + (way[1] * step) / file.height),
    });
  };
  const onPointerMove = (which: Which, event: PointerEvent<HTMLButtonElement>): void => {
    if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
    const mark = at(event);
    if (mark) onMark(which, mark);
  };

  return (
    <div className="mark-points">
      <div className="zoom-buttons">
        <button type="button" className="button" disabled={zoom >= MOST_ZOOM} onClick={() => setZoom(zoom * ZOOM_STEP)}>
          Larger
        </button>
        <button
          type="button"
          className="button"
          disabled={zoom <= 1}
          onClick={() => setZoom(Math.max(1, zoom / ZOOM_STEP))}
        >
          Smaller
        </button>
        {WHICH.filter((which) => marks[which] === null).map((which) => (
          <button key={which} type="button" className="button" onClick={() => onMark(which, { right: 0.5, down: 0.5 })}>
            Put point {NUMBER[which]} in the middle
          </button>
        ))}
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: an enlarged picture is scrolled with the arrow keys */}
      <section className="mark-frame" tabIndex={0} aria-label={`${name}, scrolls when enlarged`}>
        {/* biome-ignore lint/a11y/useKeyWithClickEvents: keys put a point in the middle and move it from there */}
        {/* biome-ignore lint/a11y/noStaticElementInteractions: the points themselves are the buttons */}
        <div
          ref={picture}
          className="mark-picture"
          style={{ width: `${zoom * 100}%`, aspectRatio: `${file.width} / ${file.height}` }}
          onClick={(event) => {
            const mark = event.target instanceof HTMLButtonElement ? null : at(event);
            if (mark) onMark(next, mark);
          }}
        >
          <img src={file.url} alt={name} draggable={false} />
          {WHICH.map((which) => {
            const mark = marks[which];
            return (
              mark && (
                <button
                  key={which}
                  type="button"
                  className="mark-point"
                  style={{ left: `${mark.right * 100}%`, top: `${mark.down * 100}%` }}
                  aria-label={`Point ${NUMBER[which]}, ${Math.round(mark.right * file.width)} pixels from the left edge, ${Math.round(mark.down * file.height)} from the upper edge. Arrow keys move it.`}
                  onKeyDown={(event) => onKeyDown(which, mark, event)}
                  onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
                  onPointerMove={(event) => onPointerMove(which, event)}
                >
                  <svg viewBox="-22 -22 44 44" width="44" height="44" aria-hidden="true">
                    <path d="M-18 0H-3M3 0H18M0 -18V-3M0 3V18" />
                    <circle r="9" />
                    <text x="12" y="-10">
                      {NUMBER[which]}
                    </text>
                  </svg>
                </button>
              )
            );
          })}
        </div>
      </section>
    </div>
  );
}
