import { trialCache } from './model/cache.ts';
import { applyEdit } from './session.ts';
import type { Session } from './session-types.ts';

/** Enough for a browser to compile most of what an edit runs; it takes about half a second in all. */
const EDITS = 40;

/**
 * Edits that are thrown away, one for each step, each a tooth more or less on a stage: a browser compiles what it runs often, so that the
 * builder's first edits answer sooner. The session and what it keeps stay as they are.
 * @returns without a step where no stage has teeth
 */
export function* practice(session: Session): Generator<void, void> {
  const driven = Object.entries(session.build.path?.stages ?? {}).flatMap(([id, stage]) =>
    'teeth' in stage && typeof stage.teeth?.driver === 'number'
      ? [{ at: `/path/stages/${id}/teeth/driver`, teeth: stage.teeth.driver }]
      : [],
  );
  if (driven.length === 0) return;
  let at: Session = { ...session, evaluation: { ...session.evaluation, cache: trialCache(session.evaluation.cache) } };
  for (let k = 0; k < EDITS; k += 1) {
    const { at: address, teeth } = driven[(k >> 1) % driven.length] ?? { at: '', teeth: 0 };
    const edited = applyEdit(at, [{ op: 'set', at: address, value: k % 2 === 0 ? teeth + 1 : teeth }], 'not yet');
    if (edited.ok) at = edited.session;
    yield;
  }
}
