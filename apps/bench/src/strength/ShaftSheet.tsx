import { type JSX, memo, useMemo } from 'react';
import { digits, show, unitOf, unitSize } from '../numbers/shown.ts';
import '../plots/plots.css';
import { type Labelled, type Point, placeLabels } from '../plots/labels.ts';
import { axisOver } from '../plots/ticks.ts';
import { useWidth } from '../plots/use-width.ts';
import type { DrawnSeat } from '../worker/shaft-api.ts';
import type { Along } from './along.ts';
import { ReserveRow } from './ReserveRow.tsx';
import { outlineHeight, ShaftOutline } from './ShaftOutline.tsx';
import { type AlongRow, governingPlace, greatestAt, type KnownLine, rowsOf } from './shaft-rows.ts';

type Units = Readonly<Record<string, string>>;

interface Props {
  readonly line: KnownLine;
  readonly seats: readonly DrawnSeat[];
  readonly units: Units;
  readonly shop: boolean;
  /** How thin it could be is drawn on the outline. */
  readonly thin: boolean;
  /** Station that is read, or null. */
  readonly reading: number | null;
  readonly onRead: (station: number) => void;
}

const USUAL_WIDTH = 760;
const LEAST_WIDTH = 300;
const STEP_Y = 30;
const LOOKS = { first: 'reference', second: 'load', both: 'plain' } as const;
const ALONE = { first: 'plain', second: 'load', both: 'plain' } as const;

const path = (points: readonly Point[]): string =>
  points.map(([x, y], k) => `${k === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');

const certain = (value: number) => ({ value, lo: value, hi: value });

/** Everything that goes on in a shaft, drawn to one scale of stations: its outline, then one plot under the other. */
export const ShaftSheet = memo(function ShaftSheet(props: Props): JSX.Element {
  const { line, seats, units, shop, thin, reading, onRead } = props;
  const [hold, width] = useWidth(USUAL_WIDTH);
  const letter = shop ? 15 : 13;
  const rows = useMemo(() => rowsOf(line), [line]);
  const governs = useMemo(() => governingPlace(line), [line]);
  const along = useMemo((): Along => {
    const wide = Math.max(LEAST_WIDTH, width);
    const [first, last] = [line.points[0]?.station ?? 0, line.points.at(-1)?.station ?? 1];
    const [left, right] = [letter * 3.6, wide - 14];
    const scale = (right - left) / (last - first);
    return { left, right, letter, scale, x: (station) => left + (station - first) * scale };
  }, [line, width, letter]);
  const outline = useMemo(() => outlineHeight(line, seats, along, thin), [line, seats, along, thin]);
  const rowHeight = letter * 8;
  const tops = [...rows.map((_, k) => outline + k * rowHeight), outline + rows.length * rowHeight];
  const end = (tops.at(-1) ?? 0) + rowHeight;
  const height = end + letter * 3;
  const stationUnit = unitOf('length', units);
  const stations = axisOver(
    { name: 'station', unit: stationUnit, size: unitSize('length', units) },
    line.points[0]?.station ?? 0,
    line.points.at(-1)?.station ?? 1,
    (along.right - along.left) / 70,
  );
  const ticks = stations.ticks.filter((tick) => {
    const at = along.x(tick * stations.size);
    return at >= along.left - 0.5 && at <= along.right + 0.5;
  });
  const across = (station: number): string => `M${along.x(station).toFixed(1)} ${letter * 1.6}V${end}`;
  const read = (clientX: number, box: DOMRect): void => {
    const px = ((clientX - box.left) / box.width) * Math.max(LEAST_WIDTH, width);
    const part = (Math.min(along.right, Math.max(along.left, px)) - along.left) / along.scale;
    onRead((line.points[0]?.station ?? 0) + part);
  };
  return (
    <div ref={hold} className="plot-sheet shaft-sheet">
      <svg
        role="img"
        aria-label={says(line, rows, units)}
        viewBox={`0 0 ${Math.max(LEAST_WIDTH, width)} ${height.toFixed(0)}`}
        style={{ fontSize: letter }}
        onPointerDown={(event) => read(event.clientX, event.currentTarget.getBoundingClientRect())}
        onPointerMove={(event) => {
          if (event.buttons > 0) read(event.clientX, event.currentTarget.getBoundingClientRect());
        }}
      >
        {governs && <path className="plot-cursor" d={across(governs.station)} />}
        {reading !== null && <path className="shaft-reading" d={across(reading)} />}
        <ShaftOutline line={line} seats={seats} along={along} units={units} thin={thin} />
        {rows.map((row, k) => (
          <Row
            key={row.key}
            row={row}
            along={along}
            top={tops[k] ?? 0}
            height={rowHeight}
            governs={governs?.station ?? null}
            units={units}
          />
        ))}
        <ReserveRow line={line} along={along} top={tops.at(-1) ?? 0} height={rowHeight} governs={governs} />
        <path className="plot-axis" d={`M${along.left} ${end + 4}H${along.right}`} />
        {ticks.map((tick) => (
          <g key={tick}>
            <path className="plot-axis" d={`M${along.x(tick * stations.size).toFixed(1)} ${end + 4}v5`} />
            <text
              className="plot-number"
              x={along.x(tick * stations.size).toFixed(1)}
              y={end + 10 + letter}
              textAnchor="middle"
            >
              {digits(tick, stations.decimals)}
            </text>
          </g>
        ))}
        <text className="plot-name" x="0" y={height - 2}>
          Station<tspan className="plot-unit">, {stationUnit}</tspan>
        </text>
      </svg>
    </div>
  );
});

/** What there is to see, for someone who does not see it. */
function says(line: KnownLine, rows: readonly AlongRow[], units: Units): string {
  const most = rows.map(({ name, use, curves }) => {
    const told = curves.map(({ points, peak }) => points[peak]?.[1] ?? 0);
    const value = told.reduce((best, one) => (Math.abs(one) > Math.abs(best) ? one : best), 0);
    const { number, unit } = show(certain(value), use, units, 3);
    return `${name.toLowerCase()} ${number} ${unit}`;
  });
  return `${line.name} along its length, ${line.caseName}. Greatest values: ${most.join(', ')}. The numbers stand in the tables below.`;
}

interface RowProps {
  readonly row: AlongRow;
  readonly along: Along;
  readonly top: number;
  readonly height: number;
  readonly governs: number | null;
  readonly units: Units;
}

/** One plot: its name and unit, zero line, curves with their greatest values at them, and the value at the governing section. */
const Row = memo(function Row({ row, along, top, height, governs, units }: RowProps): JSX.Element {
  const { name, use, curves } = row;
  const { left, right, letter } = along;
  const values = curves.flatMap(({ points }) => points.map(([, value]) => value));
  const size = unitSize(use, units);
  const frame = { left, right, top: top + letter * 2.1, bottom: top + height - letter * 0.6 };
  const axis = axisOver(
    { name, unit: unitOf(use, units), size },
    Math.min(0, ...values),
    Math.max(0, ...values),
    (frame.bottom - frame.top) / STEP_Y,
  );
  const span = axis.high - axis.low;
  const y = (si: number): number => frame.bottom - ((si / size - axis.low) / span) * (frame.bottom - frame.top);
  const looks = curves.some(({ key }) => key === 'both') ? LOOKS : ALONE;
  const drawn = curves.map((curve) => ({
    ...curve,
    px: curve.points.map(([station, value]): Point => [along.x(station), y(value)]),
  }));
  const number = (value: number): string => show(certain(value), use, units, 3).number;
  const told = drawn.at(-1);
  const here = governs === null || !told || curves.length === 2 ? null : greatestAt(told.points, governs);
  const dot: Point | null = here === null || governs === null ? null : [along.x(governs), y(here)];
  const peakPx = told?.px[told.peak];
  // At the peak itself the curve's own words give the number.
  const apart = dot && peakPx && Math.hypot(dot[0] - peakPx[0], dot[1] - peakPx[1]) > letter;
  const wanted: Labelled[] = [
    ...(dot && apart && here !== null ? [{ key: 'here', text: number(here), points: [dot], wish: 0 }] : []),
    ...[...drawn].reverse().map(({ key, text, px, points, peak }) => {
      const most = number(points[peak]?.[1] ?? 0);
      return { key, text: `${text} ${most}`.trim(), points: px, wish: peak / Math.max(1, points.length - 1) };
    }),
    ...(governs === null
      ? []
      : [
          {
            key: 'line',
            text: '',
            wish: 0,
            points: [
              [along.x(governs), frame.top],
              [along.x(governs), frame.bottom],
            ] as const,
          },
        ]),
  ];
  const words = placeLabels(
    wanted,
    { ...frame, top: frame.top - letter, bottom: frame.bottom + letter * 0.5 },
    [],
    letter,
  );
  const metre = (frame.bottom - frame.top) / (span * size) / along.scale;
  return (
    <g>
      <text className="plot-name" x="0" y={top + letter}>
        <tspan className="row-name">{name}</tspan>
        <tspan className="plot-unit">
          , {axis.unit === '°' ? 'degrees' : axis.unit}
          {row.key === 'deflection'
            ? `, drawn ${digits(Number(metre.toPrecision(2)), 0)} times as large as the length`
            : ''}
        </tspan>
      </text>
      {axis.ticks.map((tick) => (
        <g key={tick}>
          <path
            className={tick === 0 ? 'plot-axis' : 'plot-grid'}
            d={`M${left} ${y(tick * size).toFixed(1)}H${right}`}
          />
          <text className="plot-number" x={left - 6} y={y(tick * size) + letter * 0.34} textAnchor="end">
            {digits(tick, axis.decimals)}
          </text>
        </g>
      ))}
      {drawn.map(({ key, px }) => (
        <path key={key} className={`plot-curve ${looks[key]}`} d={path(px)} />
      ))}
      {words.map(({ key, text, anchor, x, y: base }) => (
        <text
          key={key}
          className={`plot-word ${key === 'here' ? 'chosen' : 'plain'}`}
          x={x.toFixed(1)}
          y={base.toFixed(1)}
          textAnchor={anchor}
        >
          {text}
        </text>
      ))}
      {dot && <circle className="plot-dot" cx={dot[0].toFixed(1)} cy={dot[1].toFixed(1)} r="3" />}
    </g>
  );
});
