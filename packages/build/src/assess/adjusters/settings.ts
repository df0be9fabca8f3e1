import { dot } from '@oddwheel/mechanics/numerics/vector';
import type { Adjuster, Model, Stage } from '../../model/model.ts';
import { type Within, within } from '../../model/within.ts';
import { seatOf } from '../geometry/place.ts';
import { least, measuresOf, movedOnTrial, TRIAL, type What } from './measures.ts';
import type { Setting } from './types.ts';

type Draft = Omit<Setting, 'adjusters'> & {
  readonly stage: number;
  /** Measures of the stage that this setting brings right, the first of them above all. */
  readonly whats: readonly What[];
};

/** A setting with the stage it belongs to and what it brings right. */
export type StageSetting = Setting & Pick<Draft, 'stage' | 'whats'>;

/** Whether something takes the slack up without being set: null where the build leaves it open. */
export function selfSetting(stage: Stage): boolean | null {
  if (stage.kind !== 'chain') return false;
  if (stage.idler !== null || stage.tensioner === true) return true;
  return stage.tensioner === null ? null : false;
}

/** Everything of the path that may have to be set, in the order of power. */
function drafts(model: Model): readonly Draft[] {
  return model.stages.flatMap((stage, index): Draft[] => {
    const [from, to] = [model.shafts[index], model.shafts[index + 1]];
    if (!from || !to) return [];
    if (stage.kind === 'chain' || stage.kind === 'belt') {
      const needed = stage.kind === 'chain' ? 'links needed' : 'belt teeth needed';
      return [
        {
          key: `slack:${stage.address}`,
          sets: 'slack',
          address: stage.address,
          name: `${stage.kind === 'chain' ? 'slack' : 'tension'} of ${stage.name}`,
          required: selfSetting(stage) !== true,
          stage: index,
          whats: [needed],
        },
        {
          key: `sprocket line:${stage.address}`,
          sets: 'sprocket line',
          address: stage.address,
          name: `line of ${stage.name}`,
          required: true,
          stage: index,
          whats: ['planes'],
        },
      ];
    }
    if (stage.kind !== 'bevel' && stage.kind !== 'spur') return [];
    return (
      [
        [from, stage.from, 'driver'],
        [to, stage.to, 'driven'],
      ] as const
    ).map(([shaft, ref, end]) => {
      const seat = seatOf(shaft, ref);
      return {
        key: `gear position:${seat.address}`,
        sets: 'gear position',
        address: seat.address,
        name: `place of ${seat.name} on ${shaft.name}`,
        required: stage.kind === 'bevel',
        stage: index,
        whats: stage.kind === 'spur' ? ['planes'] : [`${end} from the apex`, 'axes apart'],
      };
    });
  });
}

/** Key of the setting that an adjuster makes. */
function keyOf(model: Model, adjuster: Adjuster): string {
  if (adjuster.sets === 'slack') return `slack:${model.stages.find(({ id }) => id === adjuster.of)?.address}`;
  const [shaftId, seatId] = adjuster.of.split('/');
  if (adjuster.sets === 'gear position') {
    const shaft = model.shafts.find(({ id }) => id === shaftId);
    return `gear position:${shaft?.seats.find(({ id }) => id === seatId)?.address}`;
  }
  const stage = model.stages.find(({ from, to }) =>
    [from, to].some(({ shaft, seat }) => shaft === shaftId && seat === seatId),
  );
  return `sprocket line:${stage?.address}`;
}

const SETTINGS: Within<readonly StageSetting[]> = new WeakMap();

/** Settings that the drive asks for, and those for which it names an adjuster all the same. */
export function settingsOf(model: Model): readonly StageSetting[] {
  return within(SETTINGS, [model], () => settingsAnew(model));
}

function settingsAnew(model: Model): readonly StageSetting[] {
  const keys = model.adjusters.map((adjuster) => ({ address: adjuster.address, key: keyOf(model, adjuster) }));
  return drafts(model)
    .map((draft) => ({ ...draft, adjusters: keys.filter(({ key }) => key === draft.key).map((x) => x.address) }))
    .filter((setting) => setting.required || setting.adjusters.length > 0);
}

/**
 * How much what is set changes for each metre of the adjuster, by a trial of 1 mm: links or belt teeth per metre for slack, metre per metre
 * for a place. Null where it cannot be computed; 0 where the adjuster does not set it at all.
 */
export function rateOf(model: Model, setting: StageSetting, adjuster: Adjuster): number | null {
  const stage = model.stages[setting.stage];
  const [from, to] = [model.shafts[setting.stage], model.shafts[setting.stage + 1]];
  const after = movedOnTrial(model, adjuster);
  const [fromAfter, toAfter] = [after[setting.stage], after[setting.stage + 1]];
  if (!stage || !from || !to || !fromAfter || !toAfter) return null;
  if (setting.sets === 'gear position') {
    // Its own place along its own shaft is what is set, whatever the mate does.
    const shaft = model.shafts[setting.stage + (setting.address.startsWith(`${from.address}/`) ? 0 : 1)];
    const moves = adjuster.moves.split('/');
    const own = shaft?.seats.find((seat) => seat.address === setting.address);
    if (!shaft || !own || moves[0] !== shaft.id || (moves[1] !== undefined && moves[1] !== own.id)) return 0;
    return dot(adjuster.along, shaft.direction);
  }
  const pick = (measures: ReturnType<typeof measuresOf>) =>
    measures.find(({ what }) => what === setting.whats[0]) ?? null;
  const [before, then] = [pick(measuresOf(stage, from, to)), pick(measuresOf(stage, fromAfter, toAfter))];
  if (before === null || then === null || before.value === null || then.value === null) return null;
  const change = then.value - before.value;
  return Math.abs(change) > least(before.kind) ? change / TRIAL : 0;
}
