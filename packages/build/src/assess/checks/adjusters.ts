import { CHAIN_LIMITS_TABLE } from '@oddwheel/tables/chain-limits';
import { rowInSi, sourceOf } from '@oddwheel/tables/table';
import type { Adjuster, Model, Stage } from '../../model/model.ts';
import { adjustmentOf } from '../adjusters/adjustment.ts';
import { rateOf, type StageSetting, selfSetting, settingsOf } from '../adjusters/settings.ts';
import type { ChainGeometry, Used } from '../geometry/types.ts';
import type { Missing } from '../types.ts';
import type { Check, Outcome, Scene, Subject } from './check.ts';
import { measured } from './measured.ts';
import { perModel } from './per-model.ts';

type ChainStage = Extract<Stage, { readonly kind: 'chain' }>;

const own = (from: string) => ({ reserve: 1, from });

/** Subjects of the settings of one kind that the drive asks for. */
const settingSubjects =
  (sets: StageSetting['sets']) =>
  (model: Model): readonly Subject[] =>
    settingsOf(model)
      .filter((setting) => setting.sets === sets && setting.required)
      .map((setting) => ({
        address: setting.address,
        element: model.stages[setting.stage]?.name ?? setting.name,
        stage: setting.stage,
      }));

const settingAt = (model: Model, sets: StageSetting['sets'], subject: Subject): StageSetting | undefined =>
  settingsOf(model).find((setting) => setting.sets === sets && setting.address === subject.address);

const makersOf = (model: Model, setting: StageSetting): readonly Adjuster[] =>
  model.adjusters.filter(({ address }) => setting.adjusters.includes(address));

const plainly = (holds: boolean, says: string): Outcome => ({
  kind: 'plain',
  holds,
  says: () => says,
  uses: [],
  used: () => [],
});

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Whether a setting has an adjuster, and one that does what it is there for. */
function hasAdjuster(scene: Scene, setting: StageSetting): Outcome {
  const { model } = scene;
  const stage = model.stages[setting.stage];
  const makers = makersOf(model, setting);
  if (makers.length === 0) {
    // A build that names no adjusters at all has not come to them yet.
    const missing: Missing[] =
      model.adjusters.length === 0 ? [{ address: '/path/adjusters', says: `what sets the ${setting.name}` }] : [];
    if (setting.sets === 'slack' && stage && selfSetting(stage) === null)
      missing.push({ address: `${stage.address}/tensioner`, says: 'whether a tensioner holds the slack side' });
    if (missing.length > 0) return { kind: 'unknown', missing };
    return plainly(false, `Nothing sets the ${setting.name}: give it an adjuster.`);
  }
  const rates = makers.map((maker) => ({ maker, rate: rateOf(model, setting, maker) }));
  const works = rates.filter(({ rate }) => rate !== null && rate !== 0);
  if (works.length === 0) {
    if (rates.some(({ rate }) => rate === null))
      return { kind: 'unknown', missing: scene.stages[setting.stage]?.trouble ?? [] };
    return plainly(
      false,
      `The ${setting.name} should be set by ${makers.map(({ name }) => name).join(' and ')}, but moving that does not change it.`,
    );
  }
  const travels = works.filter(({ maker }) => maker.travel > 0);
  if (travels.length === 0)
    return plainly(
      false,
      `${works.map(({ maker }) => maker.name).join(' and ')} has no travel to set the ${setting.name} with.`,
    );
  return plainly(
    true,
    `${capital(setting.name)} is set by ${travels
      .map(({ maker }) => `${maker.name}, ${scene.show('length', maker.travel)} each way`)
      .join(', and by ')}.`,
  );
}

const settingCheck = (
  sets: StageSetting['sets'],
  rest: Pick<Check, 'id' | 'title' | 'consequence' | 'wanted' | 'atWorst'>,
): Check => ({
  ...rest,
  perCase: false,
  subjects: settingSubjects(sets),
  run: perModel((scene, subject) => {
    const setting = settingAt(scene.model, sets, subject);
    return setting ? hasAdjuster(scene, setting) : null;
  }),
});

/** The slack of each chain, and the tension of each belt, can be set. */
export const slackAdjuster = settingCheck('slack', {
  id: 'adjust.slack',
  title: 'slack can be set',
  consequence: 'loses drive',
  wanted: own(sourceOf(CHAIN_LIMITS_TABLE, 'take-up')),
  atWorst: 'fails',
});

/** Both gears of a bevel pair can be moved along their shafts until the tooth marking is right. */
export const gearAdjuster = settingCheck('gear position', {
  id: 'adjust.gear',
  title: 'place of the gear can be set',
  consequence: 'wears out',
  wanted: own('common practice: both gears of a bevel pair are set by shims or nuts to backlash and marking'),
  atWorst: 'fails',
});

/** The two sprockets or pulleys of a stage can be brought into line. */
export const lineAdjuster = settingCheck('sprocket line', {
  id: 'adjust.line',
  title: 'sprockets can be lined up',
  consequence: 'wears out',
  wanted: own('common practice: one of the two sprockets can be moved along its shaft'),
  atWorst: 'thin',
});

interface TakeUp {
  readonly stage: ChainStage;
  readonly chain: ChainGeometry;
  readonly maker: Adjuster;
  /** Length of chain for each metre of travel. */
  readonly lengthRate: number;
  readonly used: () => readonly Used[];
}

/** The adjuster of a chain that takes up most, where it has one that works. */
function takeUpOf(scene: Scene, subject: Subject): TakeUp | null {
  const geometry = subject.stage === null ? undefined : scene.stages[subject.stage];
  const setting = settingAt(scene.model, 'slack', subject);
  if (geometry?.stage.kind !== 'chain' || !geometry.chain || !setting) return null;
  const { stage, chain, used } = { ...geometry, stage: geometry.stage, chain: geometry.chain };
  const takes = makersOf(scene.model, setting).flatMap((maker) => {
    const rate = rateOf(scene.model, setting, maker);
    return rate === null || rate === 0 ? [] : [{ maker, lengthRate: Math.abs(rate) * stage.size.pitch }];
  });
  const best = takes.sort((a, b) => b.maker.travel * b.lengthRate - a.maker.travel * a.lengthRate)[0];
  return best ? { stage, chain, ...best, used: () => used.filter((x) => x.method.id === 'chain.length') } : null;
}

const onTakeUp = (run: (found: TakeUp, scene: Scene) => Outcome | null): Check['run'] =>
  perModel((scene, subject) => {
    const found = takeUpOf(scene, subject);
    return found ? run(found, scene) : null;
  });

const chainSubjects = (model: Model): readonly Subject[] =>
  settingSubjects('slack')(model).filter(({ stage }) => stage !== null && model.stages[stage]?.kind === 'chain');

const PITCHES = rowInSi(CHAIN_LIMITS_TABLE, 'take-up').pitchesLow ?? Number.NaN;

/** The adjuster lets two pitches be taken out, from one end of its travel to the other. */
export const takeUpFitting: Check = {
  id: 'adjust.fitting',
  title: 'take-up for fitting',
  consequence: 'wears out',
  wanted: own(sourceOf(CHAIN_LIMITS_TABLE, 'take-up')),
  atWorst: 'thin',
  perCase: false,
  subjects: chainSubjects,
  run: onTakeUp(({ stage, maker, lengthRate, used }, { show }) => {
    const needed = PITCHES * stage.size.pitch;
    const there = 2 * maker.travel * lengthRate;
    return measured(
      { name: 'two pitches of chain', value: needed, kind: 'length', use: 'length' },
      { name: 'taken up in all', value: there, kind: 'length', use: 'length' },
      () =>
        `From end to end of ${maker.name} there are ${show('length', there)} of chain to take up; taking out two pitches asks for ${show('length', needed)}.`,
      [],
      used,
      { capacity: `${maker.address}/travel`, demand: 'chain-limits/take-up' },
    );
  }),
};

/** Greatest elongation by wear before the chain is worn out: 3 %, or less on a large sprocket. */
function mostElongation(stage: ChainStage): number {
  const most = rowInSi(CHAIN_LIMITS_TABLE, 'elongation-adjustable').fraction ?? Number.NaN;
  return Math.min(most, 2 / Math.max(stage.teeth.driver, stage.teeth.driven));
}

/** The adjuster follows the chain until it is worn out; where links can come out, only until two of them do. */
export const takeUpWear: Check = {
  id: 'adjust.wear',
  title: 'take-up for wear',
  consequence: 'wears out',
  wanted: own(sourceOf(CHAIN_LIMITS_TABLE, 'elongation-adjustable')),
  atWorst: 'thin',
  perCase: false,
  subjects: chainSubjects,
  run: onTakeUp(({ stage, chain, maker, lengthRate, used }, { show }) => {
    if (stage.links === null)
      return { kind: 'unknown', missing: [{ address: `${stage.address}/links`, says: 'the number of links fitted' }] };
    const { pitch } = stage.size;
    const most = mostElongation(stage);
    const worn = most * stage.links * pitch;
    const excess = (stage.links - chain.linksNeeded) * pitch;
    const wholeTravel = 2 * maker.travel * lengthRate;
    const shortened = stage.joint !== 'endless' && worn > PITCHES * pitch && wholeTravel >= PITCHES * pitch;
    const needed = (shortened ? PITCHES * pitch : worn) / lengthRate;
    // Travel left after the slack that the chain has as drawn; once two links come out, the whole travel is gone through again.
    const there = shortened ? 2 * maker.travel : maker.travel - excess / lengthRate;
    if (there < 0)
      return plainly(
        false,
        `The chain hangs ${show('length', excess)} long as drawn, more than ${maker.name} can take up; nothing is left for wear.`,
      );
    return measured(
      { name: 'wear asks', value: needed, kind: 'length', use: 'length' },
      { name: 'travel', value: there, kind: 'length', use: 'length' },
      () =>
        shortened
          ? `At ${show('percent', most)} the chain is ${show('length', worn)} longer and worn out; before that two links come out, and ${show('length', needed)} of travel does; there are ${show('length', there)} in all at ${maker.name}.`
          : `At ${show('percent', most)} the chain is ${show('length', worn)} longer and worn out, which asks for ${show('length', needed)} of travel; ${show('length', there)} are left at ${maker.name} from where it is drawn.`,
      [],
      used,
      { capacity: `${maker.address}/travel`, demand: 'chain-limits/elongation-adjustable' },
    );
  }),
};

/** No two adjusters undo each other's work. */
export const settingOrder: Check = {
  id: 'adjust.order',
  title: 'settings do not chase each other',
  consequence: 'wears out',
  wanted: own('common practice: one pass through the settings ends with all of them right'),
  atWorst: 'thin',
  perCase: false,
  subjects: (model) =>
    model.adjusters.length > 1 ? [{ address: '/path/adjusters', element: 'Adjusters', stage: null }] : [],
  run: ({ model }) => {
    const { rings, order } = adjustmentOf(model);
    const name = (address: string): string => model.adjusters.find((a) => a.address === address)?.name ?? address;
    if (rings.length === 0)
      return plainly(true, `One pass in this order sets everything: ${order.map((x) => name(x.adjuster)).join(', ')}.`);
    const round = rings.map((ring) => [...ring, ring[0] ?? ''].map(name).join(' upsets '));
    return plainly(false, `Settings chase each other: ${round.join('; ')}. Go round until nothing moves any more.`);
  },
};
