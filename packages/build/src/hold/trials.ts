/** Changes tried on a build without making them, each remembered, so that findings cured by the same change share it. */
import { looksAt } from '../assess/checks/check.ts';
import { clearancesOf } from '../assess/clearance/clearance.ts';
import { type Ends, rowsOf } from '../assess/evaluation.ts';
import { findingId } from '../assess/findings.ts';
import { buildScene, loadsAtSlider } from '../assess/scene.ts';
import type { Finding } from '../assess/types.ts';
import { MIDDLE } from '../assess/uncertainty.ts';
import type { Json } from '../document/json.ts';
import type { Patch } from '../document/patch.ts';
import { patchValue } from '../document/patch-value.ts';
import { type Cache, shareUnchanged, trialCache } from '../model/cache.ts';
import type { Model } from '../model/model.ts';
import { resolve } from '../model/resolve.ts';
import { soundBuild } from '../read/read-build.ts';
import { applyEdit, rangePass } from '../session.ts';
import type { Session } from '../session-types.ts';

export interface Trials {
  /** The build as it is. */
  readonly base: Session;
  /** Changed build by the change, the last few: several findings ask for the same ones. Null where the file would be faulty. */
  readonly models: Map<string, Changed | null>;
  /** Score of one finding by its id and the change. */
  readonly scores: Map<string, number>;
  readonly wholes: Map<string, readonly Finding[] | null>;
}

interface Changed {
  readonly model: Model;
  readonly cache: Cache;
}

/** Changed builds that are kept. */
const MOST_MODELS = 64;

/** Starts trials on a build. What they work out stands in caches above its own, which they leave as it is. */
export const trialsOf = (base: Session): Trials => ({ base, models: new Map(), scores: new Map(), wholes: new Map() });

/** The build with one change, read once for all findings that ask for it. */
function changed({ base, models }: Trials, patches: readonly Patch[]): Changed | null {
  const key = JSON.stringify(patches);
  const known = models.get(key);
  if (known !== undefined) return known;
  const patched = patchValue(base.build as unknown as Json, patches);
  const build = patched.ok ? soundBuild(shareUnchanged(base.build, patched.value), base.build) : null;
  const cache = trialCache(base.evaluation.cache);
  const made = build ? { model: resolve(build, cache), cache } : null;
  const [oldest] = models.keys();
  if (models.size >= MOST_MODELS && oldest !== undefined) models.delete(oldest);
  models.set(key, made);
  return made;
}

/** What a check that asks nothing counts: a part that touches has no clearance, and what no method covers is not judged; that it is no longer asked is no cure. */
const ASKED_ALWAYS: ReadonlySet<string> = new Set(['clear.parts', 'chain.rating', 'chain.speed', 'chain.wear']);

/** Whether a finding that a change leaves without a question is cured by it. */
export const curedWhenGone = (check: string): boolean => !ASKED_ALWAYS.has(check);

const NONE = Number.NEGATIVE_INFINITY;
const ALL = Number.POSITIVE_INFINITY;

/** Lowest reserve of one finding at the middle of all ranges; the same as its assessment gives, worked out alone. */
function scoreAt(model: Model, cache: Cache, id: string, { gear, roadSpeed }: Session['here']): number {
  const row = rowsOf(model).find((one) => findingId(one) === id);
  const gone = curedWhenGone(id.split(':')[0] ?? '') ? ALL : NONE;
  if (!row) return gone;
  const { check, subject } = row;
  const scene = buildScene(model, MIDDLE, cache);
  if (check.id.startsWith('clear.')) clearancesOf(scene, cache);
  const cases = check.perCase ? [...scene.cases, loadsAtSlider(scene, Number(gear) - 1, roadSpeed)] : [null];
  let least = ALL;
  let asked = false;
  for (const load of cases) {
    if (check.perCase && !(load && looksAt(check, load))) continue;
    const outcome = check.run(scene, subject, load);
    if (!outcome) continue;
    asked = true;
    if (outcome.kind === 'unknown') return NONE;
    const score = outcome.kind === 'measured' ? outcome.reserve : outcome.holds ? ALL : 0;
    least = Math.min(least, score);
  }
  return asked ? least : gone;
}

/**
 * Score of a finding with one change, at the middle of all ranges: its reserve, infinite where it holds without a number or is no longer
 * asked, minus infinity where the answer is lost or the file would be faulty.
 */
export function* tryMiddle(trials: Trials, patches: readonly Patch[], id: string): Generator<void, number> {
  const key = `${id} ${JSON.stringify(patches)}`;
  const known = trials.scores.get(key);
  if (known !== undefined) return known;
  yield;
  const made = changed(trials, patches);
  const score = made ? scoreAt(made.model, made.cache, id, trials.base.here) : NONE;
  trials.scores.set(key, score);
  return score;
}

/** One change assessed as `check` would after it is made; null where it would make the file faulty. */
export function* tryWhole(
  trials: Trials,
  patches: readonly Patch[],
  ends: Ends,
): Generator<void, readonly Finding[] | null> {
  const key = `${ends} ${JSON.stringify(patches)}`;
  const known = trials.wholes.get(key);
  if (known !== undefined) return known;
  yield;
  const { base } = trials;
  const cache = trialCache(base.evaluation.cache);
  const edited = applyEdit({ ...base, evaluation: { ...base.evaluation, cache } }, patches, 'not yet');
  let findings: readonly Finding[] | null = null;
  if (edited.ok) {
    const session = ends === 'tried' ? yield* rangePass(edited.session) : edited.session;
    findings = session.assessment.findings;
  }
  trials.wholes.set(key, findings);
  return findings;
}
