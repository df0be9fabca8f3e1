import { fitClearance } from '@oddwheel/mechanics/fit/clearance';
import { fitLimits } from '@oddwheel/mechanics/fit/limits';
import { BEARING_RINGS, ringKey } from '@oddwheel/tables/bearing-rings';
import { isoClass } from '@oddwheel/tables/iso-limits';
import {
  type LoadTurns,
  PLATE_CLASSES,
  type PlateClass,
  plateSeat,
  type ShaftClass,
  shaftSeat,
} from '@oddwheel/tables/seat-fits';
import { rowInSi } from '@oddwheel/tables/table';
import type { Used } from '../../geometry/types.ts';
import { type BearingLoad, equivalentOf } from '../../strength/bearing-loads.ts';
import type { Scene } from '../check.ts';
import { type BearingAt, loadOn } from '../strength/bearings.ts';

/** Which ring the load goes round against; a drive pulls one way while its shaft turns. */
export const loadTurns = ({ fitted }: BearingAt): LoadTurns => fitted.seating?.turns ?? 'inner ring';

const PARTS = new WeakMap<Scene, Map<string, number | null>>();

/** Equivalent load over the dynamic rating in the hardest steady case; null where no case can be solved. */
export function partOfRating(at: BearingAt, scene: Scene): number | null {
  const kept = PARTS.get(scene) ?? new Map<string, number | null>();
  PARTS.set(scene, kept);
  const known = kept.get(at.seat.address);
  if (known !== undefined) return known;
  const found = hardest(at, scene);
  kept.set(at.seat.address, found);
  return found;
}

function hardest(at: BearingAt, { cases, strength }: Scene): number | null {
  let most: BearingLoad | null = null;
  for (const load of cases) {
    if (load.point.kind !== 'steady') continue;
    const answer = strength.answer(at.k, load);
    if (!answer.ok) return null;
    const own = loadOn(at, answer.solution).load;
    if (!most || own.radial + own.axial > most.radial + most.axial) most = own;
  }
  return most && equivalentOf(at.facts, at.fitted.clearance, most) / at.facts.dynamic;
}

/** A class at a seat: its limits and the working. */
export interface SeatLimits {
  readonly code: string;
  readonly size: number;
  readonly upper: number;
  readonly lower: number;
  readonly used: Used;
}

export function seatLimits(code: ShaftClass | PlateClass, size: number, address: string): SeatLimits {
  const { rows, ...made } = isoClass(code, size);
  const input = { size, ...made };
  const output = fitLimits.run(input);
  const origins = {
    size: address,
    grade: rows.grade,
    deviation: rows.deviation,
    delta: rows.grade,
    from: 'ISO 286-1',
  };
  return { code, size, upper: output.upper, lower: output.lower, used: { method: fitLimits, input, output, origins } };
}

/** Play between a ring of a bearing and its seat; below zero it is tight. Null where the ring is outside the table. */
export function ringPlay(
  of: 'bore' | 'outside',
  seat: SeatLimits,
): { readonly greatest: number; readonly least: number; readonly used: Used } | null {
  const key = ringKey(of, seat.size);
  if (key === null) return null;
  const ring = rowInSi(BEARING_RINGS, key);
  const [lower, upper] = [ring.lower ?? Number.NaN, ring.upper ?? Number.NaN];
  const row = `bearing-rings/${key}`;
  const input =
    of === 'bore'
      ? { holeUpper: upper, holeLower: lower, shaftUpper: seat.upper, shaftLower: seat.lower }
      : { holeUpper: seat.upper, holeLower: seat.lower, shaftUpper: upper, shaftLower: lower };
  const [hole, shaft] = of === 'bore' ? [row, 'above'] : ['above', row];
  const output = fitClearance.run(input);
  const origins = { holeUpper: hole, holeLower: hole, shaftUpper: shaft, shaftLower: shaft };
  return { ...output, used: { method: fitClearance, input, output, origins } };
}

/** The metal around an outer ring; null where the build does not say. */
export function carrier({ fitted }: BearingAt): 'steel' | 'aluminium' | null {
  switch (fitted.seating?.sitsIn) {
    case 'a steel ring':
      return 'steel';
    case 'an aluminium ring':
      return 'aluminium';
    default:
      return fitted.plate?.material ?? null;
  }
}

/** Bearings stopped neither way in their plate let the shaft grow, where another bearing holds it. */
export const slides = ({ fitted }: BearingAt): boolean =>
  fitted.ring?.towardStart === 'nothing' && fitted.ring.towardEnd === 'nothing';

/** Class of the shaft’s seat to be turned; null where the loads or the table do not give it. */
export function shaftClass(at: BearingAt, scene: Scene): ShaftClass | null {
  const { bore } = sizesOf(at);
  const part = partOfRating(at, scene);
  return bore === null || part === null ? null : shaftSeat(loadTurns(at), part, bore);
}

/** Class of the outer ring’s seat to be made; light metal wants the next tighter one. */
export function plateClass(at: BearingAt, scene: Scene): PlateClass | null {
  const part = partOfRating(at, scene);
  if (part === null) return null;
  const own = plateSeat(loadTurns(at), part, slides(at));
  return carrier(at) === 'aluminium' && !slides(at) ? (PLATE_CLASSES[PLATE_CLASSES.indexOf(own) + 1] ?? own) : own;
}

/** Bore and outside diameter of a bearing, from its number or as typed. */
export function sizesOf({ seat, facts }: BearingAt): { readonly bore: number | null; readonly outside: number | null } {
  return { bore: facts.bore ?? seat.diameter, outside: facts.outside ?? seat.outside };
}
