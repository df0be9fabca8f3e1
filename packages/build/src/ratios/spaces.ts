import { chordalVariation } from '@oddwheel/mechanics/chain/chordal-variation';
import { pitchRadius } from '@oddwheel/mechanics/chain/drive';
import { chainWearSpread } from '@oddwheel/mechanics/chain/wear-spread';
import type { Choice, TrainSpace } from '@oddwheel/mechanics/ratio/search/types';
import { stageGeometry } from '../assess/geometry/stage.ts';
import type { Model, Stage } from '../model/model.ts';
import { CHAIN_LIMITS } from '../model/rows.ts';
import { type Before, effectOf } from './effect.ts';
import { partNames, pricesOf, shelfOf } from './parts.ts';
import { drawnExcess, fitOf, withTeeth } from './settle.ts';
import { type Asked, type RatioRequest, TERM_KEYS, type TermKey } from './types.ts';

/** Teeth that are sold from stock and run well (common practice). */
export const USUAL = {
  chain: { driver: [11, 30], driven: [11, 80] },
  belt: { driver: [18, 40], driven: [18, 90] },
} as const;
/** Steel, kg/m³, and tooth width over the chain's inner width (ISO 606:2004, chains above 12.7 mm pitch). */
const STEEL = 7850;
const TOOTH_WIDTH = 0.95;
/** How far outside the window trains still count. */
export const OUTSIDE = 0.1;

export interface StageChoices {
  readonly stage: Stage;
  readonly choices: readonly Choice[];
  readonly says: string;
}

export interface Spaces {
  readonly space: TrainSpace;
  readonly stages: readonly StageChoices[];
  /** Names of the parts, by their number. */
  readonly parts: readonly string[];
  /** Price of a part that has one, by its name. */
  readonly prices: ReadonlyMap<string, number>;
}

const through = ([from, to]: readonly [number, number]): readonly number[] =>
  Array.from({ length: Math.max(0, to - from + 1) }, (_, k) => from + k);

/** Largest teeth in one place that touch nothing and still go on, all else as drawn; found by halving. */
function* largestClear(
  before: Before,
  stage: Extract<Stage, { readonly kind: 'chain' }>,
  end: 'driver' | 'driven',
  most: number,
): Generator<void, number> {
  const clear = (teeth: number): boolean => {
    const pair = { stage: stage.id, driver: stage.teeth.driver, driven: stage.teeth.driven, [end]: teeth };
    return !effectOf(before, [pair], 0).stops.some(
      ({ check, before: was }) => !was && (check.startsWith('clear.') || check.startsWith('assembly.')),
    );
  };
  let [low, high] = [stage.teeth[end], Math.max(stage.teeth[end], most) + 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (clear(middle)) low = middle;
    else high = middle;
    yield;
  }
  return low;
}

/** Tooth pairs that are asked for, before anything is looked at. */
function pairsOf(
  model: Model,
  stage: Extract<Stage, { readonly teeth: unknown }>,
  asked: Asked | undefined,
): (readonly [number, number])[] {
  const { driver, driven } = stage.teeth;
  const drawn: readonly [number, number] = [driver, driven];
  const all = (drivers: readonly number[], drivens: readonly number[]) =>
    drivers.flatMap((a) => drivens.map((b) => [a, b] as const));
  const shelf = (): (readonly [number, number])[] => {
    if (stage.kind === 'chain') {
      const teeth = model.shop.shelf.flatMap((item) =>
        item.kind === 'sprocket' && item.chain === stage.size.key && item.count > 0 ? [item.teeth] : [],
      );
      return all([...new Set([driver, ...teeth])], [...new Set([driven, ...teeth])]);
    }
    const pairs =
      stage.kind === 'bevel'
        ? model.shop.shelf.flatMap((item) => (item.kind === 'bevel pair' && item.count > 0 ? [item.teeth] : []))
        : [];
    return [
      drawn,
      ...pairs.map(([a, b]): readonly [number, number] =>
        driver <= driven ? [Math.min(a, b), Math.max(a, b)] : [Math.max(a, b), Math.min(a, b)],
      ),
    ];
  };
  const found = ((): (readonly [number, number])[] => {
    if (asked?.from === 'as drawn') return [drawn];
    if (asked?.from === 'pairs') return [...asked.pairs];
    if (asked?.from === 'range') return all(through(asked.driver), through(asked.driven));
    if (asked?.from === 'shelf' || stage.kind === 'bevel' || stage.kind === 'spur') return shelf();
    const usual = USUAL[stage.kind];
    return [drawn, ...all(through(usual.driver), through(usual.driven))];
  })();
  return [...new Map(found.map((pair) => [pair.join(':'), pair])).values()];
}

const shares = (a: number, b: number): number =>
  chainWearSpread.run({ links: a, teeth: Math.max(b, 6) }).commonFactor > 1 && b >= 6 ? 1 : 0;

/** Costs of a gear pair: only whether the same teeth meet again and again. */
const gearCosts = (driver: number, driven: number): Partial<Record<TermKey, number>> => ({
  wear: shares(driver, driven),
});

/** What a pair on a chain or belt costs; null where it cannot be fitted. */
function loopCosts(
  drawn: Model,
  index: number,
  driver: number,
  driven: number,
  excess: number,
): { readonly links: number; readonly costs: Partial<Record<TermKey, number>> } | null {
  const stage = drawn.stages[index];
  if (!stage || (stage.kind !== 'chain' && stage.kind !== 'belt')) return null;
  const model = withTeeth(drawn, [{ stage: stage.id, driver, driven }]);
  const fit = fitOf(model, index, excess);
  const [there, from, to] = [model.stages[index], model.shafts[index], model.shafts[index + 1]];
  if (!fit?.fits || !there || !from || !to) return null;
  const { links } = fit;
  const wear = shares(driver, driven) + shares(links, driver) + shares(links, driven);
  if (stage.kind === 'belt') return { links, costs: { wear } };
  const { chain } = stageGeometry(there, from, to, (value) => value.si);
  if (!chain) return null;
  const { pitch, innerWidth } = stage.size;
  const variation = (teeth: number): number => chordalVariation.run({ pitch, teeth, angularSpeed: 0 }).variation;
  const disc = (teeth: number): number => Math.PI * pitchRadius(pitch, teeth) ** 2 * innerWidth * TOOTH_WIDTH * STEEL;
  const costs = {
    wear,
    links: links % 2,
    wrap: Math.max(0, CHAIN_LIMITS.leastWrap.value - chain.wrapSmall),
    chordal: 100 * (variation(driver) + variation(driven)),
    mass: disc(driver) + disc(driven),
  };
  return { links, costs };
}

const listed = (costs: Partial<Record<TermKey, number>>): number[] => TERM_KEYS.map((key) => costs[key] ?? 0);

/** Choices of one stage: those that fit the places, slots and room of the build. */
function* choicesOf(
  before: Before,
  index: number,
  request: RatioRequest,
  numberOf: (part: string) => number,
): Generator<void, StageChoices> {
  const { model } = before;
  const stage = model.stages[index] as Stage;
  if (!('teeth' in stage)) {
    const ratio = before.session.evaluation.middle.scene.stages[index]?.ratio ?? 1;
    return { stage, choices: [{ driver: 1, driven: 1, ratio, costs: listed({}), parts: [] }], says: 'as drawn' };
  }
  const pairs = pairsOf(model, stage, request.stages[stage.id]);
  const choices: Choice[] = [];
  const push = (
    driver: number,
    driven: number,
    costs: Partial<Record<TermKey, number>>,
    links: number | null = null,
  ): void => {
    const names = partNames(stage, driver, driven, links);
    choices.push({ driver, driven, ratio: null, costs: listed(costs), parts: names.map(numberOf) });
  };
  if (stage.kind === 'bevel' || stage.kind === 'spur') {
    const sum = stage.teeth.driver + stage.teeth.driven;
    for (const [driver, driven] of pairs)
      if (stage.kind === 'bevel' || driver + driven === sum) push(driver, driven, gearCosts(driver, driven));
    return {
      stage,
      choices,
      says: `${choices.length} of ${pairs.length} pairs fit${stage.kind === 'spur' ? ' the centres' : ''}`,
    };
  }
  let [mostDriver, mostDriven] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  if (stage.kind === 'chain') {
    const most = (end: 0 | 1): number => Math.max(...pairs.map((pair) => pair[end]));
    mostDriver = yield* largestClear(before, stage, 'driver', Math.min(most(0), stage.largest.driver ?? most(0)));
    mostDriven = yield* largestClear(before, stage, 'driven', Math.min(most(1), stage.largest.driven ?? most(1)));
  }
  const excess = drawnExcess(model, index);
  for (const [k, [driver, driven]] of pairs.entries()) {
    if (k % 64 === 63) yield;
    if (driver > mostDriver || driven > mostDriven) continue;
    const loop = loopCosts(model, index, driver, driven, excess);
    if (loop) push(driver, driven, loop.costs, loop.links);
  }
  const room = stage.kind === 'chain' ? `; up to ${mostDriver} and ${mostDriven} teeth have room` : '';
  return { stage, choices, says: `${choices.length} of ${pairs.length} pairs fit the centres and slots${room}` };
}

/** The space of trains of a build. Yields between short steps. */
export function* spacesOf(before: Before, request: RatioRequest, band: TrainSpace['band']): Generator<void, Spaces> {
  const { model } = before;
  const numbers = new Map<string, number>();
  const numberOf = (part: string): number => {
    const found = numbers.get(part) ?? numbers.size;
    numbers.set(part, found);
    return found;
  };
  const stages: StageChoices[] = [];
  for (let index = 0; index < model.stages.length; index++)
    stages.push(yield* choicesOf(before, index, request, numberOf));
  const parts = [...numbers.keys()];
  const shelf = shelfOf(model);
  const prices = pricesOf(model, request.prices);
  const each = (price: (part: string) => number) => parts.map(price);
  const space: TrainSpace = {
    stages: stages.map(({ choices }) => ({ choices })),
    terms: TERM_KEYS.length,
    band,
    within: { least: band.low * (1 - OUTSIDE), most: band.high * (1 + OUTSIDE) },
    limits: [],
    atHand: {
      have: parts.map((part) => shelf.get(part) ?? 0),
      only: request.shelfOnly,
      lacking: [
        { term: TERM_KEYS.indexOf('buy'), each: each(() => 1) },
        { term: TERM_KEYS.indexOf('price'), each: each((part) => prices.get(part) ?? 0) },
      ],
    },
  };
  return { space, stages, parts, prices };
}
