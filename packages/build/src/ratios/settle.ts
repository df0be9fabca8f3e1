import { findRoot } from '@oddwheel/mechanics/numerics/root';
import { times } from '@oddwheel/mechanics/numerics/vector';
import { parseInput } from '@oddwheel/quantity/range';
import { adjustmentOf } from '../assess/adjusters/adjustment.ts';
import { measuresOf, moved, shifted } from '../assess/adjusters/measures.ts';
import { selfSetting } from '../assess/adjusters/settings.ts';
import type { Patch } from '../document/patch.ts';
import type { Adjuster, Model, Shaft, Stage } from '../model/model.ts';
import { writeLike } from '../placing/length-text.ts';
import type { BuildFile } from '../schema/build-file.ts';
import { valueAt } from '../schema/describe.ts';
import type { SettledStage, StagePair } from './types.ts';

type Loop = Extract<Stage, { readonly kind: 'chain' | 'belt' }>;

/** Links more than taut where the drawn chain does not say how it hangs: about 2 % of a usual span to hand. */
const USUAL_EXCESS = 0.01;
/** Never less, for chain and belt: places are written to a hundredth of a millimetre. */
const LEAST_EXCESS = 0.004;
/** More than this is no slack but a chain that does not fit. */
const MOST_EXCESS = 0.1;

/** The build after a change of teeth, its stages settled in the order of their adjusters. */
export interface Settled {
  readonly model: Model;
  readonly stages: readonly SettledStage[];
  readonly patches: readonly Patch[];
}

const fittedOf = (stage: Loop): number | null => (stage.kind === 'chain' ? stage.links : stage.beltTeeth);

/** Links or belt teeth that a stage asks for with an adjuster moved by so much; null where it cannot be had. */
function neededAt(model: Model, index: number, adjuster: Adjuster | null, by: number): number | null {
  const shafts = adjuster === null ? model.shafts : moved(model, adjuster, by);
  const [stage, from, to] = [model.stages[index], shafts[index], shafts[index + 1]];
  if (!stage || !from || !to) return null;
  return measuresOf(stage, from, to)[0]?.value ?? null;
}

/** Adjuster that sets the slack of a stage by moving a whole shaft. */
export const slackAdjuster = (model: Model, stage: Stage): Adjuster | null =>
  model.adjusters.find(({ sets, of, moves }) => sets === 'slack' && of === stage.id && !moves.includes('/')) ?? null;

export interface Fit {
  /** Links or belt teeth. */
  readonly links: number;
  readonly by: number;
  readonly fits: boolean;
  readonly needed: number;
}

/** Whole links, and the movement that brings the slack of the drawn chain back. Even links come first for a chain. */
export function fitOf(model: Model, index: number, excess: number): Fit | null {
  const stage = model.stages[index];
  if (!stage || (stage.kind !== 'chain' && stage.kind !== 'belt')) return null;
  const needed = neededAt(model, index, null, 0);
  if (needed === null) return null;
  const adjuster = slackAdjuster(model, stage);
  const asked = needed + excess;
  const steps = stage.kind === 'chain' ? [2, 1] : [1];
  if (adjuster && adjuster.travel > 0) {
    const { travel } = adjuster;
    const at = (by: number): number => (neededAt(model, index, adjuster, by) ?? Number.NaN) + excess;
    const [one, other] = [at(-travel), at(travel)];
    const [low, high] = [Math.min(one, other), Math.max(one, other)];
    for (const step of steps) {
      const near = [Math.floor(asked / step) * step, Math.ceil(asked / step) * step];
      near.sort((a, b) => Math.abs(a - asked) - Math.abs(b - asked));
      const links = near.find((count) => count >= low && count <= high);
      if (links !== undefined)
        return { links, by: findRoot((by) => at(by) - links, -travel, travel), fits: true, needed };
    }
  }
  const step = steps[0] ?? 1;
  const links = Math.ceil(asked / step - 1e-9) * step;
  const taken = selfSetting(stage) === true || links - needed <= MOST_EXCESS;
  return { links, by: 0, fits: taken, needed };
}

/** Links or belt teeth over the taut one that the drawn one has, where that is slack and no misfit. */
export function drawnExcess(model: Model, index: number): number {
  const stage = model.stages[index];
  if (!stage || (stage.kind !== 'chain' && stage.kind !== 'belt')) return 0;
  const usual = stage.kind === 'chain' ? USUAL_EXCESS : LEAST_EXCESS;
  const [fitted, needed] = [fittedOf(stage), neededAt(model, index, null, 0)];
  if (fitted === null || needed === null || !(fitted >= needed && fitted - needed <= MOST_EXCESS)) return usual;
  return Math.max(fitted - needed, LEAST_EXCESS);
}

/** Stages in the order in which one pass through their adjusters leaves none upset; then those that have none. */
function inOrder(model: Model): readonly (readonly [number, Stage])[] {
  const rank = (stage: Stage): number => {
    const at = adjustmentOf(model).order.findIndex(({ adjuster }) => adjuster === slackAdjuster(model, stage)?.address);
    return at < 0 ? Number.POSITIVE_INFINITY : at;
  };
  return [...model.stages.entries()].sort(([a, one], [b, other]) => {
    const [x, y] = [rank(one), rank(other)];
    return x === y ? a - b : x - y;
  });
}

/** The model with other teeth in some stages; nothing else changes. */
export const withTeeth = (model: Model, pairs: readonly StagePair[]): Model => ({
  ...model,
  stages: model.stages.map((stage) => {
    const pair = pairs.find(({ stage: id }) => id === stage.id);
    return pair && 'teeth' in stage ? { ...stage, teeth: { driver: pair.driver, driven: pair.driven } } : stage;
  }),
});

/** A length as it will stand in the file, and what it then is. */
function written(build: BuildFile, address: string, si: number): { readonly text: string; readonly si: number } {
  const before = valueAt(build, address);
  const text = writeLike(si, typeof before === 'string' ? before : '0 mm');
  const parsed = parseInput(text, 'length');
  return { text, si: parsed.ok ? parsed.lo : si };
}

/** Moves a shaft along its adjuster, as far as it is written, and takes what was used of the slot off both ends. */
function moveShaft(build: BuildFile, model: Model, adjuster: Adjuster, by: number): { model: Model; patches: Patch[] } {
  const shaft = model.shafts.find(({ id }) => id === adjuster.moves);
  if (!shaft) return { model, patches: [] };
  const step = times(by, adjuster.along);
  const patches: Patch[] = [];
  const origin = (['x', 'y', 'z'] as const).map((axis, k) => {
    if (step[k] === 0) return shaft.origin[k] ?? 0;
    const at = `${shaft.address}/origin/${axis}`;
    const { text, si } = written(build, at, (shaft.origin[k] ?? 0) + (step[k] ?? 0));
    patches.push({ op: 'set', at, value: text });
    return si;
  });
  const shift = origin.map((value, k) => value - (shaft.origin[k] ?? 0)) as [number, number, number];
  const left = written(build, `${adjuster.address}/travel`, Math.max(0, adjuster.travel - Math.abs(by)));
  patches.push({ op: 'set', at: `${adjuster.address}/travel`, value: left.text });
  return {
    model: {
      ...model,
      shafts: model.shafts.map((one): Shaft => (one === shaft ? shifted(one, shift) : one)),
      adjusters: model.adjusters.map((one) => (one === adjuster ? { ...one, travel: left.si } : one)),
    },
    patches,
  };
}

/** The stage with the links that were settled. */
const withLinks = (stage: Stage, links: number): Stage => {
  if (stage.kind === 'chain') return { ...stage, links };
  return stage.kind === 'belt' ? { ...stage, beltTeeth: links } : stage;
};

/**
 * Changes teeth in a build and makes chains and belts fit: whole links, even ones where the slot allows, and the shaft that the adjuster
 * moves put where the slack is as it was drawn.
 */
export function settle(build: BuildFile, drawn: Model, pairs: readonly StagePair[]): Settled {
  let model = withTeeth(drawn, pairs);
  const patches: Patch[] = [];
  const stages: SettledStage[] = [];
  for (const [index, before] of inOrder(drawn)) {
    if (!('teeth' in before)) continue;
    const asked = pairs.find(({ stage }) => stage === before.id);
    const pair = asked ?? { stage: before.id, ...before.teeth };
    const same = pair.driver === before.teeth.driver && pair.driven === before.teeth.driven;
    const stays = same && [index, index + 1].every((k) => model.shafts[k] === drawn.shafts[k]);
    if (stays && !asked) continue;
    const base = {
      ...pair,
      name: before.name,
      address: before.address,
      kind: before.kind,
      ratio: pair.driven / pair.driver,
    };
    for (const end of ['driver', 'driven'] as const)
      if (before.teeth[end] !== pair[end])
        patches.push({ op: 'set', at: `${before.address}/teeth/${end}`, value: pair[end] });
    if (before.kind !== 'chain' && before.kind !== 'belt') {
      // Centres of gears are not set here: what a change upsets shows among the checks.
      stages.push({ ...base, links: null, linksChange: null, move: null, fits: true, says: '' });
      continue;
    }
    const had = fittedOf(before);
    if (stays) {
      stages.push({ ...base, links: had, linksChange: had && 0, move: null, fits: true, says: '' });
      continue;
    }
    const fit = fitOf(model, index, drawnExcess(drawn, index));
    if (fit === null) {
      stages.push({ ...base, links: null, linksChange: null, move: null, fits: false, says: 'The two wheels touch.' });
      continue;
    }
    const key = before.kind === 'chain' ? 'links' : 'length';
    if (had !== fit.links) patches.push({ op: 'set', at: `${before.address}/${key}`, value: fit.links });
    model = { ...model, stages: model.stages.map((one, k) => (k === index ? withLinks(one, fit.links) : one)) };
    const adjuster = slackAdjuster(model, before);
    if (adjuster && Math.abs(fit.by) > 5e-6) {
      const done = moveShaft(build, model, adjuster, fit.by);
      model = done.model;
      patches.push(...done.patches);
    }
    stages.push({
      ...base,
      links: fit.links,
      linksChange: had === null ? null : fit.links - had,
      move: adjuster && { adjuster: adjuster.name, by: fit.by, travel: adjuster.travel },
      fits: fit.fits,
      says: saysOf(fit, before),
    });
  }
  const place = ({ stage }: SettledStage): number => drawn.stages.findIndex(({ id }) => id === stage);
  return { model, stages: stages.sort((a, b) => place(a) - place(b)), patches };
}

function saysOf({ links, needed, fits }: Fit, stage: Loop): string {
  const what = stage.kind === 'chain' ? 'links' : 'belt teeth';
  if (!fits) return `${needed.toFixed(2)} ${what} are asked for; no whole number lies within the travel.`;
  if (stage.kind === 'chain' && links % 2 === 1)
    return 'No even number of links lies within the travel; this one needs an offset link.';
  return '';
}
