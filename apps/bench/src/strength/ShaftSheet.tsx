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
const STEP_Y = 26;
/** Words at a peak stand no further from it, as a part of the length. */
const NEAR_PEAK = 0.14;
/** Heights of a plot and of the one of reserves, in letters. */
const ROW = 9.5;
const LAST_ROW = 12;
const LOOKS = { first: 'plain', second: 'load', both: 'together' } as const;
/** Room over and under a curve, as a part of its height. */
const ROOM = 0.07;

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
  const rowHeight = letter * ROW;
  const lastHeight = letter * LAST_ROW;
  const tops = [...rows.map((_, k) => outline + k * rowHeight), outline + rows.length * rowHeight];
  const end = (tops.at(-1) ?? 0) + lastHeight;
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
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: the ruled scale beneath does the same by keyboard */}
      <svg
        role="img"
        aria-label={says(line, rows, units)}
        viewBox={`0 0 ${Math.max(LEAST_WIDTH, width)} ${height.toFixed(0)}`}
        style={{ fontSize: letter }}
        onClick={(event) => read(event.clientX, event.currentTarget.getBoundingClientRect())}
        onPointerMove={(event) => {
          // A finger that moves scrolls the page.
          if (event.buttons > 0 && event.pointerType === 'mouse')
            read(event.clientX, event.currentTarget.getBoundingClientRect());
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
            at={reading ?? governs?.station ?? null}
            units={units}
          />
        ))}
        <ReserveRow line={line} along={along} top={tops.at(-1) ?? 0} height={lastHeight} governs={governs} />
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
  /** Where numbers are told: at the station that is read, else at the governing section. */
  readonly at: number | null;
  readonly units: Units;
}

/** One plot: its name and unit, zero line, curves with their greatest values at them, and the value at the governing section. */
const Row = memo(function Row({ row, along, top, height, governs, at, units }: RowProps): JSX.Element {
  const { name, use, curves } = row;
  const { left, right, letter } = along;
  const values = curves.flatMap(({ points }) => points.map(([, value]) => value));
  const size = unitSize(use, units);
  const frame = { left, right, top: top + letter * 2.1, bottom: top + height - letter * 0.9 };
  const [least, most] = [Math.min(0, ...values), Math.max(0, ...values)];
  const axis = axisOver({ name, unit: unitOf(use, units), size }, least, most, (frame.bottom - frame.top) / STEP_Y);
  const room = ROOM * (most - least || size);
  const [low, high] = [least - room, most + room];
  const y = (si: number): number => frame.bottom - ((si - low) / (high - low)) * (frame.bottom - frame.top);
  const ticks = axis.ticks.filter((tick) => tick * size >= low && tick * size <= high);
  const drawn = curves.map((curve) => ({
    ...curve,
    px: curve.points.map(([station, value]): Point => [along.x(station), y(value)]),
  }));
  const number = (value: number): string => show(certain(value), use, units, 3).number;
  // With both planes together, these are what is told.
  const told = drawn.length === 3 ? drawn.slice(2) : drawn;
  const dots = told.flatMap(({ key, points, peak }) => {
    const value = at === null ? null : greatestAt(points, at);
    if (at === null || value === null) return [];
    // The greatest value stands at the curve's own words.
    const text = value === 0 || number(value) === number(points[peak]?.[1] ?? 0) ? '' : number(value);
    return [{ key: `at ${key}`, text, px: [along.x(at), y(value)] as Point }];
  });
  const wanted: Labelled[] = [
    ...dots.map(({ key, text, px }): Labelled => ({ key, text, points: [px], wish: 0 })),
    ...[...drawn].reverse().map(({ key, text, px, points, peak }): Labelled => {
      const most = number(points[peak]?.[1] ?? 0);
      const top = px[peak] ?? [0, 0];
      // The number is that of the peak, so the words stand near it.
      const near = px.filter(([x]) => Math.abs(x - top[0]) < NEAR_PEAK * (right - left));
      const wish = near.indexOf(top) / Math.max(1, near.length - 1);
      return { key, text: `${text} ${most}`.trim(), points: near, wish };
    }),
    ...drawn.map(({ key, px }): Labelled => ({ key: `whole ${key}`, text: '', points: px, wish: 0 })),
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
  const metre = (frame.bottom - frame.top) / (high - low) / along.scale;
  const unit = axis.unit === '°' ? 'degrees' : axis.unit;
  const beside =
    row.key === 'deflection'
      ? `, ${unit}, drawn ${digits(Number(metre.toPrecision(2)), 0)} times as large as the length`
      : `, ${unit}`;
  const words = placeLabels(
    wanted,
    { ...frame, top: top + 2, bottom: frame.bottom + letter * 0.3 },
    [{ left: 0, right: (name.length + beside.length) * letter * 0.5, top, bottom: top + letter * 1.3 }],
    letter,
  );
  return (
    <g>
      <text className="plot-name" x="0" y={top + letter}>
        <tspan className="row-name">{name}</tspan>
        <tspan className="plot-unit">{beside}</tspan>
      </text>
      {ticks.map((tick) => (
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
        <path key={key} className={`plot-curve ${curves.length === 1 ? 'plain' : LOOKS[key]}`} d={path(px)} />
      ))}
      {words.map(({ key, text, anchor, x, y: base }) => (
        <text
          key={key}
          className={`plot-word ${key.startsWith('at ') ? 'chosen' : 'plain'}`}
          x={x.toFixed(1)}
          y={base.toFixed(1)}
          textAnchor={anchor}
        >
          {text}
        </text>
      ))}
      {dots.map(({ key, px: [cx, cy] }) => (
        <circle key={key} className="plot-dot" cx={cx.toFixed(1)} cy={cy.toFixed(1)} r="3" />
      ))}
    </g>
  );
});
