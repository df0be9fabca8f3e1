import { MESH_LIMITS } from '@oddwheel/tables/mesh-limits';
import { rowInSi, sourceOf } from '@oddwheel/tables/table';
import type { Value } from '../../model/model.ts';
import { shaftValues } from '../../model/resolve-strength.ts';
import type { Missing } from '../types.ts';
import { type Check, stagesOfKind } from './check.ts';
import { measured } from './measured.ts';

const LIMIT = rowInSi(MESH_LIMITS, 'bevel').movement ?? Number.NaN;

/** Each gear of a bevel pair under load, along its shaft and across it: shaft, bearings and plates together. */
export const meshMoves: Check = {
  id: 'bevel.moves',
  title: 'gears moving under load',
  consequence: 'throws parts',
  wanted: { reserve: 1, from: sourceOf(MESH_LIMITS, 'bevel') },
  atWorst: 'thin',
  perCase: true,
  subjects: stagesOfKind('bevel'),
  run: (scene, subject, load) => {
    const k = subject.stage;
    const stage = k === null ? undefined : scene.stages[k]?.stage;
    if (k === null || !stage || !load) return null;
    const missing: Missing[] = [];
    const uses: Value[] = [];
    let most = { value: 0, of: '', way: '' };
    for (const [at, seat] of [
      [k, stage.from.seat],
      [k + 1, stage.to.seat],
    ] as const) {
      const shaft = scene.model.shafts[at];
      const structure = scene.strength.shafts[at];
      const answer = scene.strength.answer(at, load);
      const found = shaft?.seats.find(({ id }) => id === seat);
      if (!answer.ok) missing.push(...answer.missing);
      if (!answer.ok || !shaft || !structure || !found) continue;
      uses.push(...shaftValues(shaft).filter((value) => value !== null));
      const node = structure.stations.reduce(
        (best, station, i) =>
          Math.abs(station - found.station) < Math.abs((structure.stations[best] ?? 0) - found.station) ? i : best,
        0,
      );
      const { solution } = answer;
      for (const [value, way] of [
        [Math.abs(solution.alongAt(node) ?? 0), `along ${shaft.name}`],
        [solution.acrossAt(node) ?? 0, `across ${shaft.name}`],
      ] as const)
        if (value > most.value) most = { value, of: found.name, way };
    }
    if (missing.length > 0) return { kind: 'unknown', missing };
    const { value, of, way } = most;
    return measured(
      { name: 'moves', value, kind: 'length', use: 'length' },
      { name: 'limit', value: LIMIT, kind: 'length', use: 'length' },
      () =>
        `${of} moves ${scene.show('length', value)} ${way}; ${scene.show('length', LIMIT)} is the usual limit. The teeth then meet at one end.`,
      uses,
      () => [],
      { capacity: 'mesh-limits/bevel', demand: 'shaft on its bearings and plates' },
    );
  },
};
