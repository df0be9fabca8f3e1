import type { PartSheet } from '@oddwheel/build/true/sheet-types';
import { lengthWords } from '@oddwheel/build/true/words';
import { fromSi } from '@oddwheel/quantity/units';
import type { JSX } from 'react';
import { niceStep } from './geometry.ts';

const LEFT = 34;
const RIGHT = 330;
const TOP = 16;
const BOTTOM = 150;
/** Rounds that fit side by side; earlier ones stand in the list below. */
const SHOWN = 8;

/** TIR after each round as a line, the goal across it, and what the next round is expected to leave. */
export function RoundsPlot({ sheet }: { sheet: PartSheet }): JSX.Element | null {
  const { unit, goal, next } = sheet;
  const rounds = sheet.rounds.slice(-SHOWN);
  if (rounds.length === 0) return null;
  const expected = next.kind === 'bead' ? next.expected : undefined;
  const si = (value: number) => fromSi('length', unit, value);
  const top = niceStep(Math.max(...rounds.map(({ tir }) => si(tir)), si(expected?.high ?? 0), 1.2 * si(goal)));
  const columns = rounds.length + (expected ? 1 : 0);
  const x = (k: number) => LEFT + 16 + (columns === 1 ? 0 : (k * (RIGHT - LEFT - 40)) / (columns - 1));
  const y = (tir: number) => BOTTOM - (si(tir) / top) * (BOTTOM - TOP);
  const line = rounds.map(({ tir }, k) => `${k === 0 ? 'M' : 'L'}${x(k)} ${y(tir)}`).join('');
  const last = rounds.at(-1);
  const said = `TIR in ${unit} after each round: ${rounds.map(({ label, words }) => `${label} ${words}`).join(', ')}`;
  return (
    <svg className="rounds-plot" viewBox="0 0 344 176" role="img" aria-label={said}>
      {[0, 0.5, 1].map((part) => (
        <g key={part}>
          <line
            x1={LEFT}
            x2={RIGHT}
            y1={BOTTOM - part * (BOTTOM - TOP)}
            y2={BOTTOM - part * (BOTTOM - TOP)}
            className="hair-line"
          />
          <text x={LEFT - 6} y={BOTTOM - part * (BOTTOM - TOP) + 4} className="plot-note" textAnchor="end">
            {Number((part * top).toPrecision(3))}
          </text>
        </g>
      ))}
      <line x1={LEFT} x2={RIGHT} y1={y(goal)} y2={y(goal)} className="goal-line" />
      <text x={RIGHT} y={y(goal) - 4} className="plot-note halo" textAnchor="end">
        good enough {sheet.goalWords}
      </text>
      <path d={line} className="rounds-line" />
      {expected && last && (
        <>
          <path
            d={`M${x(rounds.length - 1)} ${y(last.tir)}L${x(rounds.length)} ${y(expected.tir)}`}
            className="expected-line"
          />
          <path
            d={`M${x(rounds.length) - 5} ${y(expected.high)}h10M${x(rounds.length)} ${y(expected.high)}V${y(expected.low)}m-5 0h10`}
            className="spread-line"
          />
          <circle cx={x(rounds.length)} cy={y(expected.tir)} r="4" className="reading-dot" />
          <text x={x(rounds.length)} y={BOTTOM + 18} className="plot-mark" textAnchor="middle">
            next
          </text>
        </>
      )}
      {rounds.map(({ id, label, tir }, k) => (
        <g key={id}>
          <circle cx={x(k)} cy={y(tir)} r="3.6" className="ink-dot" />
          <text x={x(k)} y={y(tir) - 8} className="plot-bold halo" textAnchor="middle">
            {lengthWords(tir, unit).replace(/[^\d.,]*$/, '')}
          </text>
          <text x={x(k)} y={BOTTOM + 18} className="plot-note" textAnchor="middle">
            {label}
          </text>
        </g>
      ))}
    </svg>
  );
}
