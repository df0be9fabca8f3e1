import { ordinal } from '../assess/cases.ts';
import type { CheckId } from '../assess/check-ids.ts';
import { CHECKS } from '../assess/checks/all.ts';
import { type Outcome, outcomeOf, type Scene, type Subject, wantedReserve } from '../assess/checks/check.ts';
import { pullOf } from '../assess/road/drive.ts';
import { buildScene } from '../assess/scene.ts';
import { MIDDLE } from '../assess/uncertainty.ts';
import type { Model } from '../model/model.ts';
import type { Session } from '../session-types.ts';
import { settle } from './settle.ts';
import type { Effect, GearAt, StagePair, Stop } from './types.ts';

/** Checks that a change of teeth can upset, strength apart: where parts are, whether they fit, go together and stay clear. */
const LOOKED_AT: ReadonlySet<CheckId> = new Set<CheckId>([
  'chain.fit',
  'chain.slack',
  'chain.wrap',
  'chain.clear',
  'chain.slope',
  'chain.links',
  'chain.stroke',
  'belt.fit',
  'bevel.meet',
  'spur.centres',
  'idler.mesh',
  'idler.place',
  'arm.slack',
  'arm.wrap',
  'arm.rub',
  'arm.slot',
  'adjust.wear',
  'assembly.slide',
  'assembly.enter',
  'assembly.close',
  'clear.touch',
  'clear.wheel',
  'shop.swing',
]);
const OPENINGS: ReadonlySet<CheckId> = new Set<CheckId>(['assembly.slide', 'assembly.enter', 'assembly.close']);

interface Looked {
  readonly id: string;
  readonly check: CheckId;
  readonly title: string;
  readonly severity: Stop['severity'];
  readonly says: string;
}

/** Severity of an outcome at the middle of all inputs, as a finding would have it. */
function severityOf(outcome: Outcome, atWorst: 'fails' | 'thin', wanted: number): Stop['severity'] {
  if (outcome.kind === 'unknown') return 'unknown';
  if (outcome.kind === 'plain') return outcome.holds ? 'holds' : atWorst;
  if (outcome.reserve < 1) return atWorst;
  return outcome.reserve >= wanted ? 'holds' : 'thin';
}

/** What the checks of places and fits say of a build. */
function looked(scene: Scene): readonly Looked[] {
  return CHECKS.filter(({ id }) => LOOKED_AT.has(id)).flatMap((check) =>
    check.subjects(scene.model).flatMap((subject: Subject): Looked[] => {
      const outcome = outcomeOf(check, scene, subject, null);
      if (outcome === null) return [];
      const id = `${check.id}:${subject.address}`;
      const { reserve } = wantedReserve(check, scene.model.overrides[id]);
      const severity = severityOf(outcome, check.atWorst, reserve);
      const says = outcome.kind === 'unknown' ? outcome.missing.map(({ says: one }) => one).join('; ') : outcome.says();
      return [{ id, check: check.id, title: `${check.title}, ${subject.element}`, severity, says }];
    }),
  );
}

/** The build before the change, and what its checks say. */
export interface Before {
  readonly session: Session;
  readonly model: Model;
  readonly looked: ReadonlyMap<string, Looked>;
}

export function beforeOf(session: Session): Before {
  const { middle, model } = session.evaluation;
  return { session, model, looked: new Map(looked(middle.scene).map((one) => [one.id, one])) };
}

/** Gear by gear: ratio, engine speed at a road speed, and pull at peak torque. */
export function gearsAt(scene: Scene, roadSpeed: number): readonly GearAt[] {
  const drive = scene.road.drive();
  return scene.overall.map((overall, k) => ({
    gear: ordinal(k + 1),
    overall,
    engineSpeed: scene.rollOut === null ? Number.NaN : (roadSpeed / scene.rollOut) * 2 * Math.PI * overall,
    force: drive.ok ? pullOf(drive.drive, k, drive.engine.peakTorque.torque) : null,
  }));
}

/** The model and scene after a change, and what it does. */
export function effectOf(
  before: Before,
  pairs: readonly StagePair[],
  roadSpeed: number,
): Effect & { readonly scene: Scene } {
  const { model, stages, patches } = settle(before.session.build, before.model, pairs);
  const scene = buildScene(model, MIDDLE, null);
  const now = looked(scene);
  const openings = now.filter(({ check }) => OPENINGS.has(check));
  const stops = now
    .filter(({ severity }) => severity === 'fails' || severity === 'thin')
    .map((one): Stop => {
      const was = before.looked.get(one.id)?.severity;
      return {
        finding: one.id,
        check: one.check,
        title: one.title,
        severity: one.severity,
        says: one.says,
        before: was === one.severity,
      };
    });
  return {
    pairs,
    stages,
    path: scene.stages.reduce((product, { ratio }) => product * ratio, 1),
    gears: gearsAt(scene, roadSpeed),
    openings: openings.some(({ severity }) => severity === 'fails' || severity === 'thin')
      ? 'do not pass'
      : openings.some(({ severity }) => severity === 'unknown')
        ? 'unknown'
        : 'pass',
    stops,
    patches,
    name: nameOf(before.model, pairs),
    scene,
  };
}

/** "Chain 1, 17 : 30 → 17 : 32". */
function nameOf(model: Model, pairs: readonly StagePair[]): string {
  const changed = pairs.flatMap(({ stage: id, driver, driven }) => {
    const stage = model.stages.find((one) => one.id === id);
    if (!stage || !('teeth' in stage) || (stage.teeth.driver === driver && stage.teeth.driven === driven)) return [];
    return [`${stage.name}, ${stage.teeth.driver} : ${stage.teeth.driven} → ${driver} : ${driven}`];
  });
  return changed.length === 0 ? 'Teeth stay as drawn' : changed.join('; ');
}
