import { FrameError } from '@oddwheel/mechanics/frame/structure';
import { type BodyMove, type BodyPull, bodyOnMounts } from '@oddwheel/mechanics/mount/body-moves';
import type { Body, Mount } from '../../model/model.ts';
import type { Scene } from '../checks/check.ts';
import { type Line, linesOf } from '../layout/lines.ts';
import type { CaseLoads } from '../loads.ts';
import type { Missing } from '../types.ts';

/** How a body moves on its mounts under each case; null moves: nothing says that it is on rubber. */
export type BodyMoves =
  | {
      readonly ok: true;
      readonly mounts: readonly Mount[];
      readonly pulls: (load: CaseLoads) => readonly BodyPull[] | null;
      readonly move: (load: CaseLoads) => BodyMove | null;
    }
  | { readonly ok: false; readonly missing: readonly Missing[] };

type Mounted = Mount['body'];

const KNOWN = new WeakMap<Scene, Map<Mounted, BodyMoves>>();

/** What chains, belts, gears and joints do to the shafts that a body alone carries; null where such a force is not known. */
function pullsOn(lines: readonly Line[], { model }: Scene, load: CaseLoads): readonly BodyPull[] | null {
  const pulls: BodyPull[] = [];
  for (const { first, shafts } of lines)
    for (let k = first; k < first + shafts.length; k += 1)
      for (const [stage, loads, end] of [
        [model.stages[k - 1], load.stages[k - 1], 'to'],
        [model.stages[k], load.stages[k], 'from'],
      ] as const) {
        if (!stage || !loads) continue;
        if (!loads.forcesKnown) return null;
        const seat = model.shafts[k]?.seats.find(({ id }) => id === stage[end].seat);
        if (seat) pulls.push({ at: seat.at, ...loads[end] });
      }
  return pulls;
}

function work(scene: Scene, body: Mounted): BodyMoves {
  const { model, at } = scene;
  const mounts = model.mounts.filter((one) => one.body === body);
  const lines = linesOf(model).filter(({ bodies }) => bodies.length === 1 && bodies[0] === body);
  const missing = mounts.flatMap(({ address, name, stiffness }): Missing[] =>
    stiffness ? [] : [{ address: `${address}/stiffness`, says: `the stiffness of ${name}` }],
  );
  if (lines.some(({ shafts }) => shafts.some(({ seats }) => seats.some(({ kind }) => kind === 'wheel'))))
    missing.push({
      address: '/brief/mounts',
      says: `a ${body} that does not carry the wheel: its load is not counted`,
    });
  if (missing.length > 0) return { ok: false, missing };
  try {
    const moveUnder = bodyOnMounts(
      mounts.map((one) => ({ at: one.at, stiffness: one.stiffness ? at(one.stiffness) : Number.NaN })),
    );
    return {
      ok: true,
      mounts,
      pulls: (load) => pullsOn(lines, scene, load),
      move: (load) => {
        const pulls = pullsOn(lines, scene, load);
        return pulls && moveUnder(pulls);
      },
    };
  } catch (error) {
    if (!(error instanceof FrameError)) throw error;
    const says = `mounts of the ${body} that do not all stand on one line`;
    return { ok: false, missing: [{ address: '/brief/mounts', says }] };
  }
}

/** Movement of a body on its mounts, worked out once for a scene; null where the build gives it no mounts. */
export function movesOf(scene: Scene, body: Body): BodyMoves | null {
  if (body !== 'engine' && body !== 'subframe') return null;
  if (!scene.model.mounts.some((one) => one.body === body)) return null;
  let known = KNOWN.get(scene);
  if (!known) {
    known = new Map();
    KNOWN.set(scene, known);
  }
  const found = known.get(body) ?? work(scene, body);
  known.set(body, found);
  return found;
}
