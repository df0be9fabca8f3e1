/** Pairs of gears: harder, wider, truer, coarser, oiled, or made anew. */
import type { Json } from '../../document/json.ts';
import { removePatches } from '../../edit/place.ts';
import { valueAt } from '../../schema/describe.ts';
import {
  change,
  type Ground,
  type Ladder,
  ladder,
  lengthText,
  put,
  putIn,
  range,
  type Step,
  single,
} from '../ladder.ts';
import { movedField } from './fields.ts';
import { type Meshed, meshed } from './parts.ts';
import { renamed } from './train.ts';

type Geared = Meshed & { readonly stage: Extract<Meshed['stage'], { readonly kind: 'bevel' | 'spur' }> };

function pairOf(ground: Ground): Geared | null {
  const k = ground.model.stages.findIndex(({ address }) => address === ground.finding.address);
  const found = k < 0 ? null : meshed(ground.model, k);
  return found && (found.stage.kind === 'bevel' || found.stage.kind === 'spur') ? (found as Geared) : null;
}

const MEMBERS = [
  ['driver', 'driver'],
  ['driven', 'driven gear'],
] as const;

/** Steps of hardness that a works hardens to, HB, and the most that its method covers. */
const HARDER = { step: 20, most: 400 } as const;

/** Gears hardened through to more, where their hardness was measured. */
export function harderGears(ground: Ground): readonly Ladder[] {
  const found = pairOf(ground);
  if (!found) return [];
  const { stage } = found;
  const soft = MEMBERS.flatMap(([key, word]) => {
    const { hardness, steel } = stage.gears[key];
    return hardness === null || steel === 'case hardened' ? [] : [{ key, word, hardness }];
  });
  const groups = soft.length > 1 ? [...soft.map((one) => [one]), soft] : [soft];
  return groups.flatMap((group) => {
    const least = Math.min(...group.map(({ hardness }) => hardness));
    if (group.length === 0) return [];
    const words = group.map(({ word }) => word).join(' and ');
    return ladder(
      're-make',
      range(Math.ceil((least + 1) / HARDER.step) * HARDER.step, HARDER.most, HARDER.step).map(
        (to): Step => ({
          what: `Have the ${words} of ${stage.name} made of steel hardened through to ${to} HB instead of ${group.map(({ hardness }) => hardness).join(' and ')} HB`,
          patches: group
            .filter(({ hardness }) => hardness < to)
            .flatMap(({ key }) => put(ground, `${stage.address}/made/${key}/hardness`, String(to))),
          size: change(least, to),
        }),
      ),
    );
  });
}

/** A new pair of case-hardened steel with its maker’s word on it; what was seen and known of the old one goes. */
export function newPair(ground: Ground): readonly Ladder[] {
  const found = pairOf(ground);
  if (!found) return [];
  const { address, name, gears } = found.stage;
  const steels = [gears.driver.steel, gears.driven.steel];
  const old = ['card', 'donor']
    .map((key) => `${address}/${key}`)
    .filter((at) => valueAt(ground.session.build, at) !== undefined);
  if (steels.every((steel) => steel === 'case hardened') && old.length === 0) return [];
  const made: Json = { driver: { steel: 'case hardened' }, driven: { steel: 'case hardened' } };
  return single('re-make', {
    what: `Have ${name} made anew of case-hardened steel, with its maker’s word on it`,
    patches: [put(ground, `${address}/made`, made), ...removePatches(ground.session, old)],
    size: 1,
  });
}

const MM = 1e-3;

/** A wider face on both gears. */
export function widerFace(ground: Ground): readonly Ladder[] {
  const found = pairOf(ground);
  return found
    ? movedField(ground, `${found.stage.address}/faceWidth`, {
        kind: 'length',
        by: range(MM, 40 * MM, MM),
        says: (to, from) => `Have the gears of ${found.stage.name} made ${to} wide instead of ${from}`,
        effort: 're-make',
      })
    : [];
}

const CAST = 5;
const GROUND = 11;

/** Teeth cut truer. */
export function truerTeeth(ground: Ground): readonly Ladder[] {
  const found = pairOf(ground);
  if (!found) return [];
  const { address, name, gears } = found.stage;
  const now = gears.quality ?? CAST;
  return ladder(
    're-make',
    range(now + 1, GROUND, 1).map(
      (quality): Step => ({
        what: `Have the teeth of ${name} cut to quality ${quality} instead of ${gears.quality ?? `${CAST}, which stands for a blank`}`,
        patches: [put(ground, `${address}/quality`, quality)],
        size: 0.15 * (quality - now),
      }),
    ),
  );
}

/** Modules of the first row, mm: ISO 54, from memory. */
const MODULES = [1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8].map((mm) => mm * MM);
/** Fewer teeth undercut: common practice. */
const LEAST_TEETH = 14;

/** Coarser teeth on the same centres, at nearly the same ratio. */
export function coarserTeeth(ground: Ground): readonly Ladder[] {
  const found = pairOf(ground);
  const module = found?.stage.module;
  if (found?.stage.kind !== 'spur' || !module || module.origin !== 'typed') return [];
  const { stage } = found;
  const { driver, driven } = stage.teeth;
  const address = `${stage.address}/module`;
  return ladder(
    're-make',
    MODULES.filter((to) => to > module.si * 1.001).flatMap((to): Step[] => {
      const sum = ((driver + driven) * module.si) / to;
      if (Math.abs(sum - Math.round(sum)) > 1e-6) return [];
      const first = Math.round((driver * module.si) / to);
      const second = Math.round(sum) - first;
      if (Math.min(first, second) < LEAST_TEETH) return [];
      return [
        {
          what: `Have ${stage.name} made with ${first} : ${second} teeth of module ${lengthText(ground, address, to)} instead of ${driver} : ${driven}, on the same centres`,
          patches: [
            put(ground, `${stage.address}/teeth/driver`, first),
            put(ground, `${stage.address}/teeth/driven`, second),
            put(ground, address, lengthText(ground, address, to)),
            ...renamed(ground, found.driver, driver, first),
            ...renamed(ground, found.driven, driven, second),
          ],
          size: change(module.si, to),
        },
      ];
    }),
  );
}

/** Teeth housed, in grease or in oil. */
export function housed(ground: Ground): readonly Ladder[] {
  const found = pairOf(ground);
  if (!found) return [];
  const { address, name, gears } = found.stage;
  return (['in a housing with grease', 'in a housed oil bath'] as const)
    .filter((one) => one !== gears.lubrication)
    .flatMap((one, k) =>
      single('re-make', {
        what: `Run the teeth of ${name} ${one}`,
        patches: putIn(ground, address, { lubrication: one }),
        size: 0.3 + 0.1 * k,
      }),
    );
}
