import { chainPull } from '@oddwheel/mechanics/chain/pull';
import { chainStaticReserve } from '@oddwheel/mechanics/chain/static-reserve';
import type { ChainSize } from '../model/model.ts';
import { blankRow, chainSize } from '../model/rows.ts';
import { BEVEL_PAIRS, CHAINS, PULL_RESERVE } from './stock.ts';

/** Teeth of one stage. */
export interface Pair {
  readonly driver: number;
  readonly driven: number;
}

/** One way to split the reduction between gearbox output and wheel. */
export interface Split {
  readonly chain1: Pair;
  readonly bevel: Pair;
  readonly chain2: Pair;
  readonly ratio: number;
  /** Over the wanted ratio, less one. */
  readonly off: number;
}

export interface Chains {
  readonly first: ChainSize;
  readonly second: ChainSize;
  /** Torque on the first shaft and on the second, N·m, with the best efficiency. */
  readonly torqueA: number;
  readonly torqueB: number;
}

const DRIVERS = [15, 16, 17, 18, 19, 21, 23];
/** Largest reduction of one chain that leaves the driver its wrap at short centres. */
const MOST_CHAIN_RATIO = 4;
const MOST_DRIVEN = 60;
/** Ratios so close are told apart by wear and size alone. */
const ALIKE = 0.005;
/** A split further off is none. */
const MOST_OFF = 0.04;

/** Largest and smallest ratio that a chain, a bevel pair and a chain of these parts make. */
export const RATIO_RANGE = {
  least: 0.97,
  most: MOST_CHAIN_RATIO ** 2 * Math.max(...BEVEL_PAIRS.map(([a, b]) => b / a)),
} as const;

function common(a: number, b: number): number {
  let [high, low] = [a, b];
  while (low > 0) [high, low] = [low, high % low];
  return high;
}

/** Sprockets whose teeth meet only every other link of a chain with even links, and a bevel pair that meets the same teeth often. */
function unevenWear({ chain1, bevel, chain2 }: Split): number {
  const even = [chain1.driver, chain1.driven, chain2.driver, chain2.driven].filter((teeth) => teeth % 2 === 0).length;
  return even + (common(bevel.driver, bevel.driven) > 1 ? 1 : 0);
}

const teethOf = ({ chain1, bevel, chain2 }: Split): number =>
  chain1.driver + chain1.driven + bevel.driver + bevel.driven + chain2.driver + chain2.driven;

/** A ratio above the wanted one costs road speed, so it counts as further off. */
const step = ({ off }: Split): number => Math.ceil((off <= 0 ? -off : 3 * off) / ALIKE);

/**
 * Every split within 4 % of the wanted ratio, best first: nearest ratio in steps of half a percent, then wear spread
 * evenly, then fewest teeth, then by teeth from the engine on.
 */
export function splits(wanted: number): readonly Split[] {
  const chains = DRIVERS.flatMap((driver) =>
    Array.from({ length: Math.min(MOST_DRIVEN, driver * MOST_CHAIN_RATIO) - driver + 1 }, (_, k) => ({
      driver,
      driven: driver + k,
    })),
  );
  const found = new Map<string, Split>();
  for (const [bevelDriver, bevelDriven] of BEVEL_PAIRS)
    for (const chain1 of chains) {
      const left = wanted / ((bevelDriven / bevelDriver) * (chain1.driven / chain1.driver));
      if (left < 1 - MOST_OFF || left > MOST_CHAIN_RATIO * (1 + MOST_OFF)) continue;
      for (const driver of DRIVERS)
        for (const driven of [Math.floor(left * driver), Math.ceil(left * driver)]) {
          if (driven < driver || driven > Math.min(MOST_DRIVEN, driver * MOST_CHAIN_RATIO)) continue;
          const bevel = { driver: bevelDriver, driven: bevelDriven };
          const chain2 = { driver, driven };
          const ratio = (chain1.driven / chain1.driver) * (bevelDriven / bevelDriver) * (driven / driver);
          const off = ratio / wanted - 1;
          if (Math.abs(off) > MOST_OFF) continue;
          found.set([chain1.driver, chain1.driven, bevelDriver, bevelDriven, driver, driven].join(), {
            chain1,
            bevel,
            chain2,
            ratio,
            off,
          });
        }
    }
  return [...found.values()]
    .map((split) => ({ split, step: step(split), wear: unevenWear(split), teeth: teethOf(split) }))
    .sort(
      (a, b) =>
        a.step - b.step ||
        a.wear - b.wear ||
        a.teeth - b.teeth ||
        a.split.chain1.driver - b.split.chain1.driver ||
        a.split.chain1.driven - b.split.chain1.driven ||
        a.split.bevel.driver - b.split.bevel.driver ||
        a.split.chain2.driver - b.split.chain2.driver ||
        a.split.chain2.driven - b.split.chain2.driven,
    )
    .map(({ split }) => split);
}

const SIZES: readonly ChainSize[] = CHAINS.map((key) => chainSize(key));
const CHAIN_BEST = blankRow('stage-efficiencies/chain').hi;
const BEVEL_BEST = blankRow('stage-efficiencies/bevel').hi;

/** The smallest chain whose strength holds the pull with its reserve; null where none does. */
function smallestChain(torque: number, teeth: number): ChainSize | null {
  return (
    SIZES.find((size) => {
      const { pull } = chainPull.run({ torque, pitchRadius: size.pitch / (2 * Math.sin(Math.PI / teeth)) });
      return chainStaticReserve.run({ pull, minTensile: size.minTensile, strands: 1 }).reserve >= PULL_RESERVE;
    }) ?? null
  );
}

/**
 * Chain sizes for a split, by the pull of the tight span.
 * @param torque largest torque of the gearbox output, N·m
 */
export function chainsFor(split: Split, torque: number): Chains | null {
  const first = smallestChain(torque, split.chain1.driver);
  const torqueA = torque * (split.chain1.driven / split.chain1.driver) * CHAIN_BEST;
  const torqueB = torqueA * (split.bevel.driven / split.bevel.driver) * BEVEL_BEST;
  const second = smallestChain(torqueB, split.chain2.driver);
  return first && second ? { first, second, torqueA, torqueB } : null;
}
