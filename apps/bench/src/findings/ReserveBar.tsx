import type { Severity, Spread } from '@oddwheel/build/assess/types';
import type { JSX } from 'react';
import { FILL_HEIGHT, LIMIT_PLACE, RESERVE_TICKS, reserveBar, reservePlace } from './reserve-bar.ts';

const percent = (part: number): string => `${(part * 100).toFixed(3)}%`;

/** The reserve bar of one finding. Drawn for the eye only: the number beside it says the same. */
export function ReserveBar(props: { severity: Severity; reserve: Spread | null; wanted: number }): JSX.Element {
  const bar = reserveBar(props.reserve, props.wanted);
  if (bar === null && props.severity === 'unknown')
    return (
      <svg className="reserve-bar" aria-hidden="true">
        <line className="not-yet" x1="0" x2={percent(LIMIT_PLACE - 0.03)} y1="50%" y2="50%" />
        <line className="not-yet" x1={percent(LIMIT_PLACE + 0.03)} x2="100%" y1="50%" y2="50%" />
      </svg>
    );
  const limit = <line className="limit" x1={percent(LIMIT_PLACE)} x2={percent(LIMIT_PLACE)} y1="0" y2="100%" />;
  if (bar === null)
    return (
      <svg className="reserve-bar" aria-hidden="true">
        {limit}
      </svg>
    );
  const height = FILL_HEIGHT[props.severity];
  return (
    <svg className={`reserve-bar ${props.severity}`} aria-hidden="true">
      <line className="run" x1="0" x2="100%" y1="50%" y2="50%" />
      <svg aria-hidden="true" y="50%" overflow="visible">
        <rect
          className="fill"
          x={percent(bar.from)}
          y={-height / 2}
          width={percent(bar.to - bar.from)}
          height={height}
        />
        {bar.past === 'high' && (
          <svg aria-hidden="true" x="100%" overflow="visible">
            <path className="past" d="M-8-6-1 0-8 6" />
          </svg>
        )}
        {bar.past === 'low' && (
          <svg aria-hidden="true" overflow="visible">
            <path className="past" d="M8-6 1 0 8 6" />
          </svg>
        )}
        {bar.whisker && (
          <g className="whisker">
            <line x1={percent(bar.whisker.from)} x2={percent(bar.whisker.to)} y1="0" y2="0" />
            <line x1={percent(bar.whisker.from)} x2={percent(bar.whisker.from)} y1="-5" y2="5" />
            <line x1={percent(bar.whisker.to)} x2={percent(bar.whisker.to)} y1="-5" y2="5" />
          </g>
        )}
        <svg aria-hidden="true" x={percent(bar.wanted)} overflow="visible">
          <path className="wanted" d="M0-6V6M-2.5-6h5M-2.5 6h5" />
        </svg>
      </svg>
      {limit}
    </svg>
  );
}

/** The scale above the bars of a list. */
export function ReserveScale(): JSX.Element {
  return (
    <svg className="reserve-scale" aria-hidden="true">
      {RESERVE_TICKS.map((tick) => (
        <svg aria-hidden="true" key={tick} x={percent(reservePlace(tick))} overflow="visible">
          <text y="11" textAnchor="middle" className={tick === 1 ? 'limit-word' : ''}>
            {tick === 1 ? 'limit 1' : tick}
          </text>
          <path d="M0 15v6" />
        </svg>
      ))}
    </svg>
  );
}
