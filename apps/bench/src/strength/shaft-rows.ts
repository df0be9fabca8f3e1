import type { ShaftLine, ShaftPlaceLine, ShaftPoint } from '@oddwheel/build/assess/strength/shaft-lines';
import type { Use } from '@oddwheel/build/assess/types';
import { THIN_SPACE } from '@oddwheel/quantity/format';
import { digits, unitOf, unitSize } from '../numbers/shown.ts';
import type { Point } from '../plots/labels.ts';

export type KnownLine = Extract<ShaftLine, { readonly ok: true }>;

/** A plane through a shaft in a builder's words, and the sign that makes its upper or leading side positive. */
interface Plane {
  readonly name: string;
  readonly sign: 1 | -1;
}

/** A curve along a shaft, stations and values in SI. */
export interface AlongCurve {
  readonly key: 'first' | 'second' | 'both';
  /** Words at the curve; empty where the row names it. */
  readonly text: string;
  readonly points: readonly Point[];
  /** Where it is greatest by size: its place among the points. */
  readonly peak: number;
}

/** One of the plots that stand under each other over the length of a shaft. */
export interface AlongRow {
  readonly key: string;
  readonly name: string;
  readonly use: Use;
  readonly curves: readonly AlongCurve[];
}

/** Both planes of a shaft: seen from the side and from above where the shaft lies level, else by number. */
export function planesOf({ directions }: Pick<KnownLine, 'directions'>): readonly [Plane, Plane] {
  const planes = directions.map((direction, k): Plane => {
    const greatest = direction.reduce(
      (best, part, n) => (Math.abs(part) > Math.abs(direction[best] ?? 0) ? n : best),
      0,
    );
    const along = direction[greatest] ?? 1;
    const sign = along < 0 ? -1 : 1;
    if (Math.abs(along) < 0.9999) return { name: k === 0 ? 'first plane' : 'second plane', sign };
    return { name: ['fore and aft', 'side to side', 'up and down'][greatest] ?? '', sign };
  });
  return [planes[0] as Plane, planes[1] as Plane];
}

/** Decimals of lengths along a shaft and across it, in millimetres and in other units. */
const MM = 1;
const OTHERS = 3;

/** A length along a shaft or across it, to a tenth of a millimetre, without its unit. */
export function lengthNumber(value: number, units: Readonly<Record<string, string>>): string {
  return digits(value / unitSize('length', units), unitOf('length', units) === 'mm' ? MM : OTHERS);
}

/** The same in a sentence: no zeros at its end, and with its unit. */
export const lengthText = (value: number, units: Readonly<Record<string, string>>): string =>
  `${shortLength(value, units)}${THIN_SPACE}${unitOf('length', units)}`;

export const shortLength = (value: number, units: Readonly<Record<string, string>>): string =>
  lengthNumber(value, units).replace(/\.?0+$/, '');

/** Below this part of the greatest of its kind a value is rounding. */
const NOTHING = 1e-7;

/** What is plotted along a shaft, in the order in which it is looked at. */
export function rowsOf(line: KnownLine): readonly AlongRow[] {
  const planes = planesOf(line);
  const curve = (key: AlongCurve['key'], text: string, value: (point: ShaftPoint) => number): AlongCurve => {
    const values = line.points.map(value);
    const peak = values.reduce((best, one, k) => (Math.abs(one) > Math.abs(values[best] ?? 0) ? k : best), 0);
    const least = NOTHING * Math.abs(values[peak] ?? 0);
    const points = line.points.map(({ station }, k): Point => {
      const here = values[k] ?? 0;
      return [station, Math.abs(here) < least ? 0 : here];
    });
    return { key, text, points, peak };
  };
  const inPlanes = (value: (point: ShaftPoint) => readonly [number, number]): readonly AlongCurve[] => [
    curve('first', planes[0].name, (point) => planes[0].sign * value(point)[0]),
    curve('second', planes[1].name, (point) => planes[1].sign * value(point)[1]),
  ];
  const one = (key: string, name: string, use: Use, value: (point: ShaftPoint) => number): AlongRow => {
    return { key, name, use, curves: [curve('both', '', value)] };
  };
  const bending = [...inPlanes((point) => point.bending), curve('both', 'both together', (point) => point.bendingBoth)];
  return [
    { key: 'bending', name: 'Bending', use: 'torque', curves: bending },
    one('torque', 'Torque', 'torque', (point) => point.torque),
    { key: 'shear', name: 'Shear', use: 'force', curves: inPlanes((point) => point.shear) },
    { key: 'deflection', name: 'Deflection', use: 'length', curves: inPlanes((point) => point.across) },
    one('slope', 'Slope', 'angle', (point) => point.slope),
    one('twist', 'Twist', 'angle', (point) => point.twist),
  ];
}

/** Values of a curve at a station: two where it jumps, the earlier side first; none beyond the ends. */
export function valuesAt(points: readonly Point[], station: number): readonly number[] {
  const on = points.filter(([at]) => Math.abs(at - station) < 1e-7).map(([, value]) => value);
  if (on.length > 0) return on;
  const k = points.findIndex(([at]) => at > station);
  const [before, after] = [points[k - 1], points[k]];
  if (!before || !after) return [];
  return [before[1] + ((after[1] - before[1]) * (station - before[0])) / (after[0] - before[0])];
}

/** The greatest by size of the values at a station. */
export const greatestAt = (points: readonly Point[], station: number): number | null =>
  valuesAt(points, station).reduce<number | null>(
    (best, one) => (best === null || Math.abs(one) > Math.abs(best) ? one : best),
    null,
  );

/** The place that governs a shaft over all cases: the one whose lesser reserve is nearest to what is wanted of it, or furthest below. */
export function governingPlace({ places }: Pick<KnownLine, 'places'>): ShaftPlaceLine | null {
  const need = ({ least, diameter }: ShaftPlaceLine): number => (least === null ? 0 : least / diameter);
  const most = places.reduce<ShaftPlaceLine | null>(
    (best, one) => (best && need(best) >= need(one) ? best : one),
    null,
  );
  return most && need(most) > 0 ? most : null;
}
