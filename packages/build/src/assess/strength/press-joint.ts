/** What a pressed hub holds along and round its shaft, in the shop and at the temperatures of work. */
import { effectiveInterference } from '@oddwheel/mechanics/fit/effective-interference';
import { pressFitHold } from '@oddwheel/mechanics/fit/press-fit-hold';
import { FIT_FRICTION } from '@oddwheel/tables/fit-friction';
import { FIT_METALS } from '@oddwheel/tables/fit-metals';
import { rowInSi } from '@oddwheel/tables/table';
import type { Hub, HubPress } from '../../model/hub.ts';
import type { Value } from '../../model/model.ts';
import type { Loads } from '../../model/strength.ts';
import type { At, Used } from '../geometry/types.ts';
import { growthOf, warmed } from './warmth.ts';

/** m: roughness Rz of a seat that is turned with care (common practice). */
const TURNED = 10e-6;
/** Pressed fits of other metals than steel have one row each. */
const FRICTION = { 'grey cast iron': 'steel in cast iron', aluminium: 'steel in aluminium' } as const;

const elastic = (metal: string) => {
  const { youngs = Number.NaN, poisson = Number.NaN } = rowInSi(FIT_METALS, metal);
  return { youngs, poisson };
};

const STEEL = elastic('steel');

/** Interference that presses, once the peaks of both seats are flat. */
function pressing(press: HubPress, interference: number, address: string): { effective: number; used: Used } {
  const rough = press.roughness ?? TURNED;
  const input = { interference, shaftRoughness: rough, holeRoughness: rough, factor: 0.8 };
  const output = effectiveInterference.run(input);
  const from = press.roughness === null ? 'turned with care: Rz 10 µm (common practice)' : `${address}/roughness`;
  const origins = {
    interference: `${address}/interference`,
    shaftRoughness: from,
    holeRoughness: from,
    factor: 'DIN 7190 (from memory)',
  };
  return { effective: output.effective, used: { method: effectiveInterference, input, output, origins } };
}

/** Interference at the worst of the temperatures that a joint sees; `worst` is null where that is the shop's. */
export interface Tightness {
  readonly interference: number;
  /** What the temperature takes from it, or adds to it, as a size. */
  readonly change: number;
  readonly worst: Value | null;
  readonly used: readonly Used[];
}

/** A pressed hub whose sizes are known. */
export interface PressJoint {
  readonly press: HubPress;
  readonly hub: Hub;
  readonly diameter: number;
  /** Address of the seat. */
  readonly seat: string;
}

/**
 * The least or the greatest interference of a pressed hub over the shop and the cold and hot of the build. A hub of the shaft's own metal
 * keeps what it has.
 */
export function tightness(
  { press, hub, diameter, seat }: PressJoint,
  which: 'least' | 'most',
  { cold, hot }: Pick<Loads, 'cold' | 'hot'>,
  at: At,
): Tightness {
  const shop = pressing(press, press[which], `${hub.address}/press`);
  const { elastic: outer } = hub.metal;
  const kept: Tightness = { interference: shop.effective, change: 0, worst: null, used: [shop.used] };
  if (growthOf(outer) === growthOf('steel')) return kept;
  const sign = which === 'least' ? 1 : -1;
  return [cold, hot].reduce<Tightness>((worst, temperature) => {
    const joint = { play: -shop.effective, diameter, outer, inner: 'steel', from: `${seat}/diameter` } as const;
    const { play, used } = warmed(joint, temperature, at);
    if (sign * (worst.interference + play) <= 0) return worst;
    const change = Math.abs(shop.effective + play);
    return { interference: -play, change, worst: temperature, used: [shop.used, used] };
  }, kept);
}

/** Temperatures that decide over a pressed hub. */
export const temperaturesOf = (hub: Hub, { cold, hot }: Pick<Loads, 'cold' | 'hot'>): readonly Value[] =>
  growthOf(hub.metal.elastic) === growthOf('steel') ? [] : [cold, hot];

/** Sizes and metals of a pressed hub, and where they come from, as the methods ask for them. */
export function pressSizes({ press, hub, diameter, seat }: PressJoint) {
  const metal = elastic(hub.metal.elastic);
  const address = `${hub.address}/press`;
  const stiff = `fit-metals/${hub.metal.elastic}`;
  return {
    sizes: {
      diameter,
      outside: press.outside,
      bore: press.bore,
      hubYoungs: metal.youngs,
      shaftYoungs: STEEL.youngs,
      hubPoisson: metal.poisson,
      shaftPoisson: STEEL.poisson,
    },
    origins: {
      interference: 'above',
      diameter: `${seat}/diameter`,
      outside: `${address}/outside`,
      bore: `${address}/bore, 0 where it is blank`,
      hubYoungs: stiff,
      shaftYoungs: 'fit-metals/steel',
      hubPoisson: stiff,
      shaftPoisson: 'fit-metals/steel',
    },
  };
}

/** What the friction of a pressed hub holds at an interference, beside a push along the shaft. */
export function pressHolds(
  joint: PressJoint,
  interference: number,
  axial: { readonly value: number; readonly from: string },
) {
  const { press, hub } = joint;
  const { sizes, origins } = pressSizes(joint);
  const row = hub.metal.elastic === 'steel' ? press.joined : FRICTION[hub.metal.elastic];
  const input = {
    ...sizes,
    interference,
    length: press.length,
    friction: rowInSi(FIT_FRICTION, row).low ?? Number.NaN,
    axial: axial.value,
  };
  const output = pressFitHold.run(input);
  const used: Used = {
    method: pressFitHold,
    input,
    output,
    origins: {
      ...origins,
      length: `${hub.address}/press/length`,
      friction: `fit-friction/${row}, the low end`,
      axial: axial.from,
    },
  };
  return { ...output, used };
}
