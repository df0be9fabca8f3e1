import { clockText } from '@oddwheel/build/true/clock';
import type { DrawnSet } from '@oddwheel/build/true/sheet-types';
import { toSi } from '@oddwheel/quantity/units';
import type { JSX } from 'react';
import { niceStep, polar } from './geometry.ts';

/** Radius that the mean of the readings is drawn at, and the room for the swing on either side. */
const MEAN = 84;
const ROOM = 44;

/** The readings of one section round the axis that it turned on, with the circle that fits them best. */
export function PolarPlot({ set }: { set: DrawnSet }): JSX.Element {
  const per = toSi('length', set.unit, 1);
  const swing = Math.max(...set.readings.map(({ value }) => Math.abs(value - set.mean)), 1e-9);
  const ring = niceStep(swing);
  const scale = ROOM / Math.max(swing, ring);
  const centre = { x: (set.offset.y / per) * scale, y: (-set.offset.x / per) * scale };
  const high = polar(MEAN + ROOM + 8, set.high);
  const right = high.x > 0;
  const said = `Polar plot: high spot at ${clockText(set.high)}; ${set.numbers.map(({ name, value }) => `${name} ${value}`).join(', ')}`;
  return (
    <figure className="polar">
      <svg viewBox="-190 -162 380 344" role="img" aria-label={said}>
        {Array.from({ length: 12 }, (_, k) => {
          const [from, to] = [polar(34, (k * Math.PI) / 6), polar(MEAN + ROOM, (k * Math.PI) / 6)];
          return (
            <line key={`spoke ${from.x} ${from.y}`} x1={from.x} y1={from.y} x2={to.x} y2={to.y} className="hair-line" />
          );
        })}
        <circle r={MEAN + ring * scale} className="hair-line" />
        <circle r={MEAN} className="mean-line" />
        <circle cx={centre.x} cy={centre.y} r={MEAN} className="fit-line" />
        {set.readings.map(({ at, value }) => {
          const { x, y } = polar(MEAN + (value - set.mean) * scale, (at * Math.PI) / 180);
          return <circle key={`${at} ${value}`} cx={x} cy={y} r="3.6" className="reading-dot" />;
        })}
        <path d="M-7 0H7M0-7V7" className="thin-line" />
        <line x2={centre.x} y2={centre.y} className="offset-line" />
        <circle cx={centre.x} cy={centre.y} r="3.4" className="mark-dot" />
        <path d={spokeTo(set.high)} className="high-line" />
        <text x={right ? -8 : 8} y="18" className="plot-note halo" textAnchor={right ? 'end' : 'start'}>
          spin axis
        </text>
        <text
          x={centre.x + (right ? 8 : -8)}
          y={centre.y - 8}
          className="plot-mark halo"
          textAnchor={right ? 'start' : 'end'}
        >
          part’s centre
        </text>
        <text
          y={high.y + (Math.abs(high.x) < 40 && high.y < 0 ? -20 : 0)}
          className="plot-bold"
          textAnchor={anchor(high.x)}
        >
          <tspan x={high.x}>high spot</tspan>
          <tspan x={high.x} dy="15">
            {clockText(set.high)}
          </tspan>
        </text>
        <text x="-186" y="176" className="plot-note">
          outer ring +{ring} {set.unit}, chain line mean
        </text>
        {HOURS.filter((hour) => apart(set.high, (hour * Math.PI) / 6) > 0.4).map((hour) => {
          const { x, y } = polar(MEAN + ROOM + 20, (hour * Math.PI) / 6);
          return (
            <text key={hour} x={x} y={y + 5} className="plot-hour" textAnchor="middle">
              {hour}
            </text>
          );
        })}
      </svg>
      <figcaption className="note">
        {set.side === '' ? 'Marks go clockwise' : `Marks go clockwise; seen ${set.side}`}, 12 at the punch mark. The
        swing is drawn large, 1 {set.unit} as {Math.round(scale * 10) / 10} of the {2 * MEAN} across the circle; the
        circle is not to scale.
      </figcaption>
    </figure>
  );
}

const anchor = (x: number): 'start' | 'middle' | 'end' => (Math.abs(x) < 40 ? 'middle' : x > 0 ? 'start' : 'end');
const HOURS = [12, 3, 6, 9];
const apart = (a: number, b: number): number => Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)));

function spokeTo(angle: number): string {
  const [from, to] = [polar(MEAN + ROOM - 10, angle), polar(MEAN + ROOM + 6, angle)];
  return `M${from.x} ${from.y}L${to.x} ${to.y}`;
}
