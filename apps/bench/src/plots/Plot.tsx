import { type JSX, memo, type ReactNode, useId, useMemo } from 'react';
import { digits } from '../numbers/shown.ts';
import { type Box, type Labelled, type Point, placeLabels } from './labels.ts';
import './plots.css';
import { type Axis, axisOver, placeOn } from './ticks.ts';
import { useWidth } from './use-width.ts';
import { Wide } from './Wide.tsx';

/** A curve over SI values. */
export interface Curve {
  readonly key: string;
  /** Words at the curve; empty where it is named elsewhere. */
  readonly text: string;
  readonly points: readonly Point[];
  readonly look: 'plain' | 'chosen' | 'load' | 'wanted' | 'limit' | 'reference' | 'drop';
  /** Part of the curve at which its words would rather stand. */
  readonly wish: number;
}

interface AxisAsked {
  readonly name: string;
  readonly unit: string;
  readonly size: number;
  readonly low: number;
  readonly high: number;
}

interface Props {
  readonly heading: string;
  /** What there is to see, for someone who does not see it. */
  readonly says: string;
  readonly x: AxisAsked;
  readonly y: AxisAsked;
  readonly curves: readonly Curve[];
  /** Where the slider stands: a line across the plot, along the other axis. */
  readonly cursor: { readonly across: 'x' | 'y'; readonly at: number } | null;
  /** Points at the cursor. */
  readonly dots: readonly Point[];
  /** The numbers at the cursor, in words. */
  readonly reading: ReactNode;
  /** The curves as a table, unfolded on request. */
  readonly table: ReactNode;
  /** Letters for gloves and sun. */
  readonly shop: boolean;
  readonly height: number;
}

interface Place {
  readonly x: Axis;
  readonly y: Axis;
  readonly frame: Box;
  readonly width: number;
  readonly height: number;
  readonly letter: number;
}

const USUAL_WIDTH = 640;
/** Px that one step between ticks takes at least. */
const STEP_X = 78;
const STEP_Y = 38;

const put = ({ x, y, frame }: Place, [atX, atY]: Point): Point => [
  frame.left + placeOn(x, atX) * (frame.right - frame.left),
  frame.bottom - placeOn(y, atY) * (frame.bottom - frame.top),
];

const path = (points: readonly Point[]): string =>
  points.map(([x, y], k) => `${k === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');

function placeOf(props: Props, width: number): Place {
  const { height, shop } = props;
  const letter = shop ? 15 : 13;
  const top = letter * 2;
  const bottom = height - letter * 2.9;
  const y = axisOver(props.y, props.y.low, props.y.high, (bottom - top) / STEP_Y);
  const widest = Math.max(...y.ticks.map((tick) => digits(tick, y.decimals).length));
  const left = 14 + widest * letter * 0.52;
  const right = width - 10;
  const x = axisOver(props.x, props.x.low, props.x.high, (right - left) / STEP_X);
  return { x, y, frame: { left, top, right, bottom }, width, height, letter };
}

/** Unit of an axis; a lone ring would be taken for a letter. */
const unitWord = (unit: string): string => (unit === '°' ? 'degrees' : unit);

/** Curves over axes, each named where it runs; the cursor of the slider upon them, its numbers in words, and all of it as a table. */
export function Plot(props: Props): JSX.Element {
  const { heading, says, curves, cursor, dots, reading, table, height, shop, x, y } = props;
  const id = useId();
  const [hold, width] = useWidth(USUAL_WIDTH);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the place hangs on these parts of the props alone
  const place = useMemo(() => placeOf(props, width), [x, y, height, shop, width]);
  const { frame } = place;
  const on = cursor && put(place, cursor.across === 'x' ? [cursor.at, 0] : [0, cursor.at]);
  const inside =
    on && on[0] >= frame.left - 1 && on[0] <= frame.right + 1 && on[1] >= frame.top - 1 && on[1] <= frame.bottom + 1;
  return (
    <section className="plot" aria-labelledby={`${id}-heading`}>
      <h3 id={`${id}-heading`}>{heading}</h3>
      <div ref={hold} className="plot-sheet">
        <svg role="img" aria-label={says} viewBox={`0 0 ${width} ${height}`} style={{ fontSize: place.letter }}>
          <Curves place={place} curves={curves} />
          {cursor && on && inside && (
            <path
              className="plot-cursor"
              d={
                cursor.across === 'x'
                  ? `M${on[0].toFixed(1)} ${frame.top}V${frame.bottom}`
                  : `M${frame.left} ${on[1].toFixed(1)}H${frame.right}`
              }
            />
          )}
          <Words place={place} curves={curves} />
          {dots.map((dot) => {
            const [cx, cy] = put(place, dot);
            return <circle key={dot.join(' ')} className="plot-dot" cx={cx.toFixed(1)} cy={cy.toFixed(1)} r="3.5" />;
          })}
        </svg>
      </div>
      {reading !== null && <p className="plot-reading">{reading}</p>}
      <details className="plot-table">
        <summary>
          As a table<span className="hidden-name">: {heading}</span>
        </summary>
        <Wide name={heading}>{table}</Wide>
      </details>
    </section>
  );
}

/** Axes and curves: they do not move with the slider. */
const Curves = memo(function Curves({ place, curves }: { place: Place; curves: readonly Curve[] }): JSX.Element {
  const { x, y, frame, width, height, letter } = place;
  const drawn = curves.map((curve) => ({ ...curve, px: curve.points.map((point) => put(place, point)) }));
  const base = frame.bottom + letter * 1.35;
  const clip = useId();
  return (
    <g>
      {y.ticks.map((tick) => {
        const at = put(place, [x.low * x.size, tick * y.size])[1].toFixed(1);
        return (
          <g key={tick}>
            <path className="plot-grid" d={`M${frame.left} ${at}H${frame.right}`} />
            <path className="plot-axis" d={`M${frame.left - 5} ${at}h5`} />
            <text className="plot-number" x={frame.left - 8} y={Number(at) + letter * 0.34} textAnchor="end">
              {digits(tick, y.decimals)}
            </text>
          </g>
        );
      })}
      {x.ticks.map((tick) => {
        const at = put(place, [tick * x.size, y.low * y.size])[0];
        return (
          <g key={tick}>
            <path className="plot-axis" d={`M${at.toFixed(1)} ${frame.bottom}v5`} />
            <text
              className="plot-number"
              x={at.toFixed(1)}
              y={base + 4}
              textAnchor={at > frame.right - 8 ? 'end' : 'middle'}
            >
              {digits(tick, x.decimals)}
            </text>
          </g>
        );
      })}
      <path className="plot-axis" d={`M${frame.left} ${frame.top}V${frame.bottom}H${frame.right}`} />
      <text className="plot-name" x="0" y={letter}>
        {y.name}
        {y.unit !== '' && <tspan className="plot-unit">{`, ${unitWord(y.unit)}`}</tspan>}
      </text>
      <text className="plot-name" x={width - 10} y={height - 4} textAnchor="end">
        {x.name}
        {x.unit !== '' && <tspan className="plot-unit">{`, ${unitWord(x.unit)}`}</tspan>}
      </text>
      <clipPath id={clip}>
        <rect x={frame.left} y={frame.top - 2} width={frame.right - frame.left} height={frame.bottom - frame.top + 4} />
      </clipPath>
      <g clipPath={`url(#${clip})`}>
        {drawn.map((curve) => (
          <path key={curve.key} className={`plot-curve ${curve.look}`} d={path(curve.px)} />
        ))}
      </g>
    </g>
  );
});

/** Words at the curves, over all that runs through the plot. */
const Words = memo(function Words({ place, curves }: { place: Place; curves: readonly Curve[] }): JSX.Element {
  const { frame, letter } = place;
  const placed = placeLabels(
    curves.map(({ key, text, points, wish }): Labelled => {
      return { key, text, points: points.map((point) => put(place, point)), wish };
    }),
    frame,
    [],
    letter,
  );
  return (
    <g>
      {placed.map(({ key, text, anchor, x, y }) => (
        <text
          key={key}
          className={`plot-word ${curves.find((curve) => curve.key === key)?.look ?? 'plain'}`}
          x={x.toFixed(1)}
          y={y.toFixed(1)}
          textAnchor={anchor}
        >
          {text}
        </text>
      ))}
    </g>
  );
});
