import type { ShaftPlaceLine } from '@oddwheel/build/assess/strength/shaft-lines';
import { type JSX, memo } from 'react';
import type { DrawnSeat } from '../worker/shaft-api.ts';
import type { Along } from './along.ts';
import { placeNames } from './seat-names.ts';
import { type KnownLine, lengthText, shortLength } from './shaft-rows.ts';

/** Width of a letter as a part of its size. */
const LETTER = 0.47;
/** A part on the shaft is drawn by its width alone, this far out from it, as a part of the shaft's diameter. */
const PART = 0.3;
/** A bearing without its outside diameter is drawn this much larger than the shaft. */
const USUAL_OUTSIDE = 1.8;

const textWidth =
  (letter: number) =>
  (text: string): number =>
    text.length * LETTER * letter;

/** Diameter of the shaft under a seat, m. */
function diameterAt({ points }: KnownLine, station: number): number {
  const k = points.findIndex((point) => point.station >= station - 1e-9);
  return points[Math.max(0, k)]?.diameter ?? 0;
}

interface Layout {
  /** Height from the centre line up to the top of anything, and down to it, px. */
  readonly half: number;
  readonly centre: number;
  readonly names: ReturnType<typeof placeNames>;
  readonly bottom: number;
}

function layoutOf(line: KnownLine, seats: readonly DrawnSeat[], along: Along, thin: boolean): Layout {
  const { letter, scale, right, x } = along;
  const tall = [
    ...line.points.map(({ diameter }) => diameter),
    ...seats.map((seat) => outsideOf(seat, line)),
    ...(thin ? line.places.map(({ least }) => least ?? 0) : []),
  ];
  const half = (Math.max(...tall) / 2) * scale;
  const names = placeNames(
    seats.map(({ address, name, station }) => {
      return { key: address, text: name, at: x(station) };
    }),
    textWidth(letter),
    0,
    right + 10,
    letter * 0.8,
  );
  const centre = letter * 2 + half + 4;
  const lowest = Math.max(0, ...names.map(({ row }) => row));
  return { half, centre, names, bottom: centre + half + letter * (2 + 1.25 * lowest) };
}

function outsideOf(seat: DrawnSeat, line: KnownLine): number {
  const own = diameterAt(line, seat.station);
  if (seat.kind === 'bearing') return seat.outside ?? own * USUAL_OUTSIDE;
  return own * (1 + 2 * PART);
}

/** Px that the outline takes with the names below it. */
export function outlineHeight(line: KnownLine, seats: readonly DrawnSeat[], along: Along, thin: boolean): number {
  return layoutOf(line, seats, along, thin).bottom + along.letter * 1.2;
}

interface Props {
  readonly line: KnownLine;
  readonly seats: readonly DrawnSeat[];
  readonly along: Along;
  readonly units: Readonly<Record<string, string>>;
  readonly thin: boolean;
}

/** The shaft to scale with its bearings and what sits on it, and on request how thin it could be. */
export const ShaftOutline = memo(function ShaftOutline({ line, seats, along, units, thin }: Props): JSX.Element {
  const { letter, scale, left, right, x } = along;
  const { half, centre, names, bottom } = layoutOf(line, seats, along, thin);
  const { points } = line;
  const edge = (sign: 1 | -1, size: (point: KnownLine['points'][number]) => number): string =>
    points
      .map((point) => `${x(point.station).toFixed(1)} ${(centre - (sign * size(point) * scale) / 2).toFixed(1)}`)
      .join('L');
  const body = `M${edge(1, (point) => point.diameter)}L${[...edge(-1, (point) => point.diameter).split('L')].reverse().join('L')}Z`;
  const bored = points.some(({ bore }) => bore > 0);
  const steps = points.slice(1).flatMap((point, k) => {
    const before = points[k];
    return before && before.diameter !== point.diameter && before.station === point.station
      ? [{ at: x(point.station), high: (Math.max(before.diameter, point.diameter) / 2) * scale }]
      : [];
  });
  return (
    <g>
      <text className="plot-name" x="0" y={letter}>
        <tspan className="row-name">Outline</tspan>
        <tspan className="plot-unit">, to scale</tspan>
      </text>
      {seats.map((seat) => (
        <Seat key={seat.address} seat={seat} line={line} along={along} centre={centre} />
      ))}
      <path className="outline-body" d={body} />
      {bored && (
        <>
          <path className="outline-hidden" d={`M${edge(1, (point) => point.bore)}`} />
          <path className="outline-hidden" d={`M${edge(-1, (point) => point.bore)}`} />
        </>
      )}
      {steps.map(({ at, high }) => (
        <path key={at} className="outline-step" d={`M${at.toFixed(1)} ${centre - high}v${2 * high}`} />
      ))}
      <path className="outline-centre" d={`M${left - 10} ${centre}H${right + 10}`} />
      {/* The line of how thin it could be would run through them. */}
      {!thin &&
        diameters(line, along).map(({ from, to, diameter }) => {
          const text = `Ø${shortLength(diameter, units)}`;
          const fits = to - from > textWidth(letter)(text) + 6 && diameter * scale > letter * 2.2;
          return fits ? (
            <text key={from} className="outline-size" x={(from + to) / 2} y={centre - 4} textAnchor="middle">
              {text}
            </text>
          ) : null;
        })}
      {thin && <ThinLine places={line.places} along={along} centre={centre} units={units} />}
      {names.map(({ key, text, at, anchor, x: nameX, row }) => {
        const base = bottom - letter * 1.25 * (Math.max(0, ...names.map((one) => one.row)) - row);
        return (
          <g key={key}>
            <path
              className="outline-leader"
              d={`M${at.toFixed(1)} ${centre + half + 2}V${(base - letter * 0.85).toFixed(1)}`}
            />
            <text className="outline-name" x={nameX.toFixed(1)} y={base.toFixed(1)} textAnchor={anchor}>
              {text}
            </text>
          </g>
        );
      })}
    </g>
  );
});

/** Stretches of one diameter, px. */
function diameters(
  { points }: KnownLine,
  { x }: Along,
): readonly { readonly from: number; readonly to: number; readonly diameter: number }[] {
  const found: { from: number; to: number; diameter: number }[] = [];
  for (const { station, diameter } of points) {
    const last = found.at(-1);
    if (last && last.diameter === diameter) last.to = x(station);
    else found.push({ from: x(station), to: x(station), diameter });
  }
  return found;
}

/** A bearing as two crossed boxes, another part as two plain ones of its width; without a width, a line. */
function Seat(props: { seat: DrawnSeat; line: KnownLine; along: Along; centre: number }): JSX.Element {
  const { seat, line, along, centre } = props;
  const inner = (diameterAt(line, seat.station) / 2) * along.scale;
  const outer = (outsideOf(seat, line) / 2) * along.scale;
  const at = along.x(seat.station);
  if (seat.width === null) return <path className="outline-part" d={`M${at} ${centre - outer}V${centre + outer}`} />;
  const [from, wide, tall] = [at - (seat.width / 2) * along.scale, seat.width * along.scale, outer - inner];
  const box = (top: number): string => `M${from} ${top}h${wide}v${tall}h${-wide}Z`;
  const cross = (top: number): string => `M${from} ${top}l${wide} ${tall}M${from + wide} ${top}l${-wide} ${tall}`;
  const tops = [centre - outer, centre + inner];
  return (
    <path
      className={seat.kind === 'bearing' ? 'outline-bearing' : 'outline-part'}
      d={tops.map((top) => box(top) + (seat.kind === 'bearing' ? cross(top) : '')).join('')}
    />
  );
}

/** How thin the shaft could be at the places that are looked at, straight between them; told at the one that asks most. */
function ThinLine(props: {
  places: readonly ShaftPlaceLine[];
  along: Along;
  centre: number;
  units: Props['units'];
}): JSX.Element {
  const { places, along, centre, units } = props;
  const edge = (sign: 1 | -1): string =>
    places
      .map(
        ({ station, least }) =>
          `${along.x(station).toFixed(1)} ${(centre - (sign * (least ?? 0) * along.scale) / 2).toFixed(1)}`,
      )
      .join('L');
  const most = places.reduce<ShaftPlaceLine | null>(
    (best, one) => ((one.least ?? 0) > (best?.least ?? 0) ? one : best),
    null,
  );
  if (!most || most.least === null) return <g />;
  const at = along.x(most.station);
  const right = at > (along.left + along.right) / 2;
  return (
    <g>
      <path className="outline-thin" d={`M${edge(1)}M${edge(-1)}`} />
      <text
        className="plot-word chosen"
        x={right ? at - 6 : at + 6}
        y={centre - (most.least * along.scale) / 2 - 4}
        textAnchor={right ? 'end' : 'start'}
      >
        Ø{lengthText(most.least, units)} would just do
      </text>
    </g>
  );
}
