/**
 * What one set of dial readings says of a section: offset, ovality, lobes, noise, and what is wrong with the set.
 * A reading is positive when the surface stands further out; its angle is the mark on the part under the indicator.
 */
import { leastSquares } from '../numerics/least-squares.ts';
import type { Offset } from './adviser-types.ts';

export interface Reading {
  /** rad */
  readonly angle: number;
  /** m */
  readonly value: number;
}

/** One order of the form: 1 is the offset, 2 the ovality, 3 and more are lobes. */
export interface Harmonic {
  readonly order: number;
  /** Cosine and sine part, m. */
  readonly cosine: number;
  readonly sine: number;
  /** m */
  readonly amplitude: number;
  /** First angle from mark 0 at which it stands furthest out, rad, 0..2π/order. */
  readonly high: number;
  /** Standard uncertainty of either part, m. */
  readonly spread: number;
}

export interface SectionForm {
  /** Highest less lowest reading, m. */
  readonly tir: number;
  /** TIR of the fitted curve, which also has the peaks between the marks, m. */
  readonly fittedTir: number;
  readonly mean: number;
  /** Offset of the least-squares circle, m, and the standard uncertainty of either component. */
  readonly offset: Offset;
  readonly offsetSpread: number;
  /** From order 1 up to the highest that the readings can tell. */
  readonly harmonics: readonly Harmonic[];
  /** Standard deviation of one reading about the fitted curve, m; at least what the dial's step leaves. */
  readonly noise: number;
  /** Last reading less first at the same mark, m; left out when the set was not closed. */
  readonly closing?: number;
  /** The closing error is more than a tenth of the TIR: the set is to be taken again. */
  readonly closes: boolean;
  /** Indexes of readings that stand far out of line with the others. */
  readonly outliers: readonly number[];
}

/** Fewest and most readings of a set. */
export const FEWEST = 4;
export const MOST = 72;
/** Orders above this say nothing about bearings and joints that a dial can follow. */
const HIGHEST_ORDER = 9;
/** Angles nearer than this are one mark. */
const SAME_MARK = (0.6 * Math.PI) / 180;
/** A closing error above this part of the TIR spoils the set. */
const CLOSING = 0.1;
/** A reading this many standard deviations away, judged without itself, is an outlier. */
const FAR_OUT = 5;
/** Freedom that is left for judging noise and outliers. */
const FREE = 3;
/** A set tells an order when its parts are known at least this well beside evenly spaced marks. */
const TELLS = 4;

const turn = (angle: number): number => ((angle % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
const apart = (a: number, b: number): number => Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)));

/**
 * Form of a section from 4 to 72 readings at any angles.
 *
 * Source: least-squares mean line, BS 3730 / ISO 4291 (memory); uneven marks by least squares.
 * @param step smallest step that the dial can be read to, m
 * @throws RangeError when there are too few or too many readings, one is not a number, or they do not go round the part.
 */
export function sectionForm(readings: readonly Reading[], step: number): SectionForm {
  if (readings.length < FEWEST || readings.length > MOST)
    throw new RangeError(`readings: ${readings.length} read; ${FEWEST} to ${MOST} are accepted.`);
  for (const [k, { angle, value }] of readings.entries())
    if (!Number.isFinite(angle) || !Number.isFinite(value))
      throw new RangeError(`readings, number ${k + 1}: angle ${angle}, value ${value} read; numbers are accepted.`);
  const orders = tellableOrders(readings);
  const fitted = orders > 0 ? fitOrders(readings, orders) : undefined;
  if (!fitted)
    throw new RangeError('readings: they do not go round the part; at least three marks well apart are accepted.');
  const values = readings.map(({ value }) => value);
  const tir = Math.max(...values) - Math.min(...values);
  const free = readings.length - (2 * orders + 1);
  const left = Math.sqrt(fitted.residuals.reduce((sum, r) => sum + r * r, 0) / Math.max(1, free));
  const noise = Math.max(left, step / Math.sqrt(12));
  const harmonics = Array.from({ length: orders }, (_, k): Harmonic => {
    const order = k + 1;
    const cosine = fitted.values[2 * k + 1] as number;
    const sine = fitted.values[2 * k + 2] as number;
    const variance = Math.max(fitted.spread[2 * k + 1]?.[2 * k + 1] ?? 0, fitted.spread[2 * k + 2]?.[2 * k + 2] ?? 0);
    return {
      order,
      cosine,
      sine,
      amplitude: Math.hypot(cosine, sine),
      high: turn(Math.atan2(sine, cosine)) / order,
      spread: noise * Math.sqrt(variance),
    };
  });
  const first = harmonics[0] as Harmonic;
  const closing = closingError(readings);
  return {
    tir,
    fittedTir: curveTir(harmonics),
    mean: fitted.values[0] as number,
    offset: { x: first.cosine, y: first.sine },
    offsetSpread: first.spread,
    harmonics,
    noise,
    ...(closing === undefined ? {} : { closing }),
    closes: closing === undefined || Math.abs(closing) <= Math.max(CLOSING * tir, step),
    outliers: outliersOf(readings, orders, step),
  };
}

/** Coefficients of mean, cosine and sine parts up to an order. */
function fitOrders(readings: readonly Reading[], orders: number) {
  return leastSquares(
    readings.map(({ angle }) => [
      1,
      ...Array.from({ length: orders }, (_, k) => [Math.cos((k + 1) * angle), Math.sin((k + 1) * angle)]).flat(),
    ]),
    readings.map(({ value }) => value),
  );
}

/** Highest order that leaves a freedom and is told about as well as by even marks; 0 when not even the offset is. */
function tellableOrders(readings: readonly Reading[]): number {
  const marks = readings.filter(
    ({ angle }, k) => readings.findIndex((one) => apart(one.angle, angle) < SAME_MARK) === k,
  );
  for (let orders = Math.min(HIGHEST_ORDER, Math.floor((marks.length - 2) / 2)); orders > 0; orders--) {
    const spread = fitOrders(readings, orders)?.spread;
    const worst = spread && Math.max(...spread.slice(1).map((row, k) => row[k + 1] as number));
    if (worst !== undefined && worst < (TELLS * 2) / readings.length) return orders;
  }
  // Three marks are enough for the offset, however poorly they are spaced; its spread says so.
  return marks.length >= 3 && fitOrders(readings, 1) ? 1 : 0;
}

function closingError(readings: readonly Reading[]): number | undefined {
  const first = readings[0] as Reading;
  const last = readings.at(-1) as Reading;
  return apart(first.angle, last.angle) < SAME_MARK ? last.value - first.value : undefined;
}

/** Highest less lowest of the fitted curve. */
function curveTir(harmonics: readonly Harmonic[]): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let k = 0; k < 720; k++) {
    const angle = (k * Math.PI) / 360;
    let value = 0;
    for (const { order, cosine, sine } of harmonics)
      value += cosine * Math.cos(order * angle) + sine * Math.sin(order * angle);
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return high - low;
}

/** Readings far from what the others say, each judged by a fit without it. */
function outliersOf(readings: readonly Reading[], orders: number, step: number): number[] {
  const low = Math.min(orders, Math.floor((readings.length - 2 - FREE) / 2));
  if (low < 1) return [];
  return readings.flatMap((reading, k) => {
    const others = readings.filter((_, i) => i !== k);
    const fit = fitOrders(others, low);
    if (!fit) return [];
    const row = [
      1,
      ...Array.from({ length: low }, (_, n) => [(n + 1) * reading.angle]).flatMap(([a]) => [
        Math.cos(a as number),
        Math.sin(a as number),
      ]),
    ];
    const expected = row.reduce((sum, c, j) => sum + c * (fit.values[j] as number), 0);
    const reach = row.reduce((sum, c, a) => sum + row.reduce((s, d, b) => s + c * d * (fit.spread[a]?.[b] ?? 0), 0), 0);
    const free = others.length - (2 * low + 1);
    const noise = Math.sqrt(fit.residuals.reduce((sum, r) => sum + r * r, 0) / free);
    const unit = Math.max(noise, step / Math.sqrt(12)) * Math.sqrt(1 + reach);
    return Math.abs(reading.value - expected) > FAR_OUT * unit ? [k] : [];
  });
}

/** Offset told by the highest and lowest reading alone. */
export interface OffsetByEnds {
  readonly tir: number;
  readonly offset: Offset;
  /** Standard uncertainty of either component, m. */
  readonly offsetSpread: number;
  /** High and low do not stand opposite: the section is oval or lobed, and twelve readings would tell more. */
  readonly lopsided: boolean;
}

/** High and low this far from opposite say that the section is not round. */
const LOPSIDED = (40 * Math.PI) / 180;
/** How well the eye finds the turning point of a dial, one standard deviation. */
const FINDS = (12 * Math.PI) / 180;

/**
 * Offset from the highest and lowest reading and their angles.
 * @throws RangeError when the highest is below the lowest, or both stand at one mark.
 */
export function offsetByEnds(highest: Reading, lowest: Reading, step: number): OffsetByEnds {
  const tir = highest.value - lowest.value;
  if (!(tir >= 0)) throw new RangeError(`highest: ${highest.value} m read, below the lowest, ${lowest.value} m.`);
  const x = Math.cos(highest.angle) - Math.cos(lowest.angle);
  const y = Math.sin(highest.angle) - Math.sin(lowest.angle);
  const size = Math.hypot(x, y);
  if (tir > 0 && size < 0.5)
    throw new RangeError('highest and lowest: both stand at nearly the same mark; opposite marks are expected.');
  const skew = Math.PI - apart(highest.angle, lowest.angle);
  const part = size > 0 ? tir / 2 / size : 0;
  return {
    tir,
    offset: { x: x * part, y: y * part },
    offsetSpread: Math.hypot(step / Math.sqrt(12), (tir / 2) * Math.hypot(FINDS / Math.SQRT2, skew / 4)),
    lopsided: skew > LOPSIDED,
  };
}
