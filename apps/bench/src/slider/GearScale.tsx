import type { GearSpan, Here } from '@oddwheel/build/assess/types';
import { type JSX, memo, type PointerEvent, useRef } from 'react';
import { show, shownText, unitOf, unitSize } from '../numbers/shown.ts';
import { cursorSpeed, keyMove, speedAtPlace, speedPlace, speedScale } from './scale.ts';

interface Props {
  readonly gears: readonly GearSpan[];
  readonly here: Here;
  /** What was asked for last while its answer is under way: the cursor follows the hand, the numbers the model. */
  readonly asked: Here | null;
  readonly note: string | null;
  /** Without the lines of the gears' ranges. */
  readonly folded: boolean;
  readonly units: Readonly<Record<string, string>>;
  readonly onMove: (here: Here) => void;
}

const LINE_STEP = 11;
const FIRST_LINE = 12;
const FOLDED_HEIGHT = 46;

const percent = (part: number): string => `${(part * 100).toFixed(3)}%`;
const certain = (value: number) => ({ value, lo: value, hi: value });

/** The ruled scale of road speed with its cursor, and the range of each gear from idle to redline above it. */
export const GearScale = memo(function GearScale(props: Props): JSX.Element {
  const { gears, here, asked, note, folded, units, onMove } = props;
  const now = asked ?? here;
  const rule = useRef<HTMLDivElement>(null);
  const unit = { name: unitOf('speed', units), si: unitSize('speed', units) };
  const scale = speedScale(gears, unit);
  const gear = gears.find((span) => span.id === now.gear);
  const speed = cursorSpeed(gear, now.roadSpeed);
  const height = folded ? FOLDED_HEIGHT : FIRST_LINE + gears.length * LINE_STEP + 46;
  const ruleAt = height - 28;
  const speedText = shownText(show(certain(speed), 'speed', units, 3));

  const drag = (event: PointerEvent<HTMLDivElement>): void => {
    const box = rule.current?.getBoundingClientRect();
    if (!box || box.width === 0) return;
    onMove({ gear: now.gear, roadSpeed: speedAtPlace(scale, (event.clientX - box.left) / box.width) });
  };

  return (
    <section className={folded ? 'gear-scale folded' : 'gear-scale'} aria-label="Gear and road speed">
      <div className="gear-name">
        <b>
          Gear {gear?.id ?? now.gear}
          <span className="gear-speed"> {speedText}</span>
        </b>
        <fieldset className="gears">
          <legend className="hidden-name">Gear</legend>
          {gears.map((span) => (
            <button
              key={span.id}
              type="button"
              aria-pressed={span.id === now.gear}
              aria-label={`Gear ${span.id}`}
              onClick={() => onMove({ gear: span.id, roadSpeed: now.roadSpeed })}
            >
              {span.id}
            </button>
          ))}
        </fieldset>
        {!folded && <span className="lead axis-name">road speed</span>}
      </div>
      <div
        className="rule"
        role="slider"
        tabIndex={0}
        aria-label="Road speed"
        aria-orientation="horizontal"
        aria-valuemin={0}
        aria-valuemax={scale.top}
        aria-valuenow={Number((speed / unit.si).toFixed(1))}
        aria-valuetext={`${speedText} in gear ${gear?.name ?? now.gear}`}
        aria-describedby={note === null ? undefined : 'here-note'}
        style={{ height }}
        onPointerDown={(event) => {
          if (event.button !== 0) return;
          event.currentTarget.setPointerCapture(event.pointerId);
          drag(event);
        }}
        onPointerMove={(event) => {
          if (event.currentTarget.hasPointerCapture(event.pointerId)) drag(event);
        }}
        onKeyDown={(event) => {
          if (event.ctrlKey || event.metaKey || event.altKey) return;
          const next = keyMove(event.key, { gear: now.gear, roadSpeed: speed }, gears, unit);
          if (!next) return;
          event.preventDefault();
          onMove(next);
        }}
      >
        <div ref={rule} className="rule-length">
          <svg aria-hidden="true" width="100%" height={height}>
            {(folded ? [] : gears).map((span, index) => (
              <GearLine
                key={span.id}
                y={FIRST_LINE + index * LINE_STEP}
                from={speedPlace(scale, span.speedAtIdle.value)}
                to={speedPlace(scale, span.speedAtRedline.value)}
                label={span.id}
                more={index === gears.length - 1 ? `${Math.round(span.speedAtRedline.value / unit.si)} at redline` : ''}
                chosen={span.id === now.gear}
              />
            ))}
            <line className="axis" x1="0" x2="100%" y1={ruleAt} y2={ruleAt} />
            {scale.ticks.map((tick) => (
              <svg aria-hidden="true" key={tick.at} x={percent(tick.place)} y={ruleAt} overflow="visible">
                <path className="tick" d={tick.labelled ? 'M0-4V8' : 'M0 0V5'} />
                {tick.labelled && (
                  <text y="22" textAnchor="middle" className={tick.at % (scale.label * 2) === 0 ? '' : 'wide-only'}>
                    {tick.at}
                  </text>
                )}
                {tick.place === 1 && (
                  <text x="12" y="22" className="wide-only">
                    {unit.name}
                  </text>
                )}
              </svg>
            ))}
            <svg aria-hidden="true" x={percent(speedPlace(scale, speed))} overflow="visible">
              <rect className="cursor" x="-13" y="2" width="26" height={height - 4} rx="3" />
              <line className="hairline" x1="0" x2="0" y1="2" y2={height - 2} />
            </svg>
          </svg>
        </div>
      </div>
      <p className="here-note" id="here-note" role="status">
        {note}
      </p>
    </section>
  );
});

function GearLine(props: {
  y: number;
  from: number;
  to: number;
  label: string;
  more: string;
  chosen: boolean;
}): JSX.Element {
  return (
    <g className={props.chosen ? 'gear-line chosen' : 'gear-line'}>
      <line x1={percent(props.from)} x2={percent(props.to)} y1={props.y} y2={props.y} />
      <svg aria-hidden="true" x={percent(props.from)} y={props.y} overflow="visible">
        <path d="M0-3V3" />
      </svg>
      <svg aria-hidden="true" x={percent(props.to)} y={props.y} overflow="visible">
        <path d="M0-3V3" />
        <text x="7" y="4">
          {props.label}
          {props.more !== '' && (
            <tspan className="wide-only" dx="6">
              {props.more}
            </tspan>
          )}
        </text>
      </svg>
    </g>
  );
}
