import { assess, type WantedHere } from './assess/assess.ts';
import { type Ends, rangeSteps } from './assess/evaluation.ts';
import { explain } from './assess/explain.ts';
import type { RoadCurves } from './assess/road/curve-types.ts';
import { roadCurves } from './assess/road/curves.ts';
import type { Known } from './assess/road/types.ts';
import { type LaidBeads, withBeads } from './assess/strength/beads.ts';
import { type ShaftLine, shaftLines } from './assess/strength/shaft-lines.ts';
import { hashText } from './document/hash.ts';
import { applyPatches, type Patch } from './document/patch.ts';
import { type Cache, createCache, shareUnchanged } from './model/cache.ts';
import { resolve } from './model/resolve.ts';
import { readBuild, soundBuild } from './read/read-build.ts';
import { type BuildFile, FORMAT } from './schema/build-file.ts';
import type { Edited, Explanation, Opened, Session } from './session-types.ts';

export { validateText } from './read/read-build.ts';

/**
 * Reads and assesses a build.
 * @param options.here slider; blank parts take a middle gear and the middle of its range
 * @param options.previous a session of the same build: what did not change is not computed again
 * @param options.cache false computes everything afresh; the answer is the same, bit for bit
 * @param options.beads weld laid on its shafts since they were made; those of the previous session when left out
 * @param options.ends 'not yet' answers from the middle of all ranges; `rangePass` gives the rest
 */
export function openSession(
  text: string,
  options: {
    readonly here?: WantedHere;
    readonly previous?: Session;
    readonly cache?: boolean;
    readonly beads?: readonly LaidBeads[];
    readonly ends?: Ends;
  } = {},
): Opened {
  const read = readBuild(text);
  if (!read.ok) return read;
  const cache: Cache | null = options.cache === false ? null : (options.previous?.evaluation.cache ?? createCache());
  const build: BuildFile = options.previous ? shareUnchanged(options.previous.build, read.build) : read.build;
  const here = options.here ?? options.previous?.here ?? {};
  const beads = options.beads ?? options.previous?.beads ?? [];
  return { ok: true, session: assessed(text, build, read.from, here, beads, cache, options.ends ?? 'tried') };
}

function assessed(
  text: string,
  build: BuildFile,
  from: number,
  here: WantedHere,
  beads: readonly LaidBeads[],
  cache: Cache | null,
  ends: Ends,
): Session {
  const model = withBeads(resolve(build, cache), beads, cache);
  const { assessment, evaluation } = assess(model, here, cache, ends);
  return { text, hash: hashText(text), build, from, here: assessment.here, beads, assessment, evaluation };
}

/** Applies an edit to the text and assesses it anew. An edit that would make the file faulty changes nothing. */
export function applyEdit(session: Session, patches: readonly Patch[], ends: Ends = 'tried'): Edited {
  const patched = applyPatches(session.text, patches);
  if (!patched.ok) return patched;
  const { text, inverse } = patched;
  const build = quicklyRead(session, text);
  if (build) {
    const { from, here, beads, evaluation } = session;
    return {
      ok: true,
      session: assessed(text, build, from, here, beads, evaluation.cache ?? createCache(), ends),
      inverse,
    };
  }
  const opened = openSession(text, { previous: session, ends });
  return opened.ok ? { ok: true, session: opened.session, inverse } : opened;
}

/** The build of a text that a sound one became; null where it must be read with all places of its faults. */
function quicklyRead({ build, from }: Session, text: string): BuildFile | null {
  if (from !== FORMAT) return null;
  // Both texts were read as strictly as a file is: the old one when it was opened, what came in when it was put in.
  const value: unknown = JSON.parse(text.replace(/^\ufeff/, ''));
  return soundBuild(shareUnchanged(build, value), build);
}

/**
 * Tries the ends of the uncertain inputs of a session that stands on their middle so far. Each step is short, so that a
 * caller can answer others in between or give up; the last one gives the session as if it had been asked for at once.
 */
export function* rangePass(session: Session): Generator<void, Session> {
  const { cache, model } = session.evaluation;
  if (cache) yield* rangeSteps(model, cache);
  const { assessment, evaluation } = assess(model, session.here, cache);
  return { ...session, assessment, evaluation };
}

/** Takes the weld that was laid on the shafts since, and assesses the build anew. */
export function layBeads(session: Session, beads: readonly LaidBeads[], ends: Ends = 'tried'): Session {
  const { text, build, from, here, evaluation } = session;
  return assessed(text, build, from, here, beads, evaluation.cache, ends);
}

/** Moves the slider; the build stays as it is. */
export function moveHere(session: Session, wanted: WantedHere): Session {
  const { cache, model, ends } = session.evaluation;
  const here = { gear: wanted.gear ?? session.here.gear, roadSpeed: wanted.roadSpeed ?? session.here.roadSpeed };
  const { assessment, evaluation } = assess(model, here, cache, ends);
  return { ...session, here: assessment.here, assessment, evaluation };
}

/** The working of a finding, for its governing case or the one asked for; null when there is none of that id. */
export function explainFinding(session: Session, findingId: string, caseId?: string): Explanation | null {
  return explain(session.evaluation, session.assessment, findingId, caseId);
}

/**
 * Diagrams of every shaft, worked out when asked for: moments, forces and movements along it, and how thin it could be.
 * @param caseId case id, or 'here'; without it, for each shaft the case in which it is nearest to yield
 * @returns null when there is no such case
 */
export function shaftDiagrams(session: Session, caseId?: string): readonly ShaftLine[] | null {
  return shaftLines(session.evaluation, caseId);
}

/** Curves of the road for drawing, worked out when asked for; why not, where the drive is not known. */
export function roadCurvesOf(session: Session): Known<RoadCurves> {
  return roadCurves(session.evaluation);
}
