import { dutyLife } from '@oddwheel/mechanics/bearing/duty-life';
import { conditionFactor } from '@oddwheel/mechanics/bearing/modified-life';
import { ratingLife } from '@oddwheel/mechanics/bearing/rating-life';
import { viscosityRatio } from '@oddwheel/mechanics/bearing/viscosity-ratio';
import { BEARING_LIMITS } from '@oddwheel/tables/bearing-limits';
import { rowInSi } from '@oddwheel/tables/table';
import type { BearingFacts, BearingSeat, Loads } from '../../model/strength.ts';
import type { Used } from '../geometry/types.ts';
import { type BearingLoads, equivalentOf, equivalentUsed } from './bearing-loads.ts';
import type { DutyBin, DutyRun } from './duty.ts';

/** A bearing as its life asks for it. */
export interface Lasting {
  readonly address: string;
  readonly facts: BearingFacts;
  readonly clearance: BearingSeat['clearance'];
  readonly seal: BearingSeat['seal'];
  readonly bore: number;
  readonly outside: number;
}

/** What the life stands on besides: shaft of this index, bearing of this index on it. */
export interface LifeGround {
  readonly duty: DutyRun;
  readonly k: number;
  readonly b: number;
  readonly bins: readonly BearingLoads[];
  readonly loads: Pick<Loads, 'reliability' | 'dirt'>;
  /** Viscosity at work. */
  readonly oil: number;
}

/** How far a bearing lasts, and the part of the duty that wears it most. */
export interface Life {
  readonly distance: number;
  readonly worst: { readonly bin: DutyBin; readonly load: number; readonly speed: number };
  readonly used: () => readonly Used[];
}

/** Loads below this part of the rating do not wear. */
const NOTHING = 1e-6;
/** Below this viscosity ratio the standard gives no factor; the least one counts. */
const LEAST_RATIO = 0.1;
const SEALS = { open: 'open', shields: 'shields', 'rubbing seals': 'rubbing' } as const;

/** Factor of dirt by what surrounds the bearing and how it is sealed; a seal that is not named counts as none. */
export function dirtFactor(dirt: Loads['dirt'], seal: BearingSeat['seal']): number {
  return rowInSi(BEARING_LIMITS, dirt)[SEALS[seal ?? 'open']] ?? Number.NaN;
}

/**
 * Life over a duty: each bin by its own load, viscosity ratio and conditions, added up by turns.
 * @returns null where no bin loads the bearing
 */
export function lifeOf(bearing: Lasting, ground: LifeGround): Life | null {
  const { facts, clearance, seal, bore, outside, address } = bearing;
  const { duty, k, b, bins, loads, oil } = ground;
  const contamination = dirtFactor(loads.dirt, seal);
  const reliabilityFactor = rowInSi(BEARING_LIMITS, loads.reliability).reliability ?? Number.NaN;
  const [element, exponent] = facts.kind === 'tapered' ? (['roller', 10 / 3] as const) : (['ball', 3] as const);
  const step = (load: number, speed: number) => {
    const thick = { speed, bore, outside, viscosity: oil };
    const film = viscosityRatio.run(thick);
    const around = {
      viscosityRatio: Math.max(LEAST_RATIO, film.ratio),
      contamination,
      fatigueLimit: facts.fatigue,
      load,
      element,
    };
    const conditions = conditionFactor.run(around);
    const rated = {
      rating: facts.dynamic,
      load,
      speed,
      exponent,
      reliabilityFactor,
      conditionFactor: conditions.factor,
    };
    return { thick, film, around, conditions, rated, life: ratingLife.run(rated) };
  };
  const lives: number[] = [];
  const turns: number[] = [];
  let idle = 0;
  let worst: { readonly n: number; readonly wear: number; readonly load: number; readonly speed: number } | null = null;
  for (let n = 0; n < duty.bins.length; n++) {
    const bin = duty.bins[n] as DutyBin;
    const on = bins[n]?.loads[b];
    const load = on ? equivalentOf(facts, clearance, on) : 0;
    const speed = bin.load.shafts[k]?.speed ?? 0;
    if (!(load > NOTHING * facts.dynamic)) {
      idle += bin.ofDistance;
      continue;
    }
    const { life } = step(load, speed);
    lives.push(life.turns);
    turns.push(bin.ofDistance);
    const wear = bin.ofDistance / life.turns;
    if (!worst || wear > worst.wear) worst = { n, wear, load, speed };
  }
  if (!worst) return null;
  const { n, load, speed } = worst;
  const input = { lives, turns, idle, road: duty.distance / (duty.turns[k] as number) };
  const output = dutyLife.run(input);
  const bin = duty.bins[n] as DutyBin;
  return {
    distance: output.distance,
    worst: { bin, load, speed },
    used: () => {
      const there = step(load, speed);
      const from = `${address}/row: ${facts.source}`;
      const part = `where it wears most: “${bin.point.name}”`;
      return [
        equivalentUsed(facts, clearance, bins[n]?.loads[b] ?? { radial: 0, axial: 0 }, address).used,
        {
          method: viscosityRatio,
          input: there.thick,
          output: there.film,
          origins: { speed: part, bore: from, outside: from, viscosity: '/brief/loads/oil' },
        },
        {
          method: conditionFactor,
          input: there.around,
          output: there.conditions,
          origins: {
            viscosityRatio: there.film.ratio < LEAST_RATIO ? 'below the least of the standard, which counts' : 'above',
            contamination: `bearing-limits/${loads.dirt}, by /brief/loads/dirt and ${address}/seal`,
            fatigueLimit: from,
            load: 'above',
            element: 'kind of the bearing',
          },
        },
        {
          method: ratingLife,
          input: there.rated,
          output: there.life,
          origins: {
            rating: from,
            load: 'above',
            speed: part,
            exponent: 'kind of the bearing',
            reliabilityFactor: `bearing-limits/${loads.reliability}`,
            conditionFactor: 'above',
          },
        },
        {
          method: dutyLife,
          input,
          output,
          origins: {
            lives: 'the same for each part of the duty',
            turns: `parts of the distance, ${duty.origin}`,
            idle: 'parts that do not load it',
            road: 'roll-out and ratios behind this shaft',
          },
        },
      ];
    },
  };
}
