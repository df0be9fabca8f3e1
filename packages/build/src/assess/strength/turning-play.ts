import type { Scene } from '../checks/check.ts';
import type { Missing } from '../types.ts';
import { swingsOf } from './train-swing.ts';

/** One part’s share in how far the wheel turns while the crank stands still. */
export interface PlayPart {
  readonly address: string;
  readonly name: string;
  /** rad at the wheel. */
  readonly angle: number;
}

/** How the drive turns against itself. */
export interface TurningPlay {
  /** Natural swings in each gear, Hz, slowest first; empty where they cannot be had. */
  readonly gears: readonly { readonly gear: string; readonly modes: readonly number[] }[];
  /** Free play at the wheel by what gives it, most first. */
  readonly parts: readonly PlayPart[];
  readonly total: number;
  /** What keeps the play, or the swings, from being whole. */
  readonly missing: readonly Missing[];
}

/**
 * Free play from crank to wheel, told at the wheel: a slack chain lets its driven sprocket turn by what it is too long, teeth by their backlash at the
 * rim, a cush by its own play. Behind a reduction a turn counts less, so each is divided by the turns that its shaft makes for one of the wheel.
 */
export function turningPlay(scene: Scene): TurningPlay {
  const { model, at } = scene;
  const { stages, shafts, cush } = model;
  const parts: PlayPart[] = [];
  const missing: Missing[] = [];
  let turns = 1;
  const add = (address: string, name: string, angle: number): void => {
    if (angle > 0) parts.push({ address, name, angle: angle / turns });
  };
  const cushHere = (k: number): void => {
    const shaft = shafts[k];
    if (cush?.lash && shaft && cush.at.startsWith(`${shaft.id}/`)) add(cush.address, 'Cush or damper', cush.lash);
  };
  cushHere(shafts.length - 1);
  for (let k = stages.length - 1; k >= 0; k -= 1) {
    const geometry = scene.stages[k];
    if (!geometry) break;
    const { stage, chain } = geometry;
    if (stage.kind === 'chain') {
      if (!chain) missing.push(...geometry.trouble);
      else if (stage.links === null)
        missing.push({ address: `${stage.address}/links`, says: `the links of ${stage.name}` });
      else if (stage.tensioner !== true && stage.idler?.sprung !== true)
        add(
          stage.address,
          stage.name,
          ((stage.links - chain.linksNeeded) * stage.size.pitch) / chain.pitchRadiusDriven,
        );
    }
    if (stage.kind === 'bevel' || stage.kind === 'spur') {
      const { teeth, module, backlash } = stage;
      if (!backlash || !module)
        missing.push({
          address: `${stage.address}/${backlash ? 'module' : 'backlash'}`,
          says: `the ${backlash ? 'module' : 'backlash'} of ${stage.name}`,
        });
      else {
        const larger = (at(module) * Math.max(teeth.driver, teeth.driven)) / 2;
        // At the rim of the larger gear; if that is the driver, the driven shaft turns farther by the ratio.
        const own = at(backlash) / larger;
        add(stage.address, stage.name, teeth.driven >= teeth.driver ? own : own / geometry.ratio);
      }
    }
    turns *= geometry.ratio;
    cushHere(k);
  }
  const swings = swingsOf(scene);
  return {
    gears: swings.ok
      ? swings.gears.map(({ gear, modes }) => ({ gear: String(gear + 1), modes: modes.slice(0, 3) }))
      : [],
    parts: parts.sort((a, b) => b.angle - a.angle),
    total: parts.reduce((sum, { angle }) => sum + angle, 0),
    missing: [...missing, ...(swings.ok ? [] : swings.missing)],
  };
}
