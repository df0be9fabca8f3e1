import type { Scene } from '@oddwheel/build/assess/checks/check';
import type { ClearanceRow } from '@oddwheel/build/assess/clearance/types';
import type { StageGeometry } from '@oddwheel/build/assess/geometry/types';
import type { Finding } from '@oddwheel/build/assess/types';
import { type Cache, createCache } from '@oddwheel/build/model/cache';
import { aidsFor } from '@oddwheel/build/placing/aids';
import { placingOf } from '@oddwheel/build/placing/placed';
import { previewEdit } from '@oddwheel/build/preview';
import type { Session } from '@oddwheel/build/session-types';
import { layoutToFit } from '@oddwheel/sheets/fit';
import { spacePart } from '@oddwheel/sheets/space-parts';
import { drawingSvg } from '@oddwheel/sheets/svg';
import { layoutSolids, layoutViews } from '@oddwheel/sheets/views';
import type { LayoutApi, Moved, MovedChain, MovedCheck } from './layout-api.ts';

/** Lettering of a saved drawing in mm of the vehicle, and mm of the vehicle for a mm of paper: 4 mm high at 1 : 5. */
const FILE_LETTERING = 20;
const FILE_SCALE = 5;
/** Clearances told while something is moved. */
const TOLD_CLEARANCES = 5;
/** Below this part of itself a reserve has not changed. */
const UNCHANGED = 5e-4;

/** @param current gives the session, and throws when no build is open */
export function createLayoutModel(current: () => Session): LayoutApi {
  // Previews keep their own results: each would push out what the session keeps of the build as it is.
  let kept: { readonly hash: string; readonly cache: Cache } | null = null;
  const cacheFor = (session: Session): Cache => {
    if (kept?.hash !== session.hash) kept = { hash: session.hash, cache: createCache() };
    return kept.cache;
  };
  return {
    drawing: ({ armAngle, projection, frame }) => {
      const { evaluation, assessment } = current();
      return layoutToFit(evaluation.middle.scene, assessment, { armAngle, projection }, frame);
    },
    drawingFile: (armAngle, projection) => {
      const { evaluation, assessment } = current();
      const options = { textHeight: FILE_LETTERING, armAngle, projection };
      return drawingSvg(layoutViews(evaluation.middle.scene, assessment, options), FILE_SCALE);
    },
    placing: () => placingOf(current()),
    moveAids: (address) => aidsFor(current(), address),
    inSpace: (armAngle) => {
      const { evaluation, assessment } = current();
      return layoutSolids(evaluation.middle.scene, assessment, armAngle).map(spacePart);
    },
    preview: (patches, inSpace): Moved => {
      const session = current();
      const previewed = previewEdit(session, patches, cacheFor(session));
      if (!previewed.ok) {
        const [fault] = previewed.faults;
        if (!fault) throw new Error('A refused edit has no fault.');
        return { ok: false, fault };
      }
      const { scene, findings, clearance } = previewed.preview;
      const before = session.evaluation.middle.scene;
      const changed = scene.stages.filter(
        (geometry, k) => isLoop(geometry) && placesOf(geometry) !== placesOf(before.stages[k]),
      );
      const loops = new Set(changed.map(({ stage }) => stage.address));
      const { views } = layoutViews(
        scene,
        { findings: [], clearance: null },
        {
          textHeight: 1,
          armAngle: 0,
          projection: 'third angle',
        },
      );
      return {
        ok: true,
        chains: scene.stages.flatMap(({ stage }, k) =>
          loops.has(stage.address) ? movedChain(scene, k, findings) : [],
        ),
        clearances: changedRows(
          session.assessment.clearance.rows,
          clearance.rows,
          changedPlaces(before, scene, loops),
        ).slice(0, TOLD_CLEARANCES),
        checks: changedChecks(session.assessment.findings, findings),
        loops: views.map(({ id, parts }) => ({ view: id, parts: parts.filter(({ of }) => loops.has(of)) })),
        inSpace: inSpace
          ? layoutSolids(scene, { findings: [], clearance: null }, 0)
              .filter(({ of }) => loops.has(of))
              .map(spacePart)
          : [],
      };
    },
  };
}

const isLoop = ({ stage }: StageGeometry): boolean => stage.kind === 'chain' || stage.kind === 'belt';

/** Where a stage and its shafts stand, to tell whether a move changes it. */
const placesOf = (geometry: StageGeometry | undefined): string =>
  geometry === undefined ? '' : JSON.stringify([geometry.stage, geometry.from, geometry.to]);

function movedChain(scene: Scene, k: number, findings: readonly Finding[]): readonly MovedChain[] {
  const geometry = scene.stages[k];
  if (!geometry) return [];
  const { stage, chain } = geometry;
  const slack = findings.find(({ id }) => id === `chain.slack:${stage.address}`);
  const centres = chain?.centreDistance ?? Number(geometry.used[0]?.input.centreDistance ?? Number.NaN);
  return [
    {
      address: stage.address,
      name: stage.name,
      centres: Number.isFinite(centres) ? scene.show('length', centres) : 'not to be had',
      links:
        stage.kind !== 'chain' || !chain
          ? ''
          : `${stage.links === null ? 'none chosen' : `${stage.links} fitted`}, ${chain.linksNeeded.toFixed(2)} asked for`,
      slack: slack ? { severity: slack.severity, says: slack.says } : null,
    },
  ];
}

/** Addresses of shafts, and of what stands around them, that are not as they were, the chains and belts on them included. */
function changedPlaces(before: Scene, now: Scene, loops: ReadonlySet<string>): readonly string[] {
  const all = ({ model }: Scene) => [...model.shafts, ...model.space.keepOuts, ...model.space.tubes];
  const was = new Map(all(before).map((one) => [one.address, JSON.stringify(one)]));
  const places = all(now)
    .filter((one) => was.get(one.address) !== JSON.stringify(one))
    .map(({ address }) => address);
  const axle = now.model.shafts.at(-1)?.address;
  const wheel = places.includes(axle ?? '') ? [now.model.wheel.address] : [];
  return [...places, ...loops, ...wheel];
}

/** Clearances of what a move changes, smallest first. */
function changedRows(
  before: readonly ClearanceRow[],
  now: readonly ClearanceRow[],
  places: readonly string[],
): readonly ClearanceRow[] {
  const was = new Set(before.map(({ text }) => text));
  const moves = ({ address }: ClearanceRow['first']): boolean =>
    places.some((place) => address === place || address.startsWith(`${place}/`));
  return now.filter((row) => !was.has(row.text) && (moves(row.first) || moves(row.second)));
}

/** Checks whose number or answer a move changes, worst first as they are listed. */
function changedChecks(before: readonly Finding[], now: readonly Finding[]): readonly MovedCheck[] {
  const was = new Map(before.map((finding) => [finding.id, finding]));
  return now.flatMap((finding): MovedCheck[] => {
    const old = was.get(finding.id);
    if (!old) return [];
    const [a, b] = [old.reserve?.value ?? null, finding.reserve?.value ?? null];
    // Only the middle is looked at, so an answer that the ends of a range decide is not compared.
    const same = a === null || b === null ? a === b : Math.abs(a - b) <= UNCHANGED * Math.abs(a);
    if (same && (old.either !== null || old.severity === finding.severity)) return [];
    const { id, element, title, severity } = finding;
    return [
      {
        id,
        element,
        title,
        before: { severity: old.severity, reserve: a },
        now: { severity, reserve: b },
      },
    ];
  });
}
