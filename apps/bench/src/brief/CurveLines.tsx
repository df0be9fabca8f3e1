import type { TorqueCurve } from '@oddwheel/mechanics/vehicle/curve';
import type { JSX } from 'react';
import { digits } from '../numbers/shown.ts';
import { alongCurve, type Frame, ROOM, ticksOf, xOf, yOf } from './curve-scale.ts';
import type { Curve } from './sections.ts';

interface Props {
  readonly frame: Frame;
  readonly curve: Curve;
  /** The curve in SI; null while there are too few points for one. */
  readonly known: TorqueCurve | null;
  readonly power: { readonly size: number; readonly symbol: string };
  readonly speedSize: number;
  readonly torqueSize: number;
}

const SYMBOLS: Readonly<Record<string, string>> = { 'N.m': 'N·m', 'lbf.ft': 'lbf·ft' };

/** Printed name of a unit of the curve. */
export const symbolOf = (unit: string): string => SYMBOLS[unit] ?? unit;

const pathThrough = (points: readonly (readonly [number, number])[]): string =>
  points.map(([x, y], k) => `${k === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');

/** Axes with name and unit, torque as a whole line, power as a dashed one, each named at its peak. */
export function CurveLines({ frame, curve, known, power, speedSize, torqueSize }: Props): JSX.Element {
  const { width, height, mostSpeed, mostTorque, mostPower } = frame;
  const [left, right, top, bottom] = [ROOM.left, width - ROOM.right, ROOM.top, height - ROOM.bottom];
  const across = width < 520 ? 5 : 10;
  const line = known ? alongCurve(known) : [];
  const torque = line.map(
    (one) => [xOf(frame, one.speed / speedSize), yOf(frame, one.torque / torqueSize / mostTorque)] as const,
  );
  const powers = line.map(
    (one) =>
      [xOf(frame, one.speed / speedSize), yOf(frame, (one.torque * one.speed) / power.size / mostPower)] as const,
  );
  /** Whether the torque's line lies above the power's at a speed, so that its name goes above it. */
  const torqueLeadsAt = (speed: number): boolean => {
    const near = line.findLast((one) => one.speed <= speed * (1 + 1e-9)) ?? line[0];
    return (
      near !== undefined && near.torque / torqueSize / mostTorque >= (near.torque * near.speed) / power.size / mostPower
    );
  };
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in a group of lines takes the focus
    <g aria-hidden="true">
      <rect className="curve-field" x={left} y={top} width={right - left} height={bottom - top} />
      {ticksOf(mostTorque, 6).map((tick) => {
        const y = yOf(frame, tick / mostTorque);
        return (
          <g key={tick}>
            <path className="curve-rule" d={`M${left} ${y.toFixed(1)}H${right}`} />
            <text x={left - 7} y={y + 4} textAnchor="end">
              {digits(tick, tick % 1 === 0 ? 0 : 1)}
            </text>
          </g>
        );
      })}
      {ticksOf(mostPower, 6).map((tick) => (
        <text key={tick} x={right + 7} y={yOf(frame, tick / mostPower) + 4}>
          {digits(tick, tick % 1 === 0 ? 0 : 1)}
        </text>
      ))}
      {ticksOf(mostSpeed, across).map((tick) => {
        const x = xOf(frame, tick);
        return (
          <g key={tick}>
            <path className="curve-axis" d={`M${x.toFixed(1)} ${bottom}v4`} />
            <text x={x} y={bottom + 18} textAnchor="middle">
              {digits(tick, 0)}
            </text>
          </g>
        );
      })}
      <path className="curve-axis" d={`M${left} ${top}V${bottom}H${right}V${top}`} />
      <text className="curve-name" x={0} y={16}>
        Torque, {symbolOf(curve.torqueUnit)}
      </text>
      <text className="curve-name" x={width} y={16} textAnchor="end">
        Power, {power.symbol}
      </text>
      <text className="curve-name" x={(left + right) / 2} y={height - 6} textAnchor="middle">
        Engine speed, {curve.speedUnit}
      </text>
      {known && (
        <>
          <path className="curve-power" d={pathThrough(powers)} />
          <path className="curve-torque" d={pathThrough(torque)} />
          <Peak
            frame={frame}
            x={xOf(frame, known.peakPowerAt / speedSize)}
            y={yOf(frame, known.peakPower / power.size / mostPower)}
            above={!torqueLeadsAt(known.peakPowerAt)}
            words={`power ${peak(known.peakPower / power.size)} at ${rounded(known.peakPowerAt / speedSize)}`}
          />
          <Peak
            frame={frame}
            x={xOf(frame, known.peakTorqueAt / speedSize)}
            y={yOf(frame, known.peakTorque / torqueSize / mostTorque)}
            above={torqueLeadsAt(known.peakTorqueAt)}
            words={`torque ${peak(known.peakTorque / torqueSize)} at ${rounded(known.peakTorqueAt / speedSize)}`}
          />
        </>
      )}
    </g>
  );
}

const rounded = (speed: number): string => digits(Math.round(speed / 10) * 10, 0);

const peak = (value: number): string => digits(value, value < 100 ? 1 : 0);

/** Width of a letter of the peak's words, px: enough to keep them on the drawing. */
const LETTER = 6.2;

function Peak(props: { frame: Frame; x: number; y: number; above: boolean; words: string }): JSX.Element {
  const { frame, x, y, above, words } = props;
  const half = (words.length * LETTER) / 2;
  const middle = Math.min(frame.width - ROOM.right - half, Math.max(ROOM.left + half, x));
  return (
    <text className="curve-peak" x={middle} y={above ? y - 12 : y + 22} textAnchor="middle">
      {words}
    </text>
  );
}
