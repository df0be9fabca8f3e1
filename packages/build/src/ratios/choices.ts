import type { Session } from '../session-types.ts';
import { USUAL } from './spaces.ts';
import { type RatioChoices, TARGET_KEYS } from './types.ts';
import { windowsOf } from './windows.ts';

/** What may be chosen before a search: the targets that set a window, and the stages with teeth. */
export function ratioChoices({ evaluation }: Session): RatioChoices {
  const { model, middle } = evaluation;
  const { targets, open } = windowsOf(middle.scene, TARGET_KEYS);
  return {
    targets,
    open,
    stages: model.stages.flatMap((stage) => {
      if (!('teeth' in stage)) return [];
      const { driver, driven } = stage.teeth;
      const usual = stage.kind === 'chain' || stage.kind === 'belt' ? USUAL[stage.kind] : null;
      return [{ stage: stage.id, address: stage.address, name: stage.name, kind: stage.kind, driver, driven, usual }];
    }),
  };
}
