/** Seats of two metals at the temperatures of work. */
import { seatWarm } from '@oddwheel/mechanics/fit/seat-warm';
import { FIT_METALS } from '@oddwheel/tables/fit-metals';
import { rowInSi } from '@oddwheel/tables/table';
import type { Value } from '../../model/model.ts';
import type { At, Used } from '../geometry/types.ts';

/** K; where parts are measured. */
export const SHOP = 293.15;

export type SeatMetal = 'steel' | 'aluminium' | 'grey cast iron' | 'bearing steel';

/** Growth per degree. */
export const growthOf = (metal: SeatMetal): number => rowInSi(FIT_METALS, metal).growth ?? Number.NaN;

/** A seat in the shop: what lies outside and inside of it, its play, below zero where it is tight, and where the diameter is from. SI. */
interface InShop {
  readonly play: number;
  readonly diameter: number;
  readonly outer: SeatMetal;
  readonly inner: SeatMetal;
  readonly from: string;
}

/** Play at a temperature, from the play in the shop; below zero it is tight. */
export function warmed(
  { play, diameter, outer, inner, from }: InShop,
  temperature: Value,
  at: At,
): { readonly play: number; readonly used: Used } {
  const input = {
    play,
    diameter,
    outerGrowth: growthOf(outer),
    innerGrowth: growthOf(inner),
    shop: SHOP,
    at: at(temperature),
  };
  const output = seatWarm.run(input);
  const origins = {
    play: 'above',
    diameter: from,
    outerGrowth: `fit-metals/${outer}`,
    innerGrowth: `fit-metals/${inner}`,
    shop: '20 °C, where parts are measured',
    at: temperature.address,
  };
  return { play: output.warm, used: { method: seatWarm, input, output, origins } };
}
