import { type JSX, type KeyboardEvent, type PointerEvent, useEffect, useId, useMemo, useRef, useState } from 'react';
import { digits } from '../numbers/shown.ts';
import { CurveLines, symbolOf } from './CurveLines.tsx';
import { between, curveInSi, frameFor, nearestRow, type Row, rowAt, STEPS, sizesOf, xOf, yOf } from './curve-scale.ts';
import type { Curve } from './sections.ts';

interface Props {
  readonly curve: Curve;
  /** Points clicked before there is a curve: they stand by themselves until there are two. */
  readonly loose: boolean;
  /** SI value and symbol of the unit in which power is shown. */
  readonly power: { readonly size: number; readonly symbol: string };
  readonly locked: boolean;
  readonly chosen: number | null;
  readonly onChoose: (row: number | null) => void;
  readonly onAdd: (row: Row) => void;
  readonly onMove: (index: number, row: Row) => Promise<boolean>;
  readonly onRemove: (index: number) => void;
}

/** A point that is being moved: where it stands now, and whether a pointer holds it. */
interface Moving {
  readonly index: number;
  readonly row: Row;
  readonly over: readonly Row[];
}

const REACH = 24;
const STILL = 5;
const COARSE = 10;

const useWidth = (): readonly [(place: HTMLElement | null) => void, number] => {
  const [width, setWidth] = useState(640);
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
};

/**
 * The torque curve to scale, power beside it. A click between the points adds one, a drag or the arrow keys move one, Delete takes it out.
 * A move is shown at once and kept on release, with Enter, or when the point is left; Escape takes it back.
 */
export function CurvePlot(props: Props): JSX.Element {
  const { curve, loose, power, locked, chosen, onChoose, onAdd, onMove, onRemove } = props;
  const [place, width] = useWidth();
  const [moving, setShown] = useState<Moving | null>(null);
  // A release may come before the last move is drawn: what counts is the move itself.
  const latest = useRef<Moving | null>(null);
  const setMoving = (next: Moving | null): void => {
    latest.current = next;
    setShown(next);
  };
  const held = useRef<{ readonly index: number | null; readonly x: number; readonly y: number; still: boolean } | null>(
    null,
  );
  const drawing = useRef<SVGSVGElement>(null);
  const hint = useId();
  // A move stays in view until the rows that it was made on are replaced by the model's answer.
  const live = moving !== null && moving.over === curve.rows ? moving : null;
  const rows = useMemo(
    () => (live ? curve.rows.map((row, index) => (index === live.index ? live.row : row)) : curve.rows),
    [curve.rows, live],
  );
  const shown = useMemo(() => ({ ...curve, rows }), [curve, rows]);
  const known = useMemo(() => (loose ? null : curveInSi(shown)), [shown, loose]);
  const height = width < 520 ? 300 : 340;
  // Axes stand still while a pointer drags, so that the point stays under the finger.
  const frame = useMemo(() => {
    const settled = loose ? null : curveInSi(curve);
    return frameFor(width, height, curve.rows, (settled?.peakPower ?? 0) / power.size);
  }, [width, height, curve, loose, power.size]);
  const [speedStep, torqueStep] = [STEPS[curve.speedUnit] ?? 1, STEPS[curve.torqueUnit] ?? 0.1];

  useEffect(() => {
    if (chosen !== null && chosen >= curve.rows.length) onChoose(null);
  }, [chosen, curve.rows.length, onChoose]);

  // A finger on a point drags it; anywhere else it scrolls the page. Parts of a drawing cannot say so in their style.
  useEffect(() => {
    const place = drawing.current;
    if (!place || locked) return;
    const onTouchStart = (event: TouchEvent): void => {
      const [finger] = event.touches;
      const box = place.getBoundingClientRect();
      if (event.touches.length === 1 && finger && event.cancelable)
        if (nearestRow(frame, rows, finger.clientX - box.left, finger.clientY - box.top, REACH) !== null)
          event.preventDefault();
    };
    place.addEventListener('touchstart', onTouchStart, { passive: false });
    return () => place.removeEventListener('touchstart', onTouchStart);
  }, [frame, rows, locked]);

  const at = (event: PointerEvent): readonly [x: number, y: number] => {
    const box = drawing.current?.getBoundingClientRect();
    return box ? [event.clientX - box.left, event.clientY - box.top] : [0, 0];
  };
  const shift = (index: number, wanted: Row): void =>
    setMoving({ index, row: between(curve.rows, index, wanted, speedStep), over: curve.rows });
  const keep = async (): Promise<void> => {
    const now = latest.current;
    latest.current = null;
    if (now?.over !== curve.rows) return;
    const [from, to] = [curve.rows[now.index], now.row];
    const same = from && from[0] === to[0] && from[1] === to[1];
    if (same || !(await onMove(now.index, to))) setMoving(null);
  };

  const onPointerDown = (event: PointerEvent): void => {
    if (locked || event.button !== 0) return;
    const [x, y] = at(event);
    const index = nearestRow(frame, rows, x, y, REACH);
    held.current = { index, x, y, still: true };
    if (index === null) return;
    event.preventDefault();
    onChoose(index);
    drawing.current?.setPointerCapture(event.pointerId);
    drawing.current?.querySelector<SVGGElement>(`[data-point="${index}"]`)?.focus();
  };
  const onPointerMove = (event: PointerEvent): void => {
    const now = held.current;
    if (!now) return;
    const [x, y] = at(event);
    if (Math.hypot(x - now.x, y - now.y) > STILL) now.still = false;
    const row = now.index === null || now.still ? null : rowAt(frame, curve, x, y);
    if (row && now.index !== null) shift(now.index, row);
  };
  const onPointerUp = (event: PointerEvent): void => {
    const now = held.current;
    held.current = null;
    if (!now) return;
    if (now.index !== null) void keep();
    else if (now.still) {
      const row = rowAt(frame, curve, ...at(event));
      if (row) onAdd(row);
    }
  };
  const onPointerCancel = (): void => {
    held.current = null;
    setMoving(null);
  };

  const onKeyDown = (event: KeyboardEvent, index: number): void => {
    const by = event.shiftKey ? COARSE : 1;
    const [speed, torque] = rows[index] ?? [0, 0];
    const exact = (value: number): number => Number(value.toPrecision(12));
    const moves: Readonly<Record<string, Row>> = {
      ArrowLeft: [exact(speed - by * speedStep), torque],
      ArrowRight: [exact(speed + by * speedStep), torque],
      ArrowUp: [speed, exact(torque + by * torqueStep)],
      ArrowDown: [speed, exact(torque - by * torqueStep)],
    };
    const move = moves[event.key];
    if (locked || event.altKey || event.ctrlKey || event.metaKey) return;
    if (move) shift(index, move);
    else if (event.key === 'Enter') void keep();
    else if (event.key === 'Escape' && live) setMoving(null);
    else if (event.key === 'Delete' || event.key === 'Backspace') onRemove(index);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };

  const [speedSize, torqueSize] = sizesOf(curve);
  return (
    <div className="curve-plot" ref={place}>
      {/* biome-ignore lint/a11y/useSemanticElements: a drawing with points to move is no set of form fields */}
      <svg
        ref={drawing}
        role="group"
        aria-label="Torque curve at full throttle"
        aria-describedby={hint}
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        data-locked={locked ? 'yes' : 'no'}
        onPointerDown={onPointerDown}
        onPointerMove={onPointerMove}
        onPointerUp={onPointerUp}
        onPointerCancel={onPointerCancel}
      >
        <CurveLines
          frame={frame}
          curve={shown}
          known={known}
          power={power}
          speedSize={speedSize}
          torqueSize={torqueSize}
        />
        {rows.map(([speed, torque], index) => (
          // biome-ignore lint/a11y/useSemanticElements: a button of HTML cannot stand within a drawing
          <g
            // biome-ignore lint/suspicious/noArrayIndexKey: a point is its place in the curve
            key={index}
            role="button"
            tabIndex={0}
            className="curve-point"
            data-point={index}
            data-chosen={chosen === index ? 'yes' : 'no'}
            aria-label={`Point ${index + 1} of ${rows.length}: ${digits(torque, torque % 1 === 0 ? 0 : 1)} ${symbolOf(curve.torqueUnit)} at ${speed} ${curve.speedUnit}`}
            transform={`translate(${xOf(frame, speed).toFixed(1)} ${yOf(frame, torque / frame.mostTorque).toFixed(1)})`}
            onKeyDown={(event) => onKeyDown(event, index)}
            onFocus={() => onChoose(index)}
            onBlur={() => {
              if (held.current === null) void keep();
            }}
          >
            <circle className="curve-reach" r={22} />
            <circle className="curve-dot" r={loose ? 4.5 : 4} />
          </g>
        ))}
      </svg>
      <p id={hint} className="note">
        {loose ? 'Click two places or more to begin a curve.' : 'Click to add a point, drag to move it.'} Keys: arrows
        move a point, Shift ten steps, Enter keeps, Escape takes back, Delete takes out.
      </p>
    </div>
  );
}
