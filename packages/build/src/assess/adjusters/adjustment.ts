import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Adjuster, Model, Shaft, Stage } from '../../model/model.ts';
import { type Within, within } from '../../model/within.ts';
import { printer } from '../scene.ts';
import { type Change, changes, measuresOf, movedOnTrial, shifted, TRIAL, type What } from './measures.ts';
import { orderOf } from './order.ts';
import { rateOf, type StageSetting, settingsOf } from './settings.ts';
import type { Adjustment, Disturbance, ShaftMove, Upset } from './types.ts';

/** Shift for which `moves` tells what else must move, m. */
export const SHIFT = 0.005;

const AXES = { x: [SHIFT, 0, 0], y: [0, SHIFT, 0], z: [0, 0, SHIFT] } as const satisfies Record<string, Vec3>;

const SHIFTED: Readonly<Record<keyof typeof AXES, Within<Shaft>>> = {
  x: new WeakMap(),
  y: new WeakMap(),
  z: new WeakMap(),
};

type Show = ReturnType<typeof printer>;

/** "Chain 1 asks for 0.31 links more". */
function words(stage: Stage, { what, change }: Change, show: Show): string {
  if (change === null) return `${stage.name} cannot be built`;
  const size = Math.abs(change);
  const toward = change > 0 ? 'more' : 'fewer';
  const length = show('length', size);
  const texts: Readonly<Record<What, string>> = {
    'links needed': `${stage.name} asks for ${size.toFixed(3)} links ${toward}`,
    'belt teeth needed': `${stage.name} asks for ${size.toFixed(3)} belt teeth ${toward}`,
    planes: `the planes of ${stage.name} shift by ${length} to each other`,
    'axes apart': `the axes of ${stage.name} pass ${length} ${change > 0 ? 'further apart' : 'closer'}`,
    'driver from the apex': `the driver of ${stage.name} stands ${length} ${change > 0 ? 'further from' : 'closer to'} the apex`,
    'driven from the apex': `the driven gear of ${stage.name} stands ${length} ${change > 0 ? 'further from' : 'closer to'} the apex`,
    'centre distance': `the centres of ${stage.name} go ${length} ${change > 0 ? 'apart' : 'together'}`,
    'offset of the shafts': `the shafts at ${stage.name} stand ${length} ${change > 0 ? 'further' : 'less'} off each other`,
    'gap along the shaft': `the gap at ${stage.name} changes by ${length}`,
    'place of its housing': `the housing of ${stage.name} is ${length} out of its place`,
  };
  return texts[what];
}

function stageChanges(model: Model, index: number, after: Model['shafts']): readonly Change[] {
  const stage = model.stages[index];
  const [from, to] = [model.shafts[index], model.shafts[index + 1]];
  const [fromAfter, toAfter] = [after[index], after[index + 1]];
  if (!stage || !from || !to || !fromAfter || !toAfter) return [];
  if (from === fromAfter && to === toAfter) return [];
  return changes(measuresOf(stage, from, to), measuresOf(stage, fromAfter, toAfter));
}

/** What 1 mm of one adjuster does to the settings that others make. */
function disturbed(model: Model, adjuster: Adjuster, settings: readonly StageSetting[], show: Show): Disturbance[] {
  const after = movedOnTrial(model, adjuster);
  return settings.flatMap((setting) => {
    if (setting.adjusters.includes(adjuster.address)) return [];
    const stage = model.stages[setting.stage];
    if (!stage) return [];
    return stageChanges(model, setting.stage, after)
      .filter(({ what }) => setting.whats.includes(what))
      .map(
        (change): Disturbance => ({
          adjuster: adjuster.address,
          setting: setting.key,
          what: change.what,
          change: change.change,
          kind: change.kind,
          text: `${adjuster.name} by ${show('length', TRIAL)}: ${words(stage, change, show)}.`,
        }),
      );
  });
}

/** The adjuster whose travel makes a change good, or null. */
function takenUp(
  model: Model,
  settings: readonly StageSetting[],
  index: number,
  { what, change }: Change,
): Adjuster | null {
  if (change === null) return null;
  const fits = (adjuster: Adjuster): boolean =>
    settings.some((setting) => {
      if (setting.stage !== index || setting.whats[0] !== what || !setting.adjusters.includes(adjuster.address))
        return false;
      const rate = rateOf(model, setting, adjuster);
      return rate !== null && rate !== 0 && Math.abs(change / rate) <= adjuster.travel;
    });
  return model.adjusters.find(fits) ?? null;
}

/** What each shaft upsets when it alone is shifted by 5 mm along each vehicle axis. */
function movesOf(model: Model, settings: readonly StageSetting[], show: Show): ShaftMove[] {
  return model.shafts.flatMap((shaft, k) =>
    (Object.keys(AXES) as (keyof typeof AXES)[]).map((axis): ShaftMove => {
      const aside = within(SHIFTED[axis], [shaft], () => shifted(shaft, AXES[axis]));
      const after = model.shafts.map((other) => (other === shaft ? aside : other));
      const upsets = [k - 1, k].flatMap((index): Upset[] => {
        const stage = model.stages[index];
        const other = model.shafts[index === k ? k + 1 : index];
        if (!stage || !other) return [];
        return stageChanges(model, index, after).map((change): Upset => {
          const adjuster = takenUp(model, settings, index, change);
          const cure = adjuster ? `${adjuster.name} can take it up` : `${other.name} must follow`;
          return {
            address: stage.address,
            name: stage.name,
            what: change.what,
            change: change.change,
            kind: change.kind,
            follow: other.address,
            takenUpBy: adjuster?.address ?? null,
            text: `${words(stage, change, show)}; ${cure}.`,
          };
        });
      });
      return { shaft: shaft.address, name: shaft.name, axis, by: SHIFT, upsets };
    }),
  );
}

const plain = ({ key, sets, address, name, required, adjusters }: StageSetting) => ({
  key,
  sets,
  address,
  name,
  required,
  adjusters,
});

function computed(model: Model): Adjustment {
  const show = printer(model);
  const settings = settingsOf(model);
  const disturbances = model.adjusters.flatMap((adjuster) => disturbed(model, adjuster, settings, show));
  // In the order of the path, not of the file: by the first setting that each makes.
  const makers = settings.flatMap((setting) => setting.adjusters.map((adjuster) => ({ setting, adjuster })));
  const { order, rings } = orderOf(makers.length, (a, b) =>
    disturbances.some(
      ({ adjuster, setting }) => adjuster === makers[a]?.adjuster && setting === makers[b]?.setting.key,
    ),
  );
  const nameOf = (address: string): string => model.adjusters.find((a) => a.address === address)?.name ?? address;
  return {
    settings: settings.map(plain),
    disturbances,
    order: order.flatMap((k) => {
      const maker = makers[k];
      if (!maker) return [];
      const { adjuster, setting } = maker;
      return [{ adjuster, setting: setting.key, text: `Set the ${setting.name} by ${nameOf(adjuster)}.` }];
    }),
    rings: rings.map((ring) => ring.flatMap((k) => makers[k]?.adjuster ?? [])),
    moves: movesOf(model, settings, show),
  };
}

const known = new WeakMap<Model, Adjustment>();

/** What has to be set and how it hangs together. Models do not change, so each is worked out once. */
export function adjustmentOf(model: Model): Adjustment {
  const found = known.get(model) ?? computed(model);
  known.set(model, found);
  return found;
}
