import { dot, minus, plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { SeatRef, Shaft } from '../../model/model.ts';
import type { Scene } from '../checks/check.ts';
import { seatOf } from '../geometry/place.ts';
import { stageGeometry } from '../geometry/stage.ts';
import type { StageGeometry } from '../geometry/types.ts';
import { senses } from '../loads.ts';
import { turnsForward } from '../scene.ts';
import type { SenseFix } from './types.ts';

type Relation = StageGeometry['relation'];

/** Whether the wheel rolls forward, with some relations of the path replaced. */
function forwardWith(scene: Scene, outputSense: 1 | -1, replaced: ReadonlyMap<number, Relation>): boolean {
  const axle = scene.model.shafts.at(-1);
  const stages = scene.stages.map((stage, k) => ({ ...stage, relation: replaced.get(k) ?? stage.relation }));
  const sense = senses(outputSense, stages).at(-1) ?? null;
  return axle !== undefined && sense !== null && turnsForward(axle.direction, sense);
}

/** The gear set on the other side of the apex, as far from it. */
function mirrored(shaft: Shaft, ref: SeatRef, apex: readonly [number, number, number]) {
  const seat = seatOf(shaft, ref);
  const apexAt = dot(minus(apex, shaft.origin), shaft.direction);
  const station = 2 * apexAt - seat.station;
  const at = plus(shaft.origin, times(station, shaft.direction));
  const seats = shaft.seats.map((s) => (s.id === seat.id ? { ...s, station, at } : s));
  return { seat, station, shaft: { ...shaft, seats } };
}

/** Changes of one bevel pair: either gear on the other side of the apex. */
function bevelFixes(scene: Scene, k: number): SenseFix[] {
  const geometry = scene.stages[k];
  if (!geometry?.bevel) return [];
  const { stage, from, to, bevel } = geometry;
  return (['to', 'from'] as const).flatMap((end): SenseFix[] => {
    const moved = mirrored(end === 'to' ? to : from, stage[end], bevel.apex);
    const [driver, driven] = end === 'to' ? [from, moved.shaft] : [moved.shaft, to];
    const { relation } = stageGeometry(stage, driver, driven, scene.at);
    if (relation === null || !forwardWith(scene, scene.model.engine.outputSense, new Map([[k, relation]]))) return [];
    const text = scene.show('length', moved.station);
    return [
      {
        address: moved.seat.address,
        text: `set ${moved.seat.name} on the other side of the apex, at station ${text} of ${moved.shaft.name}`,
        edits: [{ address: `${moved.seat.address}/station`, text }],
      },
    ];
  });
}

/** Changes of one stage that turn what follows it the other way; each is tried before it is named. */
function stageFixes(scene: Scene, k: number): SenseFix[] {
  const geometry = scene.stages[k];
  if (!geometry || geometry.relation === null) return [];
  const { stage, from, to, relation } = geometry;
  const { outputSense } = scene.model.engine;
  const turnsRound = (other: Relation): boolean => forwardWith(scene, outputSense, new Map([[k, other]]));
  const sameWay = dot(from.direction, to.direction) >= 0 ? 1 : -1;
  const against = sameWay === 1 ? -1 : 1;
  const ratio = 'teeth' in stage ? `${stage.teeth.driver} : ${stage.teeth.driven}` : '';
  const redrawn = (text: string): SenseFix => ({ address: stage.address, text, edits: [] });
  switch (stage.kind) {
    case 'bevel':
      return bevelFixes(scene, k);
    case 'spur':
      // A chain turns both shafts the same way; so does a gear between the two.
      return turnsRound(sameWay)
        ? [
            redrawn(`put a chain in the place of ${stage.name}, ${ratio} or near it`),
            redrawn(`set an idler gear between the two gears of ${stage.name}`),
          ]
        : [];
    case 'chain':
    case 'belt':
      return turnsRound(against) ? [redrawn(`put a spur pair in the place of ${stage.name}, ${ratio} or near it`)] : [];
    case 'unit':
      return turnsRound(relation === 1 ? -1 : 1)
        ? [redrawn(`fit a gearbox in the place of ${stage.name} whose output turns the other way`)]
        : [];
    case 'coupling':
      return [];
  }
}

/** What would turn a backward wheel round; empty where it rolls forward or its sense is not known. */
export function senseFixes(scene: Scene): readonly SenseFix[] {
  const axle = scene.model.shafts.at(-1);
  const sense = scene.senses.at(-1) ?? null;
  if (!axle || sense === null || Math.abs(axle.direction[1]) < 0.5 || turnsForward(axle.direction, sense)) return [];
  const reversed = scene.model.engine.outputSense === 1 ? -1 : 1;
  const engine: SenseFix[] = forwardWith(scene, reversed, new Map())
    ? [
        {
          address: '/brief/engine/output',
          text: 'turn the engine end for end, so that its output turns the other way in the vehicle',
          edits: [],
        },
      ]
    : [];
  return [...scene.stages.flatMap((_, k) => stageFixes(scene, k)), ...engine];
}
