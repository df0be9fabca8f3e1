import { clockText } from '@oddwheel/build/true/clock';
import type { PartSheet } from '@oddwheel/build/true/sheet-types';
import { lengthWords } from '@oddwheel/build/true/words';
import { fromSi } from '@oddwheel/quantity/units';
import type { JSX } from 'react';

const LEFT = 24;
const RIGHT = 320;
const MIDDLE = 74;
const ROOM = 44;

/** The part's axis along its length, against the line through its two seats, seen across the worst offset. */
export function AxisLine({ sheet }: { sheet: PartSheet }): JSX.Element | null {
  const { stations, unit, kink } = sheet;
  const [first] = stations;
  const end = stations.at(-1);
  if (!first || !end || stations.length < 2 || first.station === end.station) return null;
  const worst = stations.reduce((a, b) => (b.tir > a.tir ? b : a));
  const direction = { x: Math.cos(worst.high), y: Math.sin(worst.high) };
  const along = ({ x, y }: { x: number; y: number }) => x * direction.x + y * direction.y;
  const most = Math.max(...stations.map(({ offset }) => Math.abs(along(offset))), 1e-9);
  const across = (at: number) => LEFT + ((at - first.station) / (end.station - first.station)) * (RIGHT - LEFT);
  const y = (offset: number) => MIDDLE - (offset / most) * ROOM;
  const times = ROOM / most / ((RIGHT - LEFT) / (end.station - first.station));
  const line = stations
    .map(({ station, offset }, k) => `${k === 0 ? 'M' : 'L'}${across(station)} ${y(along(offset))}`)
    .join('');
  const said = `Axis: ${stations.map(({ name, tir }) => `at ${name} TIR ${lengthWords(tir, unit)}`).join(', ')}`;
  return (
    <figure>
      <svg className="axis-line" viewBox="0 0 344 150" role="img" aria-label={said}>
        <line x1={LEFT - 16} x2={RIGHT + 16} y1={MIDDLE} y2={MIDDLE} className="centre-line" />
        <path d={line} className="rounds-line" />
        {kink !== undefined && kink > first.station && kink < end.station && (
          <>
            <line x1={across(kink)} x2={across(kink)} y1={MIDDLE - ROOM} y2={MIDDLE + ROOM} className="expected-line" />
            <text x={across(kink) + 5} y={MIDDLE + ROOM} className="plot-mark">
              kink
            </text>
          </>
        )}
        {stations.map(({ station, name, role, tir, offset }, k) => (
          <g key={station}>
            {role === 'seat' && <path d={`M${across(station) - 6} ${MIDDLE + 12}h12l-6-10z`} className="seat-shape" />}
            <circle
              cx={across(station)}
              cy={y(along(offset))}
              r="3.6"
              className={role === 'goal' ? 'mark-dot' : 'ink-dot'}
            />
            {role !== 'seat' && (
              <text
                x={across(station)}
                y={y(along(offset)) - 8}
                className="plot-bold halo"
                textAnchor={k === 0 ? 'start' : k === stations.length - 1 ? 'end' : 'middle'}
              >
                TIR {lengthWords(tir, unit)}
              </text>
            )}
            <text
              x={across(station)}
              y={132 + (k % 2) * 14}
              className="plot-note"
              textAnchor={k === 0 ? 'start' : k === stations.length - 1 ? 'end' : 'middle'}
            >
              {name}
            </text>
          </g>
        ))}
      </svg>
      <figcaption className="note">
        Seen across the worst high spot, {clockText(worst.high)}. Offset drawn{' '}
        {times >= 1000 ? Math.round(times / 100) * 100 : Math.round(times)} times larger than length; full height is{' '}
        {Number(fromSi('length', unit, most).toPrecision(2))} {unit} offset. Triangles: bearing seats.
      </figcaption>
    </figure>
  );
}
