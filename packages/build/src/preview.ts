import type { Scene } from './assess/checks/check.ts';
import { clearancesOf } from './assess/clearance/clearance.ts';
import type { Clearances } from './assess/clearance/types.ts';
import { evaluate } from './assess/evaluation.ts';
import { findingsOf } from './assess/findings.ts';
import { buildScene } from './assess/scene.ts';
import { withBeads } from './assess/strength/beads.ts';
import type { Finding } from './assess/types.ts';
import { MIDDLE } from './assess/uncertainty.ts';
import { applyPatches, type Patch } from './document/patch.ts';
import type { Fault } from './fault.ts';
import { type Cache, shareUnchanged } from './model/cache.ts';
import { resolve } from './model/resolve.ts';
import { readBuild } from './read/read-build.ts';
import type { Session } from './session-types.ts';

/** A build as an edit would make it, at the middle of every range. */
export interface Preview {
  readonly scene: Scene;
  readonly findings: readonly Finding[];
  readonly clearance: Clearances;
}

export type Previewed =
  | { readonly ok: true; readonly preview: Preview }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/**
 * What an edit would make of a build, without making it. For speed only the middle of each range is looked at: a finding that its ends
 * change says less here than after the edit.
 * @param cache of previews alone: that of the session would lose what it keeps of the build as it is
 */
export function previewEdit(session: Session, patches: readonly Patch[], cache: Cache): Previewed {
  const patched = applyPatches(session.text, patches);
  if (!patched.ok) return patched;
  const read = readBuild(patched.text);
  if (!read.ok) return read;
  const model = withBeads(resolve(shareUnchanged(session.build, read.build), cache), session.beads, cache);
  const clearance = clearancesOf(buildScene(model, MIDDLE, cache), cache);
  const evaluation = evaluate(model, session.here, cache, 'not yet');
  return { ok: true, preview: { scene: evaluation.middle.scene, findings: findingsOf(evaluation), clearance } };
}
