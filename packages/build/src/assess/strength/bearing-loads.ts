import { axialPair } from '@oddwheel/mechanics/bearing/axial-pair';
import { equivalentLoad } from '@oddwheel/mechanics/bearing/equivalent-load';
import { slopedLoad } from '@oddwheel/mechanics/bearing/sloped-load';
import { BEARING_FACTORS } from '@oddwheel/tables/bearing-factors';
import { rowInSi } from '@oddwheel/tables/table';
import type { Seat } from '../../model/model.ts';
import type { BearingFacts, BearingSeat } from '../../model/strength.ts';
import type { Used } from '../geometry/types.ts';

/** Along a shaft: toward its end is along its direction. */
export type Way = 'start' | 'end';
export const WAYS = ['start', 'end'] as const;

/** What one bearing carries: across the shaft, and along it. */
export interface BearingLoad {
  readonly radial: number;
  readonly axial: number;
}

/** What the bearings of a shaft carry, and whether the build says which of them takes the push along it. */
export interface BearingLoads {
  readonly loads: readonly BearingLoad[];
  readonly said: boolean;
}

/**
 * Whether a bearing keeps its shaft from moving one way: the shaft pushes the inner ring from behind, and the plate stops the outer ring in front.
 */
export function takes(seat: Seat, way: Way): 'yes' | 'no' | 'not said' {
  const [behind, front] =
    way === 'end'
      ? [seat.held?.towardStart ?? null, seat.bearing?.ring?.towardEnd ?? null]
      : [seat.held?.towardEnd ?? null, seat.bearing?.ring?.towardStart ?? null];
  if (behind === 'nothing' || front === 'nothing') return 'no';
  return behind === null || front === null ? 'not said' : 'yes';
}

const ROUNDING = 1e-6;

/** Factor Y of a bearing whose contact slopes; null for one that takes push only by its play. */
const slopeOf = (seat: Seat): number | null => {
  const facts = seat.bearing?.facts;
  return facts && facts.kind !== 'deep groove' ? facts.y : null;
};

/**
 * Shares the push along a shaft between its bearings, by what holds them.
 * Where several may take it, play decides which one does, and each counts with the whole. Two angular contact or tapered bearings also push each other.
 * @param radial load across the shaft at each bearing
 * @param push along the shaft on it, above zero toward its end
 */
export function shareThrust(seats: readonly Seat[], radial: readonly number[], push: number): BearingLoads {
  // A push far below the loads across is rounding.
  const thrust = Math.abs(push) > ROUNDING * Math.max(0, ...radial) ? push : 0;
  const slopes = seats.map(slopeOf);
  const [first, second] = slopes;
  if (seats.length === 2 && first != null && second != null) return pairLoads(seats, [first, second], radial, thrust);
  const way: Way = thrust > 0 ? 'end' : 'start';
  const states = seats.map((seat) => takes(seat, way));
  const sure = states.includes('yes');
  const wanted = sure ? 'yes' : states.includes('not said') ? 'not said' : 'no';
  const size = Math.abs(thrust);
  return {
    loads: seats.map((_, k) => {
      const across = radial[k] ?? 0;
      const slope = slopes[k];
      const own = slope == null ? 0 : (0.5 * across) / slope;
      return { radial: across, axial: Math.max(own, states[k] === wanted ? size : 0) };
    }),
    said: sure || size === 0,
  };
}

/** Two bearings set against each other; where the build does not say which takes which way, each counts with the worse. */
function pairLoads(
  seats: readonly Seat[],
  slopes: readonly [number, number],
  radial: readonly number[],
  thrust: number,
): BearingLoads {
  const shared = (toEnd: 0 | 1): readonly [number, number] => {
    const other = toEnd === 0 ? 1 : 0;
    const { axial1, axial2 } = axialPair.run({
      radial1: radial[toEnd] ?? 0,
      radial2: radial[other] ?? 0,
      y1: slopes[toEnd],
      y2: slopes[other],
      thrust,
    });
    return toEnd === 0 ? [axial1, axial2] : [axial2, axial1];
  };
  const [a, b] = seats as readonly [Seat, Seat];
  const takesEnd = (one: Seat, other: Seat): boolean =>
    (takes(one, 'end') === 'yes' && takes(other, 'end') !== 'yes') ||
    (takes(other, 'start') === 'yes' && takes(one, 'start') !== 'yes');
  const [toEndA, toEndB] = [takesEnd(a, b), takesEnd(b, a)];
  const clear = toEndA !== toEndB;
  const axial = clear ? shared(toEndA ? 0 : 1) : ([0, 1] as const).map((k) => Math.max(shared(0)[k], shared(1)[k]));
  return {
    loads: seats.map((_, k) => ({ radial: radial[k] ?? 0, axial: axial[k] ?? 0 })),
    said: clear || thrust === 0,
  };
}

const FACTOR_ROWS = Object.keys(BEARING_FACTORS.rows).map((key) => rowInSi(BEARING_FACTORS, key));
const column = (name: 'relative' | 'e' | 'y' | 'eC3' | 'yC3' | 'eC4' | 'yC4'): readonly number[] =>
  FACTOR_ROWS.map((row) => row[name] ?? Number.NaN);
const RELATIVE = column('relative');
const BY_CLEARANCE = {
  normal: { rowE: column('e'), rowY: column('y'), x: 0.56 },
  C3: { rowE: column('eC3'), rowY: column('yC3'), x: 0.46 },
  C4: { rowE: column('eC4'), rowY: column('yC4'), x: 0.44 },
} as const;
/** Least factor f0 of usual deep groove bearings; less of it makes more of the axial load. */
const LEAST_F0 = 12;

/** Equivalent dynamic load, without the working. */
export function equivalentOf(facts: BearingFacts, clearance: BearingSeat['clearance'], load: BearingLoad): number {
  // Without axial load every formula gives the radial load.
  return load.axial === 0 ? load.radial : equivalentUsed(facts, clearance, load, '').load;
}

/** Equivalent dynamic load with its working. */
export function equivalentUsed(
  facts: BearingFacts,
  clearance: BearingSeat['clearance'],
  { radial, axial }: BearingLoad,
  address: string,
): { readonly load: number; readonly used: Used } {
  const loaded = 'shaft on its bearings';
  const from = `${address}/row: ${facts.source}`;
  if (facts.kind !== 'deep groove') {
    const input = {
      // Push alone is out of the formula's reach; the least radial load stands for none.
      radial: Math.max(radial, 1e-3),
      axial,
      e: facts.e ?? Number.NaN,
      x: facts.x ?? Number.NaN,
      y: facts.y ?? Number.NaN,
    };
    const output = slopedLoad.run(input);
    const origins = { radial: loaded, axial: loaded, e: from, x: from, y: from };
    return { load: output.load, used: { method: slopedLoad, input, output, origins } };
  }
  const input = {
    radial,
    axial,
    staticRating: facts.static,
    f0: facts.f0 ?? LEAST_F0,
    rowLoads: RELATIVE,
    ...BY_CLEARANCE[clearance ?? 'normal'],
  };
  const output = equivalentLoad.run(input);
  const table = 'bearing-factors';
  const origins = {
    radial: loaded,
    axial: loaded,
    staticRating: from,
    f0: facts.f0 === null ? 'least of usual bearings, 12 to 16' : from,
    rowLoads: table,
    rowE: table,
    rowY: table,
    x: clearance === null ? `${table}, normal clearance` : `${address}/clearance, ${table}`,
  };
  return { load: output.load, used: { method: equivalentLoad, input, output, origins } };
}

/** Factors of the static load by the kind of bearing (ISO 76). */
export function staticFactors(facts: BearingFacts): { readonly x0: number; readonly y0: number } {
  return facts.kind === 'deep groove' ? { x0: 0.6, y0: 0.5 } : { x0: 0.5, y0: facts.y0 ?? Number.NaN };
}

/** Equivalent static load, without the working. */
export function staticOf(facts: BearingFacts, { radial, axial }: BearingLoad): number {
  const { x0, y0 } = staticFactors(facts);
  return Math.max(radial, x0 * radial + y0 * axial);
}
