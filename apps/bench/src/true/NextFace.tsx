import { clockAngle, clockText } from '@oddwheel/build/true/clock';
import type { JSX } from 'react';
import { arc, polar } from './geometry.ts';

/** Clock face of the next step: high spot as a tick, and where the bead goes. */
export function NextFace({ high, bead }: { high: number; bead: string }): JSX.Element {
  const at = clockAngle(bead) ?? 0;
  const [from, to] = [polar(58, high), polar(82, high)];
  const dot = polar(82, high);
  return (
    <svg
      className="next-face"
      viewBox="-90 -90 180 180"
      role="img"
      aria-label={`High spot at ${clockText(high)}, bead at ${bead}`}
    >
      <circle r="68" className="face-line" />
      <circle r="30" className="face-line" />
      <path d="M-76 0H76M0-76V76" className="centre-line" />
      {[12, 3, 6, 9].map((hour) => {
        const { x, y } = polar(50, (hour * Math.PI) / 6);
        return (
          <text key={hour} x={x} y={y + 4.5} className="plot-hour" textAnchor="middle">
            {hour}
          </text>
        );
      })}
      <path d={arc(68, at - 0.24, at + 0.24)} className="bead-line" />
      <line x1={from.x} y1={from.y} x2={to.x} y2={to.y} className="high-line" />
      <circle cx={dot.x} cy={dot.y} r="4" className="ink-dot" />
    </svg>
  );
}
