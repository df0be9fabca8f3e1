import type { ShaftPlaceLine } from '@oddwheel/build/assess/strength/shaft-lines';
import { type JSX, memo } from 'react';
import { reserveText } from '../numbers/shown.ts';
import { type Labelled, type Point, placeLabels } from '../plots/labels.ts';
import type { Along } from './along.ts';
import type { KnownLine } from './shaft-rows.ts';

const HIGHEST = 8;
const LOWEST = 0.5;

type Part = 'fatigueReserve' | 'yieldReserve';
const WORDS = { fatigueReserve: 'fatigue', yieldReserve: 'yield' } as const;

/** Reserves of the places over all cases on a log scale: a dot for fatigue, a ring for yield; above the scale they are left out. */
export const ReserveRow = memo(function ReserveRow(props: {
  line: KnownLine;
  along: Along;
  top: number;
  height: number;
  governs: ShaftPlaceLine | null;
}): JSX.Element {
  const { line, along, top, height, governs } = props;
  const { left, right, letter, x } = along;
  const frame = { left, right, top: top + letter * 2.1, bottom: top + height - letter * 0.9 };
  const known = (part: Part) =>
    line.places.flatMap((place) => (place[part] === null ? [] : [{ place, reserve: place[part] }]));
  const lowest = Math.min(
    LOWEST,
    ...[...known('fatigueReserve'), ...known('yieldReserve')].map(({ reserve }) => reserve),
  );
  const span = Math.log(HIGHEST / lowest);
  const y = (reserve: number): number =>
    frame.bottom - (Math.log(reserve / lowest) / span) * (frame.bottom - frame.top);
  const dots = (['fatigueReserve', 'yieldReserve'] as const).map((part) => {
    const shown = known(part).filter(({ reserve }) => reserve <= HIGHEST);
    return {
      part,
      points: shown.map(({ place, reserve }): Point => [x(place.station), y(reserve)]),
      least: shown.reduce<(typeof shown)[number] | null>(
        (best, one) => (best && best.reserve <= one.reserve ? best : one),
        null,
      ),
    };
  });
  const wanted: Labelled[] = [
    ...dots.flatMap(({ part, least }): Labelled[] =>
      least === null
        ? []
        : [
            {
              key: part,
              text: `${WORDS[part]} ${reserveText(least.reserve)}`,
              points: [[x(least.place.station), y(least.reserve)]],
              wish: 0,
            },
          ],
    ),
    ...dots.flatMap(({ part, points }) =>
      points.map(([px, py], k): Labelled => {
        return {
          key: `${part} ${k}`,
          text: '',
          wish: 0,
          points: [
            [px - 3, py],
            [px + 3, py],
          ],
        };
      }),
    ),
    ...(governs
      ? [
          {
            key: 'line',
            text: '',
            wish: 0,
            points: [
              [x(governs.station), frame.top],
              [x(governs.station), frame.bottom],
            ] as const,
          },
        ]
      : []),
  ];
  const words = placeLabels(wanted, { ...frame, bottom: frame.bottom + letter * 0.6 }, [], letter);
  const ticks = [1, 2, 4, HIGHEST].filter((tick) => tick >= lowest);
  return (
    <g>
      <text className="plot-name" x="0" y={top + letter}>
        <tspan className="row-name">Reserve</tspan>
        <tspan className="plot-unit">
          , all cases, each place{dots.every(({ points }) => points.length === 0) ? `: none is under ${HIGHEST}` : ''}
        </tspan>
      </text>
      {ticks.map((tick) => (
        <g key={tick}>
          <path className={tick === 1 ? 'plot-axis' : 'plot-grid'} d={`M${left} ${y(tick).toFixed(1)}H${right}`} />
          <text className="plot-number" x={left - 6} y={y(tick) + letter * 0.34} textAnchor="end">
            {tick === 1 ? 'limit 1' : tick}
          </text>
        </g>
      ))}
      {dots.map(({ part, points }) =>
        points.map(([px, py]) => (
          <circle
            key={`${part} ${px}`}
            className={`reserve-dot ${WORDS[part]}`}
            cx={px.toFixed(1)}
            cy={py.toFixed(1)}
            r="3"
          />
        )),
      )}
      {words.map(({ key, text, anchor, x: wordX, y: base }) => (
        <text key={key} className="plot-word" x={wordX.toFixed(1)} y={base.toFixed(1)} textAnchor={anchor}>
          {text}
        </text>
      ))}
    </g>
  );
});
