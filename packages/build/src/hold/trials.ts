/** Changes tried on a build without making them, each remembered, so that findings cured by the same change share it. */
import type { Ends } from '../assess/evaluation.ts';
import type { Finding } from '../assess/types.ts';
import type { Patch } from '../document/patch.ts';
import { type Cache, createCache } from '../model/cache.ts';
import { previewEdit } from '../preview.ts';
import { applyEdit, openSession, rangePass } from '../session.ts';
import type { Session } from '../session-types.ts';

/** A finding as the search reads it. */
export interface Score {
  readonly reserve: number | null;
  readonly holds: boolean;
  readonly known: boolean;
}

export interface Trials {
  /** The build as it is, with a cache of its own. */
  readonly base: Session;
  readonly cache: Cache;
  readonly middles: Map<string, ReadonlyMap<string, Score> | null>;
  readonly ranged: Map<string, readonly Finding[] | null>;
}

/** Starts trials on a build. */
export function trialsOf(session: Session): Trials {
  // A cache of its own: what a trial leaves in it would make the build's own next edit slower.
  const opened = openSession(session.text, { here: session.here, ends: 'not yet' });
  if (!opened.ok) throw new Error('A build that was read before has faults.');
  return { base: opened.session, cache: createCache(), middles: new Map(), ranged: new Map() };
}

/** One change assessed at the middle of all ranges; null where it would make the file faulty. */
export function* tryMiddle(
  trials: Trials,
  patches: readonly Patch[],
): Generator<void, ReadonlyMap<string, Score> | null> {
  const key = JSON.stringify(patches);
  const known = trials.middles.get(key);
  if (known !== undefined) return known;
  yield;
  const previewed = previewEdit(trials.base, patches, trials.cache);
  const scores = previewed.ok
    ? new Map(
        previewed.preview.findings.map(({ id, reserve, severity }): [string, Score] => [
          id,
          { reserve: reserve?.value ?? null, holds: severity === 'holds', known: severity !== 'unknown' },
        ]),
      )
    : null;
  trials.middles.set(key, scores);
  return scores;
}

/** One change assessed as `check` would after it is made; null where it would make the file faulty. */
export function* tryWhole(
  trials: Trials,
  patches: readonly Patch[],
  ends: Ends,
): Generator<void, readonly Finding[] | null> {
  const key = `${ends}:${JSON.stringify(patches)}`;
  const known = trials.ranged.get(key);
  if (known !== undefined) return known;
  yield;
  const edited = applyEdit(trials.base, patches, 'not yet');
  let findings: readonly Finding[] | null = null;
  if (edited.ok) {
    const session = ends === 'tried' ? yield* rangePass(edited.session) : edited.session;
    findings = session.assessment.findings;
  }
  trials.ranged.set(key, findings);
  return findings;
}
