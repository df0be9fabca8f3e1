import { cubicAt } from '@oddwheel/mechanics/numerics/monotone-cubic';
import { type TorqueCurve, torqueCurveThrough } from '@oddwheel/mechanics/vehicle/curve';
import { toSi } from '@oddwheel/quantity/units';
import type { Curve } from './sections.ts';

export type Row = readonly [speed: number, torque: number];

/** Size of the drawing and the axes' ends, in the units of the curve; power in the unit of the build. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly mostSpeed: number;
  readonly mostTorque: number;
  readonly mostPower: number;
}

/** Room for the axes' lettering, px. */
export const ROOM = { left: 44, right: 44, top: 30, bottom: 42 } as const;

/** Steps to which a drag or a key snaps, in the unit of the curve. */
export const STEPS: Readonly<Record<string, number>> = { rpm: 50, 'rad/s': 5, 'N.m': 0.1, 'lbf.ft': 0.1 };

/** A step of 1, 2 or 5 times a power of ten that parts an axis into at most `most` parts. */
export function niceStep(end: number, most: number): number {
  const least = end / most;
  const ten = 10 ** Math.floor(Math.log10(least));
  return ([1, 2, 5].find((digit) => digit * ten >= least * (1 - 1e-9)) ?? 10) * ten;
}

/** Marks of an axis from zero. */
export function ticksOf(end: number, most: number): readonly number[] {
  const step = niceStep(end, most);
  const ticks: number[] = [];
  for (let k = 0; k * step <= end * (1 + 1e-9); k += 1) ticks.push(Number((k * step).toPrecision(12)));
  return ticks;
}

/** Next round end of an axis above a value, with room above it. */
const roomy = (value: number): number => {
  const step = niceStep(value * 1.1, 8);
  return Math.ceil((value * 1.1) / step - 1e-9) * step;
};

/** Least axes of a plot without points. */
const EMPTY = { speed: 8000, torque: 60, power: 40 };

/** Axes that hold a curve with room to draw beyond it. */
export function frameFor(width: number, height: number, rows: readonly Row[], mostPower: number): Frame {
  if (rows.length === 0)
    return { width, height, mostSpeed: EMPTY.speed, mostTorque: EMPTY.torque, mostPower: EMPTY.power };
  return {
    width,
    height,
    mostSpeed: roomy(Math.max(...rows.map(([speed]) => speed), 1)),
    mostTorque: roomy(Math.max(...rows.map(([, torque]) => torque), 1)),
    mostPower: roomy(Math.max(mostPower, 1)),
  };
}

const across = (frame: Frame): number => frame.width - ROOM.left - ROOM.right;
const up = (frame: Frame): number => frame.height - ROOM.top - ROOM.bottom;

export const xOf = (frame: Frame, speed: number): number => ROOM.left + (speed / frame.mostSpeed) * across(frame);
export const yOf = (frame: Frame, part: number): number => frame.height - ROOM.bottom - part * up(frame);

const snapped = (value: number, step: number): number =>
  Number((Math.max(0, Math.round(value / step)) * step).toPrecision(12));

/** A place of the drawing as a point of the curve, snapped to steps; null outside of the axes. */
export function rowAt(frame: Frame, curve: Pick<Curve, 'speedUnit' | 'torqueUnit'>, x: number, y: number): Row | null {
  const part = (x - ROOM.left) / across(frame);
  const rise = (frame.height - ROOM.bottom - y) / up(frame);
  if (part < 0 || part > 1 || rise < 0 || rise > 1) return null;
  return [
    snapped(part * frame.mostSpeed, STEPS[curve.speedUnit] ?? 1),
    snapped(rise * frame.mostTorque, STEPS[curve.torqueUnit] ?? 0.1),
  ];
}

/** The point nearest to a place, when it is within reach of a finger. */
export function nearestRow(frame: Frame, rows: readonly Row[], x: number, y: number, reach: number): number | null {
  let best: number | null = null;
  let least = reach;
  rows.forEach(([speed, torque], index) => {
    const away = Math.hypot(xOf(frame, speed) - x, yOf(frame, torque / frame.mostTorque) - y);
    if (away > least) return;
    best = index;
    least = away;
  });
  return best;
}

/** A moved point, kept a step away from its neighbours. */
export function between(rows: readonly Row[], index: number, [speed, torque]: Row, step: number): Row {
  const before = rows[index - 1];
  const after = rows[index + 1];
  const low = before ? before[0] + step : 0;
  const high = after ? after[0] - step : Number.POSITIVE_INFINITY;
  // Neighbours closer than two steps leave no room: the speed stays.
  const own = rows[index]?.[0] ?? speed;
  return [low > high ? own : Math.min(high, Math.max(low, speed)), Math.max(0, torque)];
}

/** SI values of one unit of the curve's speeds and of its torques. */
export const sizesOf = (curve: Pick<Curve, 'speedUnit' | 'torqueUnit'>): readonly [speed: number, torque: number] => [
  toSi('angularSpeed', curve.speedUnit, 1),
  toSi('torque', curve.torqueUnit, 1),
];

/** The curve in SI; null where its rows do not rise. */
export function curveInSi(curve: Curve): TorqueCurve | null {
  const rising = curve.rows.every(([speed], k) => speed >= 0 && (k === 0 || speed > (curve.rows[k - 1]?.[0] ?? 0)));
  if (curve.rows.length < 2 || !rising) return null;
  const [speedSize, torqueSize] = sizesOf(curve);
  return torqueCurveThrough(
    curve.rows.map(([speed]) => speed * speedSize),
    curve.rows.map(([, torque]) => torque * torqueSize),
  );
}

const PLACES = 96;

/** Torque and power along the curve, SI, close enough together to draw. */
export function alongCurve(known: TorqueCurve): readonly { readonly speed: number; readonly torque: number }[] {
  const { x } = known.points;
  const [from, to] = [x[0] ?? 0, x.at(-1) ?? 0];
  return Array.from({ length: PLACES + 1 }, (_, k) => {
    const speed = k === PLACES ? to : from + ((to - from) * k) / PLACES;
    return { speed, torque: cubicAt(known.points, speed) };
  });
}
